#include "review/comparison.h"

#include <algorithm>
#include <cmath>
#include <cstdio>

#include "base/figuretext.h"
#include "base/valuewords.h"
#include "session/headerwords.h"

namespace flowhand {

namespace {

/// What stands beside what: a run's step with all that is known of it.
struct Side {
    const Timeline& timeline;
    Time begun{};

    explicit Side(const Timeline& reviewed) : timeline(reviewed) {
        for (const Event& event : reviewed.run().events)
            if (event.kind == EventKind::RunStarted)
                begun = event.time;
    }
    [[nodiscard]] const ReviewedRun& run() const { return timeline.run(); }
    [[nodiscard]] int find(const std::string& id) const {
        const std::vector<Step>& steps = run().flow.steps;
        for (std::size_t i = 0; i < steps.size() && i < timeline.steps().size(); ++i)
            if (steps[i].id == id)
                return static_cast<int>(i);
        return -1;
    }
    [[nodiscard]] std::optional<Duration> elapsed(int step) const {
        const std::optional<Time> done = timeline.steps()[static_cast<std::size_t>(step)].done;
        if (!done)
            return std::nullopt;
        return *done - begun - heldIn(timeline.holds(), begun, *done);
    }
    [[nodiscard]] std::int64_t lost(int step) const {
        std::int64_t sum = 0;
        for (const LedgerLine& line : run().score.ledger)
            if (line.step == step)
                sum += line.milliPoints;
        return sum;
    }
    /// The control's value with which the step was done; none where it was done by words or not at all.
    [[nodiscard]] Phrase doneWith(int step) const {
        Phrase text;
        for (const Event& event : run().events)
            if (event.step == step && event.signal != kNoSignal &&
                (event.kind == EventKind::StepDone || event.kind == EventKind::StepTooEarly ||
                 event.kind == EventKind::StepUncertain))
                text = phrase("{1} at {2}")
                           .with(run().aircraft.signals[event.signal].label,
                                 valueWords(run().aircraft.signals[event.signal], event.value));
        return text;
    }
};

std::string pointsOf(std::int64_t milliPoints) {
    char text[32];
    std::snprintf(text, sizeof text, "%g", static_cast<double>(milliPoints) / 1000.0);
    return text;
}

Phrase was(const Phrase& here, const Phrase& there) {
    return phrase("{1} (the other: {2})").with(here, there);
}

/// What a step's times say besides how long it took.
Phrase mannerOf(const StepTimes& times, const Aircraft& aircraft) {
    std::vector<Phrase> all;
    if (times.wrongReach)
        all.push_back(phrase("reached for {1} first").with(aircraft.signals[times.wrongReach->signal].label));
    if (times.hesitation)
        all.push_back(phrase("hesitated {1}").with(secondsToTenths(times.hesitation->length)));
    if (times.overshoot)
        all.push_back(phrase("went too far first"));
    return all.empty() ? phrase("straight") : joined(all, ", ");
}

void addDifferences(StepComparison& compared, const Side& run, const Side& other) {
    if (compared.verdict != compared.otherVerdict)
        compared.differences.push_back(was(compared.verdict, compared.otherVerdict));
    const Phrase value = run.doneWith(compared.step);
    const Phrase otherValue = other.doneWith(compared.otherStep);
    if (!value.isEmpty() && !otherValue.isEmpty() && value != otherValue)
        compared.differences.push_back(was(value, otherValue));
    const auto times = [](const Side& side, int step) -> const StepTimes& {
        return side.timeline.steps()[static_cast<std::size_t>(step)];
    };
    const Phrase manner = mannerOf(times(run, compared.step), run.run().aircraft);
    const Phrase otherManner = mannerOf(times(other, compared.otherStep), other.run().aircraft);
    if (manner != otherManner)
        compared.differences.push_back(was(manner, otherManner));
    if (compared.milliPoints != compared.otherMilliPoints) {
        compared.differences.push_back(phrase("lost {1} points (the other: {2})")
                                           .with(pointsOf(compared.milliPoints), pointsOf(compared.otherMilliPoints)));
    }
}

StepComparison stepOf(const Side& run, const Side& other, const Step& step) {
    StepComparison compared;
    compared.id = step.id;
    compared.title = step.title;
    compared.step = run.find(step.id);
    compared.otherStep = other.find(step.id);
    const auto look = [](const Side& side, int at, std::optional<Duration>& elapsed, Phrase& verdict,
                         std::int64_t& lost) {
        if (at < 0)
            return;
        elapsed = side.elapsed(at);
        lost = side.lost(at);
        verdict = stepVerdict(side.run().flow, side.run().results, side.run().score, static_cast<std::size_t>(at));
    };
    look(run, compared.step, compared.elapsed, compared.verdict, compared.milliPoints);
    look(other, compared.otherStep, compared.otherElapsed, compared.otherVerdict, compared.otherMilliPoints);
    if (compared.step < 0)
        compared.differences.push_back(phrase("only in the other run"));
    else if (compared.otherStep < 0)
        compared.differences.push_back(phrase("not in the other run"));
    else
        addDifferences(compared, run, other);
    return compared;
}

void addDeltas(std::vector<StepComparison>& steps) {
    std::vector<StepComparison*> timed;
    for (StepComparison& step : steps)
        if (step.elapsed && step.otherElapsed)
            timed.push_back(&step);
    std::stable_sort(timed.begin(), timed.end(), [](const StepComparison* a, const StepComparison* b) {
        return *a->otherElapsed < *b->otherElapsed;
    });
    Duration before{};
    for (StepComparison* step : timed) {
        step->cumulative = *step->elapsed - *step->otherElapsed;
        step->delta = *step->cumulative - before;
        before = *step->cumulative;
    }
}

std::vector<Phrase> wholeDifferences(const Side& run, const Side& other) {
    std::vector<Phrase> all;
    const RunHeader& here = run.run().header;
    const RunHeader& there = other.run().header;
    const auto orNone = [](const std::string& text) {
        return text.empty() ? phrase("none") : Phrase(text);
    };
    if (here.rigTitle != there.rigTitle)
        all.push_back(phrase("rig: {1}").with(was(orNone(here.rigTitle), orNone(there.rigTitle))));
    if (here.setup.ownSeat != there.setup.ownSeat)
        all.push_back(phrase("seat: {1}").with(was(here.setup.ownSeat, there.setup.ownSeat)));
    if (here.setup.isSolo != there.setup.isSolo)
        all.push_back(here.setup.isSolo ? phrase("partner: none (the other: with)")
                                        : phrase("partner: with (the other: none)"));
    if (here.motionSource != there.motionSource)
        all.push_back(phrase("motion: {1}").with(was(motionWords(here.motionSource), motionWords(there.motionSource))));
    if (here.flowSource != there.flowSource)
        all.push_back(phrase("the flow's file is not the same in both runs"));
    if (here.aircraftSource != there.aircraftSource)
        all.push_back(phrase("the aircraft's file is not the same in both runs"));
    return all;
}

} // namespace

RunComparison compareRuns(const Timeline& run, const Timeline& other) {
    const Side here(run);
    const Side there(other);
    RunComparison comparison;
    for (const Step& step : run.run().flow.steps)
        comparison.steps.push_back(stepOf(here, there, step));
    for (const Step& step : other.run().flow.steps)
        if (here.find(step.id) < 0)
            comparison.steps.push_back(stepOf(here, there, step));
    addDeltas(comparison.steps);
    comparison.differences = wholeDifferences(here, there);
    return comparison;
}

Phrase changeText(const StepComparison& step) {
    if (!step.differences.empty())
        return joined(step.differences, "; ");
    if (!step.cumulative)
        return phrase("done in one only");
    return (*step.cumulative < Duration{} ? phrase("{1} earlier") : phrase("{1} later"))
        .with(secondsToTenths(std::chrono::abs(*step.cumulative)));
}

std::vector<StepComparison> changedSteps(const RunComparison& comparison) {
    std::vector<StepComparison> changed;
    for (const StepComparison& step : comparison.steps)
        if (!step.differences.empty() || step.elapsed != step.otherElapsed)
            changed.push_back(step);
    return changed;
}

} // namespace flowhand
