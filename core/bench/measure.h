#pragma once

#include <string>
#include <vector>

#include "bench/benchcontrol.h"
#include "bench/evidence.h"
#include "bench/results.h"

namespace flowhand {

/// What calibrating one control came to.
struct ControlCalibration {
    std::vector<AxisCalibration> axes;
    std::vector<RigKey> keys; ///< for the rig file
    std::vector<Finding> findings;
};

/// From what its device sent. Errors: those of calibrateAxis(), `unknown-input`, `not-calibrated` (a wiring that has no
/// counts to measure).
[[nodiscard]] Result<ControlCalibration> calibrateControl(const BenchControl& control, const DeviceSeries& device);

/// `isOperated`: somebody was asked to work it.
[[nodiscard]] Result<ControlHealth> measureControl(const BenchControl& control, const DeviceSeries& device,
                                                   bool isOperated);

/// A record of what was measured, with its raw data; `fingerprint` is the control's as the result leaves it.
[[nodiscard]] EvidenceRecord evidenceOf(std::string_view kind, const BenchControl& control,
                                        const ControlFingerprint& fingerprint, const std::string& deviceName,
                                        const DeviceSeries& device, Soundness worst, std::string result);

} // namespace flowhand
