#pragma once

#include <cstdint>
#include <vector>

#include "bench/axishealth.h"

namespace flowhand {

/// What the steps between neighbouring reports tell of the track under the wiper.
struct TrackSigns {
    std::vector<TrackGap> gaps;
    std::size_t spikes = 0;
    double largestSpike = 0.0; ///< counts
    double smallestSpike = 0.0;
    double largestStep = 0.0; ///< from one report to the next by a hand's movement, in counts
    Duration longestSpike{};
    double fastest = 0.0; ///< counts a second
};

/// `least`: smaller jumps are not looked at, in counts.
[[nodiscard]] TrackSigns trackSignsOf(const Series& series, double least);

/// The largest power of two that all but a hundredth of the values' differences are multiples of.
[[nodiscard]] std::int64_t quantumOf(const std::vector<std::int64_t>& values);

} // namespace flowhand
