#pragma once

#include <array>
#include <cstdint>
#include <string>
#include <vector>

#include "progress/flowprogress.h"

namespace flowhand {

/// The time it is, and how far the clock on the wall is ahead of UTC: days begin where the pilot is.
struct Moment {
    std::int64_t unixMillis = 0;
    std::int64_t aheadMillis = 0;

    /// Days from the one that it lies in to that of `later`; 0: the same.
    [[nodiscard]] int daysTo(std::int64_t later) const;
};

/// That time by the clock of where this program runs.
[[nodiscard]] Moment localMoment(std::int64_t unixMillis);

/// A flow that can be flown, in the order of the flight.
struct KnownFlow {
    FlowName flow;
    std::string title;
    bool isAbnormal = false;
};

/// What to practise, and why, in a sentence.
struct PlannedFlow {
    FlowName flow;
    std::string title;
    Phrase reason;
};

inline constexpr std::size_t kDaysAhead = 7;

struct Plan {
    std::vector<PlannedFlow> today; ///< the first is the next to fly; empty: nothing is due
    /// When nothing is due: which flow is the next, and when. Empty: nothing was flown yet and nothing is known.
    Phrase later;
    std::array<int, kDaysAhead> ahead{}; ///< flows due today, tomorrow ..., each flown and passed on its day
};

/// First what did not pass the last time, the longest ago first; then what has come down to one half by the forgetting
/// model, the weakest first; then one flow that was not flown yet: the first of `known`, of the aircraft flown last,
/// normal flows before abnormal ones. Flows that are not in `known` any more are left out.
[[nodiscard]] Plan planOf(const std::vector<FlowProgress>& flows, const std::vector<KnownFlow>& known,
                          const Moment& now);

} // namespace flowhand
