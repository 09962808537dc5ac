#include "report/findings.h"

#include <algorithm>
#include <cstdio>
#include <ctime>

#include "base/names.h"
#include "base/valuewords.h"
#include "review/deviations.h"
#include "session/headerwords.h"

namespace flowhand {

namespace {

bool isFateOfStep(EventKind kind) {
    switch (kind) {
    case EventKind::StepDone:
    case EventKind::StepFoundSet:
    case EventKind::StepTooEarly:
    case EventKind::StepUncertain:
        return true;
    default:
        return false;
    }
}

std::string spaced(std::string name) {
    std::replace(name.begin(), name.end(), '_', ' ');
    return name;
}

/// Words of files and of older records may end in a full stop of their own; the program's parts of sentences do not.
Phrase unstopped(const Phrase& why) {
    if (why.isPattern())
        return why;
    std::string words = why.text();
    while (!words.empty() && words.back() == '.')
        words.pop_back();
    return words;
}

class Finder {
public:
    explicit Finder(const DebriefInput& input) : m_input(input) {}

    Findings find() {
        findLedger();
        for (std::size_t i = 0; i < m_input.flow.steps.size() && i < m_input.results.size(); ++i)
            findStep(i);
        findGuards();
        findExtras();
        findRemarks();
        return std::move(m_findings);
    }

private:
    void findLedger() {
        m_findings.ledger = m_input.score.ledger;
        const auto rank = [](const LedgerLine& line) {
            return line.milliPoints < 0 ? 2 : line.guard >= 0 ? 0 : 1;
        };
        std::stable_sort(m_findings.ledger.begin(), m_findings.ledger.end(),
                         [&](const LedgerLine& a, const LedgerLine& b) {
                             return rank(a) != rank(b) ? rank(a) < rank(b) : a.milliPoints > b.milliPoints;
                         });
    }

    [[nodiscard]] const Event* fateOf(std::size_t step) const {
        const Event* fate = nullptr;
        for (const Event& event : m_input.events)
            if (event.step == static_cast<int>(step) && isFateOfStep(event.kind))
                fate = &event;
        return fate;
    }

    void findStep(std::size_t i) {
        const Step& step = m_input.flow.steps[i];
        const StepResult& result = m_input.results[i];
        StepFinding finding;
        finding.id = step.id;
        finding.title = step.title;
        finding.seat = step.seat;
        finding.weight = step.weight;
        finding.isOwn = result.isOwn;
        if (result.due != kForever)
            finding.due = result.due;
        if (result.done != kForever)
            finding.done = result.done;
        finding.verdict = stepVerdict(m_input.flow, m_input.results, m_input.score, i);
        for (const LedgerLine& line : m_input.score.ledger)
            if (line.step == static_cast<int>(i))
                finding.milliPoints += line.milliPoints;
        if (const Event* fate = fateOf(i); fate != nullptr && finding.done)
            addFate(finding, *fate, step);
        m_findings.steps.push_back(std::move(finding));
    }

    void addFate(StepFinding& finding, const Event& fate, const Step& step) {
        const SignalId signal = fate.signal != kNoSignal ? fate.signal
                                : !step.controls.empty() ? step.controls.front()
                                                         : kNoSignal;
        if (!finding.isOwn)
            finding.by = "partner";
        else if (fate.kind != EventKind::StepFoundSet)
            finding.by = controlName(fate.control, signal);
        finding.isSimulated = !finding.by.empty() && finding.isOwn && isSimulated(signal);
        m_findings.isSimulated |= finding.isSimulated;
        if (fate.margin) {
            finding.margin = fate.margin;
            if (fate.marginSignal != kNoSignal)
                finding.marginUnit = m_input.aircraft.signals[fate.marginSignal].unit.symbol;
        }
    }

    [[nodiscard]] const ControlFacts* factsOf(SignalId signal) const {
        const std::vector<ControlFacts>& all = m_input.header.setup.controls;
        return signal != kNoSignal && indexOf(signal) < all.size() ? &all[indexOf(signal)] : nullptr;
    }

