#pragma once

#include <optional>
#include <string>
#include <vector>

#include "bench/benchcontrol.h"
#include "bench/evidence.h"
#include "bench/results.h"

namespace flowhand {

/// How often values fell into bins of equal width, from `low` to `high`.
struct SheetHistogram {
    double low = 0.0;
    double high = 0.0;
    std::vector<std::size_t> counts;
};

/// One axis as it was measured last. In counts.
struct SheetAxis {
    std::string name;
    std::optional<AxisCalibration> calibration;
    std::optional<AxisHealth> health;
    SheetHistogram travel; ///< of all reports: where it rested stands out
    SheetHistogram noise;  ///< at rest, less the middle of each rest
};

struct SheetContact {
    std::string name;
    ContactHealth health;
};

/// What evidence holds of one control's calibration and signal health. Stale: its wiring or calibration has changed
/// since; then only the date is told.
struct SheetMeasurements {
    std::string calibrated; ///< date, UTC; empty: never
    bool isCalibrationStale = false;
    std::string measured; ///< date of the signal health
    bool isHealthStale = false;
    std::string repeated;       ///< date of the newest repeat check that holds; empty: none
    double repeatPercent = 0.0; ///< worst place of that check, % of the travel
    std::vector<SheetAxis> axes;
    std::vector<SheetContact> contacts;
    std::vector<SwitchHealth> switches; ///< one at most
    std::vector<std::string> filters;   ///< of the rig file, in words
    std::vector<Finding> cautions;      ///< what was not good

    [[nodiscard]] bool isEmpty() const { return calibrated.empty() && measured.empty(); }
};

/// Errors: `damaged-evidence`.
[[nodiscard]] Result<SheetMeasurements> sheetMeasurementsOf(const BenchControl& control,
                                                            const std::vector<EvidenceRecord>& evidence);

/// Figures, plots and cautions of one control, as a part of a page.
[[nodiscard]] std::string sheetMeasurementsHtml(const SheetMeasurements& measurements);

} // namespace flowhand
