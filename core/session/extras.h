#pragma once

#include <optional>
#include <vector>

#include "session/movement.h"
#include "session/score.h"

namespace flowhand {

/// The extras of a run: settled wrong controls and wrong values, and their being put back.
///
/// A control that made an extra has a home: where it stood before. Settling there again is returning, which is never an
/// extra; within 2 s of where it went astray it cancels the last extra of that control.
class Extras {
public:
    Extras(const MovementDetector& movements, double timeScale);

    void add(const ControlMovement& movement, ExtraResult extra);
    [[nodiscard]] bool isReturn(const ControlMovement& movement) const;
    /// A return; the extra it cancels, if it came in time.
    std::optional<ExtraResult> putBack(const ControlMovement& movement);
    /// The control has done a step: where it is now is where it should be.
    void forget(SignalId control);

    [[nodiscard]] const std::vector<ExtraResult>& all() const { return m_extras; }

private:
    struct Stray {
        SignalId control = kNoSignal;
        Value home;
        Time arrived{};
    };
    [[nodiscard]] const Stray* find(SignalId control) const;

    const MovementDetector& m_movements;
    const Duration m_putBackTime;
    std::vector<ExtraResult> m_extras;
    std::vector<Stray> m_strays;
};

} // namespace flowhand
