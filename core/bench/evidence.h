#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "base/error.h"
#include "base/problem.h"
#include "bench/fingerprint.h"
#include "bench/rawtrace.h"

namespace flowhand {

/// Kinds of evidence. Records of other kinds (of a newer program) are kept and can be read.
inline constexpr std::string_view kCalibrationEvidence = "calibration";
inline constexpr std::string_view kHealthEvidence = "health";
inline constexpr std::string_view kRepeatEvidence = "repeat";
inline constexpr std::string_view kWalkEvidence = "walk";
inline constexpr std::string_view kFilterEvidence = "filters";

/// What was found of one control, when, and for which wiring and calibration it holds. Format: README.md, 'Evidence'.
struct EvidenceRecord {
    std::string kind;
    std::int64_t unixSeconds = 0;
    std::string control;              ///< what the rig file called it then
    std::vector<std::string> signals; ///< the cockpit signals that it makes
    std::string fingerprint;          ///< of the control (fingerprint.h) as it was measured
    bool isGood = false;              ///< the control does what it should, as far as this kind of evidence tells
    std::string result;               ///< a JSON object; its keys are the kind's
    std::vector<RawTrace> raw;        ///< what the result was made of

    bool operator==(const EvidenceRecord&) const = default;
};

/// `NAME.evidence.jsonl` beside `NAME.toml`.
[[nodiscard]] std::string evidenceFileOf(const std::string& rigFile);

/// All good records, in the order in which they were written. No file is no evidence and no error. Damaged lines are
/// left out and named in `problems` (`damaged-evidence`, `newer-evidence`; warnings at file:line).
[[nodiscard]] Result<std::vector<EvidenceRecord>> readEvidence(const std::string& file, Problems& problems);

/// Adds one line and waits until it is on the disk; what the file holds already, damaged or not, stays as it is.
/// Errors: `bad-evidence` (our record has a result that is no JSON object), `save-failed`.
[[nodiscard]] Status appendEvidence(const std::string& file, const EvidenceRecord& record);

enum class EvidenceState : std::uint8_t {
    None,
    Stale, ///< of this control, but its wiring or calibration has changed since
    Current
};

struct FoundEvidence {
    EvidenceState state = EvidenceState::None;
    const EvidenceRecord* record = nullptr; ///< into the records that were searched; null only for None
};

/// The newest record of `kind` that holds for the control as it is wired now; else the newest that shares a signal with
/// it. Who changes a rig file back has the old evidence back.
[[nodiscard]] FoundEvidence findEvidence(const std::vector<EvidenceRecord>& records, std::string_view kind,
                                         const ControlFingerprint& control);

/// "2026-03-01T18:04:05Z", as in the file.
[[nodiscard]] std::string dateText(std::int64_t unixSeconds);
[[nodiscard]] std::optional<std::int64_t> parseDate(std::string_view text);

/// One line of the file, without its end.
[[nodiscard]] Result<std::string> evidenceLine(const EvidenceRecord& record);
/// Errors: `damaged-evidence`, `newer-evidence`.
[[nodiscard]] Result<EvidenceRecord> parseEvidenceLine(std::string_view line);

} // namespace flowhand
