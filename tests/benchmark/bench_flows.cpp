// What loading the shipped flows costs: reading the files, and from memory everything else, conditions above all.
// Medians of passes that take turns, in processor time of this thread. Aimed at: compiling all of them in 20 ms.
//
// Build it optimised. It needs no arguments.

#include <algorithm>
#include <cstdio>
#include <ctime>
#include <string>
#include <vector>

#include "procedure/library.h"

using namespace flowhand;

namespace {

constexpr int kPasses = 31;

double usedMillis() {
    timespec time{};
    clock_gettime(CLOCK_THREAD_CPUTIME_ID, &time);
    return static_cast<double>(time.tv_sec) * 1e3 + static_cast<double>(time.tv_nsec) / 1e6;
}

template <class Work>
double millisOf(Work work) {
    const double begin = usedMillis();
    work();
    return usedMillis() - begin;
}

double median(std::vector<double> times) {
    std::sort(times.begin(), times.end());
    return times[times.size() / 2];
}

/// Every condition of a flow, as written.
std::vector<std::string> conditionsOf(const Flow& flow) {
    std::vector<std::string> texts;
    const auto add = [&](const std::optional<PlacedCondition>& condition) {
        if (condition)
            texts.push_back(condition->condition.text());
    };
    for (const Step& step : flow.steps)
        for (const auto* condition : {&step.when, &step.done, &step.expires, &step.suspend})
            add(*condition);
    for (const Guard& guard : flow.guards)
        add(guard.never);
    for (const Outcome& outcome : flow.outcomes)
        add(outcome.when);
    return texts;
}

} // namespace

int main() {
    Problems problems;
    const std::vector<AircraftFolder> library = loadLibrary(PROCEDURES, problems);
    std::vector<double> loading;
    std::vector<double> flows;
    std::vector<double> conditions;
    std::size_t flowCount = 0;
    std::size_t conditionCount = 0;
    for (int pass = 0; pass < kPasses; ++pass) {
        Problems ignored;
        loading.push_back(millisOf([&] {
            (void)loadLibrary(PROCEDURES, ignored);
        }));
        flowCount = conditionCount = 0;
        flows.push_back(millisOf([&] {
            for (const AircraftFolder& folder : library)
                for (const Flow& flow : folder.flows)
                    flowCount += parseFlow(flow.source, flow.file, *folder.aircraft, ignored) ? 1 : 0;
        }));
        conditions.push_back(millisOf([&] {
            for (const AircraftFolder& folder : library)
                for (const Flow& flow : folder.flows)
                    for (const std::string& text : conditionsOf(flow)) {
                        std::vector<ConditionProblem> found;
                        conditionCount += Condition::compile(text, folder.aircraft->scope(), found) ? 1 : 0;
                    }
        }));
    }
    std::printf("medians of %d passes in turn, processor time\n", kPasses);
    std::printf("%-52s %8.2f ms\n", "library: files, aircraft, flows", median(loading));
    std::printf("%zu flows from memory: text, structure, conditions%*s %8.2f ms   at most 20: %s\n", flowCount, 3, "",
                median(flows), median(flows) <= 20.0 ? "met" : "MISSED");
    std::printf("their %zu conditions alone%*s %8.2f ms\n", conditionCount, 26, "", median(conditions));
    return flowCount > 0 ? 0 : 1;
}
