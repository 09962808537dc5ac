#pragma once

#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "bench/evidence.h"
#include "bench/walk.h"

namespace flowhand {

/// What a walk's record says of one signal; README.md, 'The check walk'.
struct WalkedSignalRecord {
    std::string signal;
    bool isConfirmed = false;
    std::string missing;
    std::vector<std::string> seen; ///< states, as people read them
    std::optional<double> lowEnd;  ///< of a number: what its calibration reaches, in the signal's unit
    std::optional<double> highEnd;
    std::optional<double> lowest; ///< where it stood still
    std::optional<double> highest;
    std::optional<double> centre;
    double tolerance = 0.0;
    std::vector<std::pair<double, double>> trace; ///< seconds, value
};

/// The result of a record of kind `walk`.
struct WalkRecord {
    bool isRecorded = false; ///< from a recording, not seen live
    double seconds = 0.0;
    WalkTolerances tolerances;
    std::vector<std::string> movedInstead;
    std::vector<WalkedSignalRecord> signals;
};

/// The evidence for one walked control.
[[nodiscard]] EvidenceRecord walkEvidence(const WalkedControl& control, const ControlFingerprint& fingerprint,
                                          const Aircraft& aircraft, const std::vector<Reach>& reaches,
                                          const WalkTolerances& tolerances, bool isRecorded, std::int64_t unixSeconds,
                                          std::vector<RawTrace> raw);

/// Error `damaged-evidence`.
[[nodiscard]] Result<WalkRecord> walkRecordOf(const EvidenceRecord& evidence);

} // namespace flowhand
