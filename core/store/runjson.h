#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "session/record.h"

namespace flowhand {

// The parts of a run that are kept as packed JSON, there and back. Reading gives false where the text is not what was
// written; then the target is left as it was.

[[nodiscard]] std::string setupJson(const RunHeader& header);
/// Fills `controlNames` and `setup`.
[[nodiscard]] bool readSetup(std::string_view json, RunHeader& header);

[[nodiscard]] std::string resultJson(const Score& score, const std::vector<StepResult>& results,
                                     const RunLosses& losses);
[[nodiscard]] bool readResult(std::string_view json, Score& score, std::vector<StepResult>& results, RunLosses& losses);

[[nodiscard]] std::string_view nameOf(CommandKind kind);
[[nodiscard]] std::optional<CommandKind> findCommandKind(std::string_view name);

} // namespace flowhand
