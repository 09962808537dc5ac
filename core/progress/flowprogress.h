#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "progress/forgetting.h"
#include "progress/learningcurve.h"
#include "progress/practice.h"
#include "progress/steprates.h"

namespace flowhand {

/// One run on the way of a flow.
struct ProgressPoint {
    std::int64_t run = 0;
    std::int64_t startedUnixMillis = 0;
    std::int64_t milliPoints = 0;
    Duration pace{}; ///< 0: not told
    bool isPassed = false;
    bool isComplete = false; ///< paces of others are shorter than the flow, and are left out of trend and curve
    std::string help;
};

/// How one flow has gone, by one pilot on one rig.
struct FlowProgress {
    FlowName flow;
    std::string title;                   ///< as in the newest run
    std::vector<ProgressPoint> points;   ///< oldest first; one at least
    std::optional<double> pointsPerRun;  ///< trend of the score
    std::optional<double> secondsPerRun; ///< trend of the pace
    std::vector<StepRate> steps;         ///< that go wrong, worst first
    std::optional<LearningCurve> curve;  ///< of the pace
    Memory memory;
    Phrase whyNotPassed; ///< of the last run; empty: it passed
};

/// `runs`: of one flow, oldest first; one at least.
[[nodiscard]] FlowProgress flowProgress(const std::vector<const PractisedRun*>& runs);

} // namespace flowhand
