#pragma once

#include <optional>
#include <string>
#include <vector>

#include "procedure/flow.h"
#include "session/event.h"

namespace flowhand {

/// Times from and to; open at the end of the run without `to`.
struct Episode {
    Time from{};
    std::optional<Time> to;
};

/// In which each guard was broken, by guard.
[[nodiscard]] std::vector<std::vector<Episode>> guardEpisodes(const Flow& flow, const std::vector<Event>& events);

/// In which the run stood.
struct Hold {
    Episode episode;
    bool isGap = false; ///< a device or feed was lost
    Phrase reason;
};
[[nodiscard]] std::vector<Hold> holdsOf(const std::vector<Event>& events);

/// How much of [from, to] the run stood.
[[nodiscard]] Duration heldIn(const std::vector<Hold>& holds, Time from, Time to);

/// Words that were spoken, over the time that they are counted to take.
struct Call {
    Time from{};
    Time to{};
    int step = -1;
    std::string by; ///< seat, "cockpit" or "ground"
    std::string text;
};
[[nodiscard]] std::vector<Call> callsOf(const std::vector<Event>& events);

} // namespace flowhand
