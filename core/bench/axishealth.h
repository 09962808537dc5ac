#pragma once

#include <cstdint>
#include <optional>
#include <vector>

#include "bench/dwells.h"
#include "bench/finding.h"

namespace flowhand {

/// What is known of an axis before it is measured.
struct AxisHealthAsk {
    bool hasCentre = false;     ///< springs back to a centre: its returns tell hysteresis and return error
    std::size_t gateCount = 0;  ///< rests in so many gates: they tell hysteresis; 0: none
    std::vector<double> values; ///< true values of the places that were held, rising with the counts; empty: none
};

/// A stretch of the track that the wiper jumps over, in counts.
struct TrackGap {
    std::int64_t from = 0;
    std::int64_t to = 0;
    std::size_t passes = 0; ///< how often it jumped there
};

/// Measured on every report, before any filter. Counts unless said.
struct AxisHealth {
    double sigma = 0.0; ///< at rest
    double peakToPeak = 0.0;
    double effectiveBits = 0.0; ///< of the converter's whole range
    double noiseFreeBits = 0.0;
    double travel = 0.0;             ///< from the 0.5 to the 99.5 percentile
    double share = 0.0;              ///< of the converter's range, 0 .. 1
    std::optional<double> drift;     ///< over the longest rest of 8 s or more
    Duration restLength{};           ///< that rest
    std::int64_t quantum = 1;        ///< its counts are multiples of this: the rest of the bits says nothing
    std::optional<double> deadCodes; ///< share of the counts of its travel that never come, 0 .. 1; of a slow sweep
    std::vector<TrackGap> gaps;
    std::size_t spikes = 0;
    double largestSpike = 0.0;
    double smallestSpike = 0.0;
    double largestStep = 0.0; ///< from one report to the next by a hand's movement
    Duration longestSpike{};
    double fastest = 0.0;              ///< counts a second, the 95th percentile while it moved
    std::optional<double> hysteresis;  ///< a place come to from above less from below
    std::optional<double> returnError; ///< the furthest return from the middle of all
    std::optional<double> linearity;   ///< independent linearity, % of the converter's range
    std::vector<Finding> findings;
};

[[nodiscard]] AxisHealth measureAxis(const Series& series, const AxisHealthAsk& ask);

} // namespace flowhand
