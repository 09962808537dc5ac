#pragma once

#include <optional>
#include <string>
#include <vector>

#include "bench/measure.h"
#include "bench/stepdemand.h"

namespace flowhand {

/// The filters that follow from what was measured of one control: none where none is needed, and never one that makes
/// it later than its steps allow. With sigma the noise at rest and L the longest spike (both measured before any
/// filter), h the interval of the reports, B the narrowest band that a step judges:
///
///   what          when                       is
///   spike_limit   spikes, all of them        halfway from the fastest hand's step (kFastHand) to the smallest spike;
///                 larger than a hand's step  settle = L + h. Makes nothing late but such a jump, by `settle`
///   median        other spikes               2 L + h: what is shorter than half of it leaves no trace. Late by half
///   smooth        6 sigma > B                h / (2 atanh(r^2)), r = B / (6 sigma): measurednoise.h. Late by as much.
///                                            Longer where the noise is not white: the measured rests are sent through
///                                            it until 6 sigma of what is left fits into B
///   noise         off by a quarter           sigma behind the filters; changes below 3 of it do not travel
///   hysteresis    less than 6 sigma          6 sigma behind the filters, of gates and split axes, if there is room
///   debounce      less than 1.5 times the    1.5 times that, but no longer than the shortest state that was held.
///                 longest bounce             Makes the first edge not late
///
/// Times are in whole milliseconds, rounded up.
struct FilterAdvice {
    Duration delay{};              ///< by which `median` and `smooth` make the control late, as advised
    Duration allowed{};            ///< more is never advised
    double noise = 0.0;            ///< standard deviation at rest behind them, in counts; 0 without an axis
    std::vector<RigKey> keys;      ///< what to change in the rig file; empty: it is right as it is
    std::vector<Finding> findings; ///< Good: right as it is; Caution: to change; Bad: cannot be met by a filter
};

[[nodiscard]] FilterAdvice adviseFilters(const BenchControl& control, const ControlHealth& health,
                                         const Measurement& measurement, const StepDemand& demand);

} // namespace flowhand
