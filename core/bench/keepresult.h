#pragma once

#include <string>

#include "bench/repeatcheck.h"
#include "procedure/aircraftfile.h"

namespace flowhand {

struct KeptCalibration {
    ControlCalibration calibration;
    EvidenceRecord record;
};

/// Calibrates a control from what its device sent; unless `isDry`, writes the counts into the rig file and the evidence
/// beside it: `rig` is not the file's any more then. Errors: those of calibrateControl(), saveRigFile() and
/// appendEvidence().
[[nodiscard]] Result<KeptCalibration> keepCalibration(const std::string& rigFile, const RigFile& rig,
                                                      const Aircraft& aircraft, const BenchControl& control,
                                                      const DeviceSeries& device, bool isDry);

/// Keeps how a control's places were found again; the rig file stays as it is. Errors: those of appendEvidence().
[[nodiscard]] Status keepRepeatCheck(const std::string& rigFile, const RigFile& rig, const BenchControl& control,
                                     const DeviceSeries& device, const RepeatCheck& check);

/// Keeps what was measured of a control's signal. Errors: those of appendEvidence().
[[nodiscard]] Status keepHealth(const std::string& rigFile, const RigFile& rig, const BenchControl& control,
                                const DeviceSeries& device, const ControlHealth& health);

} // namespace flowhand
