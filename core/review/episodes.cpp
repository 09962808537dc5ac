#include "review/episodes.h"

#include <algorithm>

#include "session/partnerpace.h"

namespace flowhand {

std::vector<std::vector<Episode>> guardEpisodes(const Flow& flow, const std::vector<Event>& events) {
    std::vector<std::vector<Episode>> all(flow.guards.size());
    for (const Event& event : events) {
        if (event.guard < 0 || static_cast<std::size_t>(event.guard) >= all.size())
            continue;
        std::vector<Episode>& episodes = all[static_cast<std::size_t>(event.guard)];
        if (event.kind == EventKind::GuardBroken)
            episodes.push_back({event.time, std::nullopt});
        else if (event.kind == EventKind::GuardOver && !episodes.empty())
            episodes.back().to = event.time;
    }
    return all;
}

std::vector<Hold> holdsOf(const std::vector<Event>& events) {
    std::vector<Hold> holds;
    const auto isOpen = [&] {
        return !holds.empty() && !holds.back().episode.to;
    };
    for (const Event& event : events) {
        const bool isHold = event.kind == EventKind::Held || event.kind == EventKind::Gap;
        const bool isEnd = event.kind == EventKind::Resumed || event.kind == EventKind::RunEnded;
        if (isHold && !isOpen())
            holds.push_back({{event.time, std::nullopt}, event.kind == EventKind::Gap, event.text});
        else if (isEnd && isOpen())
            holds.back().episode.to = event.time;
    }
    return holds;
}

Duration heldIn(const std::vector<Hold>& holds, Time from, Time to) {
    Duration held{};
    for (const Hold& hold : holds)
        held +=
            std::max(std::min(hold.episode.to.value_or(kForever), to) - std::max(hold.episode.from, from), Duration{});
    return held;
}

std::vector<Call> callsOf(const std::vector<Event>& events) {
    std::vector<Call> calls;
    for (const Event& event : events)
        if (event.kind == EventKind::WordsBegan)
            calls.push_back({event.time, event.time + speakingTime(letterCount(event.text.text())), event.step,
                             event.by, event.text.text()});
    return calls;
}

} // namespace flowhand
