#pragma once

#include <optional>
#include <vector>

#include "review/movements.h"
#include "review/reviewedrun.h"

namespace flowhand {

/// A control stood still although its step was not done.
struct Hesitation {
    Time from{};
    Duration length{};
};

/// A control went past where it settled, and came back.
struct Overshoot {
    Time time{}; ///< of the farthest point
    SignalId signal = kNoSignal;
    double amount = 0.0; ///< > 0; in the signal's unit, of positions: how many
};

/// The hand went to another control first.
struct WrongReach {
    Time time{}; ///< when that movement began
    SignalId signal = kNoSignal;
};

/// What was going on when a step was done (or, if it never was, when it was due).
struct StepContext {
    std::optional<double> groundSpeed; ///< kt
    std::optional<double> airspeed;    ///< kt
    bool isTurning = false;            ///< at more than half the standard rate
    bool isSubstitute = false;         ///< moved on screen or by a script, not on a control
};

/// The times of one step, each by itself. None: it did not happen.
struct StepTimes {
    std::optional<Time> cueBegan; ///< its words began
    std::optional<Time> cueEnded; ///< its words ended
    std::optional<Time> due;      ///< as it is judged from
    std::optional<WrongReach> wrongReach;
    std::optional<Time> firstMovement;    ///< of one of its controls, by its doer
    std::optional<Hesitation> hesitation; ///< the longest between first movement and done, at least 0.3 s
    std::optional<Overshoot> overshoot;
    std::optional<Time> seen;
    std::optional<Time> done;    ///< from when its condition has been true
    std::optional<Time> settled; ///< when that was certain: its controls had come to rest
    std::optional<Time> ended;   ///< omitted, void, left out
    StepContext context;
};

/// By step. `movements`: movementsOf(run).
[[nodiscard]] std::vector<StepTimes> stepTimes(const ReviewedRun& run, const std::vector<ControlMovement>& movements);

/// In words, as a review lists them: "due 0:12.0, first movement 1.4 s later, ...". Empty when nothing is known.
[[nodiscard]] Phrase timesText(const StepTimes& times, const Aircraft& aircraft);

/// "at 12 kt, turning, on screen"; empty when nothing is to be said.
[[nodiscard]] Phrase contextText(const StepContext& context);

} // namespace flowhand
