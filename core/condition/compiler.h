#pragma once

#include <optional>
#include <string_view>
#include <vector>

#include "condition/condition.h"
#include "condition/program.h"

namespace flowhand {

/// Parses and checks `text`; nothing when `problems` got an error.
[[nodiscard]] std::optional<ConditionProgram> compileProgram(std::string_view text, const ConditionScope& scope,
                                                             std::vector<ConditionProblem>& problems);

/// Warns of what is well formed but surely not meant: conditions that can never change, `since` operands that exclude
/// each other, instants that are asked to last.
void warnOf(const ConditionProgram& program, const SignalTable& signals, std::vector<ConditionProblem>& problems);

} // namespace flowhand
