// What recording a run costs, beside a plain table with a row a sample in the same run of this program: size, time on
// the session's thread and in all, opening, seeking, judging again.
//
// One hour with 30 controls: 8 axes of 12 bits on two devices that report at 100 Hz with jittered stamps, moving all
// the time; 22 contacts. The motion of an aircraft is counted apart. Build it optimised. It needs no arguments.

#include <algorithm>
#include <chrono>
#include <cmath>
#include <cstdio>
#include <ctime>
#include <filesystem>
#include <random>
#include <unistd.h>
#include <vector>

#include "base/textfile.h"
#include "procedure/library.h"
#include "report/storeddebrief.h"
#include "review/timeline.h"
#include "session/keepingrecorder.h"
#include "session/onscreenfacts.h"
#include "session/replay.h"
#include "session/runloop.h"
#include "store/archive.h"
#include "store/database.h"
#include "store/store.h"
#include "store/storerecorder.h"

using namespace flowhand;
using namespace std::chrono_literals;
namespace fs = std::filesystem;

namespace {

constexpr int kSeconds = 3600;
constexpr int kAxes = 8;
constexpr int kContacts = 22;
constexpr auto kJournal = 500ms;

/// Of a thread that writes one hour: CPU seconds in it.
double cpuSeconds(clockid_t clock = CLOCK_PROCESS_CPUTIME_ID) {
    std::timespec now{};
    clock_gettime(clock, &now);
    return double(now.tv_sec) + double(now.tv_nsec) * 1e-9;
}

double wallMillis(std::chrono::steady_clock::time_point since) {
    return std::chrono::duration<double, std::milli>(std::chrono::steady_clock::now() - since).count();
}

/// One lever: slow wandering with quick moves, 12 bits with a count of noise, rounded as a rig rounds.
class Axis {
public:
    explicit Axis(int number) : m_rate(0.05 + 0.07 * number) {}
    double at(double time, std::mt19937& random) {
        const double place = 50.0 + 45.0 * std::sin(m_rate * time) * std::cos(1.7 * m_rate * time + m_rate);
        const double count = std::round(place * 40.95 + m_noise(random));
        return std::round(count / 40.95 * 100.0) / 100.0;
    }

private:
    double m_rate;
    std::normal_distribution<double> m_noise{0.0, 0.7};
};

Sample handSample(std::int64_t micros, int signal, double value) {
    return {std::chrono::microseconds(micros),
            SignalId(signal),
            Value::number(value),
            Actor::Hand,
            Origin::Device,
            ControlId(static_cast<std::uint16_t>(signal + 1))};
}

/// Only changes, in the order of time.
std::vector<Sample> controlsOfOneHour() {
    std::mt19937 random(1);
    std::normal_distribution<double> jitter(0.0, 300.0);
    std::vector<Sample> samples;
    std::vector<Axis> axes;
    for (int i = 0; i < kAxes; ++i)
        axes.emplace_back(i);
    std::vector<double> last(kAxes, -1.0);
    for (int device = 0; device < 2; ++device) {
        for (int i = 0; i < kSeconds * 100; ++i) {
            const auto micros = i * std::int64_t{10'000} + device * 3'700 + 2'000 +
                                std::clamp<std::int64_t>(std::llround(jitter(random)), -1'500, 1'500);
            for (int axis = device * 4; axis < device * 4 + 4; ++axis) {
                const double value = axes[std::size_t(axis)].at(double(micros) * 1e-6, random);
                if (std::exchange(last[std::size_t(axis)], value) != value)
                    samples.push_back(handSample(micros, axis, value));
            }
        }
    }
    for (int i = 0; i < kSeconds; ++i)
        samples.push_back(handSample(i * std::int64_t{1'000'000} + std::int64_t(random() % 1'000'000),
                                     kAxes + int(random() % kContacts), double(i % 2)));
    std::stable_sort(samples.begin(), samples.end(), [](const Sample& a, const Sample& b) {
        return a.time < b.time;
    });
    return samples;
}

/// Calls `write` with the samples of each half second.
template <class Write>
void inHalfSeconds(const std::vector<Sample>& samples, Write write) {
    std::size_t at = 0;
    for (Time until = kJournal; at < samples.size(); until += kJournal) {
        std::size_t end = at;
        while (end < samples.size() && samples[end].time < until)
            ++end;
        if (end != at)
            write(std::vector<Sample>(samples.begin() + std::ptrdiff_t(at), samples.begin() + std::ptrdiff_t(end)));
        at = end;
    }
}

struct Costs {
    double cpu = 0.0; ///< s
    std::uintmax_t bytes = 0;
};

void orStop(bool isGood, const char* what) {
    if (isGood)
        return;
    std::fprintf(stderr, "bench_store: %s failed\n", what);
    std::exit(1);
}

Costs writeRows(const std::string& file, const std::vector<Sample>& samples) {
    const double before = cpuSeconds();
    {
        Result<Connection> connection = Connection::open(file, OpenMode::Create, 1s);
        orStop(connection && connection->execute("PRAGMA journal_mode = WAL; PRAGMA synchronous = FULL; CREATE TABLE "
                                                 "sample (run INTEGER, time_us INTEGER, signal INTEGER, value REAL, "
                                                 "actor INTEGER, origin INTEGER, control INTEGER)"),
               "the row store");
        inHalfSeconds(samples, [&](const std::vector<Sample>& batch) {
            Result<Transaction> transaction = Transaction::begin(*connection);
            // Numbers as SQL would need a binding for doubles that the store itself has no use for.
            std::string sql;
            char row[128];
            for (const Sample& sample : batch) {
                std::snprintf(row, sizeof row, "%s(1,%lld,%u,%.17g,%d,%d,%d)", sql.empty() ? "" : ",",
                              static_cast<long long>(sample.time.count() / 1000), unsigned(indexOf(sample.signal)),
                              sample.value.number(), int(sample.actor), int(sample.origin), int(sample.control));
                sql += row;
            }
            orStop(connection->execute("INSERT INTO sample VALUES " + sql) && transaction->commit(), "a row batch");
        });
    }
    return {cpuSeconds() - before, fs::file_size(file)};
}

Costs writeStore(const std::string& file, const std::vector<Sample>& samples, const RunHeader& header,
                 const std::vector<StepResult>& results = {}) {
    const double before = cpuSeconds();
    {
        Result<Connection> connection = openDatabase(file, false, 1s);
        orStop(connection.has_value(), "opening the store");
        RunWriter writer(std::move(*connection));
        orStop(writer.begin(header).has_value(), "beginning the run");
        inHalfSeconds(samples, [&](std::vector<Sample> batch) {
            orStop(writer.write({std::move(batch), {}, {}}).has_value(), "a batch");
        });
        orStop(writer.finish(samples.back().time, {}, results, {}).has_value(), "finishing the run");
    }
    return {cpuSeconds() - before, fs::file_size(file)};
}

/// CPU seconds of the session's own thread, which only hands over.
double handOver(const std::string& file, const std::vector<Sample>& samples, const RunHeader& header) {
    Result<Store> store = Store::open(file);
    orStop(store.has_value(), "opening the store");
    const std::unique_ptr<Recorder> recorder = store->recorder();
    orStop(recorder->begin(header).has_value(), "beginning the run");
    const double before = cpuSeconds(CLOCK_THREAD_CPUTIME_ID);
    for (std::size_t at = 0; at < samples.size();) {
        std::size_t end = at;
        while (end < samples.size() && samples[end].time == samples[at].time)
            ++end;
        orStop(recorder->samples(std::span(samples).subspan(at, end - at)).has_value(), "handing over");
        at = end;
    }
    const double cpu = cpuSeconds(CLOCK_THREAD_CPUTIME_ID) - before;
    orStop(recorder->finish(samples.back().time, {}, {}).has_value(), "finishing the run");
    return cpu;
}

/// As the Review place opens a run: read back, and laid out along its time.
void reportReviewOpening(Store& store) {
    std::vector<double> times;
    for (int i = 0; i < 9; ++i) {
        const auto opening = std::chrono::steady_clock::now();
        const Result<StoredDebrief> debrief = StoredDebrief::open(store, 1, "bench");
        orStop(debrief && debrief->run().damage.empty(), "opening the run");
        times.push_back(wallMillis(opening));
    }
    std::printf("open it for a review, the first time %6.1f ms", times.front());
    std::sort(times.begin(), times.end());
    std::printf(", median of %zu %.1f ms\n", times.size(), times[times.size() / 2]);
}

void reportOpening(const std::string& file) {
    const auto opened = std::chrono::steady_clock::now();
    Result<Store> store = Store::open(file);
    orStop(store && store->runs(), "listing the runs");
    std::printf("open the file and list its runs   %8.2f ms\n", wallMillis(opened));
    reportReviewOpening(*store);
    const auto loading = std::chrono::steady_clock::now();
    const Result<StoredRun> run = store->load(1);
    orStop(run && run->damage.empty(), "loading the run");
    std::printf("read all %zu samples back in order   %6.1f ms\n", run->samples.size(), wallMillis(loading));
    std::mt19937 random(2);
    std::vector<double> times;
    for (int i = 0; i < 500; ++i) {
        const Time time = std::chrono::milliseconds(random() % (kSeconds * 1000));
        const auto seeking = std::chrono::steady_clock::now();
        orStop(store->valuesAt(1, time).has_value(), "seeking");
        times.push_back(wallMillis(seeking));
    }
    std::sort(times.begin(), times.end());
    std::printf("all values at any time, median    %8.2f ms, worst of 500 %.2f ms\n", times[250], times.back());
}

RunHeader headerOf(const Aircraft& aircraft, const Flow& flow) {
    RunHeader header;
    header.aircraftFolder = aircraft.folder;
    header.aircraftSource = aircraft.toml.source();
    header.flowFile = flow.file;
    header.flowSource = flow.source;
    header.setup.controls = onScreenFacts(aircraft);
    return header;
}

void reportFlow(const Aircraft& aircraft, const Flow& flow, const std::string& folder) {
    Problems problems;
    KeepingRecorder keeper;
    RunParts parts;
    parts.aircraft = &aircraft;
    parts.flow = &flow;
    parts.header = headerOf(aircraft, flow);
    const RunHeader header = parts.header;
    parts.hands = Hands::load(PROCEDURES "/twin_jet/hands/" + flow.id + ".hands", aircraft, flow, problems);
    Result<PracticeAircraft> practice = PracticeAircraft::create(aircraft, flow.startPlace);
    orStop(practice && parts.hands, "preparing a flow");
    parts.practice.emplace(std::move(*practice));
    parts.recorder = &keeper;
    RunLoop loop(std::move(parts));
    loop.command(CommandKind::Start);
    for (Time time{}; time < 1h && !loop.isEnded(); time += 50ms)
        loop.advance(time);
    const auto judging = std::chrono::steady_clock::now();
    const JudgedRun judgement =
        judgeAgain(aircraft, flow, header.setup, keeper.allSamples, keeper.commands, keeper.end);
    const double millis = wallMillis(judging);
    std::vector<Sample> motion;
    for (const Sample& sample : keeper.allSamples)
        if (sample.origin == Origin::Practice)
            motion.push_back(sample);
    const std::string rows = folder + "/" + flow.id + "-rows.sqlite";
    const std::string chunks = folder + "/" + flow.id + "-chunks.sqlite";
    const std::uintmax_t plain = writeRows(rows, motion).bytes;
    const std::uintmax_t packed = writeStore(chunks, motion, header).bytes;
    std::printf(
        "%-14s %6.1f s, %4zu events judged again in %6.2f ms: %8.0f times real time; %5zu samples of motion, %4ju "
        "kB as rows, %4ju kB packed with the flow's files\n",
        flow.id.c_str(), seconds(keeper.end), judgement.events.size(), millis, seconds(keeper.end) * 1000.0 / millis,
        motion.size(), plain / 1024, packed / 1024);
}

/// The hour laid out for a review: once, then drawn at zooms from all of it to a second, eight lanes of 1,920 columns.
void reportReview(const Aircraft& aircraft, const Flow& flow, const RunHeader& header,
                  const std::vector<Sample>& samples) {
    const std::vector<Event> events;
    const std::vector<StepResult> results(flow.steps.size());
    const Score score;
    const SamplesBySignal bySignal(samples);
    const auto laying = std::chrono::steady_clock::now();
    const Timeline timeline({flow, aircraft, header, bySignal, events, results, score, samples.back().time});
    std::printf("of it, to lay it out               %8.1f ms\n", wallMillis(laying));
    std::mt19937 random(3);
    std::vector<double> times;
    for (int i = 0; i < 300; ++i) {
        const Time length = std::chrono::milliseconds(1000LL << random() % 12);
        const Time from = std::chrono::milliseconds(random() % (kSeconds * 1000));
        const auto drawing = std::chrono::steady_clock::now();
        for (std::uint32_t axis = 0; axis < kAxes; ++axis)
            orStop(timeline.signal(SignalId{axis}).columns(from, from + length, 1920).size() == 1920, "drawing");
        orStop(timeline.valuesAt(from).size() == aircraft.signals.size(), "reading values");
        times.push_back(wallMillis(drawing));
    }
    std::sort(times.begin(), times.end());
    std::printf("eight lanes at any zoom, median    %8.2f ms, 99 of 100 within %.2f ms, worst %.2f ms\n", times[150],
                times[297], times.back());
}

/// The shipped sample runs, as they are judged again by 'flowhand debrief --rejudge'.
void reportSampleRuns() {
    for (const fs::directory_entry& entry : fs::directory_iterator(ASSETS "/runs")) {
        if (entry.path().extension() != ".flowrun")
            continue;
        const std::string file = entry.path().string();
        const Result<std::string> bytes = readFile(file, kLargestArchive);
        const Result<ArchivedRun> archived = bytes ? readArchive(*bytes, file) : tl::unexpected(bytes.error());
        orStop(archived.has_value(), "reading a sample run");
        const StoredRun& run = archived->run;
        Problems problems;
        const std::optional<Aircraft> aircraft = parseAircraft(run.header.aircraftSource, "aircraft.toml", problems);
        orStop(aircraft.has_value(), "reading a sample run's aircraft");
        const std::optional<Flow> flow = parseFlow(run.header.flowSource, run.header.flowFile, *aircraft, problems);
        orStop(flow.has_value(), "reading a sample run's flow");
        // The best of several: the first one warms the caches.
        double millis = 1e9;
        for (int i = 0; i < 5; ++i) {
            const auto judging = std::chrono::steady_clock::now();
            const JudgedRun judgement =
                judgeAgain(*aircraft, *flow, run.header.setup, run.samples, run.commands, run.summary.length);
            millis = std::min(millis, wallMillis(judging));
            orStop(judgement.lines == run.eventLines, "judging a sample run the same");
        }
        std::printf("%-28s %6.1f s judged again in %6.2f ms: %8.0f times real time\n", entry.path().filename().c_str(),
                    seconds(run.summary.length), millis, seconds(run.summary.length) * 1000.0 / millis);
    }
}

} // namespace

int main() {
    char pattern[] = "/tmp/flowhand-bench-XXXXXX";
    orStop(mkdtemp(pattern) != nullptr, "making a folder");
    const std::string folder = pattern;
    Problems problems;
    const std::vector<AircraftFolder> library = loadLibrary(PROCEDURES, problems);
    orStop(!library.empty() && !library[0].flows.empty(), "loading the procedures");
    const RunHeader header = headerOf(*library[0].aircraft, library[0].flows[0]);

    const std::vector<Sample> samples = controlsOfOneHour();
    const Costs rows = writeRows(folder + "/rows.sqlite", samples);
    const std::vector<StepResult> results(library[0].flows[0].steps.size());
    const Costs chunks = writeStore(folder + "/chunks.sqlite", samples, header, results);
    const double session = handOver(folder + "/session.sqlite", samples, header);
    std::printf("one hour, %zu samples of 30 controls\n", samples.size());
    std::printf("a row a sample   %8.2f MB   %6.3f %% of a core\n", double(rows.bytes) / 1e6,
                rows.cpu / kSeconds * 100);
    std::printf("the store        %8.2f MB   %6.3f %% of a core: %.2f %% of the size\n", double(chunks.bytes) / 1e6,
                chunks.cpu / kSeconds * 100, 100.0 * double(chunks.bytes) / double(rows.bytes));
    std::printf("of it, on the session's thread  %6.4f %% of a core\n", session / kSeconds * 100);
    reportOpening(folder + "/chunks.sqlite");
    reportReview(*library[0].aircraft, library[0].flows[0], header, samples);
    for (const Flow& flow : library[0].flows)
        reportFlow(*library[0].aircraft, flow, folder);
    reportSampleRuns();
    fs::remove_all(folder);
    return 0;
}
