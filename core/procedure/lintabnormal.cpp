#include <algorithm>
#include <string>

#include "procedure/lintrules.h"

namespace flowhand {

namespace {

/// More is not remembered under stress; three are better.
constexpr std::ptrdiff_t kMostMemoryItems = 4;
/// A list this short needs no way out of it. Our own choice.
constexpr std::size_t kShortList = 5;

void fewMemoryItems(const AircraftFolder&, const Flow& flow, std::vector<LintFinding>& findings) {
    if (!flow.abnormal || isChecklist(flow))
        return;
    std::ptrdiff_t items = 0;
    for (std::size_t i = 0; i < flow.steps.size(); ++i)
        if (flow.steps[i].kind == StepKind::Act && ++items == kMostMemoryItems + 1)
            findings.push_back(ofStep("few-memory-items", flow, i,
                                      "is number " + std::to_string(items) +
                                          " to be done from memory; leave what can be read to a list"));
}

/// Whether a step cannot wait.
bool isUrgent(const Step& step) {
    return step.weight == kCritical || step.expires || step.expiresAfter;
}

void urgentFirst(const AircraftFolder&, const Flow& flow, std::vector<LintFinding>& findings) {
    if (!flow.abnormal)
        return;
    const auto calm = std::find_if(flow.steps.begin(), flow.steps.end(), [](const Step& step) {
        return step.kind == StepKind::Act && step.weight == 1 && !isUrgent(step);
    });
    for (auto at = calm; at != flow.steps.end(); ++at)
        if (isUrgent(*at) && !at->when)
            findings.push_back(ofStep("urgent-first", flow, static_cast<std::size_t>(at - flow.steps.begin()),
                                      "cannot wait and stands behind '" + calm->id + "', which can"));
}

void listHasWayOut(const AircraftFolder&, const Flow& flow, std::vector<LintFinding>& findings) {
    if (flow.abnormal && isChecklist(flow) && flow.steps.size() > kShortList && flow.outcomes.empty())
        findings.push_back(
            ofFile("list-has-way-out", flow,
                   "the list has no early end; say in an [[outcome]] when the rest is no longer needed"));
}

} // namespace

const std::vector<LintEntry>& abnormalRules() {
    static const std::vector<LintEntry> rules = {
        {{"few-memory-items", "An abnormal flow has at most four items from memory.", "CAP 676 chapter 7, second-hand"},
         fewMemoryItems},
        {{"urgent-first", "In an abnormal flow what cannot wait comes before what can.",
          "Burian 2006; NASA TM-2014-218382, from memory"},
         urgentFirst},
        {{"list-has-way-out", "An abnormal list of more than five items says when it may be left early.",
          "Burian 2006; NASA TM-2014-218382, from memory"},
         listHasWayOut},
    };
    return rules;
}

} // namespace flowhand
