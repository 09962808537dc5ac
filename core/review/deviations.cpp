#include "review/deviations.h"

#include <algorithm>
#include <cmath>

#include "base/figuretext.h"
#include "review/episodes.h"

namespace flowhand {

namespace {

Phrase lateText(Duration late) {
    return phrase("{1} late").with(secondsToTenths(late));
}

/// Where to look for one line of the ledger.
Time timeOf(const ReviewedRun& run, const LedgerLine& line) {
    // Extras carry the event's own words.
    for (const Event& event : run.events)
        if (!event.text.isEmpty() && event.text == line.text)
            return event.time;
    for (const Event& event : run.events)
        if (line.guard >= 0 && event.guard == line.guard && event.kind == EventKind::GuardBroken)
            return event.time;
    if (line.step < 0 || static_cast<std::size_t>(line.step) >= run.results.size())
        return {};
    const StepResult& result = run.results[static_cast<std::size_t>(line.step)];
    // What was not done is looked at where it was asked for, or else where it was given up.
    if (result.done != kForever)
        return result.done;
    if (result.due != kForever)
        return result.due;
    for (const Event& event : run.events)
        if (event.step == line.step && event.kind == EventKind::StepOmitted)
            return event.time;
    return {};
}

int rank(const LedgerLine& line) {
    return line.guard >= 0 ? 0 : 1;
}

bool isSameValue(const Signal& signal, Value a, Value b) {
    if (signal.kind != SignalKind::Number || !a.isKnown() || !b.isKnown())
        return a == b;
    constexpr double kSamePlace = 0.02; // of the range: both ends of the way may be off by the 1 % of a movement
    return std::fabs(a.number() - b.number()) <= kSamePlace * (signal.highest - signal.lowest);
}

class RepairFinder {
public:
    RepairFinder(const ReviewedRun& run, const std::vector<ControlMovement>& movements)
        : m_run(run), m_movements(movements) {}

    std::vector<Repair> find() {
        for (const Event& event : m_run.events)
            if (event.kind == EventKind::WrongControl || event.kind == EventKind::WrongValue ||
                event.kind == EventKind::StepUndone)
                add(event);
        const std::vector<std::vector<Episode>> guards = guardEpisodes(m_run.flow, m_run.events);
        for (std::size_t guard = 0; guard < guards.size(); ++guard)
            for (const Episode& episode : guards[guard])
                m_repairs.push_back(
                    {episode.from, -1, static_cast<int>(guard), m_run.flow.guards[guard].title, keptAgain(episode)});
        std::stable_sort(m_repairs.begin(), m_repairs.end(), [](const Repair& a, const Repair& b) {
            return a.time < b.time;
        });
        return std::move(m_repairs);
    }

private:
    /// An episode that the end of the run ended was not put right.
    [[nodiscard]] std::optional<Time> keptAgain(const Episode& episode) const {
        const bool isByEnd = episode.to && !m_run.events.empty() && m_run.events.back().kind == EventKind::RunEnded &&
                             *episode.to >= m_run.events.back().time;
        return isByEnd ? std::nullopt : episode.to;
    }

    void add(const Event& event) {
        const ControlMovement* movement = nullptr;
        for (const ControlMovement& candidate : m_movements)
            if (candidate.control == event.signal && candidate.actor == Actor::Hand && candidate.began <= event.time)
                movement = &candidate;
        Repair repair{movement != nullptr ? movement->began : event.time, event.step, -1, event.text, std::nullopt};
        if (event.kind == EventKind::WrongValue)
            repair.repaired = doneAfter(event);
        else if (movement != nullptr)
            repair.repaired = backAfter(event, *movement);
        m_repairs.push_back(std::move(repair));
    }

    [[nodiscard]] std::optional<Time> doneAfter(const Event& wrong) const {
        for (const Event& event : m_run.events)
            if (event.time > wrong.time && event.step == wrong.step &&
                (event.kind == EventKind::StepDone || event.kind == EventKind::StepUncertain))
                return m_run.results[static_cast<std::size_t>(wrong.step)].done != kForever
                           ? m_run.results[static_cast<std::size_t>(wrong.step)].done
                           : event.time;
        return std::nullopt;
    }

