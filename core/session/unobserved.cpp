#include "session/unobserved.h"

#include <algorithm>

#include "base/names.h"

namespace flowhand {

namespace {

bool holds(const std::vector<SignalId>& list, SignalId id) {
    return std::find(list.begin(), list.end(), id) != list.end();
}

bool readsAny(const Condition& condition, const std::vector<SignalId>& missing) {
    return std::any_of(condition.signals().begin(), condition.signals().end(), [&](SignalId id) {
        return holds(missing, id);
    });
}

} // namespace

std::vector<SignalId> unobservedSignals(const Flow& flow, const Aircraft& aircraft, const std::vector<Value>& values) {
    std::vector<bool> isRead(aircraft.signals.size());
    const auto read = [&](const std::vector<SignalId>& ids) {
        for (const SignalId id : ids)
            isRead[indexOf(id)] = true;
    };
    for (const Step& step : flow.steps) {
        read(step.needs);
        for (const std::optional<PlacedCondition>* condition : {&step.expires, &step.suspend})
            if (*condition)
                read((*condition)->condition.signals());
    }
    for (const Guard& guard : flow.guards)
        read(guard.never.condition.signals());
    for (const Outcome& outcome : flow.outcomes)
        read(outcome.when.condition.signals());
    std::vector<SignalId> missing;
    for (std::size_t i = aircraft.controls.size(); i < isRead.size(); ++i)
        if (isRead[i] && !values[i].isKnown())
            missing.push_back(SignalId(static_cast<std::uint32_t>(i)));
    return missing;
}

std::vector<Phrase> unobservedRemarks(const Flow& flow, const Aircraft& aircraft,
                                      const std::vector<SignalId>& missing) {
    if (missing.empty())
        return {};
    std::vector<std::string> labels;
    std::vector<std::string> steps;
    std::vector<std::string> guards;
    std::vector<std::string> outcomes;
    for (const SignalId id : missing)
        labels.push_back(aircraft.signals[id].label);
    for (const Step& step : flow.steps)
        if (std::any_of(step.needs.begin(), step.needs.end(), [&](SignalId need) {
                return holds(missing, need);
            }))
            steps.push_back(step.title);
    for (const Guard& guard : flow.guards)
        if (readsAny(guard.never.condition, missing))
            guards.push_back(guard.title);
    for (const Outcome& outcome : flow.outcomes)
        if (readsAny(outcome.when.condition, missing))
            outcomes.push_back(outcome.title);
    std::vector<Phrase> remarks{phrase("Nothing tells: {1}.").with(joined(labels, ", "))};
    if (!steps.empty())
        remarks.push_back(
            phrase("{1} of {2} steps cannot be judged without that and are left out: {3}.")
                .with(std::to_string(steps.size()), std::to_string(flow.steps.size()), joined(steps, "; ")));
    if (!guards.empty())
        remarks.push_back(phrase("Not watched without that: {1}.").with(joined(guards, "; ")));
    if (!outcomes.empty())
        remarks.push_back(phrase("Not noticed without that: {1}.").with(joined(outcomes, "; ")));
    return remarks;
}

} // namespace flowhand
