#pragma once

#include <vector>

#include "session/movement.h"

namespace flowhand {

/// Who owns each control's signal. The hand does, until the partner moves a control that is also a real one: then the
/// signal stands where the partner put it while the lever stands where the hand left it. The lever's next settled
/// movement by a hand gives the signal back; what is merely found, as when its device was lost and came back, does not.
/// The lever is to be matched until it settles, or is found, where the partner put it, or does a step.
class Ownership {
public:
    Ownership(const Aircraft& aircraft, const std::vector<ControlFacts>& facts, double timeScale);

    /// The partner moved a control from `lever`, where the hand had it, to `value`. True when it has to be matched.
    bool partnerMoved(SignalId control, Value lever, Value value);
    [[nodiscard]] bool isPartners(SignalId control) const { return m_controls[indexOf(control)].isPartners; }
    /// Where the real lever stands; of controls that the partner owns.
    [[nodiscard]] Value lever(SignalId control) const { return m_controls[indexOf(control)].lever; }
    /// A hand moves a lever that the partner owns.
    void handMoved(Time time, SignalId control, Value value, ControlId by);
    /// It was found there, is unknown now, or was moved while the run stood: no movement.
    void leverStands(SignalId control, Value value);
    /// Appends the movements of levers that settle at `time`; their signals are the hand's again.
    void settle(Time time, std::vector<ControlMovement>& settled);
    [[nodiscard]] Time nextTimer() const { return m_levers.nextTimer(); }

    [[nodiscard]] bool wantsMatch(SignalId control) const { return m_controls[indexOf(control)].wantsMatch; }
    /// A lever to be matched stands there, and is the partner's still.
    [[nodiscard]] bool isMatched(SignalId control) const;
    /// Where the lever is to be brought; when wantsMatch().
    [[nodiscard]] Value wanted(SignalId control) const { return m_controls[indexOf(control)].wanted; }
    /// The lever is where it should be: the hand's again.
    void matched(SignalId control);

private:
    struct Control {
        bool isReal = false;
        bool isPartners = false;
        bool wantsMatch = false;
        Value lever;
        Value wanted;
    };
    std::vector<Control> m_controls; ///< by SignalId
    MovementDetector m_levers;       ///< of those the partner owns
};

} // namespace flowhand
