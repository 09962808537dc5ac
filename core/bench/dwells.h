#pragma once

#include <cstdint>
#include <vector>

#include "bench/series.h"

namespace flowhand {

/// From which side a control came to where it rests, in raw counts.
enum class Approach : std::int8_t { Below = 1, Above = -1, Unknown = 0 };

/// A stretch in which a control rested.
struct Dwell {
    Time begin{};
    Time end{};
    double at = 0.0; ///< median
    Approach approach = Approach::Unknown;
    double cameFrom = 0.0;         ///< where it rested or turned before, in counts
    std::vector<double> residuals; ///< of every report but those beside a movement: what it said less `at`

    [[nodiscard]] Duration length() const { return end - begin; }
};

/// An axis's series cut into rests and movements.
struct Resting {
    std::vector<Dwell> dwells;
    double sigma = 0.0; ///< noise at rest, over all dwells and without spikes; in counts
    double low = 0.0;   ///< 0.5 and 99.5 percentile of all reports
    double high = 0.0;
    double tolerance = 0.0; ///< how far it may wander in one dwell, in counts
};

/// Shorter rests are pauses in a movement.
inline constexpr Duration kLeastDwell = std::chrono::milliseconds(400);

/// Their standard deviation without spikes, which are no noise: what lies beyond six robust deviations (dwells.cpp).
[[nodiscard]] double restSigma(std::vector<double> residuals);

/// Medians over blocks of 50 ms, so that spikes neither end nor move a dwell.
[[nodiscard]] Resting restingOf(const Series& series);

} // namespace flowhand
