#pragma once

#include <string>
#include <vector>

#include "bench/benchcontrol.h"
#include "bench/evidence.h"
#include "bench/measurement.h"
#include "bench/results.h"

namespace flowhand {

/// What calibrating one control came to.
struct ControlCalibration {
    std::vector<AxisCalibration> axes;
    std::vector<RigKey> keys; ///< for the rig file
    std::vector<Finding> findings;
};

/// The inputs of a control, by their device.
[[nodiscard]] WantedInputs inputsOf(const BenchControl& control);

/// From what its devices sent. Errors: those of calibrateAxis() and rigKeysOf(), `unknown-input`, `not-calibrated` (a
/// wiring that has no counts to measure).
[[nodiscard]] BenchResult<ControlCalibration> calibrateControl(const BenchControl& control,
                                                               const Measurement& measurement);

/// `isOperated`: somebody was asked to work it. Error `unknown-input`.
[[nodiscard]] Result<ControlHealth> measureControl(const BenchControl& control, const Measurement& measurement,
                                                   bool isOperated);

/// Of all devices that were measured; `devices` are the rig's.
[[nodiscard]] DeviceHealths deviceHealthsOf(const Measurement& measurement, const std::vector<DeviceWish>& devices);

/// A record of this control as of now, with nothing in it yet.
[[nodiscard]] EvidenceRecord evidenceAbout(const ControlFingerprint& fingerprint, std::string_view kind);

/// A record of what was measured, with its raw data; `fingerprint` is the control's as the result leaves it, `devices`
/// are the rig's.
[[nodiscard]] EvidenceRecord evidenceOf(std::string_view kind, const BenchControl& control,
                                        const ControlFingerprint& fingerprint, const std::vector<DeviceWish>& devices,
                                        const Measurement& measurement, Soundness worst, std::string result);

} // namespace flowhand
