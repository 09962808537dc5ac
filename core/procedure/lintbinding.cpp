#include <algorithm>
#include <cctype>
#include <map>
#include <set>
#include <string>

#include "procedure/lintrules.h"

namespace flowhand {

namespace {

/// The same state of the same control is always answered in the same words; reported where it is answered later.
void sameStateSameReply(const AircraftFolder& folder, const Flow& flow, std::vector<LintFinding>& findings) {
    for (std::size_t i = 0; i < flow.steps.size(); ++i) {
        const Step& step = flow.steps[i];
        if (!isChecklist(flow) || step.reply.empty() || subjectsOf(step, *folder.aircraft).empty())
            continue;
        for (const Flow& other : folder.flows) {
            const std::size_t end = &other == &flow ? i : other.steps.size();
            const auto first = other.steps.begin();
            const auto differs =
                std::find_if(first, first + static_cast<std::ptrdiff_t>(end), [&](const Step& earlier) {
                    return isChecklist(other) && !earlier.reply.empty() && earlier.done &&
                           earlier.done->condition.text() == step.done->condition.text() &&
                           plainWords(earlier.reply) != plainWords(step.reply);
                });
            if (differs != first + static_cast<std::ptrdiff_t>(end)) {
                findings.push_back(ofStep("same-state-same-reply", flow, i,
                                          "is answered '" + step.reply + "'; '" + other.id + "' answers '" +
                                              differs->reply + "' to the same state"));
                break;
            }
            if (&other == &flow)
                break;
        }
    }
}

/// A chunk is a group; items outside any group between two groups belong nowhere.
void chunkHasName(const AircraftFolder&, const Flow& flow, std::vector<LintFinding>& findings) {
    const bool isParted = std::any_of(flow.steps.begin(), flow.steps.end(), [](const Step& step) {
        return !step.group.empty();
    });
    if (!isChecklist(flow) || !isParted)
        return;
    for (std::size_t i = 0; i < flow.steps.size(); ++i)
        if (flow.steps[i].group.empty() && flow.steps[i].kind != StepKind::Say)
            findings.push_back(ofStep("chunk-has-name", flow, i,
                                      "stands in no group of a checklist that has groups; put it into the one of its "
                                      "system"));
}

/// A group is one system or function: what its items look at lies in one area, or the items read nothing.
void chunkIsOneSystem(const AircraftFolder& folder, const Flow& flow, std::vector<LintFinding>& findings) {
    if (!isChecklist(flow))
        return;
    for (std::size_t i = 1; i < flow.steps.size(); ++i) {
        const Step& before = flow.steps[i - 1];
        const std::vector<SignalId> one = subjectsOf(before, *folder.aircraft);
        const std::vector<SignalId> two = subjectsOf(flow.steps[i], *folder.aircraft);
        if (flow.steps[i].group.empty() || flow.steps[i].group != before.group || one.empty() || two.empty())
            continue;
        const bool isNear = std::any_of(one.begin(), one.end(), [&](SignalId a) {
            return std::any_of(two.begin(), two.end(), [&](SignalId b) {
                return folder.aircraft->control(a).area == folder.aircraft->control(b).area;
            });
        });
        if (!isNear)
            findings.push_back(ofStep("chunk-is-one-system", flow, i,
                                      "is about the " + folder.aircraft->control(two.front()).area +
                                          ", the rest of its group '" + before.group +
                                          "' is not; a group is one system"));
    }
}

/// A reply to a question about a control has to look at that control; else it is words alone and has to be kind "say".
void itemReadsItsControl(const AircraftFolder& folder, const Flow& flow, std::vector<LintFinding>& findings) {
    for (std::size_t i = 0; i < flow.steps.size(); ++i) {
        const Step& step = flow.steps[i];
        if (!isChecklist(flow) || step.kind != StepKind::Reply || !subjectsOf(step, *folder.aircraft).empty())
            continue;
        const std::string words = plainWords(step.title);
        const auto named = std::find_if(
            folder.aircraft->controls.begin(), folder.aircraft->controls.end(), [&](const CockpitControl& control) {
                return control.kind != ControlKind::Button && words.starts_with(plainWords(control.panelLabel));
            });
        if (named != folder.aircraft->controls.end())
            findings.push_back(ofStep("item-reads-its-control", flow, i,
                                      "asks about " + named->panelLabel +
                                          " and is satisfied by words; let its 'done' look at the control too"));
    }
}

/// The numbers in a text, as written ("180", "2.5"), by where they begin.
std::map<std::size_t, std::string> numbersOf(const std::string& text) {
    std::map<std::size_t, std::string> numbers;
    for (std::size_t i = 0; i < text.size();) {
        const auto isPart = [&](std::size_t at) {
            const auto c = static_cast<unsigned char>(text[at]);
            return std::isdigit(c) != 0 ||
                   (c == '.' && at + 1 < text.size() && std::isdigit(static_cast<unsigned char>(text[at + 1])) != 0);
        };
        std::size_t end = i;
        while (end < text.size() && isPart(end))
            ++end;
        if (end > i)
            numbers.emplace(i, text.substr(i, end - i));
        i = end + 1;
    }
    return numbers;
}

/// What a step's numbers are judged by, as text.
std::string judgedText(const Step& step) {
    std::string all;
    for (const std::optional<PlacedCondition>* condition : {&step.done, &step.when, &step.expires})
        if (*condition)
            all += (*condition)->condition.text() + " ";
    return all;
}

/// "80 kt" in a title is a promise: some condition or the band has to hold the number. Numbers without a unit behind
/// them name a gate, an engine or a channel.
void numberIsJudged(const AircraftFolder&, const Flow& flow, std::vector<LintFinding>& findings) {
    static const std::set<std::string> units{"kt", "ft", "deg", "m", "NM", "%", "rpm", "hPa", "s", "min"};
    for (std::size_t i = 0; i < flow.steps.size(); ++i) {
        const Step& step = flow.steps[i];
        if (step.kind == StepKind::Say || step.band)
            continue;
        std::set<std::string> judged;
        for (const auto& [place, number] : numbersOf(judgedText(step)))
            judged.insert(number);
        for (const auto& [place, number] : numbersOf(step.title)) {
            const std::size_t at = place + number.size();
            const std::size_t from = std::min(step.title.find_first_not_of(' ', at), step.title.size());
            const std::string unit = step.title.substr(from, step.title.find_first_of(" ,;:.)", from) - from);
            if (units.count(unit) != 0 && judged.count(number) == 0)
                findings.push_back(
                    ofStep("number-is-judged", flow, i,
                           "promises " + number + " " + unit + ", which neither 'done' nor 'when' nor a band holds"));
        }
    }
}

} // namespace

const std::vector<LintEntry>& bindingRules() {
    static const std::vector<LintEntry> rules = {
        {{"same-state-same-reply", "The same state is answered in the same words in every checklist.",
          "AC 120-71B 5.4, second-hand"},
         sameStateSameReply},
        {{"chunk-has-name", "In a checklist with groups every item stands in one.", "NASA CR-177549, guideline 7"},
         chunkHasName},
        {{"chunk-is-one-system", "A group of a checklist is about one system.", "NASA CR-177549, guideline 7"},
         chunkIsOneSystem},
        {{"item-reads-its-control", "An item that asks about a control looks at it; words alone are kind \"say\".",
          "NASA CR-177549, guideline 5; 14 CFR 121.315(b), second-hand"},
         itemReadsItsControl},
        {{"number-is-judged", "A number with a unit in a title stands in a condition or the band.",
          "Procedures Audit Tool 1.1, HSG48 practice"},
         numberIsJudged},
    };
    return rules;
}

} // namespace flowhand
