#pragma once

#include <optional>
#include <variant>
#include <vector>

#include "condition/highest.h"
#include "condition/monitor.h"
#include "condition/watch.h"

namespace flowhand {

/// Follows how far one condition is from changing. Beside a Watch, not in it, because most conditions are never asked.
///
/// Works only when a signal that it reads changes, or when asked: what changes by time alone inside is caught up with
/// then.
class Margins {
public:
    Margins(const Condition& condition, Time start);

    /// Signals that it reads have changed at `now`.
    void step(Key now, const std::vector<Value>& values);
    /// At `now`, from when on the reference time is `reference`.
    void setReference(Time reference, Key now);
    /// At `now`, with nothing changed since the last step.
    [[nodiscard]] RobustPair at(Key now);
    /// The next instant at which it may change by time alone; after a call of the others.
    [[nodiscard]] Key next() const { return m_next; }

private:
    struct Rise {
        Key now = std::numeric_limits<Key>::min();
        RobustPair operand = both(kSurely); // before the first sample: so nothing rises with it
        RobustPair before = both(kSurely);
    };
    struct Window {
        KeyWindow window;
        HighestPair highest;
    };
    using State = std::variant<Window, Rise, std::monostate>;

    void advance(Key now);
    void evaluate(Key now);
    RobustPair look(const ProgramNode& node, Key now, Key& next);
    RobustPair window(Window& state, const ProgramNode& node, Key now, Key& next);
    RobustPair rise(Rise& state, Key now, const RobustPair& operand, Key& next) const;
    RobustPair moved(const ProgramNode& node) const;
    RobustPair compared(const Comparison& comparison, const std::vector<Value>& values) const;
    Robust robust(double value, std::size_t unit) const;

    Condition m_condition;
    const ConditionProgram* m_program;
    std::optional<Watch> m_travel; // of conditions with a movement: the truth that `moved` needs
    Key m_reference;
    Key m_now = std::numeric_limits<Key>::min();
    Key m_next = kNever;
    Key m_nextInside = kNever; // of operators that another one looks back on
    std::vector<RobustPair> m_comparisons;
    std::vector<RobustPair> m_nodes;
    std::vector<State> m_states;
    std::vector<bool> m_isInside; // by node
};

/// As reported. Infinite where no comparison of numbers decides, and by the truth: positive when true.
[[nodiscard]] Margin marginOf(const ConditionProgram& program, const RobustPair& robust, Kleene truth);

} // namespace flowhand
