#pragma once

#include <map>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "base/signal.h"
#include "condition/scope.h"

namespace flowhand {

/// How a condition uses signals of which nothing else says what they are: `x` alone is on/off, `x == down` a position,
/// `x < 3 kt` a number.
struct TraceReading {
    std::map<std::string, SignalKind, std::less<>> kinds;   ///< where the condition says it
    std::vector<std::pair<std::string, std::string>> alike; ///< compared with each other
    std::vector<std::string> positions;                     ///< words in it that may be names of positions
};

/// Of `condition`, in which `signals` are names of signals and other words positions. Of one that cannot be read:
/// nothing.
[[nodiscard]] TraceReading readingOf(std::string_view condition, const std::vector<std::string>& signals,
                                     const std::map<std::string, AircraftValue, std::less<>>& aircraft);

} // namespace flowhand
