#pragma once

#include <optional>
#include <random>
#include <string>
#include <utility>
#include <vector>

#include "base/signal.h"
#include "base/value.h"
#include "condition/scope.h"
#include "condition/syntax.h"

// The condition language by its definition, word for word and slow, to hold the monitor against.
//
// Time is a small number of steps of equal length. All samples and windows are whole steps, so nothing changes between
// two of them, and a signal or a formula is a list with two entries a step: at its beginning, and in the open stretch
// after it. An entry of the list is called an instant.

namespace flowhand::definition {

/// 0 false, 1 unknown, 2 true: `and` is the smaller, `or` the larger, `not` 2 minus it.
using Truths = std::vector<int>;

/// The least and the greatest that a margin may be.
struct Bounds {
    double low = 0.0;
    double high = 0.0;
};
using Margins = std::vector<Bounds>;

enum class Shape {
    Compare,
    Difference,
    OnOff,
    Position,
    Not,
    And,
    Or,
    Once,
    Historically,
    Since,
    Rise,
    Fall,
    Held,
    Sequence,
    Moved,
    MovedWithin
};

struct Formula {
    Shape shape = Shape::OnOff;
    std::string signal;
    std::string other; ///< of Difference
    Comparator comparator = Comparator::Less;
    int constant = 0; ///< compared with, or moved by; of positions the index
    int shortest = 0; ///< steps
    std::optional<int> longest;
    std::vector<Formula> parts;
};

/// The signals that formulas are made of: x, w in kt; y in deg with another scale; p, q on/off; g with positions.
[[nodiscard]] SignalTable signalTable();
/// `step` is the length of a step in seconds, in decimals.
[[nodiscard]] std::string text(const Formula& formula, const std::string& step);
[[nodiscard]] Formula randomFormula(std::mt19937& random, int depth);

/// The values of all signals in every step, by SignalId, and the reference step at every instant.
struct Trace {
    std::vector<std::vector<Value>> steps;
    std::vector<int> references; ///< by instant
    [[nodiscard]] int instants() const { return static_cast<int>(2 * steps.size()); }
    [[nodiscard]] Value at(int instant, SignalId signal) const {
        return steps[static_cast<std::size_t>(instant / 2)][indexOf(signal)];
    }
};

[[nodiscard]] Trace randomTrace(std::mt19937& random, const SignalTable& signals, int steps);

[[nodiscard]] Truths truths(const Formula& formula, const Trace& trace, const SignalTable& signals);
/// Relative to the signals' scales where `isRelative`.
[[nodiscard]] Margins margins(const Formula& formula, const Trace& trace, const SignalTable& signals, bool isRelative);
/// Whether it compares numbers of both dimensions, so that margins are relative.
[[nodiscard]] bool mixesUnits(const Formula& formula);

} // namespace flowhand::definition
