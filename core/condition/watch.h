#pragma once

#include <variant>
#include <vector>

#include "condition/condition.h"
#include "condition/program.h"
#include "condition/windows.h"

namespace flowhand {

/// One condition being watched: the truth of its comparisons now, and what its operators remember.
/// Owned by a Monitor, which steps it at every instant at which something in it changes.
class Watch {
public:
    /// Watches from `start` on, which is also its reference time.
    Watch(const Condition& condition, Time start);

    [[nodiscard]] const ConditionProgram& program() const { return *m_program; }
    /// What is read off the signals: its comparisons, then its movements.
    [[nodiscard]] std::size_t inputCount() const { return m_comparisons.size() + m_numbers.size(); }
    /// Takes input `index` from `values`. True: it changed.
    bool refresh(std::size_t index, const std::vector<Value>& values);
    void refreshAll(const std::vector<Value>& values);

    /// Its truth at `now`. Instants must come in order; the same one again replaces it.
    [[nodiscard]] Kleene step(Key now);
    /// From the instant of the next step on.
    void setReference(Time reference);
    /// The next instant at which it may change by time alone; after a step.
    [[nodiscard]] Key next() const { return m_next; }

    /// How far a movement has come, where that is certain and where it is possible; outside its stretch 0.
    struct Travel {
        bool isInside = false; ///< its stretch, or has none; where certain, with a number that is known
        double width = 0.0;
        double doubt = 0.0; ///< of the width, by rounding
        /// By how much it is more than `distance`; 0 where only rounding parts them.
        [[nodiscard]] double beyond(double distance) const {
            const double more = width - distance;
            return std::fabs(more) <= doubt + kRounding * distance ? 0.0 : more;
        }
    };
    [[nodiscard]] Travel certainTravel(const ProgramNode& moved) const;
    [[nodiscard]] Travel possibleTravel(const ProgramNode& moved) const; ///< infinite after an unknown number

private:
    struct Window {
        KeyWindow window;
        TruthWindow certain;
        TruthWindow possible;
    };
    struct Held {
        TruthHeld certain;
        TruthHeld possible;
    };
    /// With a stretch: by certain and by possible stretches. Without: `open`, since the reference time.
    struct Moved {
        Range open;
        StretchRange certain;
        StretchRange possible;
    };
    using State = std::variant<Window, Held, TruthRise, Moved>;

    Kleene look(const ProgramNode& node, Key now);
    Kleene window(Window& state, Key now, Kleene left, Kleene right);
    Kleene held(Held& state, const ProgramNode& node, Key now, Kleene right);
    Kleene moved(Moved& state, const ProgramNode& node, Key now);

    Condition m_condition;
    const ConditionProgram* m_program;
    Key m_reference;
    Key m_next = kNever;
    std::vector<Kleene> m_comparisons;
    std::vector<double> m_numbers; // of movements; NaN unknown
    std::vector<Kleene> m_nodes;
    std::vector<State> m_states;
};

} // namespace flowhand
