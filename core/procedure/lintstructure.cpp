#include <algorithm>
#include <set>
#include <string>

#include "procedure/lintrules.h"
#include "procedure/phase.h"

namespace flowhand {

namespace {

/// THERP (NUREG/CR-1278) tells lists of up to ten items from longer ones; twice that is our own limit.
constexpr std::size_t kLongChunk = 10;
constexpr std::size_t kTooLongChunk = 20;
/// Of all steps; more dilutes what critical means. Our own choice.
constexpr double kMostCritical = 0.25;
/// Fewer steps than this say nothing about shares and thirds.
constexpr std::size_t kFewSteps = 6;
/// A flow over fewer controls than this may well be verified whole.
constexpr std::size_t kFewControls = 3;

void shortChunks(const AircraftFolder&, const Flow& flow, std::vector<LintFinding>& findings) {
    if (!isChecklist(flow))
        return;
    for (std::size_t first = 0; first < flow.steps.size();) {
        std::size_t end = first + 1;
        while (end < flow.steps.size() && flow.steps[end].group == flow.steps[first].group)
            ++end;
        if (end - first > kLongChunk) {
            LintFinding finding = ofStep("short-chunks", flow, first,
                                         "begins a stretch of " + std::to_string(end - first) +
                                             " items; part it into groups of at most ten");
            finding.severity = end - first > kTooLongChunk ? Severity::Error : Severity::Advice;
            findings.push_back(std::move(finding));
        }
        first = end;
    }
}

void criticalFirst(const AircraftFolder&, const Flow& flow, std::vector<LintFinding>& findings) {
    if (!isChecklist(flow) || flow.steps.size() < kFewSteps)
        return;
    for (std::size_t i = (flow.steps.size() + 2) / 3; i < flow.steps.size(); ++i)
        if (flow.steps[i].weight == kCritical)
            findings.push_back(ofStep("critical-first", flow, i,
                                      "is critical and stands behind the first third; interruptions come late"));
}

void fewCritical(const AircraftFolder&, const Flow& flow, std::vector<LintFinding>& findings) {
    const auto critical = std::count_if(flow.steps.begin(), flow.steps.end(), [](const Step& step) {
        return step.weight == kCritical;
    });
    if (flow.steps.size() >= kFewSteps &&
        static_cast<double>(critical) > kMostCritical * static_cast<double>(flow.steps.size()))
        findings.push_back(ofFile("few-critical", flow,
                                  std::to_string(critical) + " of " + std::to_string(flow.steps.size()) +
                                      " steps are critical; keep it to a quarter"));
}

/// Steps that follow each other without waiting for anything should not send the hand back and forth. Continuous
/// controls are held meanwhile, not reached for.
void noJumpBack(const AircraftFolder& folder, const Flow& flow, std::vector<LintFinding>& findings) {
    std::set<std::string> left;
    std::string area;
    for (std::size_t i = 0; i < flow.steps.size(); ++i) {
        const Step& step = flow.steps[i];
        if (step.when || step.cue || step.kind != StepKind::Act || step.controls.empty()) {
            left.clear();
            area.clear();
        }
        if (step.kind != StepKind::Act || step.controls.empty() ||
            folder.aircraft->control(step.controls.front()).isContinuous)
            continue;
        const std::string& here = folder.aircraft->control(step.controls.front()).area;
        if (isChecklist(flow) && step.weight == kCritical)
            left.clear(); // critical items come first, wherever they are
        if (here != area && left.count(here) != 0)
            findings.push_back(
                ofStep("no-jump-back", flow, i, "sends the hand back to the " + here + ", which it has left before"));
        if (here != area && !area.empty())
            left.insert(area);
        area = here;
    }
}

std::set<SignalId> subjectsOf(const Flow& flow, const Aircraft& aircraft) {
    std::set<SignalId> all;
    for (const Step& step : flow.steps)
        for (const SignalId id : subjectsOf(step, aircraft))
            all.insert(id);
    return all;
}

void checklistIsShorter(const AircraftFolder& folder, const Flow& flow, std::vector<LintFinding>& findings) {
    if (flow.style != FlowStyle::DoThenVerify)
        return;
    const std::set<SignalId> verified = subjectsOf(flow, *folder.aircraft);
    for (const Flow& other : folder.flows) {
        const std::set<SignalId> done = subjectsOf(other, *folder.aircraft);
        const bool isSamePhase = findPhase(other.phaseFrom) <= findPhase(flow.phaseTo) &&
                                 findPhase(flow.phaseFrom) <= findPhase(other.phaseTo);
        if (other.style == FlowStyle::Flow && isSamePhase && done.size() >= kFewControls &&
            std::includes(verified.begin(), verified.end(), done.begin(), done.end()))
            findings.push_back(ofFile("checklist-is-shorter", flow,
                                      "the checklist repeats all of the flow '" + other.id +
                                          "'; people then read it instead of doing the flow"));
    }
}

void noChecklistOnRunway(const AircraftFolder&, const Flow& flow, std::vector<LintFinding>& findings) {
    if (!isChecklist(flow))
        return;
    for (const char* phase : {"line_up", "take_off", "landing"})
        if (flow.phaseFrom == phase)
            findings.push_back(ofFile("no-checklist-on-runway", flow,
                                      "the checklist begins on an active runway; let it begin before or after"));
}

void criticalRepeats(const AircraftFolder& folder, const Flow& flow, std::vector<LintFinding>& findings) {
    if (!isChecklist(flow))
        return;
    const std::optional<std::size_t> phase = findPhase(flow.phaseFrom);
    for (std::size_t i = 0; i < flow.steps.size(); ++i) {
        const Step& step = flow.steps[i];
        const std::vector<SignalId> subjects = subjectsOf(step, *folder.aircraft);
        if (step.weight != kCritical || subjects.empty() || phase >= findPhase("take_off"))
            continue;
        const bool isRepeated = std::any_of(folder.flows.begin(), folder.flows.end(), [&](const Flow& other) {
            return isChecklist(other) && !other.abnormal && findPhase(other.phaseFrom) > phase &&
                   subjectsOf(other, *folder.aircraft).count(subjects.front()) != 0;
        });
        if (!isRepeated)
            findings.push_back(ofStep("critical-repeats", flow, i,
                                      "is critical and can be undone again; check it once more in a later checklist"));
    }
}

/// A control that the start does not put anywhere is unknown until somebody moves it, and so is what is asked of it.
void startIsWhole(const AircraftFolder& folder, const Flow& flow, std::vector<LintFinding>& findings) {
    if (flow.startPlace.empty()) {
        findings.push_back(ofFile("start-is-whole", flow, "the flow has no [start]; say where it begins"));
        return;
    }
    std::set<std::string> missing;
    const auto look = [&](const std::vector<SignalId>& ids) {
        for (const SignalId id : ids) {
            const bool isListed = std::any_of(flow.start.begin(), flow.start.end(), [&](const StartValue& start) {
                return start.signal == id;
            });
            if (folder.aircraft->isControl(id) && !isListed && folder.aircraft->control(id).kind != ControlKind::Button)
                missing.insert(folder.aircraft->signals[id].name);
        }
    };
    for (const Step& step : flow.steps)
        look(step.controls);
    for (const Guard& guard : flow.guards)
        look(guard.never.condition.signals());
    for (const std::string& name : missing)
        findings.push_back(
            ofFile("start-is-whole", flow, "'" + name + "' is judged here but has no place in [start.controls]"));
}

void cueLasts(const AircraftFolder&, const Flow& flow, std::vector<LintFinding>& findings) {
    for (std::size_t i = 0; i < flow.steps.size(); ++i)
        if (flow.steps[i].when && flow.steps[i].when->condition.isInstant())
            findings.push_back(ofStep("cue-lasts", flow, i,
                                      "waits for a single instant, which passes unseen while an earlier step is open"));
}

void nextFlowIsThere(const AircraftFolder& folder, const Flow& flow, std::vector<LintFinding>& findings) {
    for (const Outcome& outcome : flow.outcomes) {
        const bool isThere = std::any_of(folder.flows.begin(), folder.flows.end(), [&](const Flow& other) {
            return other.id == outcome.next;
        });
        if (!outcome.next.empty() && !isThere)
            findings.push_back(
                {"next-flow-is-there", -1, outcome.place,
                 "outcome '" + outcome.name + "' goes on with '" + outcome.next + "', which this aircraft has not",
                 Severity::Error});
    }
}

} // namespace

const std::vector<LintEntry>& structureRules() {
    static const std::vector<LintEntry> rules = {
        {{"short-chunks", "A checklist's chunks have at most ten items.",
          "THERP table 20-7; NASA CR-177549, guideline 7"},
         shortChunks},
        {{"critical-first", "A checklist's critical items stand in its first third.", "NASA CR-177549, guideline 10"},
         criticalFirst},
        {{"few-critical", "At most a quarter of the steps is critical.", "NASA CR-177549, second-hand"}, fewCritical},
        {{"no-jump-back", "Steps that follow each other lead the hand one way over the panels.",
          "geographical flow, from memory"},
         noJumpBack},
        {{"checklist-is-shorter", "A checklist does not repeat its whole flow.", "Dismukes and Berman, second-hand"},
         checklistIsShorter},
        {{"no-checklist-on-runway", "A checklist does not begin on an active runway.", "NASA CR-177549, guideline 13"},
         noChecklistOnRunway},
        {{"critical-repeats", "What is critical and can be undone is checked again before take-off.",
          "NASA CR-177549, guideline 11"},
         criticalRepeats},
        {{"start-is-whole", "The start says where every judged control is.", "our own choice"}, startIsWhole},
        {{"cue-lasts", "A cue is a state, not an instant.", "our own choice"}, cueLasts},
        {{"next-flow-is-there", "The flow that follows an outcome exists.", "our own choice"}, nextFlowIsThere},
    };
    return rules;
}

} // namespace flowhand
