#include <algorithm>
#include <memory>

#include "base/names.h"
#include "command/assembly.h"
#include "command/command.h"
#include "command/commandline.h"
#include "command/datafolder.h"
#include "command/flowsearch.h"
#include "command/flyrun.h"
#include "command/interrupt.h"
#include "command/progressline.h"
#include "report/debrief.h"

namespace flowhand {

namespace {

constexpr int kMostSlowness = 10; ///< slower, nothing seems to move
/// Milliseconds; a chain of devices slower than this is broken, and would hide lateness.
constexpr double kLongestLatency = 1000.0;

struct Options {
    std::string flow;
    std::string scenario;
    std::string feed;
    std::vector<std::string> sources;
    std::string procedures = dataFolder() + "/procedures";
    std::string rig;
    std::vector<std::string> recordings;
    std::string hands;
    std::string from;
    std::string store = defaultStoreFile();
    std::string seat;
    std::string pilot;
    std::uint64_t seed = 1;
    double partnerErrors = 0.0;
    double latencyMillis = 0.0;
    std::string place;
    int slowness = 1;
    bool isDemonstration = false;
    bool isSolo = false;
    bool isWaived = false;
    bool isUnstored = false;
    bool isJson = false;
};

class Practise {
public:
    Practise(CommandLine& line, const Options& options) : m_line(line), m_options(options) {}

    int run() {
        Problems problems;
        const std::vector<AircraftFolder> library = loadLibrary(m_options.procedures, problems);
        for (const Problem& problem : problems.all())
            if (problem.severity == Severity::Error)
                m_line.err << describe(problem.error) << '\n';
        if (m_options.flow.empty() == m_options.scenario.empty())
            return complain(m_line, {"nothing-to-fly", "name a flow, or a scenario with --scenario, and not both", {}});
        const Result<FoundFlow> found =
            m_options.scenario.empty() ? findFlow(library, m_options.flow) : findScenario(library, m_options.scenario);
        if (!found)
            return complain(m_line, found.error());
        for (const Problem& problem : problems.all())
            if (problem.severity == Severity::Warning && problem.error.place.file == found->flow->file)
                m_line.err << describe(problem.error) << '\n';
        return fly(*found);
    }

private:
    int fly(const FoundFlow& found) {
        if (m_options.isDemonstration && demonstrationOf(*found.flow, found.scenario, m_options.seed).empty())
            return complain(m_line, {"no-demonstration",
                                     "this flow has no demonstration; write its hands into hands/" + found.flow->id +
                                         ".hands beside it, or name a script with --hands",
                                     {found.flow->file}});
        if (const Status known = checkFrom(*found.flow); !known)
            return complain(m_line, known.error());
        std::optional<Store> store;
        if (!m_options.isUnstored) {
            Result<Store> opened = Store::open(m_options.store);
            if (!opened)
                return complain(m_line, opened.error());
            store.emplace(std::move(*opened));
        }
        const std::unique_ptr<HidSystem> devices = systemDevices();
        const SteadyClock clock;
        Result<AssembledRun> run = assembleRun(wishFor(found), store ? &*store : nullptr, *devices, clock);
        if (!run)
            return complain(m_line, run.error());
        if (!run->parts.hands && !run->parts.playback && run->devices == nullptr)
            return complain(
                m_line, {"nothing-to-fly-with",
                         "say what flies: --rig FILE for your controls, --hands FILE or --demonstration for scripted "
                         "hands; without controls, start flowhand with no command and use the ones on screen",
                         {}});
        int worst = kExitDone;
        for (const FlownRun& flown : flyAndShow(*run, clock, found))
            worst = std::max(worst, report(found, flown));
        return worst;
    }

