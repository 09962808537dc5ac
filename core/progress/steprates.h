#pragma once

#include <string>
#include <vector>

#include "progress/practice.h"

namespace flowhand {

/// Older runs say what went wrong once, not what goes wrong now.
inline constexpr std::size_t kRunsForRates = 10;

/// What was done instead of a step, in how many runs.
struct Instead {
    Phrase words;
    int runs = 0;
};

/// How often a step went wrong.
struct StepRate {
    std::string id;
    std::string title;            ///< as in the newest run
    int wrong = 0;                ///< runs in which it did
    int runs = 0;                 ///< in which it counted
    std::vector<Instead> instead; ///< the most frequent first
};

/// The steps that went wrong in the newest kRunsForRates of `runs` (one flow's, oldest first), by the lower end of the
/// 95 % interval of their rate, highest first: so 1 of 1 does not stand above 6 of 8.
[[nodiscard]] std::vector<StepRate> stepRates(const std::vector<const PractisedRun*>& runs);

/// Lower end of the interval for `wrong` of `runs` (Wilson 1927, J. Am. Stat. Assoc. 22, 209-212; from memory),
/// z = 1.96. 0..1; 0 where there are no runs.
[[nodiscard]] double lowestRate(int wrong, int runs);

} // namespace flowhand
