#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "base/problem.h"
#include "bench/coverage.h"
#include "bench/walk.h"
#include "bench/walkevidence.h"
#include "report/sheetmeasurement.h"

namespace flowhand {

/// One control of the rig on the sheet: how it stands, and the walk that holds for it or the last one that did.
struct SheetControl {
    std::string name;
    std::string inputs;
    std::vector<SignalId> signals;
    Proof proof = Proof::Wired;
    bool isCalibrated = false; ///< a good calibration holds for it
    std::string walked;        ///< date of the walk below; empty: none
    bool isStale = false;      ///< wiring or calibration has changed since that walk
    bool isConfirmed = false;  ///< by that walk
    std::optional<WalkRecord> walk;
    std::vector<double> sigmas; ///< of each signal: noise in its unit; 0 where it has none
    std::string noiseDate;      ///< of the measurement that they are from; empty: the rig file says so
    SheetMeasurements measurements;
};

/// Everything that a check sheet says.
struct CheckSheet {
    std::string rigTitle;
    std::string rigFile;
    std::string aircraftTitle;
    std::int64_t unixSeconds = 0; ///< when it was made
    WalkTolerances tolerances;    ///< of the rig file, for the next walk
    std::vector<SheetControl> controls;
    std::vector<std::string> remarks; ///< of the rig: missing interlocks, controls that ask for something

    /// Controls that were seen working as they are now.
    [[nodiscard]] std::size_t confirmedCount() const;
};

/// Of a rig with its evidence. Errors: of the evidence.
[[nodiscard]] Result<CheckSheet> checkSheetOf(RigFile& rig, const std::string& rigFile, const Aircraft& aircraft,
                                              const std::vector<EvidenceRecord>& evidence, std::int64_t unixSeconds);

/// Reads the rig file and its evidence and writes the page into `outFile`, dated now; what is on it. Warnings go to
/// `problems`. Errors: those of both files, of the evidence, `unwritable-file`.
[[nodiscard]] Result<CheckSheet> saveCheckSheet(const std::string& rigFile, const Aircraft& aircraft,
                                                const std::string& outFile, Problems& problems);

/// A page by itself, for the screen and for A4 paper: no script, nothing fetched.
[[nodiscard]] std::string checkSheetHtml(const CheckSheet& sheet, const SignalTable& signals);

} // namespace flowhand
