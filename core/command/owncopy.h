#pragma once

#include <string>

#include "base/error.h"

namespace flowhand {

/// Where a person's own aircraft and flows are: beside the store of their runs.
[[nodiscard]] std::string ownProcedures();

/// Copies a shipped file of `procedures` to the same place below `own`, with what it needs there: its aircraft's files,
/// the ground plan, the hands that demonstrate it, and the flows that it leads on to. What is there already stays as it
/// is. Gives the copy's path. Errors `file-exists` (the copy itself is there), `unreadable-file`, `unwritable-file`.
[[nodiscard]] Result<std::string> copyToOwn(const std::string& procedures, const std::string& own,
                                            const std::string& file);

} // namespace flowhand
