// What watching conditions costs. Prints a table; every time is the median of several passes over the same samples, and
// stands beside that of only reading them from memory in the same run.
//
// Build it optimised. It needs no arguments.

#include <algorithm>
#include <chrono>
#include <cmath>
#include <cstdio>
#include <malloc.h>
#include <map>
#include <random>
#include <string>
#include <vector>

#include "condition/monitor.h"

using namespace flowhand;

namespace {

constexpr int kSamples = 1'000'000;
constexpr int kPasses = 5;
constexpr Duration kPeriod = std::chrono::milliseconds(1);

struct BenchSample {
    SignalId signal = kNoSignal;
    Time time{};
    Value value;
};

double nanosecondsASample(std::chrono::steady_clock::duration duration) {
    return std::chrono::duration<double, std::nano>(duration).count() / kSamples;
}

template <class Pass>
double median(Pass pass) {
    std::vector<double> times;
    for (int i = 0; i < kPasses; ++i)
        times.push_back(pass());
    std::sort(times.begin(), times.end());
    return times[kPasses / 2];
}

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

Cost watch(const Cockpit& cockpit, const std::vector<BenchSample>& samples, const std::vector<Condition>& all,
           MarginUse margin) {
    Cost cost;
    cost.time = median([&] {
        Monitor monitor(cockpit.table);
        for (std::size_t i = 0; i < cockpit.table.size(); ++i)
            monitor.set(SignalId{static_cast<std::uint32_t>(i)}, Value::number(0));
        std::vector<TruthChange> changes;
        monitor.settle(samples.front().time - kPeriod, changes);
        for (const Condition& condition : all)
            monitor.add(condition, margin);
        std::size_t count = 0;
        const auto begin = std::chrono::steady_clock::now();
        for (const BenchSample& sample : samples) {
            monitor.set(sample.signal, sample.value);
            monitor.settle(sample.time, changes);
            count += changes.size();
            changes.clear();
        }
        const auto end = std::chrono::steady_clock::now();
        cost.changes = static_cast<double>(count) / kSamples;
        return nanosecondsASample(end - begin);
    });
    return cost;
}

volatile double g_sink = 0.0; // keeps the reading

double floorOf(const std::vector<BenchSample>& samples) {
    return median([&] {
        const auto begin = std::chrono::steady_clock::now();
        double sum = 0.0;
        for (const BenchSample& sample : samples)
            sum += sample.value.number() + static_cast<double>(sample.time.count()) +
                   static_cast<double>(indexOf(sample.signal));
        const auto end = std::chrono::steady_clock::now();
        g_sink = sum;
        return nanosecondsASample(end - begin);
    });
}

void tableOfCounts(const Cockpit& cockpit, const char* name, const std::vector<BenchSample>& samples,
                   bool readsOneNumber) {
    const double floor = floorOf(samples);
    std::printf("%s; only reading it: %.2f ns a sample\n", name, floor);
    std::printf("%12s %14s %10s %16s\n", "conditions", "ns a sample", "x reading", "changes a sample");
    for (const int count : {1, 10, 100, 1000, 10'000}) {
        const Cost cost = watch(cockpit, samples, conditions(cockpit, count, readsOneNumber), MarginUse::NotWanted);
        std::printf("%12d %14.1f %10.1f %16.4f\n", count, cost.time, cost.time / floor, cost.changes);
    }
    std::printf("\n");
}

/// Each form with windows from 0.1 s to 600 s, and how much the slowest window costs beside the fastest.
void tableOfWindows(const Cockpit& cockpit, const std::vector<BenchSample>& samples) {
    std::printf("one condition, by its window, on the moving lever: ns a sample\n%-34s %7s", "", "margin");
    const std::vector<std::string> windows = {"0.1 s", "1 s", "10 s", "60 s", "600 s"};
    for (const std::string& window : windows)
        std::printf(" %8s", window.c_str());
    std::printf(" %9s\n", "worst/best");
    for (const char* form : {"once(s0 > 50 %, W)", "historically(s0 > 50 %, W)", "once(s0 > 50 %, 0.05 s .. W)",
                             "since(s0 > 20 %, s0 > 50 %, W)", "held(s0 > 50 %, W)"}) {
        for (const MarginUse margin : {MarginUse::NotWanted, MarginUse::Wanted}) {
            std::printf("%-34s %7s", form, margin == MarginUse::Wanted ? "yes" : "no");
            double best = 1e9;
            double worst = 0.0;
            for (const std::string& window : windows) {
                std::string text = form;
                text.replace(text.find('W'), 1, window);
                const double time = watch(cockpit, samples, {cockpit.compile(text)}, margin).time;
                best = std::min(best, time);
                worst = std::max(worst, time);
                std::printf(" %8.1f", time);
            }
            std::printf(" %9.2f\n", worst / best);
        }
    }
    std::printf("\n");
}

void tableOfMemory(const Cockpit& cockpit) {
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
        std::printf("%-40s %10.3f MB\n", text, static_cast<double>(after - before) / 1e6);
    }
    std::printf("\n");
}

void compiling(const Cockpit& cockpit) {
    constexpr int kCount = 300;
    const double time = median([&] {
        const auto begin = std::chrono::steady_clock::now();
        const std::vector<Condition> all = conditions(cockpit, kCount, false);
        return std::chrono::duration<double, std::milli>(std::chrono::steady_clock::now() - begin).count();
    });
    std::printf("compiling %d conditions: %.2f ms\n", kCount, time);
}

} // namespace

int main() {
    const Cockpit cockpit;
    std::printf("1,000,000 samples at 1 kHz, one at a time; medians of %d passes\n\n", kPasses);
    tableOfCounts(cockpit, "1 % of the samples change, 40 signals", stillTrace(cockpit), false);
    const std::vector<BenchSample> moving = movingTrace();
    tableOfCounts(cockpit, "one number changes at every sample, and every condition reads it", moving, true);
    tableOfWindows(cockpit, moving);
    tableOfMemory(cockpit);
    compiling(cockpit);
    return 0;
}
