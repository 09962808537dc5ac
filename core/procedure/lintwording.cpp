#include <algorithm>

#include "procedure/lintrules.h"

namespace flowhand {

namespace {

bool contains(const std::string& text, std::string_view part) {
    return text.find(part) != std::string::npos;
}

void replySaysState(const AircraftFolder&, const Flow& flow, std::vector<LintFinding>& findings) {
    for (std::size_t i = 0; i < flow.steps.size(); ++i) {
        const std::string reply = plainWords(flow.steps[i].reply);
        for (const char* empty :
             {" set ", " checked ", " as required ", " completed ", " complete ", " check ", " ok "})
            if (reply == empty)
                findings.push_back(
                    ofStep("reply-says-state", flow, i,
                           "is answered '" + flow.steps[i].reply + "' alone; say the state or value that is wanted"));
    }
}

void challengeNamesControl(const AircraftFolder& folder, const Flow& flow, std::vector<LintFinding>& findings) {
    if (!isChecklist(flow))
        return;
    for (std::size_t i = 0; i < flow.steps.size(); ++i) {
        const Step& step = flow.steps[i];
        const std::vector<SignalId> subjects = subjectsOf(step, *folder.aircraft);
        const std::string words = plainWords(step.title + " " + (step.cue ? step.cue->text : ""));
        const bool isNamed = std::any_of(subjects.begin(), subjects.end(), [&](SignalId id) {
            return contains(words, plainWords(folder.aircraft->control(id).panelLabel));
        });
        if (!subjects.empty() && !isNamed)
            findings.push_back(ofStep("challenge-names-control", flow, i,
                                      "does not name its control as the panel does, '" +
                                          folder.aircraft->control(subjects.front()).panelLabel + "'"));
    }
}

void endsWithComplete(const AircraftFolder&, const Flow& flow, std::vector<LintFinding>& findings) {
    if (!isChecklist(flow))
        return;
    const Step& last = flow.steps.back();
    const std::string words = plainWords(last.title + " " + last.reply + " " + (last.cue ? last.cue->text : ""));
    if (!contains(words, " complete "))
        findings.push_back(ofStep("ends-with-complete", flow, flow.steps.size() - 1,
                                  "is the checklist's last and does not say that it is complete; end with '" +
                                      flow.title + " complete'"));
}

void noConditionFromMemory(const AircraftFolder&, const Flow& flow, std::vector<LintFinding>& findings) {
    if (flow.style == FlowStyle::ReadAndDo)
        return;
    for (std::size_t i = 0; i < flow.steps.size(); ++i) {
        const std::string words = plainWords(flow.steps[i].title);
        if (contains(words, " if ") || contains(words, " unless ") || contains(words, " as required "))
            findings.push_back(ofStep(
                "no-condition-from-memory", flow, i,
                "depends on a condition, which belongs in a read-and-do list; give it a 'when' or a list of its own"));
    }
}

void alternativesSayOneOf(const AircraftFolder&, const Flow& flow, std::vector<LintFinding>& findings) {
    for (std::size_t i = 0; i < flow.steps.size(); ++i) {
        const std::string words = plainWords(flow.steps[i].title);
        if (contains(words, " or ") && !contains(words, " one of "))
            findings.push_back(
                ofStep("alternatives-say-one-of", flow, i, "offers alternatives; begin its title with 'One of'"));
    }
}

void timedStepIsExplained(const AircraftFolder&, const Flow& flow, std::vector<LintFinding>& findings) {
    for (std::size_t i = 0; i < flow.steps.size(); ++i)
        if ((flow.steps[i].expires || flow.steps[i].expiresAfter) && flow.steps[i].why.empty())
            findings.push_back(
                ofStep("timed-step-explained", flow, i,
                       "runs out; say in 'why' what the limit is for and what follows when it is missed"));
}

void repetitionEnds(const AircraftFolder&, const Flow& flow, std::vector<LintFinding>& findings) {
    for (std::size_t i = 0; i < flow.steps.size(); ++i) {
        const std::string words = plainWords(flow.steps[i].title);
        const bool repeats = contains(words, " repeat ") || contains(words, " keep ") || contains(words, " continue ");
        if (repeats && !contains(words, " until "))
            findings.push_back(ofStep("repetition-ends", flow, i, "goes on for a time; say in its title until when"));
    }
}

void checkOnlyCompares(const AircraftFolder&, const Flow& flow, std::vector<LintFinding>& findings) {
    for (std::size_t i = 0; i < flow.steps.size(); ++i) {
        const Step& step = flow.steps[i];
        const std::string words = plainWords(step.title);
        if (step.kind == StepKind::Act && words.rfind(" check ", 0) == 0)
            findings.push_back(
                ofStep("check-only-compares", flow, i,
                       "is called a check but wants a control moved; name the action, or make it kind = \"check\""));
        if (step.kind == StepKind::Check && (words.rfind(" set ", 0) == 0 || words.rfind(" verify ", 0) == 0))
            findings.push_back(ofStep("check-only-compares", flow, i,
                                      "only compares; 'set' and 'verify' let the reader move something"));
    }
}

void oneActionAStep(const AircraftFolder&, const Flow& flow, std::vector<LintFinding>& findings) {
    for (std::size_t i = 0; i < flow.steps.size(); ++i) {
        const Step& step = flow.steps[i];
        const std::string words = plainWords(step.title);
        const bool isAction = step.kind == StepKind::Act;
        if (isAction && (contains(words, " and ") || contains(words, " then ")))
            findings.push_back(ofStep("one-action", flow, i, "holds more than one action; make a step of each"));
    }
}

void callIsWhole(const AircraftFolder&, const Flow& flow, std::vector<LintFinding>& findings) {
    for (std::size_t i = 0; i < flow.steps.size(); ++i) {
        const Step& step = flow.steps[i];
        if (step.kind == StepKind::Reply && (!step.cue || step.reply.empty()))
            findings.push_back(
                ofStep("call-is-whole", flow, i,
                       "is a reply and needs both the words that ask for it, in 'cue', and its own, in 'reply'"));
    }
}

void stepSaysWhy(const AircraftFolder&, const Flow& flow, std::vector<LintFinding>& findings) {
    for (std::size_t i = 0; i < flow.steps.size(); ++i)
        if (flow.steps[i].why.empty())
            findings.push_back(
                ofStep("step-says-why", flow, i, "has no 'why'; tell the learner in one line what it is for"));
}

} // namespace

const std::vector<LintEntry>& wordingRules() {
    static const std::vector<LintEntry> rules = {
        {{"reply-says-state", "A reply says the wanted state or value, never only 'set' or 'checked'.",
          "NASA CR-177549, guideline 4; AC 120-71B 5.4, second-hand"},
         replySaysState},
        {{"challenge-names-control", "A checklist item names its control as the panel does.",
          "AC 120-71B 5.4, second-hand"},
         challengeNamesControl},
        {{"ends-with-complete", "A checklist's last item says that it is complete.", "NASA CR-177549, guideline 6"},
         endsWithComplete},
        {{"no-condition-from-memory", "Steps that depend on a condition stand in read-and-do lists only.",
          "SKYbrary, second-hand"},
         noConditionFromMemory},
        {{"alternatives-say-one-of", "Alternatives stand in one step that says 'one of'.", "DOE-STD-1029-92"},
         alternativesSayOneOf},
        {{"timed-step-explained", "A step that runs out says what its limit is for.", "DOE-STD-1029-92"},
         timedStepIsExplained},
        {{"repetition-ends", "A step that goes on says until when.", "DOE-STD-1029-92"}, repetitionEnds},
        {{"check-only-compares", "A check compares; what may move a control is not called so.", "DOE-STD-1029-92"},
         checkOnlyCompares},
        {{"one-action", "A step holds one action.", "Procedures Audit Tool 1.1, HSG48 practice"}, oneActionAStep},
        {{"call-is-whole", "A call has its trigger, its words and its reply.",
          "FSF ALAR briefing note 1.4; AC 120-71B 6.6, second-hand"},
         callIsWhole},
        {{"step-says-why", "Every step tells the learner why.", "our own choice"}, stepSaysWhy},
    };
    return rules;
}

} // namespace flowhand
