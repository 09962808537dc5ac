#pragma once

#include <string>

#include "progress/progress.h"

namespace flowhand {

/// For a terminal: what to fly next and why, then each flow. `flow` alone where it is given. Lines of at most 100
/// characters.
[[nodiscard]] std::string progressText(const PracticeRecord& record, const Progress& progress, const FlowName* flow);

/// The same as one JSON object; times in whole microseconds, points in thousandths.
[[nodiscard]] std::string progressJson(const PracticeRecord& record, const Progress& progress, const FlowName* flow);

/// "3 of 8".
[[nodiscard]] Phrase rateText(int part, int whole);
/// "2.1 points better a run", "0.4 s slower a run", "the same".
[[nodiscard]] Phrase scoreTrendText(double pointsPerRun);
[[nodiscard]] Phrase paceTrendText(double secondsPerRun);
/// "power law of practice through 8 runs, typically 6 % off; the next about 41.2 s".
[[nodiscard]] Phrase curveText(const LearningCurve& curve, int nextTry);

} // namespace flowhand
