#include "aircraft/engine.h"

#include <algorithm>
#include <cmath>

namespace flowhand {

bool Engine::isReverseAsked(const EngineFigures& figures, const EngineDemand& demand) const {
    return demand.isOnGround && demand.hasFuel && demand.reverseLever > figures.reverseRaised &&
           demand.lever <= figures.leverIdle;
}

double Engine::askedPower(const EngineFigures& figures, const EngineDemand& demand) const {
    if (!demand.hasFuel)
        return 0.0;
    if (isReverseAsked(figures, demand)) {
        if (m_deployed < 1.0)
            return figures.idlePower;
        const double pull = (demand.reverseLever - figures.reverseIdle) / (100.0 - figures.reverseIdle);
        return figures.idlePower + std::clamp(pull, 0.0, 1.0) * (figures.reversePower - figures.idlePower);
    }
    if (m_deployed > 0.0)
        return figures.idlePower;
    const double lever = std::clamp(demand.lever, 0.0, 100.0) / 100.0;
    return std::max(demand.leastPower, figures.idlePower + lever * (100.0 - figures.idlePower));
}

void Engine::settle(const EngineFigures& figures, const EngineDemand& demand) {
    m_deployed = isReverseAsked(figures, demand) ? 1.0 : 0.0;
    m_power = askedPower(figures, demand);
}

void Engine::step(const EngineFigures& figures, const EngineDemand& demand, double seconds) {
    const double travel = seconds / figures.reverserTransit;
    m_deployed = std::clamp(m_deployed + (isReverseAsked(figures, demand) ? travel : -travel), 0.0, 1.0);

    const double asked = askedPower(figures, demand);
    double rate = figures.spoolNear * (asked - m_power);
    const bool isStarting = m_power < figures.idlePower || !demand.hasFuel;
    const double fastest = isStarting ? figures.startRate : figures.spoolStart + figures.spoolGain * m_power;
    const double slowest = demand.hasFuel ? -figures.spoolDown : -figures.startRate;
    rate = std::clamp(rate, slowest, fastest);
    m_power = std::max(0.0, m_power + rate * seconds);
}

ReverserState Engine::reverser() const {
    return m_deployed <= 0.0  ? ReverserState::Stowed
           : m_deployed < 1.0 ? ReverserState::Transit
                              : ReverserState::Deployed;
}

double Engine::thrust(const EngineFigures& figures, const AirState& air, double airspeed) const {
    const double mach = std::max(0.0, airspeed) / air.soundSpeed;
    const double lapse = std::max(0.0, 1.0 - figures.machLapse * mach) *
                         std::pow(air.density / standardAir(0.0).density, figures.densityPower);
    const double direction = 1.0 - m_deployed * (1.0 + figures.reverseShare);
    return figures.ratedThrust * lapse * m_power / 100.0 * direction;
}

} // namespace flowhand
