#include "procedure/lint.h"

#include <algorithm>
#include <cctype>
#include <string>

#include "base/names.h"
#include "procedure/lintrules.h"

namespace flowhand {

namespace {

std::vector<LintEntry> allEntries() {
    std::vector<LintEntry> all = wordingRules();
    for (const std::vector<LintEntry>* rules : {&structureRules(), &bindingRules(), &abnormalRules()})
        all.insert(all.end(), rules->begin(), rules->end());
    return all;
}

bool waives(const Waiver& waiver, const Flow& flow, const LintFinding& finding) {
    if (waiver.rule != finding.rule)
        return false;
    return waiver.step.empty() ||
           (finding.step >= 0 && flow.steps[static_cast<std::size_t>(finding.step)].id == waiver.step);
}

} // namespace

LintFinding ofFile(std::string_view rule, const Flow& flow, std::string message) {
    return {rule, -1, {flow.file, 1, 1}, std::move(message), Severity::Advice};
}

LintFinding ofStep(std::string_view rule, const Flow& flow, std::size_t step, std::string message) {
    return {rule, static_cast<int>(step), flow.steps[step].place,
            "step '" + flow.steps[step].id + "' " + std::move(message), Severity::Advice};
}

std::string plainWords(std::string_view text) {
    std::string words = " ";
    for (const char c : text) {
        const auto byte = static_cast<unsigned char>(c);
        if (std::isalnum(byte) != 0)
            words += static_cast<char>(std::tolower(byte));
        else if (words.back() != ' ')
            words += ' ';
    }
    if (words.back() != ' ')
        words += ' ';
    return words;
}

std::vector<SignalId> subjectsOf(const Step& step, const Aircraft& aircraft) {
    std::vector<SignalId> subjects;
    if (step.done)
        for (const SignalId id : step.done->condition.signals())
            if (aircraft.isControl(id) && aircraft.control(id).kind != ControlKind::Button)
                subjects.push_back(id);
    return subjects;
}

const std::vector<LintRule>& lintRules() {
    static const std::vector<LintRule> rules = [] {
        std::vector<LintRule> all;
        for (const LintEntry& entry : allEntries())
            all.push_back(entry.rule);
        return all;
    }();
    return rules;
}

void lint(const AircraftFolder& folder, Problems& problems) {
    for (const Flow& flow : folder.flows)
        lint(folder, flow, problems);
}

void lint(const AircraftFolder& folder, const Flow& flow, Problems& problems) {
    std::vector<bool> isUsed(flow.waivers.size(), false);
    for (const LintEntry& entry : allEntries()) {
        std::vector<LintFinding> findings;
        entry.check(folder, flow, findings);
        for (const LintFinding& finding : findings) {
            bool isWaived = false;
            for (std::size_t i = 0; i < flow.waivers.size(); ++i)
                if (waives(flow.waivers[i], flow, finding))
                    isUsed[i] = isWaived = true;
            if (!isWaived)
                problems.add(finding.severity,
                             {std::string(finding.rule), finding.message + " (" + std::string(entry.rule.source) + ")",
                              finding.place});
        }
    }
    std::vector<std::string> codes;
    for (const LintRule& rule : lintRules())
        codes.emplace_back(rule.code);
    for (std::size_t i = 0; i < flow.waivers.size(); ++i) {
        const Waiver& waiver = flow.waivers[i];
        if (std::find(codes.begin(), codes.end(), waiver.rule) == codes.end())
            problems.warning("unknown-rule", "there is no rule '" + waiver.rule + "'" + nearestHint(waiver.rule, codes),
                             waiver.place);
        else if (!isUsed[i])
            problems.warning("needless-waiver",
                             "nothing here breaks the rule '" + waiver.rule + "'; take its waiver out", waiver.place);
    }
}

} // namespace flowhand