    [[nodiscard]] bool isSimulated(SignalId signal) const {
        const ControlFacts* facts = factsOf(signal);
        return facts != nullptr && facts->isSimulated;
    }

    [[nodiscard]] std::string controlName(ControlId control, SignalId signal) const {
        const std::vector<std::string>& names = m_input.header.controlNames;
        if (control != kNoControl && static_cast<std::size_t>(control) < names.size())
            return names[static_cast<std::size_t>(control)];
        return signal != kNoSignal ? m_input.aircraft.signals[signal].label : std::string();
    }

    void findGuards() {
        const std::vector<std::vector<Episode>> episodes = guardEpisodes(m_input.flow, m_input.events);
        for (std::size_t i = 0; i < episodes.size(); ++i) {
            const Guard& guard = m_input.flow.guards[i];
            m_findings.guards.push_back({guard.id, guard.title, guard.isCritical, episodes[i]});
        }
    }

    void findExtras() {
        std::vector<SignalId> signals;
        for (const Event& event : m_input.events) {
            if (event.kind == EventKind::WrongControl || event.kind == EventKind::WrongValue) {
                m_findings.extras.push_back({event.time, event.kind == EventKind::WrongValue, extraText(event), false});
                signals.push_back(event.signal);
            }
            if (event.kind != EventKind::ExtraCancelled)
                continue;
            // The last one of that control that still counts.
            for (std::size_t i = m_findings.extras.size(); i-- > 0;) {
                if (signals[i] != event.signal || m_findings.extras[i].isPutBack)
                    continue;
                m_findings.extras[i].isPutBack = true;
                break;
            }
        }
    }

    [[nodiscard]] Phrase extraText(const Event& event) const {
        Phrase text = event.kind == EventKind::WrongValue ? phrase("wrong value") : phrase("wrong control");
        if (event.signal != kNoSignal) {
            const Signal& signal = m_input.aircraft.signals[event.signal];
            text = phrase("{1}: {2} moved to {3}").with(std::move(text), signal.label, valueWords(signal, event.value));
        }
        const std::string title = titleOf(event);
        return title.empty() ? text : phrase("{1}, in place of '{2}'").with(std::move(text), title);
    }

    void remark(Phrase text) { m_findings.remarks.push_back(std::move(text)); }

    void findRemarks() {
        if (m_input.isCutOff)
            remark(phrase("The program ended in mid-run; this is what was recovered of it."));
        for (const std::string& damage : m_input.damage)
            remark(phrase("Damaged in the store: {1}.").with(damage));
        remarkHelp();
        remarkSimulated();
        remarkFlight();
        remarkUnobserved();
        if (m_input.header.setup.isSolo)
            remark(phrase("Flown without a partner: the pilot did both seats' steps."));
        for (const Event& event : m_input.events)
            remarkEvent(event);
        for (Phrase& text : lossRemarks(m_input.losses))
            remark(std::move(text));
    }

    void remarkHelp() {
        const RunHeader& header = m_input.header;
        if (!header.help.empty())
            remark(phrase("Help while flying: {1}.").with(helpWords(header.help)));
        if (header.setup.timeScale != 1.0)
            remark(phrase("Flown in slow time: a second of the run, as times are given here, took {1} s.")
                       .with(numberText(1.0 / header.setup.timeScale)));
    }

    void remarkSimulated() {
        std::vector<std::string> titles;
        for (const StepFinding& step : m_findings.steps)
            if (step.isSimulated)
                titles.push_back(step.title);
        if (titles.empty())
            return;
        const bool isAll = std::all_of(m_findings.steps.begin(), m_findings.steps.end(), [](const StepFinding& step) {
            return step.isSimulated || !step.isOwn || step.by.empty();
        });
        remark(isAll ? phrase("Simulated input: every step was done on screen or by scripted hands, none on a control.")
                     : phrase("Simulated input, on screen or by scripted hands: {1}.").with(joined(titles, "; ")));
    }

    [[nodiscard]] std::string titleOf(const Event& event) const {
        const bool isThere = event.step >= 0 && static_cast<std::size_t>(event.step) < m_input.flow.steps.size();
        return isThere ? m_input.flow.steps[static_cast<std::size_t>(event.step)].title : "";
    }