    [[nodiscard]] std::optional<Time> backAfter(const Event& wrong, const ControlMovement& movement) const {
        const Signal& signal = m_run.aircraft.signals[movement.control];
        for (const ControlMovement& later : m_movements)
            if (later.control == movement.control && later.began > movement.began && later.arrived >= wrong.time &&
                isSameValue(signal, later.to, movement.from))
                return later.arrived;
        return std::nullopt;
    }

    const ReviewedRun& m_run;
    const std::vector<ControlMovement>& m_movements;
    std::vector<Repair> m_repairs;
};

} // namespace

std::vector<Deviation> deviationsOf(const ReviewedRun& run) {
    std::vector<LedgerLine> ledger = run.score.ledger;
    std::erase_if(ledger, [](const LedgerLine& line) {
        return line.milliPoints < 0;
    });
    std::stable_sort(ledger.begin(), ledger.end(), [](const LedgerLine& a, const LedgerLine& b) {
        return rank(a) != rank(b) ? rank(a) < rank(b) : a.milliPoints > b.milliPoints;
    });
    std::vector<Deviation> deviations;
    for (const LedgerLine& line : ledger)
        deviations.push_back({timeOf(run, line), line.milliPoints, line.step, line.guard, line.what,
                              line.text.isEmpty() ? lossWords(line.what) : line.text});
    return deviations;
}

std::vector<Repair> repairsOf(const ReviewedRun& run, const std::vector<ControlMovement>& movements) {
    return RepairFinder(run, movements).find();
}

Phrase repairText(const Repair& repair) {
    if (!repair.repaired)
        return phrase("not put right");
    return phrase("put right after {1}").with(secondsToTenths(*repair.repaired - repair.time));
}

Phrase stepVerdict(const Flow& flow, const std::vector<StepResult>& results, const Score& score, std::size_t step) {
    const StepResult& result = results[step];
    switch (result.state) {
    case StepState::Waiting:
        return phrase("not come to");
    case StepState::Due:
    case StepState::Seen:
        return phrase("open");
    case StepState::Omitted:
        return phrase("not done");
    case StepState::FoundSet:
        return flow.steps[step].compareOnly ? phrase("done, found set") : phrase("found set, not counted");
    case StepState::Void:
        return phrase("void");
    case StepState::LeftOut:
        return phrase("left out");
    case StepState::Done:
    case StepState::TooEarly:
    case StepState::Uncertain:
        break;
    }
    if (result.isUncertain || result.state == StepState::Uncertain)
        return phrase("uncertain");
    if (result.isTooEarly || result.state == StepState::TooEarly)
        return phrase("too early");
    if (step < score.outOfOrder.size() && score.outOfOrder[step])
        return phrase("out of order");
    if (step < score.late.size() && score.late[step] > Duration{})
        return lateText(score.late[step]);
    return phrase("done");
}

Phrase wentWell(const ReviewedRun& run) {
    int own = 0;
    int good = 0;
    for (std::size_t i = 0; i < run.results.size() && i < run.flow.steps.size(); ++i) {
        const StepState state = run.results[i].state;
        if (!run.results[i].isOwn || state == StepState::Void || state == StepState::LeftOut ||
            (state == StepState::FoundSet && !run.flow.steps[i].compareOnly))
            continue;
        ++own;
        const std::string verdict = stepVerdict(run.flow, run.results, run.score, i).text();
        good += verdict == "done" || verdict == "done, found set" ? 1 : 0;
    }
    const Phrase steps =
        own == 0      ? phrase("No step of your own could be judged")
        : good == own ? phrase("All {1} steps in order and on time").with(std::to_string(own))
                      : phrase("{1} of {2} steps in order and on time").with(std::to_string(good), std::to_string(own));
    const std::vector<std::vector<Episode>> guards = guardEpisodes(run.flow, run.events);
    const auto kept = std::count_if(guards.begin(), guards.end(), [](const std::vector<Episode>& episodes) {
        return episodes.empty();
    });
    if (guards.empty())
        return phrase("{1}.").with(steps);
    if (kept == static_cast<std::ptrdiff_t>(guards.size()))
        return phrase("{1}; every guard kept.").with(steps);
    return phrase("{1}; {2} of {3} guards kept.").with(steps, std::to_string(kept), std::to_string(guards.size()));
}

} // namespace flowhand
