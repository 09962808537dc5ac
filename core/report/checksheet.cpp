#include "report/checksheet.h"

#include <algorithm>
#include <chrono>
#include <utility>

#include "base/textfile.h"

namespace flowhand {

namespace {

SheetControl controlOf(const Control& control, const ControlFingerprint& fingerprint, const std::vector<Reach>& reaches,
                       const std::vector<EvidenceRecord>& evidence) {
    SheetControl sheet;
    sheet.name = control.name();
    sheet.signals = control.signals();
    for (const SignalId id : control.signals())
        sheet.sigmas.push_back(reaches[indexOf(id)].sigma);
    const FoundEvidence calibration = findEvidence(evidence, kCalibrationEvidence, fingerprint);
    if (calibration.state == EvidenceState::Current && calibration.record->isGood) {
        sheet.calibrated = dateText(calibration.record->unixSeconds);
        sheet.proof = Proof::Calibrated;
    }
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
    const auto fingerprints = fingerprintsOf(rig, aircraft.signals);
    if (!fingerprints)
        return tl::unexpected<Error>(fingerprints.error());
    const std::vector<Reach> reaches = reachesOf(rig, aircraft.signals, aircraft.controls.size());
    CheckSheet sheet;
    sheet.rigTitle = rig.title;
    sheet.rigFile = rigFile;
    sheet.aircraftTitle = aircraft.title;
    sheet.unixSeconds = unixSeconds;
    sheet.remarks = rig.remarks;
    for (std::size_t i = 0; i < rig.controls.size(); ++i) {
        SheetControl control = controlOf(*rig.controls[i], (*fingerprints)[i], reaches, evidence);
        control.inputs = inputsText(*rig.controls[i], rig.devices);
        if (const Status status = addWalk(control, (*fingerprints)[i], evidence); !status)
            return tl::unexpected<Error>(status.error());
        if (control.walk)
            sheet.tolerances = control.walk->tolerances;
        sheet.controls.push_back(std::move(control));
    }
    return sheet;
}

Status saveCheckSheet(const std::string& rigFile, const Aircraft& aircraft, const std::string& outFile,
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
    const Result<CheckSheet> sheet = checkSheetOf(*rig, rigFile, aircraft, *evidence,
                                                  std::chrono::duration_cast<std::chrono::seconds>(wall).count());
    if (!sheet)
        return tl::unexpected<Error>(sheet.error());
    return writeFile(outFile, checkSheetHtml(*sheet, aircraft.signals));
}

} // namespace flowhand
