#pragma once

#include <limits>

#include "condition/ring.h"
#include "condition/robust.h"
#include "condition/windows.h"

namespace flowhand {

/// The highest that the operand was within a window that moves along with time (a monotone queue), for `since` none
/// higher than the lowest that its left operand has been from then until now.
///
/// Step it at each instant at which an operand changes, in order; in between at any instant at which the answer is
/// wanted. The same instant again replaces it.
class HighestInWindow {
public:
    [[nodiscard]] Robust step(const KeyWindow& window, Key now, const Robust& operand, const Robust& left);
    /// The next instant at which the answer may change by time alone; after a step.
    [[nodiscard]] Key next(const KeyWindow& window) const;

private:
    /// A stretch with one value that is over.
    struct Past {
        Key from = 0;
        Key last = 0;
        Robust value;
    };
    struct Candidate {
        Key exit = 0; ///< the last instant with it in the window
        Robust value;
    };
    struct Present {
        Key from = std::numeric_limits<Key>::min();
        Robust value;
    };

    void follow(const KeyWindow& window, Key now, const Robust& operand);
    void followLeft(const KeyWindow& window, Key now, const Robust& left);
    void enter(const KeyWindow& window, Key exit, const Robust& value);
    [[nodiscard]] Robust lowestLeftFrom(Key from);

    Ring<Past> m_coming;          // not yet in the window
    Ring<Candidate> m_candidates; // in the window, each lower than the one before
    Ring<Past> m_lefts;           // of the left operand while something is coming, each higher than the one before
    Present m_operand{std::numeric_limits<Key>::min(), kSurelyNot};
    Present m_left{std::numeric_limits<Key>::min(), kSurely};
    Key m_now = std::numeric_limits<Key>::min();
};

/// The same for the least and the greatest that the operands may be, kept apart only once they differ.
class HighestPair {
public:
    [[nodiscard]] RobustPair step(const KeyWindow& window, Key now, const RobustPair& operand, const RobustPair& left);
    [[nodiscard]] Key next(const KeyWindow& window) const;

private:
    HighestInWindow m_low;
    HighestInWindow m_high;
    bool m_isApart = false;
};

} // namespace flowhand
