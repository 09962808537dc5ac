#include "report/checksheet.h"

#include <algorithm>
#include <chrono>
#include <utility>

#include "base/textfile.h"
#include "base/valuewords.h"
#include "bench/measurednoise.h"

namespace flowhand {

namespace {

Result<SheetControl> controlOf(const BenchControl& bench, const std::vector<Reach>& reaches,
                               const std::vector<EvidenceRecord>& evidence) {
    SheetControl sheet;
    sheet.name = bench.control->name();
    sheet.signals = bench.control->signals();
    for (const SignalId id : sheet.signals) {
        sheet.sigmas.push_back(reaches[indexOf(id)].sigma);
        sheet.noiseDate = reaches[indexOf(id)].measured;
    }
    const FoundEvidence calibration = findEvidence(evidence, kCalibrationEvidence, bench.fingerprint);
    sheet.isCalibrated = calibration.state == EvidenceState::Current && calibration.record->isGood;
    if (sheet.isCalibrated)
        sheet.proof = Proof::Calibrated;
    Result<SheetMeasurements> measurements = sheetMeasurementsOf(bench, evidence);
    if (!measurements)
        return tl::unexpected<Error>(measurements.error());
    sheet.measurements = std::move(*measurements);
    return sheet;
}

/// A split lever's walk shares a record, so signals are matched by name when they are shown.
Status addWalk(SheetControl& sheet, const ControlFingerprint& fingerprint,
               const std::vector<EvidenceRecord>& evidence) {
    const FoundEvidence walk = findEvidence(evidence, kWalkEvidence, fingerprint);
    if (walk.state == EvidenceState::None)
        return {};
    Result<WalkRecord> record = walkRecordOf(*walk.record);
    if (!record)
        return tl::unexpected<Error>(record.error());
    sheet.walk = std::move(*record);
    sheet.walked = dateText(walk.record->unixSeconds);
    sheet.isStale = walk.state == EvidenceState::Stale;
    sheet.isConfirmed = walk.record->isGood;
    if (sheet.isConfirmed && !sheet.isStale)
        sheet.proof = Proof::SeenWorking;
    return {};
}

} // namespace

Result<CheckSheet> checkSheetOf(RigFile& rig, const std::string& rigFile, const Aircraft& aircraft,
                                const std::vector<EvidenceRecord>& evidence, std::int64_t unixSeconds) {
    const Result<std::vector<BenchControl>> controls = benchControlsOf(rig, aircraft.signals);
    if (!controls)
        return tl::unexpected<Error>(controls.error());
    std::vector<Reach> reaches = reachesOf(rig, aircraft.signals, aircraft.controls.size());
    takeMeasuredNoise(reaches, *controls, evidence);
    CheckSheet sheet;
    sheet.rigTitle = rig.title;
    sheet.rigFile = rigFile;
    sheet.aircraftTitle = aircraft.title;
    sheet.unixSeconds = unixSeconds;
    sheet.tolerances = rig.tolerances;
    sheet.remarks = englishOf(rig.remarks);
    for (const BenchControl& bench : *controls) {
        Result<SheetControl> control = controlOf(bench, reaches, evidence);
        if (!control)
            return tl::unexpected<Error>(control.error());
        control->inputs = inputsText(*bench.control, rig.devices);
        if (const Status status = addWalk(*control, bench.fingerprint, evidence); !status)
            return tl::unexpected<Error>(status.error());
        sheet.controls.push_back(std::move(*control));
    }
    return sheet;
}

std::size_t CheckSheet::confirmedCount() const {
    return static_cast<std::size_t>(std::count_if(controls.begin(), controls.end(), [](const SheetControl& control) {
        return control.proof == Proof::SeenWorking;
    }));
}

Result<CheckSheet> saveCheckSheet(const std::string& rigFile, const Aircraft& aircraft, const std::string& outFile,
                                  Problems& problems) {
    Result<std::string> source = readFile(rigFile);
    if (!source)
        return tl::unexpected<Error>(source.error());
    std::optional<RigFile> rig =
        parseRigFile(std::move(*source), rigFile, aircraft.signals, aircraft.controls.size(), problems);
    if (!rig)
        return tl::unexpected<Error>(problems.firstError());
    const Result<std::vector<EvidenceRecord>> evidence = readEvidence(evidenceFileOf(rigFile), problems);
    if (!evidence)
        return tl::unexpected<Error>(evidence.error());
    const auto wall = std::chrono::system_clock::now().time_since_epoch();
    Result<CheckSheet> sheet = checkSheetOf(*rig, rigFile, aircraft, *evidence,
                                            std::chrono::duration_cast<std::chrono::seconds>(wall).count());
    if (!sheet)
        return sheet;
    if (const Status written = writeFile(outFile, checkSheetHtml(*sheet, aircraft.signals)); !written)
        return tl::unexpected<Error>(written.error());
    return sheet;
}

} // namespace flowhand
