#pragma once

#include <cstddef>

#include "aircraft/practicefile.h"

namespace flowhand {

/// What the automatic brake looks at. SI.
struct AutobrakeView {
    bool isOnGround = true;
    bool areLeversClosed = true;
    bool hasLanded = false; ///< has been in the air, or was put down at speed
    double groundSpeed = 0.0;
    double pedal = 0.0;     ///< the more pressed toe brake, 0..1
    double resisting = 0.0; ///< m/s2 that drag, thrust and rolling make already
    double mass = 0.0;
    double brakeForce = 0.0; ///< N of both sides at full pressure
};

/// Presses the brakes to hold a deceleration, once the wheels are down or a take-off is rejected, until a toe brake,
/// the thrust levers or the selector switch it off.
class Autobrake {
public:
    /// Brake pressure it asks for, 0..1. `setting` is an index into the figures' settings.
    double step(const AutobrakeCommon& figures, std::size_t setting, const AutobrakeView& view);
    [[nodiscard]] bool isActive() const { return m_state == State::Active; }

private:
    enum class State : unsigned char { Armed, Active, Off };
    [[nodiscard]] static bool starts(const AutobrakeCommon& figures, const AutobrakeFigures& setting,
                                     const AutobrakeView& view);

    State m_state = State::Armed;
    std::size_t m_setting = 0;
};

} // namespace flowhand
