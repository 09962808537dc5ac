#include "bench/keepresult.h"

#include "rig/rigedit.h"

namespace flowhand {

namespace {

const std::string& deviceNameOf(const RigFile& rig, const BenchControl& control) {
    return rig.devices[control.control->inputs().front().device].name;
}

/// Writes the keys into the file; the control's fingerprint as it is calibrated then.
Result<ControlFingerprint> writeKeys(const std::string& rigFile, const RigFile& rig, const Aircraft& aircraft,
                                     std::size_t control, const std::vector<RigKey>& keys) {
    const Result<std::string> source = withControlKeys(rig.source, control, keys);
    if (!source)
        return tl::unexpected<Error>(source.error());
    const std::size_t controls = aircraft.controls.size();
    if (const Status saved = saveRigFile(rigFile, *source, aircraft.signals, controls); !saved)
        return tl::unexpected<Error>(saved.error());
    Problems problems;
    const std::optional<RigFile> calibrated = parseRigFile(*source, rigFile, aircraft.signals, controls, problems);
    if (!calibrated)
        return tl::unexpected<Error>(problems.firstError());
    const Result<std::vector<ControlFingerprint>> fingerprints = fingerprintsOf(*calibrated, aircraft.signals);
    if (!fingerprints)
        return tl::unexpected<Error>(fingerprints.error());
    return (*fingerprints)[control];
}

} // namespace

Result<KeptCalibration> keepCalibration(const std::string& rigFile, const RigFile& rig, const Aircraft& aircraft,
                                        const BenchControl& control, const DeviceSeries& device, bool isDry) {
    Result<ControlCalibration> calibration = calibrateControl(control, device);
    if (!calibration)
        return tl::unexpected<Error>(calibration.error());
    ControlFingerprint fingerprint = control.fingerprint;
    if (!isDry) {
        Result<ControlFingerprint> written = writeKeys(rigFile, rig, aircraft, control.index, calibration->keys);
        if (!written)
            return tl::unexpected<Error>(written.error());
        fingerprint = std::move(*written);
    }
    EvidenceRecord record = evidenceOf(kCalibrationEvidence, control, fingerprint, deviceNameOf(rig, control), device,
                                       worstOf(calibration->findings), calibrationJson(calibration->axes));
    if (!isDry)
        if (const Status kept = appendEvidence(evidenceFileOf(rigFile), record); !kept)
            return tl::unexpected<Error>(kept.error());
    return KeptCalibration{std::move(*calibration), std::move(record)};
}

Status keepRepeatCheck(const std::string& rigFile, const RigFile& rig, const BenchControl& control,
                       const DeviceSeries& device, const RepeatCheck& check) {
    return appendEvidence(evidenceFileOf(rigFile),
                          evidenceOf(kRepeatEvidence, control, control.fingerprint, deviceNameOf(rig, control), device,
                                     worstOf(check.findings), repeatCheckJson(check)));
}

Status keepHealth(const std::string& rigFile, const RigFile& rig, const BenchControl& control,
                  const DeviceSeries& device, const ControlHealth& health) {
    return appendEvidence(evidenceFileOf(rigFile),
                          evidenceOf(kHealthEvidence, control, control.fingerprint, deviceNameOf(rig, control), device,
                                     worstOf(health.findings()), healthJson(health)));
}

} // namespace flowhand
