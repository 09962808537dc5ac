#pragma once

#include <string>

#include "bench/filteradvice.h"
#include "bench/repeatcheck.h"
#include "procedure/aircraftfile.h"

namespace flowhand {

struct KeptCalibration {
    ControlCalibration calibration;
    EvidenceRecord record;
};

/// Calibrates a control from what its devices sent; unless `isDry`, writes the counts into the rig file and the
/// evidence beside it: `rig` is not the file's any more then. Errors: those of calibrateControl(), saveRigFile() and
/// appendEvidence().
[[nodiscard]] BenchResult<KeptCalibration> keepCalibration(const std::string& rigFile, const RigFile& rig,
                                                           const Aircraft& aircraft, const BenchControl& control,
                                                           const Measurement& measurement, bool isDry);

/// Keeps how a control's places were found again; the rig file stays as it is. Errors: those of appendEvidence().
[[nodiscard]] Status keepRepeatCheck(const std::string& rigFile, const RigFile& rig, const BenchControl& control,
                                     const Measurement& measurement, const RepeatCheck& check);

/// Keeps what was measured of a control's signal. Errors: those of appendEvidence().
[[nodiscard]] Status keepHealth(const std::string& rigFile, const RigFile& rig, const BenchControl& control,
                                const Measurement& measurement, const ControlHealth& health,
                                const FilterAdvice& filters);

/// What to change in the rig file of one control.
struct ControlKeys {
    std::size_t control = 0; ///< index into RigFile::controls
    std::vector<RigKey> keys;
};
/// Writes them into the rig file; its text as it is then. Errors: those of withControlKeys() and saveRigFile().
[[nodiscard]] Result<std::string> saveKeys(const std::string& rigFile, const RigFile& rig, const Aircraft& aircraft,
                                           const std::vector<ControlKeys>& changes);

} // namespace flowhand
