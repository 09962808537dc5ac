#pragma once

#include <string_view>
#include <vector>

#include "procedure/library.h"

namespace flowhand {

/// One rule of `flowhand lint`: advice on how a flow or checklist is written, not on whether it loads.
struct LintRule {
    std::string_view code;   ///< what a file waives it by
    std::string_view text;   ///< what it wants, in a sentence
    std::string_view source; ///< who says so
};

/// Every rule, in the order of procedures/README.md, 'Checking'.
[[nodiscard]] const std::vector<LintRule>& lintRules();

/// Appends what is doubtful about the flows of one aircraft, less what the files waive. A waiver of an unknown rule, or
/// one that waives nothing, is a warning itself.
void lint(const AircraftFolder& folder, Problems& problems);
/// Of one flow of the folder, among the others.
void lint(const AircraftFolder& folder, const Flow& flow, Problems& problems);

} // namespace flowhand
