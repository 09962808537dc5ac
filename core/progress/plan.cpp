#include "progress/plan.h"

#include <algorithm>
#include <cmath>
#include <ctime>
#include <utility>

namespace flowhand {

namespace {

/// Whole days since 1970 where the pilot is.
std::int64_t dayOf(std::int64_t unixMillis, std::int64_t aheadMillis) {
    const std::int64_t local = unixMillis + aheadMillis;
    return local / kDayMillis - (local % kDayMillis < 0 ? 1 : 0);
}

Phrase agoText(std::int64_t then, const Moment& now) {
    const int days = -now.daysTo(then);
    return days <= 0   ? phrase("today")
           : days == 1 ? phrase("yesterday")
                       : phrase("{1} days ago").with(std::to_string(days));
}

Phrase aheadText(int days) {
    return days <= 0   ? phrase("today")
           : days == 1 ? phrase("tomorrow")
                       : phrase("in {1} days").with(std::to_string(days));
}

Phrase whyNow(const FlowProgress& flow, const Moment& now) {
    Phrase last = agoText(flow.memory.lastUnixMillis, now);
    if (!flow.memory.isLastPassed)
        return phrase("Its last run, {1}, did not pass: {2}.").with(std::move(last), flow.whyNotPassed);
    const int inTen = static_cast<int>(std::lround(10.0 * flow.memory.strengthAt(now.unixMillis)));
    if (inTen <= 0)
        return phrase("Last flown {1}: by the forgetting model hardly one of 10 flows practised like this would still "
                      "go right.")
            .with(std::move(last));
    return phrase("Last flown {1}: by the forgetting model about {2} of 10 flows practised like this would still go "
                  "right.")
        .with(std::move(last), std::to_string(inTen));
}

bool isDue(const FlowProgress& flow, const Moment& now) {
    return flow.memory.dueUnixMillis() <= now.unixMillis;
}

/// Whether `a` is to be flown before `b`.
bool isSooner(const FlowProgress& a, const FlowProgress& b, const Moment& now) {
    if (a.memory.isLastPassed != b.memory.isLastPassed)
        return !a.memory.isLastPassed;
    if (!a.memory.isLastPassed)
        return a.memory.lastUnixMillis < b.memory.lastUnixMillis;
    return a.memory.strengthAt(now.unixMillis) < b.memory.strengthAt(now.unixMillis);
}

const FlowProgress* newestOf(const std::vector<FlowProgress>& flows) {
    const auto newest = std::max_element(flows.begin(), flows.end(), [](const FlowProgress& a, const FlowProgress& b) {
        return a.memory.lastUnixMillis < b.memory.lastUnixMillis;
    });
    return newest != flows.end() ? &*newest : nullptr;
}

bool isAmong(const std::vector<FlowProgress>& flows, const FlowName& name) {
    return std::any_of(flows.begin(), flows.end(), [&](const FlowProgress& flow) {
        return flow.flow == name;
    });
}

/// The first flow of that kind that was not flown yet, with the one before it in the flight.
bool addNew(const std::vector<FlowProgress>& flows, const std::vector<KnownFlow>& known, bool isAbnormal, Plan& plan) {
    const FlowProgress* const newest = newestOf(flows);
    const KnownFlow* before = nullptr;
    for (const KnownFlow& each : known) {
        const bool isElsewhere = newest != nullptr && each.flow.aircraftFolder != newest->flow.aircraftFolder;
        if (isElsewhere || each.isAbnormal != isAbnormal)
            continue;
        if (!isAmong(flows, each.flow)) {
            Phrase reason = isAbnormal ? phrase("Not flown yet: an abnormal flow, for when the others are known.")
                            : before == nullptr
                                ? phrase("Not flown yet: the flight begins with it.")
                                : phrase("Not flown yet: it follows “{1}” in the flight.").with(before->title);
            PlannedFlow added{each.flow, each.title, std::move(reason)};
            plan.today.push_back(std::move(added));
            return true;
        }
        before = &each;
    }
    return false;
}

/// The days on which one flow falls due, if it is flown and passed on each of them.
void addAhead(const FlowProgress& flow, const Moment& now, std::array<int, kDaysAhead>& ahead) {
    Memory memory = flow.memory;
    for (int day = std::max(now.daysTo(memory.dueUnixMillis()), 0); day < static_cast<int>(kDaysAhead);) {
        ++ahead[static_cast<std::size_t>(day)];
        ++memory.right;
        day += std::max(static_cast<int>(memory.halfLifeDays()), 1);
    }
}

void addLater(const std::vector<const FlowProgress*>& flows, const Moment& now, Plan& plan) {
    const auto soonest = std::min_element(flows.begin(), flows.end(), [](const FlowProgress* a, const FlowProgress* b) {
        return a->memory.dueUnixMillis() < b->memory.dueUnixMillis();
    });
    if (soonest != flows.end())
        plan.later = phrase("Nothing is due. The next is “{1}”, {2}.")
                         .with((*soonest)->title, aheadText(now.daysTo((*soonest)->memory.dueUnixMillis())));
}

} // namespace

int Moment::daysTo(std::int64_t later) const {
    return static_cast<int>(dayOf(later, aheadMillis) - dayOf(unixMillis, aheadMillis));
}

Moment localMoment(std::int64_t unixMillis) {
    const std::time_t time = static_cast<std::time_t>(unixMillis / 1000);
    std::tm parts{};
    localtime_r(&time, &parts);
    return {unixMillis, static_cast<std::int64_t>(parts.tm_gmtoff) * 1000};
}

Plan planOf(const std::vector<FlowProgress>& flows, const std::vector<KnownFlow>& known, const Moment& now) {
    Plan plan;
    std::vector<const FlowProgress*> there, due;
    for (const FlowProgress& flow : flows)
        if (std::any_of(known.begin(), known.end(), [&](const KnownFlow& each) {
                return each.flow == flow.flow;
            }))
            there.push_back(&flow);
    for (const FlowProgress* flow : there) {
        addAhead(*flow, now, plan.ahead);
        if (isDue(*flow, now))
            due.push_back(flow);
    }
    std::stable_sort(due.begin(), due.end(), [&](const FlowProgress* a, const FlowProgress* b) {
        return isSooner(*a, *b, now);
    });
    for (const FlowProgress* flow : due) {
        PlannedFlow added{flow->flow, flow->title, whyNow(*flow, now)};
        plan.today.push_back(std::move(added));
    }
    if (!addNew(flows, known, false, plan))
        (void)addNew(flows, known, true, plan);
    if (plan.today.empty())
        addLater(there, now, plan);
    return plan;
}

} // namespace flowhand
