#include "progress/flowprogress.h"

#include "progress/trend.h"

namespace flowhand {

FlowProgress flowProgress(const std::vector<const PractisedRun*>& runs) {
    FlowProgress progress;
    const PractisedRun& newest = *runs.back();
    progress.flow = newest.flow;
    progress.title = newest.flowTitle;
    progress.whyNotPassed = newest.isPassed ? Phrase() : newest.whyNotPassed;
    std::vector<double> scores, paces;
    std::vector<TimedTry> tries;
    std::vector<RunMoment> moments;
    for (const PractisedRun* run : runs) {
        progress.points.push_back(
            {run->id, run->startedUnixMillis, run->milliPoints, run->pace, run->isPassed, run->isComplete, run->help});
        scores.push_back(static_cast<double>(run->milliPoints) / 1000.0);
        moments.push_back({run->startedUnixMillis, run->isPassed});
        if (!run->isComplete || run->pace <= Duration{})
            continue;
        paces.push_back(seconds(run->pace));
        tries.push_back({static_cast<int>(progress.points.size()), seconds(run->pace)});
    }
    progress.pointsPerRun = trendOf(scores);
    progress.secondsPerRun = trendOf(paces);
    progress.curve = learningCurve(tries);
    progress.steps = stepRates(runs);
    progress.memory = memoryOf(moments);
    return progress;
}

} // namespace flowhand
