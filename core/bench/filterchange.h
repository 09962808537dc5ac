#pragma once

#include <optional>
#include <string>
#include <vector>

#include "bench/benchcontrol.h"
#include "bench/evidence.h"
#include "bench/keepresult.h"

namespace flowhand {

// What a measurement advised for the filters of a control: whether the rig file has it, written into it, taken back.
// A change is kept as evidence of kind `filters`, with what the file said before. Taking it back is such a change too.

/// Of a record of kind `health`: what followed for the filters, against the rig file as it was then. Error
/// `damaged-evidence`.
[[nodiscard]] Result<FilterAdvice> filterAdviceOf(const EvidenceRecord& record);

/// Those of `keys` that the rig file `source` does not have as they are written here. Errors: those of controlKeysIn().
[[nodiscard]] Result<std::vector<RigKey>> openKeys(const std::string& source, std::size_t control,
                                                   const std::vector<RigKey>& keys);

/// "median = "4 ms"", "no smooth".
[[nodiscard]] Phrase keyText(const RigKey& key);

/// Filters of one control as they were changed in the rig file.
struct FilterChange {
    std::int64_t unixSeconds = 0;
    std::vector<RigKey> before; ///< an empty value: the file said nothing
    std::vector<RigKey> after;
};

/// The newest change of a control that has not been taken back; nothing: there is none. Damaged records count as none.
[[nodiscard]] std::optional<FilterChange> lastFilterChange(const std::vector<EvidenceRecord>& evidence,
                                                           const ControlFingerprint& control);

/// Writes filters into the rig file; all else in it stays as it is, and evidence holds on: filters are not in a
/// fingerprint. `rig` is not the file's any more then. Errors: those of withControlKeys(), saveRigFile() and
/// appendEvidence().
[[nodiscard]] Status applyFilters(const std::string& rigFile, const RigFile& rig, const Aircraft& aircraft,
                                  const std::vector<ControlKeys>& filters);

/// Writes what the last change of each of `controls` replaced, all or nothing; what was written. Errors: those of
/// applyFilters(), `nothing-to-undo`, `filters-changed` (somebody has changed them since).
[[nodiscard]] BenchResult<std::vector<ControlKeys>> undoFilters(const std::string& rigFile, const RigFile& rig,
                                                                const Aircraft& aircraft,
                                                                const std::vector<EvidenceRecord>& evidence,
                                                                const std::vector<std::size_t>& controls);

/// The controls of the rig whose last change is the newest of all: those of the last applyFilters().
[[nodiscard]] std::vector<std::size_t> lastChangedControls(const std::vector<EvidenceRecord>& evidence,
                                                           const std::vector<ControlFingerprint>& controls);

} // namespace flowhand
