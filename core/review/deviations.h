#pragma once

#include <cstdint>
#include <optional>
#include <vector>

#include "base/phrase.h"
#include "review/movements.h"
#include "review/reviewedrun.h"

namespace flowhand {

/// Something that cost points, at the time at which to look at it.
struct Deviation {
    Time time{};
    std::int64_t milliPoints = 0; ///< > 0
    int step = -1;
    int guard = -1;
    LossKind what = LossKind::NotDone;
    Phrase text; ///< whole, in words
};

/// The ledger's lines, guards first, then worst first; without the line that gives back what the floor cut off.
[[nodiscard]] std::vector<Deviation> deviationsOf(const ReviewedRun& run);

/// An error of the pilot's hand, or a broken guard, and whether and when it was put right.
struct Repair {
    Time time{}; ///< when it was made: the hand was there, the guard broke
    int step = -1;
    int guard = -1;
    Phrase text;                  ///< what was wrong
    std::optional<Time> repaired; ///< none: not before the end
};

/// In the order of time. A wrong control is repaired when it stands again where it stood before, a wrong value when
/// the step is done, an undone step when its control stands again where it had been, a guard when it is kept again.
[[nodiscard]] std::vector<Repair> repairsOf(const ReviewedRun& run, const std::vector<ControlMovement>& movements);

/// "put right after 1.2 s", "not put right".
[[nodiscard]] Phrase repairText(const Repair& repair);

/// How a step went, in words: "done", "1.2 s late", "not done".
[[nodiscard]] Phrase stepVerdict(const Flow& flow, const std::vector<StepResult>& results, const Score& score,
                                 std::size_t step);

/// The run's good side in one sentence: "11 of 13 steps in order and on time; every guard kept."
[[nodiscard]] Phrase wentWell(const ReviewedRun& run);

} // namespace flowhand
