#pragma once

#include <optional>
#include <string>
#include <vector>

#include "bench/measure.h"

namespace flowhand {

/// A place that the rig file has, found again.
struct CheckedPlace {
    Phrase name;             ///< "low end", "centre", "gate '12'", "15 deg"
    std::int64_t inFile = 0; ///< its count in the rig file
    Place found;
    double percent = 0.0;        ///< how far `found` is from `inFile`, % of the travel; towards higher counts above 0
    std::optional<double> reads; ///< of a point: what the signal says there now
};

struct RepeatCheck {
    std::vector<CheckedPlace> places;
    std::vector<Finding> findings; ///< one a place, and those of the calibration that was measured
};

/// Measures a control again, as for its calibration, and holds what is found against what the rig file says. Errors:
/// those of calibrateControl().
[[nodiscard]] BenchResult<RepeatCheck> checkControl(const BenchControl& control, const Measurement& measurement);

} // namespace flowhand