    void remarkFlight() {
        if (!m_input.header.scenario.empty())
            remark(phrase("Scenario: {1}.").with(m_input.header.scenario));
        const std::string& motion = m_input.header.motionSource;
        if (!motion.empty() && motion != "practice aircraft")
            remark(phrase("Motion: {1}.").with(motionWords(motion)));
    }

    void remarkUnobserved() {
        for (const Event& event : m_input.events) {
            if (event.kind != EventKind::StepLeftOut || titleOf(event).empty())
                continue;
            remark(event.text.isEmpty()
                       ? phrase("This rig could not observe '{1}'; it was left out of the score.").with(titleOf(event))
                       : phrase("This rig could not observe '{1}': {2}; it was left out of the score.")
                             .with(titleOf(event), event.text));
        }
    }

    [[nodiscard]] Phrase waivedText(const Event& event) const {
        if (event.signal == kNoSignal)
            return phrase("The set-up was not as the flow wants it, and waived.");
        const Signal& signal = m_input.aircraft.signals[event.signal];
        return phrase("Waived at the start: {1} was not at {2}.").with(signal.label, valueWords(signal, event.value));
    }

    void remarkEvent(const Event& event) {
        const std::string at = clockText(event.time);
        const Phrase& why = event.text;
        switch (event.kind) {
        case EventKind::SetUpWaived:
            remark(waivedText(event));
            break;
        case EventKind::Held:
            remark(why.isEmpty() ? phrase("Held at {1}.").with(at)
                                 : phrase("Held at {1}: {2}.").with(at, unstopped(why)));
            break;
        case EventKind::Gap:
            remark(why.isEmpty() ? phrase("Input was lost at {1}; the time without it is not counted.").with(at)
                                 : phrase("Input was lost at {1}: {2}; the time without it is not counted.")
                                       .with(at, unstopped(why)));
            break;
        case EventKind::Jumped:
            remark(phrase("Jumped at {1} to '{2}'; what was jumped over is not counted, and the run does not pass.")
                       .with(at, titleOf(event)));
            break;
        case EventKind::Placed:
            remark(phrase("The aircraft was put elsewhere at {1}: {2}.").with(at, spaced(why.english())));
            break;
        case EventKind::GuardLeftOut:
            remarkUnwatched(event);
            break;
        case EventKind::ScenarioEvent:
            remark(phrase("The scenario at {1}: {2}.").with(at, unstopped(why)));
            break;
        case EventKind::OutcomeReached:
            remark(phrase("The flow ended in another way at {1}: {2}.").with(at, why));
            break;
        default:
            break;
        }
    }

    void remarkUnwatched(const Event& event) {
        if (event.guard < 0)
            return;
        const std::string& title = m_input.flow.guards[static_cast<std::size_t>(event.guard)].title;
        remark(event.text.isEmpty() ? phrase("'{1}' was not watched.").with(title)
                                    : phrase("'{1}' was {2}.").with(title, unstopped(event.text)));
    }

    const DebriefInput& m_input;
    Findings m_findings;
};

} // namespace

Findings findingsOf(const DebriefInput& input) {
    return Finder(input).find();
}

std::string pointsText(std::int64_t milliPoints) {
    char text[32];
    std::snprintf(text, sizeof text, "%s%lld.%03lld", milliPoints < 0 ? "-" : "",
                  static_cast<long long>(std::abs(milliPoints) / 1000),
                  static_cast<long long>(std::abs(milliPoints) % 1000));
    std::string points = text;
    points.erase(points.find_last_not_of('0') + 1);
    if (points.back() == '.')
        points.pop_back();
    return points;
}

std::string wallTime(std::int64_t unixMillis) {
    const std::time_t time = static_cast<std::time_t>(unixMillis / 1000);
    std::tm parts{};
    localtime_r(&time, &parts);
    char text[32];
    std::strftime(text, sizeof text, "%Y-%m-%d %H:%M", &parts);
    return text;
}

} // namespace flowhand
