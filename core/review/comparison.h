#pragma once

#include <optional>
#include <string>
#include <vector>

#include "review/timeline.h"

namespace flowhand {

/// One step of a run beside the same step (by its id) of another one.
struct StepComparison {
    std::string id;
    std::string title;
    int step = -1;                        ///< in the run; -1: it has none
    int otherStep = -1;                   ///< in the other run; -1: it has none
    std::optional<Duration> elapsed;      ///< in the run from its start to the step done, less what it was held
    std::optional<Duration> otherElapsed; ///< the same of the other run
    std::optional<Duration> cumulative;   ///< elapsed less otherElapsed: behind, or ahead when negative
    std::optional<Duration> delta;        ///< what of it came since the compared step before
    Phrase verdict;                       ///< in the run
    Phrase otherVerdict;                  ///< in the other run
    std::int64_t milliPoints = 0;         ///< lost in the run
    std::int64_t otherMilliPoints = 0;    ///< lost in the other run
    std::vector<Phrase> differences;      ///< in whole phrases; none: it went the same, but for time
};

/// Two runs step by step, not by the clock.
struct RunComparison {
    std::vector<StepComparison> steps; ///< in the run's order of steps; then those that only the other run has
    std::vector<Phrase> differences;   ///< of the runs as a whole
};

/// Steps done in both are timed against each other in the order in which the other run did them: a pause before one
/// step of either run changes one delta and every cumulative time after it.
[[nodiscard]] RunComparison compareRuns(const Timeline& run, const Timeline& other);

/// What differs in a step, in one line: differences, or by how much it was done earlier or later.
[[nodiscard]] Phrase changeText(const StepComparison& step);

/// Of one run judged twice: the steps whose verdict, time or points are not the same, or that only one judgement has.
[[nodiscard]] std::vector<StepComparison> changedSteps(const RunComparison& comparison);

} // namespace flowhand
