#pragma once

#include <cstddef>
#include <cstdint>
#include <limits>
#include <optional>
#include <string>
#include <vector>

#include "base/signal.h"
#include "base/time.h"
#include "condition/condition.h"
#include "condition/expression.h"
#include "condition/kleene.h"
#include "condition/syntax.h"

namespace flowhand {

/// An instant as a whole number: 2 t is the moment t (ns), 2 t + 1 the open stretch between t and t + 1 ns, in which
/// nothing can change because samples and windows are whole nanoseconds. So end points are exact.
using Key = std::int64_t;

inline constexpr Key kNever = std::numeric_limits<Key>::max();
/// Longest window, and the largest time of a run, either side of 0: 2 * (time + windows) must fit a Key.
inline constexpr Duration kLongestWindow = std::chrono::seconds(500'000'000);

[[nodiscard]] constexpr Key keyAt(Time time) {
    return 2 * time.count();
}
[[nodiscard]] constexpr Time timeOf(Key key) {
    return Time(key >> 1);
}
[[nodiscard]] constexpr bool isMoment(Key key) {
    return (key & 1) == 0;
}

/// Whose unit a margin is in, and how to make margins of one condition comparable.
struct MarginUnit {
    SignalId signal = kNoSignal;
    double toSignalUnit = 1.0;
    double toRelative = 1.0; ///< from the signal's unit
};

/// `signal comparator constant` where `isThreshold`, else `left comparator right`.
struct Comparison {
    Comparator comparator = Comparator::Equal;
    bool isThreshold = false;
    bool isDiscrete = false; ///< of on/off or positions: no finite margin
    SignalId signal = kNoSignal;
    double constant = 0.0;
    Expression left;
    Expression right;
    std::vector<SignalId> signals; ///< each once
    std::size_t unit = 0;          ///< in ConditionProgram::units; not of discrete ones
    std::size_t begin = 0;         ///< place in the text
    std::size_t end = 0;
};

/// `moved(x, distance)`.
struct Movement {
    Expression expression;
    double distance = 0.0;
    std::vector<SignalId> signals;
    std::size_t unit = 0;
};

struct ProgramNode {
    enum class Kind : std::uint8_t {
        Constant,   ///< constant
        Comparison, ///< item: in comparisons
        Not,        ///< right
        And,        ///< left, right
        Or,
        Once,  ///< right, at some moment of the window
        Since, ///< right at some moment of the window, left from then until now
        Held,  ///< right, for `longest`, counted from the reference time
        Rise,  ///< right
        Moved  ///< item: in movements; right: within its stretch, or none
    };
    static constexpr std::uint32_t kNone = 0xFFFFFFFF;

    Kind kind = Kind::Constant;
    Kleene constant = Kleene::False;
    bool isStrict = false; ///< of Once: only moments before now
    std::uint32_t left = kNone;
    std::uint32_t right = kNone;
    std::uint32_t item = 0;
    std::uint32_t state = kNone; ///< index among the nodes that remember something
    Duration shortest{};         ///< the window [t - longest, t - shortest]
    std::optional<Duration> longest;
    std::size_t begin = 0; ///< place in the text
    std::size_t end = 0;
};

/// A condition's compiled form. Children stand before their parents; the last node is the root.
struct ConditionProgram {
    std::string text;
    std::vector<ProgramNode> nodes;
    std::vector<Comparison> comparisons;
    std::vector<Movement> movements;
    std::vector<MarginUnit> units;
    std::vector<SignalId> signals; ///< in the order of first mention
    std::uint32_t stateCount = 0;
    bool isInstant = false;
    bool usesReference = false;
    bool hasOpenMoved = false;
    bool hasFiniteMargin = false;  ///< some comparison of numbers, or a movement
    ConditionWindow longestWindow; ///< the longest that ends
};

[[nodiscard]] inline bool remembers(ProgramNode::Kind kind) {
    return kind >= ProgramNode::Kind::Once;
}

/// Whether `a comparator b`; NaN is unknown. `isDiscrete`: negative is `between`, equal to nothing and in no order.
[[nodiscard]] Kleene compare(Comparator comparator, double a, double b, bool isDiscrete);

/// The two numbers that are compared, for these values by SignalId; one and the same where only rounding parts them.
struct Sides {
    double left = 0.0;
    double right = 0.0;
};
[[nodiscard]] Sides sidesOf(const Comparison& comparison, const std::vector<Value>& values);

/// For these values, by SignalId.
[[nodiscard]] Kleene holds(const Comparison& comparison, const std::vector<Value>& values);

[[nodiscard]] bool reads(const Comparison& comparison, SignalId signal);

} // namespace flowhand
