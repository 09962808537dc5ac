#pragma once

#include <optional>
#include <string_view>
#include <vector>

#include "condition/condition.h"
#include "condition/syntax.h"

namespace flowhand {

/// Parentheses, calls, `not` and `-` inside one another.
inline constexpr int kDeepestNesting = 64;

/// Grammar: core/condition/README.md. On an error `problems` has it, with its place.
[[nodiscard]] std::optional<Syntax> parseCondition(std::string_view text, std::vector<ConditionProblem>& problems);

} // namespace flowhand
