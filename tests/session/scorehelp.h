#pragma once

#include <string>
#include <vector>

#include "procedure/flow.h"
#include "session/score.h"

namespace flowhand::test {

/// A strict list of own steps with these weights, each to be done within 4 s, wholly late after 10 s.
inline Flow listFlow(const std::vector<int>& weights) {
    Flow flow;
    flow.id = "list";
    flow.title = "List";
    for (std::size_t i = 0; i < weights.size(); ++i) {
        Step step;
        step.id = "s" + std::to_string(i + 1);
        step.title = "Step " + std::to_string(i + 1);
        step.seat = step.movedBy = "captain";
        step.weight = weights[i];
        step.within = std::chrono::seconds(4);
        step.late = std::chrono::seconds(10);
        if (i > 0)
            step.after = {i - 1};
        flow.steps.push_back(std::move(step));
    }
    return flow;
}

inline StepResult doneAt(Time due, Time done) {
    StepResult result;
    result.state = StepState::Done;
    result.due = due;
    result.done = done;
    return result;
}

inline StepResult notDone(Time due) {
    StepResult result;
    result.state = StepState::Omitted;
    result.due = due;
    return result;
}

/// A run of a list as done in `order`, each `gap` after the one before and due at its predecessor's end; what is not in
/// `order` is omitted.
inline std::vector<StepResult> runInOrder(const Flow& flow, const std::vector<std::size_t>& order,
                                          const std::vector<Duration>& gaps) {
    std::vector<StepResult> results(flow.steps.size(), notDone(Time{}));
    Time now{};
    for (std::size_t n = 0; n < order.size(); ++n) {
        const Time before = now;
        now += gaps[n];
        results[order[n]] = doneAt(before, now);
    }
    return results;
}

inline std::int64_t ledgerSum(const Score& score) {
    std::int64_t sum = 0;
    for (const LedgerLine& line : score.ledger)
        sum += line.milliPoints;
    return sum;
}

} // namespace flowhand::test
