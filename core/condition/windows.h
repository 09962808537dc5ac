#pragma once

#include <cmath>
#include <limits>

#include "condition/program.h"
#include "condition/ring.h"

// What the operators that look back remember of the truth of their operands, each for one of Kleene's two bits. All are
// stepped at every instant (Key) at which an operand or the operator itself changes, in order. A step at the instant of
// the step before replaces it: then the reference time has been set.

namespace flowhand {

/// The window [t - longest, t - shortest] of an operator, in keys.
struct KeyWindow {
    Key shortest = 0;
    Key longest = 0; ///< not with isEndless
    bool isEndless = false;
    bool isStrict = false; ///< only moments before now

    explicit KeyWindow(const ProgramNode& node)
        : shortest(keyAt(node.shortest)), longest(node.longest ? keyAt(*node.longest) : 0), isEndless(!node.longest),
          isStrict(node.isStrict) {}
    /// From when on what begins at `begin` lies in the window, and until when what ends with `last` does.
    [[nodiscard]] Key entry(Key begin) const { return (isStrict ? begin | 1 : begin) + shortest; }
    [[nodiscard]] Key exit(Key last) const { return isEndless ? kNever : last + longest; }
};

/// Whether the operand was true at some moment of the window; and with `isAlive` false, from then on not before it
/// becomes true again (the left operand of `since`). Keeps the merged stretches in which the answer is yes: one, or
/// those that are still to come, so a toggling operand costs no memory.
class TruthWindow {
public:
    bool step(const KeyWindow& window, Key now, bool operand, bool isAlive);
    /// The next instant at which the answer may change.
    [[nodiscard]] Key next() const;

private:
    struct Span {
        Key from = 0;
        Key to = 0; ///< the last instant
    };
    void open(const KeyWindow& window, Key now);
    void close(const KeyWindow& window, Key now);

    Ring<Span> m_spans; // in order, apart from each other; the last one ends never while the operand is true
    Key m_now = std::numeric_limits<Key>::min();
    Key m_openedAt = std::numeric_limits<Key>::min();
    Key m_deadSince = kNever; // kNever while alive
    Key m_mergedEnd = 0;      // the last span's end before it was opened again
    bool m_hasMerged = false;
    bool m_operand = false;
};

/// Whether the operand has been true for a length of time, counted from the reference time at the earliest.
class TruthHeld {
public:
    bool step(Key length, Key reference, Key now, bool operand);
    [[nodiscard]] Key next() const { return m_due; }

private:
    Key m_since = 0;
    Key m_endedAt = std::numeric_limits<Key>::min();
    Key m_due = kNever; // when it will have lasted long enough
    bool m_operand = false;
};

/// Whether the operand rises at this very moment; both bits at once, because each needs the other.
class TruthRise {
public:
    Kleene step(Key now, Kleene operand);
    [[nodiscard]] Key next() const { return m_next; }

private:
    Key m_now = std::numeric_limits<Key>::min();
    Key m_next = kNever;
    Kleene m_operand = Kleene::True; // before the first sample: so nothing rises with it
    Kleene m_before = Kleene::True;
};

/// Smallest and largest of a number over a stretch.
class Range {
public:
    void add(double number);
    void clear() { *this = {}; }
    [[nodiscard]] double width() const { return m_highest >= m_lowest ? m_highest - m_lowest : 0.0; }
    /// How far rounding may have led the width from what decimals would give.
    [[nodiscard]] double doubt() const {
        return m_highest >= m_lowest ? kFewRoundings * (std::fabs(m_lowest) + std::fabs(m_highest)) : 0.0;
    }
    [[nodiscard]] bool hasNumber() const { return m_highest >= m_lowest; }
    [[nodiscard]] bool hasUnknown() const { return m_hasUnknown; }

private:
    /// Of the ends, of their difference, and of what they may be calculated from.
    static constexpr double kFewRoundings = 4.0 * kRounding;

    double m_lowest = std::numeric_limits<double>::infinity();
    double m_highest = -std::numeric_limits<double>::infinity();
    bool m_hasUnknown = false;
};

/// The range of a number within the present stretch of a condition.
class StretchRange {
public:
    /// False: outside a stretch; the range is that of the last one only until `now` passes.
    void step(Key now, double number, bool isInside);
    [[nodiscard]] const Range& range() const { return m_range; }

private:
    Range m_range;
    Key m_endedAt = kNever;
};

} // namespace flowhand
