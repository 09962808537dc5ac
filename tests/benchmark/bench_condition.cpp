// What watching conditions costs. Prints tables, and at the end what is aimed at beside what was measured.
//
// Each table's rows take turns: one pass over the samples for every row, then the next, so that whatever slows the
// machine for a while slows all rows alike. Every time is the median of its row's passes, in processor time of this
// thread, and stands beside that of only reading the same samples from memory. Rows are compared by their shares in
// the turns.
//
// Build it optimised. It needs no arguments.

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <ctime>
#include <functional>
#include <malloc.h>
#include <map>
#include <random>
#include <string>
#include <vector>

#include "condition/monitor.h"

using namespace flowhand;

namespace {

constexpr int kSamples = 1'000'000;
constexpr int kPasses = 11;
constexpr Duration kPeriod = std::chrono::milliseconds(1);

struct BenchSample {
    SignalId signal = kNoSignal;
    Time time{};
    Value value;
};

/// Nanoseconds of processor time that this thread has had.
double used() {
    timespec time{};
    clock_gettime(CLOCK_THREAD_CPUTIME_ID, &time);
    return static_cast<double>(time.tv_sec) * 1e9 + static_cast<double>(time.tv_nsec);
}

double medianOf(std::vector<double> numbers) {
    std::sort(numbers.begin(), numbers.end());
    return numbers[numbers.size() / 2];
}

/// What each row's passes gave, the rows having taken turns.
std::vector<std::vector<double>> inTurn(const std::vector<std::function<double()>>& rows) {
    std::vector<std::vector<double>> times(rows.size());
    for (int pass = 0; pass < kPasses; ++pass)
        for (std::size_t row = 0; row < rows.size(); ++row)
            times[row].push_back(rows[row]());
    return times;
}

std::vector<double> medians(const std::vector<std::vector<double>>& times) {
    std::vector<double> middle;
    for (const std::vector<double>& row : times)
        middle.push_back(medianOf(row));
    return middle;
}

/// How much the slowest row costs beside the fastest, each by the median of its shares in its turns.
double growthOf(std::vector<std::vector<double>> times) {
    for (std::size_t pass = 0; pass < times[0].size(); ++pass) {
        double sum = 0.0;
        for (const std::vector<double>& row : times)
            sum += row[pass];
        for (std::vector<double>& row : times)
            row[pass] /= sum;
    }
    const std::vector<double> shares = medians(times);
    return *std::max_element(shares.begin(), shares.end()) / *std::min_element(shares.begin(), shares.end());
}

/// What is aimed at, told at the end.
class Aims {
public:
    void add(const std::string& what, double measured, double most, const char* unit) {
        char line[160];
        std::snprintf(line, sizeof line, "%-74s %9.2f %-3s  at most %6.1f  %s\n", what.c_str(), measured, unit, most,
                      measured <= most ? "met" : "MISSED");
        m_lines += line;
    }
    void print() const { std::printf("%s", m_lines.c_str()); }

private:
    std::string m_lines;
};

/// Eight positions, twelve on/off, twenty numbers: about what a cockpit has.
struct Cockpit {
    Cockpit() {
        for (int i = 0; i < 40; ++i) {
            Signal signal;
            signal.name = "s" + std::to_string(i);
            signal.kind = i < 20 ? SignalKind::Number : i < 32 ? SignalKind::OnOff : SignalKind::Position;
            signal.unit = *findUnit(i < 20 ? "%" : "");
            signal.scale = 100.0;
            if (i >= 32)
                signal.positions = {"a", "b", "c", "d", "e"};
            static_cast<void>(table.add(signal));
        }
    }
    Condition compile(const std::string& text) const {
        const std::map<std::string, AircraftValue, std::less<>> none;
        std::vector<ConditionProblem> problems;
        std::optional<Condition> condition = Condition::compile(text, {table, none}, problems);
        if (!condition) {
            std::fprintf(stderr, "%s: %s\n", text.c_str(), problems[0].message.c_str());
            std::abort();
        }
        return *condition;
    }
    SignalTable table;
};

/// 1 kHz over all signals; one sample in a hundred differs from its signal's value.
std::vector<BenchSample> stillTrace(const Cockpit& cockpit) {
    std::mt19937 random(1);
    std::vector<Value> values(cockpit.table.size(), Value::number(0));
    std::vector<BenchSample> samples;
    for (int i = 0; i < kSamples; ++i) {
        const std::size_t which = random() % values.size();
        const SignalKind kind = cockpit.table.all()[which].kind;
        if (random() % 100 == 0)
            values[which] = kind == SignalKind::Number  ? Value::number(random() % 10'000 / 100.0)
                            : kind == SignalKind::OnOff ? Value::onOff(!values[which].isOn())
                                                        : Value::number(static_cast<double>(random() % 5));
        samples.push_back({SignalId{static_cast<std::uint32_t>(which)}, i * kPeriod, values[which]});
    }
    return samples;
}

/// 1 kHz of one lever that sweeps its whole range every 10 s, with noise: no two samples are the same.
std::vector<BenchSample> movingTrace() {
    std::mt19937 random(2);
    std::vector<BenchSample> samples;
    for (int i = 0; i < kSamples; ++i) {
        const double noise = static_cast<double>(random() % 2000) / 100'000.0 - 0.01;
        samples.push_back({SignalId{0}, i * kPeriod, Value::number(50.0 + 49.9 * std::sin(i * 0.000314159) + noise)});
    }
    return samples;
}

/// All forms in turn. `number`, `switched` and `placed` say which signals are read.
std::string conditionText(std::mt19937& random, int i, const std::string& number, const std::string& switched,
                          const std::string& placed) {
    const auto limit = [&] {
        return number + (random() % 2 == 0 ? " < " : " > ") + std::to_string(random() % 10'000 / 100.0) + " %";
    };
    const auto span = [&] {
        return std::to_string(1 + random() % 30) + " s";
    };
    switch (i % 10) {
    case 0:
        return limit();
    case 1:
        return limit() + " and " + switched;
    case 2:
        return "once(" + limit() + ", " + span() + ")";
    case 3:
        return "historically(" + limit() + ", 1 s .. 40 s)";
    case 4:
        return "since(" + limit() + ", " + placed + " == c, " + span() + ")";
    case 5:
        return "held(" + limit() + ", " + span() + ")";
    case 6:
        return "rise(" + limit() + ") and " + switched;
    case 7:
        return "sequence(" + limit() + ", " + placed + " == b, " + span() + ")";
    case 8:
        return placed + " == d or once(" + switched + ", 2 s .. " + std::to_string(3 + random() % 30) + " s)";
    default:
        return "not (" + limit() + ") and " + placed + " != a";
    }
}

std::vector<Condition> conditions(const Cockpit& cockpit, int count, bool readsOneNumber) {
    std::mt19937 random(3);
    std::vector<Condition> all;
    for (int i = 0; i < count; ++i) {
        const std::string number = readsOneNumber ? "s0" : "s" + std::to_string(random() % 20);
        all.push_back(cockpit.compile(conditionText(random, i, number, "s" + std::to_string(20 + random() % 12),
                                                    "s" + std::to_string(32 + random() % 8))));
    }
    return all;
}

struct Cost {
    double time = 0.0;    ///< ns a sample
    double changes = 0.0; ///< of truth, a sample
};

/// One pass over the samples with these conditions watched.
Cost watch(const Cockpit& cockpit, const std::vector<BenchSample>& samples, const std::vector<Condition>& all,
           MarginUse margin) {
    Monitor monitor(cockpit.table);
    for (std::size_t i = 0; i < cockpit.table.size(); ++i)
        monitor.set(SignalId{static_cast<std::uint32_t>(i)}, Value::number(0));
    std::vector<TruthChange> changes;
    monitor.settle(samples.front().time - kPeriod, changes);
    for (const Condition& condition : all)
        monitor.add(condition, margin);
    std::size_t count = 0;
    const double begin = used();
    for (const BenchSample& sample : samples) {
        monitor.set(sample.signal, sample.value);
        monitor.settle(sample.time, changes);
        count += changes.size();
        changes.clear();
    }
    return {(used() - begin) / kSamples, static_cast<double>(count) / kSamples};
}

volatile double g_sink = 0.0; // keeps the reading

double readingPass(const std::vector<BenchSample>& samples) {
    const double begin = used();
    double sum = 0.0;
    for (const BenchSample& sample : samples)
        sum += sample.value.number() + static_cast<double>(sample.time.count()) +
               static_cast<double>(indexOf(sample.signal));
    g_sink = sum;
    return (used() - begin) / kSamples;
}

void tableOfCounts(const Cockpit& cockpit, const std::string& name, const std::vector<BenchSample>& samples,
                   bool readsOneNumber, Aims& aims) {
    const std::vector<int> counts = {1, 10, 100, 1000, 10'000};
    std::vector<double> changes(counts.size());
    std::vector<std::function<double()>> rows{[&] {
        return readingPass(samples);
    }};
    for (std::size_t i = 0; i < counts.size(); ++i)
        rows.emplace_back([&, i, all = conditions(cockpit, counts[i], readsOneNumber)] {
            const Cost cost = watch(cockpit, samples, all, MarginUse::NotWanted);
            changes[i] = cost.changes;
            return cost.time;
        });
    const std::vector<double> times = medians(inTurn(rows));
    std::printf("%s; only reading it: %.2f ns a sample\n", name.c_str(), times[0]);
    std::printf("%12s %14s %10s %16s\n", "conditions", "ns a sample", "x reading", "changes a sample");
    for (std::size_t i = 0; i < counts.size(); ++i)
        std::printf("%12d %14.1f %10.1f %16.4f\n", counts[i], times[i + 1], times[i + 1] / times[0], changes[i]);
    std::printf("\n");
    aims.add("1,000 conditions, " + name, times[4], 100.0, "ns");
    aims.add("one condition beside only reading, " + name, times[1] / times[0], 25.0, "x");
}

/// Each form with windows from 0.1 s to 600 s, and how much the slowest window costs beside the fastest.
void tableOfWindows(const Cockpit& cockpit, const std::vector<BenchSample>& samples, Aims& aims) {
    std::printf("one condition, by its window, on the moving lever: ns a sample\n%-34s %7s", "", "margin");
    const std::vector<std::string> windows = {"0.1 s", "1 s", "10 s", "60 s", "600 s"};
    for (const std::string& window : windows)
        std::printf(" %8s", window.c_str());
    std::printf(" %9s\n", "worst/best");
    for (const char* form : {"once(s0 > 50 %, W)", "historically(s0 > 50 %, W)", "once(s0 > 50 %, 0.05 s .. W)",
                             "since(s0 > 20 %, s0 > 50 %, W)", "held(s0 > 50 %, W)"}) {
        for (const MarginUse margin : {MarginUse::NotWanted, MarginUse::Wanted}) {
            std::vector<std::function<double()>> rows;
            for (const std::string& window : windows) {
                std::string text = form;
                text.replace(text.find('W'), 1, window);
                rows.emplace_back([&, margin, all = std::vector<Condition>{cockpit.compile(text)}] {
                    return watch(cockpit, samples, all, margin).time;
                });
            }
            const std::vector<std::vector<double>> turns = inTurn(rows);
            const bool hasMargin = margin == MarginUse::Wanted;
            std::printf("%-34s %7s", form, hasMargin ? "yes" : "no");
            for (const double time : medians(turns))
                std::printf(" %8.1f", time);
            const double growth = growthOf(turns);
            std::printf(" %9.2f\n", growth);
            aims.add(std::string(form) + (hasMargin ? " with its margin" : "") + ", slowest window beside fastest",
                     growth, 1.3, "x");
        }
    }
    std::printf("\n");
}

void tableOfMemory(const Cockpit& cockpit, Aims& aims) {
    std::printf("memory after 1,000,000 samples of a toggling switch or a moving lever\n");
    std::vector<BenchSample> toggling;
    for (int i = 0; i < kSamples; ++i)
        toggling.push_back({SignalId{20}, i * kPeriod, Value::onOff(i % 2 == 0)});
    const std::vector<BenchSample> moving = movingTrace();
    for (const char* text : {"once(s20, 0.5 s .. 600 s)", "once(s20, 599.9 s .. 600 s)",
                             "since(not s21, s20, 0.5 s .. 600 s)", "once(s0 > 50 %, 0.5 s .. 600 s)"}) {
        const Condition condition = cockpit.compile(text);
        const std::size_t before = mallinfo2().uordblks + mallinfo2().hblkhd;
        Monitor monitor(cockpit.table);
        monitor.add(condition);
        std::vector<TruthChange> changes;
        for (const BenchSample& sample : std::string(text).find("s20") != std::string::npos ? toggling : moving) {
            monitor.set(sample.signal, sample.value);
            monitor.settle(sample.time, changes);
            changes.clear();
        }
        const std::size_t after = mallinfo2().uordblks + mallinfo2().hblkhd;
        const double megabytes = static_cast<double>(after - before) / 1e6;
        std::printf("%-40s %10.3f MB\n", text, megabytes);
        aims.add("memory of " + std::string(text), megabytes, 64.0, "MB");
    }
    std::printf("\n");
}

} // namespace

int main() {
    const Cockpit cockpit;
    Aims aims;
    std::printf("1,000,000 samples at 1 kHz, one at a time; medians of %d passes, rows in turn, processor time\n\n",
                kPasses);
    tableOfCounts(cockpit, "1 % of the samples change", stillTrace(cockpit), false, aims);
    const std::vector<BenchSample> moving = movingTrace();
    tableOfCounts(cockpit, "one number always changes", moving, true, aims);
    tableOfWindows(cockpit, moving, aims);
    tableOfMemory(cockpit, aims);
    aims.print();
    return 0;
}
