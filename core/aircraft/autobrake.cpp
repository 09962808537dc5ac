#include "aircraft/autobrake.h"

#include <algorithm>

namespace flowhand {

bool Autobrake::starts(const AutobrakeCommon& figures, const AutobrakeFigures& setting, const AutobrakeView& view) {
    if (!view.isOnGround || !view.areLeversClosed || setting.deceleration <= 0.0)
        return false;
    return setting.isForTakeOff ? view.groundSpeed > figures.takeOffFrom && !view.hasLanded : view.hasLanded;
}

double Autobrake::step(const AutobrakeCommon& figures, std::size_t setting, const AutobrakeView& view) {
    if (setting >= figures.settings.size())
        return 0.0;
    const AutobrakeFigures& chosen = figures.settings[setting];
    if (setting != m_setting || !view.isOnGround)
        m_state = State::Armed;
    m_setting = setting;
    if (m_state == State::Active && (view.pedal > figures.pedalOff || !view.areLeversClosed))
        m_state = State::Off;
    if (m_state == State::Armed && starts(figures, chosen, view))
        m_state = State::Active;
    if (m_state != State::Active || chosen.deceleration <= 0.0)
        return 0.0;
    return std::clamp((chosen.deceleration - view.resisting) * view.mass / view.brakeForce, 0.0, 1.0);
}

} // namespace flowhand