    [[nodiscard]] Status checkFrom(const Flow& flow) const {
        std::vector<std::string> ids;
        for (const Step& step : flow.steps)
            ids.push_back(step.id);
        if (m_options.from.empty() || std::find(ids.begin(), ids.end(), m_options.from) != ids.end())
            return {};
        return failure("unknown-step",
                       "this flow has no step '" + m_options.from + "' to begin with" +
                           nearestHint(m_options.from, ids) + "; its steps are " + joined(ids, ", "),
                       {flow.file});
    }

    RunWish wishFor(const FoundFlow& found) const {
        RunWish wish;
        wish.aircraft = found.aircraft;
        wish.flow = found.flow;
        wish.folder = found.folder;
        wish.scenario = found.scenario;
        wish.feed = m_options.feed;
        wish.sources = m_options.sources;
        wish.isDemonstration = m_options.isDemonstration;
        wish.rigFile = m_options.rig;
        wish.recordings = m_options.recordings;
        wish.handsFile =
            m_options.isDemonstration ? demonstrationOf(*found.flow, found.scenario, m_options.seed) : m_options.hands;
        wish.seat = m_options.seat;
        wish.isSolo = m_options.isSolo;
        wish.seed = m_options.seed;
        wish.partnerErrorRate = m_options.partnerErrors;
        wish.latency = wholeTick(fromSeconds(m_options.latencyMillis / 1000.0));
        wish.pilot = m_options.pilot;
        wish.place = m_options.place;
        wish.slowness = m_options.slowness;
        return wish;
    }

    std::vector<FlownRun> flyAndShow(AssembledRun& run, const Clock& clock, const FoundFlow& found) {
        std::ostream& progress = m_options.isJson ? m_line.err : m_line.out;
        const auto show = [&](const Event& event, const Flow& flow) {
            const std::string text = progressLine(event, flow, *found.aircraft);
            if (!text.empty())
                progress << text << std::endl;
        };
        for (const Phrase& remark : run.remarks)
            progress << remark.english() << '\n';
        progress << (found.scenario != nullptr ? found.scenario->title + ": " : "") << found.flow->title << ", "
                 << found.aircraft->title << std::endl;
        const FlightStart start{m_options.from, !m_options.place.empty(), m_options.isWaived};
        if (run.devices == nullptr && run.feed == nullptr) {
            std::vector<FlownRun> flown = flyScripted(std::move(run.parts), start, show);
            for (const Phrase& notice : flown.back().snapshot.notices)
                m_line.err << notice.english() << std::endl;
            const std::string wanted = wantedText(flown.back().setUp, *found.aircraft);
            if (!wanted.empty())
                m_line.err << "It was left waiting for these controls:" << wanted << std::endl;
            return flown;
        }
        const Interrupt interrupt;
        const LiveFlight live{clock, run.origin, *run.bell,
                              [&] {
                                  return interrupt.isAsked();
                              },
                              [&](const std::string& text) {
                                  progress << text << std::endl;
                              }};
        return flyLive(std::move(run.parts), live, start, show);
    }

    int report(const FoundFlow& found, const FlownRun& flown) {
        const RunSnapshot& end = flown.snapshot;
        DebriefInput input{*flown.flow, *found.aircraft, flown.header, end.score, end.results, flown.events, end.runId};
        input.losses = end.losses;
        if (m_options.isJson)
            m_line.out << debriefJson(input) << '\n';
        else
            m_line.out << '\n' << debriefText(input);
        return end.score.isPassed ? kExitDone : kExitNotPassed;
    }

