#include "bench/keepresult.h"

#include "rig/rigedit.h"

namespace flowhand {

namespace {

/// Writes the keys into the file; the control's fingerprint as it is calibrated then.
Result<ControlFingerprint> writeKeys(const std::string& rigFile, const RigFile& rig, const Aircraft& aircraft,
                                     std::size_t control, const std::vector<RigKey>& keys) {
    const Result<std::string> source = saveKeys(rigFile, rig, aircraft, {{control, keys}});
    if (!source)
        return tl::unexpected<Error>(source.error());
    Problems problems;
    const std::optional<RigFile> calibrated =
        parseRigFile(*source, rigFile, aircraft.signals, aircraft.controls.size(), problems);
    if (!calibrated)
        return tl::unexpected<Error>(problems.firstError());
    const Result<std::vector<ControlFingerprint>> fingerprints = fingerprintsOf(*calibrated, aircraft.signals);
    if (!fingerprints)
        return tl::unexpected<Error>(fingerprints.error());
    return (*fingerprints)[control];
}

} // namespace

Result<std::string> saveKeys(const std::string& rigFile, const RigFile& rig, const Aircraft& aircraft,
                             const std::vector<ControlKeys>& changes) {
    std::string source = rig.source;
    for (const ControlKeys& change : changes) {
        Result<std::string> changed = withControlKeys(std::move(source), change.control, change.keys);
        if (!changed)
            return tl::unexpected<Error>(changed.error());
        source = std::move(*changed);
    }
    if (const Status saved = saveRigFile(rigFile, source, aircraft.signals, aircraft.controls.size()); !saved)
        return tl::unexpected<Error>(saved.error());
    return source;
}

BenchResult<KeptCalibration> keepCalibration(const std::string& rigFile, const RigFile& rig, const Aircraft& aircraft,
                                             const BenchControl& control, const Measurement& measurement, bool isDry) {
    BenchResult<ControlCalibration> calibration = calibrateControl(control, measurement);
    if (!calibration)
        return tl::unexpected(calibration.error());
    ControlFingerprint fingerprint = control.fingerprint;
    if (!isDry) {
        Result<ControlFingerprint> written = writeKeys(rigFile, rig, aircraft, control.index, calibration->keys);
        if (!written)
            return tl::unexpected<BenchError>(written.error());
        fingerprint = std::move(*written);
    }
    EvidenceRecord record =
        evidenceOf(kCalibrationEvidence, control, fingerprint, rig.devices, measurement, worstOf(calibration->findings),
                   calibrationJson(calibration->axes, FindingsAs::Record));
    if (!isDry)
        if (const Status kept = appendEvidence(evidenceFileOf(rigFile), record); !kept)
            return tl::unexpected<BenchError>(kept.error());
    return KeptCalibration{std::move(*calibration), std::move(record)};
}

Status keepRepeatCheck(const std::string& rigFile, const RigFile& rig, const BenchControl& control,
                       const Measurement& measurement, const RepeatCheck& check) {
    return appendEvidence(evidenceFileOf(rigFile),
                          evidenceOf(kRepeatEvidence, control, control.fingerprint, rig.devices, measurement,
                                     worstOf(check.findings), repeatCheckJson(check, FindingsAs::Record)));
}

Status keepHealth(const std::string& rigFile, const RigFile& rig, const BenchControl& control,
                  const Measurement& measurement, const ControlHealth& health, const FilterAdvice& filters) {
    return appendEvidence(
        evidenceFileOf(rigFile),
        evidenceOf(kHealthEvidence, control, control.fingerprint, rig.devices, measurement, worstOf(health.findings()),
                   healthJson(health, filters, deviceHealthsOf(measurement, rig.devices), FindingsAs::Record)));
}

} // namespace flowhand
