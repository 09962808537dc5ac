#pragma once

#include <cstdint>
#include <vector>

namespace flowhand {

// How long a flow stays known. The form is half-life regression, p = 2^(-t/h): Settles and Meeder 2016, 'A Trainable
// Spaced Repetition Model for Language Learning', Proc. ACL, 1848-1858; from memory. Its half-life is h = 2^(theta . x)
// in days; we take x as the number of sittings that began right and that began wrong, with theta +1 and -1, the case
// that they show to be the card box of Leitner. They measured words of a language. For the order of a flow, and more so
// for the skill of the hand, the model is unproven: it says what to practise first, not what a pilot can still do.

inline constexpr std::int64_t kDayMillis = 86'400'000;
/// Runs of a flow that follow each other within this are one sitting: what was flown an hour ago tells little of what
/// is kept until next week. Our own choice: an evening's runs are one sitting, those of morning and evening two.
inline constexpr std::int64_t kSittingGapMillis = 6 * 3'600'000;
inline constexpr double kShortestHalfLife = 0.5;  ///< days: what goes wrong again and again is flown every day
inline constexpr double kLongestHalfLife = 274.0; ///< days, nine months: the bound of Settles and Meeder, from memory

/// When a flow was flown, and whether the run passed.
struct RunMoment {
    std::int64_t unixMillis = 0;
    bool isPassed = false;
};

/// What practice has left of a flow.
struct Memory {
    int right = 0; ///< sittings whose first run passed
    int wrong = 0; ///< and the others
    std::int64_t lastUnixMillis = 0;
    bool isLastPassed = false; ///< of the runs, not the sittings

    [[nodiscard]] double halfLifeDays() const;
    /// p: 0..1, how likely a run now is to go right. Before the last run: as just after it.
    [[nodiscard]] double strengthAt(std::int64_t unixMillis) const;
    /// When p comes down to one half; at once where the last run did not pass.
    [[nodiscard]] std::int64_t dueUnixMillis() const;
};

/// `runs` in the order in which they were flown; at least one.
[[nodiscard]] Memory memoryOf(const std::vector<RunMoment>& runs);

} // namespace flowhand
