#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "procedure/library.h"
#include "procedure/lint.h"

namespace flowhand {

/// One place where a flow breaks a rule.
struct LintFinding {
    std::string_view rule;
    int step = -1; ///< index in the flow; -1: the whole file
    SourcePlace place;
    std::string message; ///< what is wrong and what to do; the rule's source is added when it is shown
    Severity severity = Severity::Advice;
};

/// A rule's check of one flow, among the others of its aircraft.
using LintCheck = void (*)(const AircraftFolder& folder, const Flow& flow, std::vector<LintFinding>& findings);

struct LintEntry {
    LintRule rule;
    LintCheck check;
};

/// The controls whose state a step is about: those in its `done` but for buttons, which only carry a reply.
[[nodiscard]] std::vector<SignalId> subjectsOf(const Step& step, const Aircraft& aircraft);

/// Rules about the words of a step.
[[nodiscard]] const std::vector<LintEntry>& wordingRules();
/// Rules about how steps are put together.
[[nodiscard]] const std::vector<LintEntry>& structureRules();

} // namespace flowhand
