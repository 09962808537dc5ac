#pragma once

#include <functional>
#include <map>
#include <set>

#include "presenter/controlmodel.h"
#include "presenter/keymap.h"

namespace flowhand {

/// Hands on the on-screen controls: what keys and drags make of them. Told the time; GUI thread.
class ScreenHands {
public:
    using Move = std::function<void(SignalId, Value)>;

    /// `controls` must outlive it. `move` is called for each change of a movable control.
    ScreenHands(const ControlModel& controls, Move move);

    /// False when the key means nothing here.
    bool press(int key);
    bool release(int key);
    /// Puts a control where it was dragged to.
    void put(ControlState& control, double value);
    /// A control that springs goes back from here on.
    void letGo(ControlState& control);
    /// One step of a discrete control, or a twentieth of a number's travel; for the arrow keys on a focused control.
    void nudge(ControlState& control, int direction);

    /// Moves what keys hold and what springs back.
    void advance(double elapsedSeconds);
    [[nodiscard]] bool isMoving() const { return !m_pushes.empty() || !m_returning.empty(); }
    /// The controls' states have come back: what no hand moves now is where they say it is.
    void settle();
    void reset();

private:
    void apply(const KeyBinding& binding, ControlState& control);
    void step(ControlState& control, int direction);
    void toggle(ControlState& control);
    void set(ControlState& control, double value);
    [[nodiscard]] double current(const ControlState& control) const;
    [[nodiscard]] ControlState* named(const std::string& name) const;

    const ControlModel& m_controls;
    Move m_move;
    std::map<ControlState*, int> m_pushes; ///< direction of the key that is down
    std::set<ControlState*> m_returning;
    std::map<ControlState*, double> m_put; ///< where a hand has put a control whose new state is not back yet
};

} // namespace flowhand
