#pragma once

#include <string>
#include <vector>

#include "bench/evidence.h"
#include "bench/results.h"

namespace flowhand {

// What was measured, read back from evidence.

/// All findings of a stored result, as results.h writes them; those of each part after another. What cannot be read is
/// left out, and what followed for the filters: it was of the rig file as it was then.
[[nodiscard]] std::vector<Finding> findingsIn(const std::string& result);

/// Of a record of kind `calibration`; findings apart. Error `damaged-evidence`.
[[nodiscard]] Result<std::vector<AxisCalibration>> calibrationOf(const EvidenceRecord& record);
/// Of a record of kind `health`; findings apart. Error `damaged-evidence`.
[[nodiscard]] Result<ControlHealth> healthOf(const EvidenceRecord& record);
/// Of a record of kind `repeat`: how far its worst place was from the rig file, in % of the travel. Error
/// `damaged-evidence`.
[[nodiscard]] Result<double> repeatErrorOf(const EvidenceRecord& record);

} // namespace flowhand
