#pragma once

#include <string>

#include "base/phrase.h"
#include "feed/feed.h"
#include "procedure/library.h"

namespace flowhand {

/// How a feed does, in one line: "20 messages/s, clock 12.3 s, delay 4 ms".
[[nodiscard]] Phrase feedText(const FeedStatus& status);

/// What it says now: "Airspeed 82.4 kt, On ground off"; empty: nothing.
[[nodiscard]] std::string feedValues(const FeedStatus& status, const Aircraft& aircraft);

/// What of it could not be taken, by kind; empty: all could.
[[nodiscard]] Phrase feedCounts(const FeedTally& tally);

/// The aircraft with the most motion signals: whose names a feed is tried with where no other is meant. Null when there
/// is none.
[[nodiscard]] const AircraftFolder* talkativeAircraft(const std::vector<AircraftFolder>& library);

} // namespace flowhand
