#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "procedure/library.h"
#include "procedure/lint.h"

namespace flowhand {

inline constexpr int kCritical = 3;

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

[[nodiscard]] inline bool isChecklist(const Flow& flow) {
    return flow.style != FlowStyle::Flow;
}

/// A finding of the whole file.
[[nodiscard]] LintFinding ofFile(std::string_view rule, const Flow& flow, std::string message);
/// A finding at a step; `message` goes on from "step 'gear_up' ".
[[nodiscard]] LintFinding ofStep(std::string_view rule, const Flow& flow, std::size_t step, std::string message);

/// Lower case, letters, digits and single spaces only, with a space at either end: " set as required ".
[[nodiscard]] std::string plainWords(std::string_view text);

/// The controls whose state a step is about: those in its `done` but for buttons, which only carry a reply.
[[nodiscard]] std::vector<SignalId> subjectsOf(const Step& step, const Aircraft& aircraft);

/// Rules about the words of a step.
[[nodiscard]] const std::vector<LintEntry>& wordingRules();
/// Rules about how steps are put together.
[[nodiscard]] const std::vector<LintEntry>& structureRules();
/// Rules about what a flow's words and controls have to do with each other.
[[nodiscard]] const std::vector<LintEntry>& bindingRules();
/// Rules about abnormal flows.
[[nodiscard]] const std::vector<LintEntry>& abnormalRules();

} // namespace flowhand