    CommandLine& m_line;
    const Options& m_options;
};

} // namespace

void addPractiseCommand(CLI::App& app, CommandLine& line) {
    auto options = std::make_shared<Options>();
    CLI::App* command = app.add_subcommand("practise", "Fly a flow without the window; the debrief follows");
    CLI::Option* flow = command->add_option("FLOW", options->flow, "The flow, as in taxi_out or twin_jet/taxi_out");
    command
        ->add_option(
            "--scenario", options->scenario,
            "In place of one flow: a scenario, with its place, its weather, its flows and what happens on the way")
        ->excludes(flow)
        ->type_name("NAME");
    CLI::Option* rig =
        command->add_option("--rig", options->rig, "Rig file: fly by your controls, in real time")->type_name("FILE");
    command
        ->add_option("--recording", options->recordings,
                     "What 'devices --record' wrote of the rig's devices: fly as it was recorded, not by the devices "
                     "themselves")
        ->needs(rig)
        ->type_name("FILE...");
    CLI::Option* hands =
        command->add_option("--hands", options->hands, "Script of hands that flies")->type_name("FILE");
    CLI::Option* demonstration =
        command->add_flag("--demonstration", options->isDemonstration, "The flow's own scripted hands fly")
            ->excludes(hands);
    command
        ->add_option("--from", options->from,
                     "Begin with this step, by its id, once the controls stand as the steps before it leave them")
        ->type_name("STEP")
        ->excludes(demonstration);
    command
        ->add_option(
            "--feed", options->feed,
            "Motion from outside instead of the practice aircraft's: json, nmea or gdl90, a colon, and a port, an "
            "address and port, tcp:HOST:PORT or serial:PATH:BAUD")
        ->type_name("FORMAT:WAY");
    command
        ->add_option("--source", options->sources,
                     "Where one motion signal comes from: SIGNAL=feed, SIGNAL=practice or SIGNAL=none")
        ->type_name("SIGNAL=SOURCE...");
    command
        ->add_option(
            "--place", options->place,
            "Where the practice aircraft begins in place of the flow's own start, as in v1, final or fifty_feet")
        ->type_name("PLACE");
    command
        ->add_option("--slow", options->slowness,
                     "Slow time: aircraft, limits and cues go so many times slower, your hands as fast as they are")
        ->check(CLI::Range(1, kMostSlowness))
        ->type_name("TIMES")
        ->capture_default_str();
    command->add_option("--db", options->store, "Where the run is stored")->type_name("FILE");
    command->add_flag("--unstored", options->isUnstored, "Do not store the run");
    command->add_option("--seat", options->seat, "The seat you sit in; left out: the aircraft's first");
    command->add_flag("--solo", options->isSolo, "No partner: you do both seats' steps");
    command->add_option("--seed", options->seed, "Of the partner's pace, and of what happens in a scenario")
        ->capture_default_str();
    command
        ->add_option("--partner-errors", options->partnerErrors,
                     "How often the partner errs, from 0 (never) to 1 (always), to train your watching")
        ->check(CLI::Range(0.0, 1.0))
        ->type_name("RATE")
        ->capture_default_str();
    command
        ->add_option("--latency", options->latencyMillis,
                     "Delay of sound and input in ms, as measured; it is taken off your response times")
        ->check(CLI::Range(0.0, kLongestLatency))
        ->type_name("MS")
        ->capture_default_str();
    command->add_option("--pilot", options->pilot, "Your name in the run's record");
    command->add_option("--procedures", options->procedures, "Folder of the aircraft and their flows")
        ->type_name("FOLDER");
    command->add_flag("--waive", options->isWaived,
                      "Begin although controls are not where the start wants them; recorded");
    command->add_flag("--json", options->isJson, "Print the debrief as JSON, and the progress on standard error");
    command->callback([&line, options] {
        line.chosen = [&line, options] {
            return Practise(line, *options).run();
        };
    });
}

int flyDemonstration(std::ostream& out, std::ostream& err) {
    CommandLine line{out, err, {}};
    Problems problems;
    int worst = kExitDone;
    for (const AircraftFolder& folder : loadLibrary(dataFolder() + "/procedures", problems)) {
        for (const Flow& flow : folder.flows) {
            Options options;
            options.flow = folder.aircraft->folder + "/" + flow.id;
            options.isDemonstration = true;
            options.isUnstored = true;
            if (!demonstrationOf(flow).empty())
                worst = std::max(worst, Practise(line, options).run());
        }
    }
    return worst;
}

} // namespace flowhand
