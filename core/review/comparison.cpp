#include "review/comparison.h"

#include <algorithm>
#include <cmath>
#include <cstdio>

#include "base/names.h"

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
    [[nodiscard]] std::string doneWith(int step) const {
        std::string text;
        for (const Event& event : run().events)
            if (event.step == step && event.signal != kNoSignal &&
                (event.kind == EventKind::StepDone || event.kind == EventKind::StepTooEarly ||
                 event.kind == EventKind::StepUncertain))
                text = run().aircraft.signals[event.signal].label + " at " +
                       valueText(run().aircraft.signals[event.signal], event.value);
        return text;
    }
};

std::string tenths(Duration duration) {
    char text[32];
    std::snprintf(text, sizeof text, "%.1f s", seconds(duration));
    return text;
}

std::string was(const std::string& here, const std::string& there) {
    return here + " (the other: " + there + ")";
}

/// What a step's times say besides how long it took.
std::string mannerOf(const StepTimes& times, const Aircraft& aircraft) {
    std::string text;
    if (times.wrongReach)
        text += "reached for " + aircraft.signals[times.wrongReach->signal].label + " first";
    if (times.hesitation)
        text += (text.empty() ? "hesitated " : ", hesitated ") + tenths(times.hesitation->length);
    if (times.overshoot)
        text += text.empty() ? "went too far first" : ", went too far first";
    return text.empty() ? "straight" : text;
}

void addDifferences(StepComparison& compared, const Side& run, const Side& other) {
    if (compared.verdict != compared.otherVerdict)
        compared.differences.push_back(was(compared.verdict, compared.otherVerdict));
    const std::string value = run.doneWith(compared.step);
    const std::string otherValue = other.doneWith(compared.otherStep);
    if (!value.empty() && !otherValue.empty() && value != otherValue)
        compared.differences.push_back(was(value, otherValue));
    const auto times = [](const Side& side, int step) -> const StepTimes& {
        return side.timeline.steps()[static_cast<std::size_t>(step)];
    };
    const std::string manner = mannerOf(times(run, compared.step), run.run().aircraft);
    const std::string otherManner = mannerOf(times(other, compared.otherStep), other.run().aircraft);
    if (manner != otherManner)
        compared.differences.push_back(was(manner, otherManner));
    if (compared.milliPoints != compared.otherMilliPoints) {
        char text[80];
        std::snprintf(text, sizeof text, "lost %g points (the other: %g)", compared.milliPoints / 1000.0,
                      compared.otherMilliPoints / 1000.0);
        compared.differences.emplace_back(text);
    }
}

StepComparison stepOf(const Side& run, const Side& other, const Step& step) {
    StepComparison compared;
    compared.id = step.id;
    compared.title = step.title;
    compared.step = run.find(step.id);
    compared.otherStep = other.find(step.id);
    const auto look = [](const Side& side, int at, std::optional<Duration>& elapsed, std::string& verdict,
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
        compared.differences.emplace_back("only in the other run");
    else if (compared.otherStep < 0)
        compared.differences.emplace_back("not in the other run");
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

std::vector<std::string> wholeDifferences(const Side& run, const Side& other) {
    std::vector<std::string> all;
    const RunHeader& here = run.run().header;
    const RunHeader& there = other.run().header;
    const auto add = [&](const char* what, const std::string& a, const std::string& b) {
        if (a != b)
            all.push_back(std::string(what) + ": " + was(a.empty() ? "none" : a, b.empty() ? "none" : b));
    };
    add("rig", here.rigTitle, there.rigTitle);
    add("seat", here.setup.ownSeat, there.setup.ownSeat);
    add("partner", here.setup.isSolo ? "none" : "with", there.setup.isSolo ? "none" : "with");
    add("motion", here.motionSource, there.motionSource);
    if (here.flowSource != there.flowSource)
        all.emplace_back("the flow's file is not the same in both runs");
    if (here.aircraftSource != there.aircraftSource)
        all.emplace_back("the aircraft's file is not the same in both runs");
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

std::string changeText(const StepComparison& step) {
    if (!step.differences.empty())
        return joined(step.differences, "; ");
    if (!step.cumulative)
        return "done in one only";
    return tenths(std::chrono::abs(*step.cumulative)) + (*step.cumulative < Duration{} ? " earlier" : " later");
}

std::vector<StepComparison> changedSteps(const RunComparison& comparison) {
    std::vector<StepComparison> changed;
    for (const StepComparison& step : comparison.steps)
        if (!step.differences.empty() || step.elapsed != step.otherElapsed)
            changed.push_back(step);
    return changed;
}

} // namespace flowhand
