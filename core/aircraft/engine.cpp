#include "aircraft/engine.h"

#include <algorithm>
#include <cmath>

namespace flowhand {

namespace {

/// A cranked engine lights a little before the starter's own top speed.
constexpr double kLightUp = 0.8;
/// How far a reverser that is not locked opens in the stream of an idling engine. Our own choice.
constexpr double kDriftsOpen = 0.3;

double towards(double from, double to, double most) {
    return from + std::clamp(to - from, -most, most);
}

} // namespace

double powerInAir(const EngineFigures& figures, double ratio) {
    if (figures.kind == EngineKind::Piston)
        return std::max(0.0, 1.132 * ratio - 0.132);
    return std::pow(ratio, figures.densityPower);
}

bool Engine::isReverseAsked(const EngineFigures& figures, const EngineDemand& demand) const {
    return figures.hasReverser && demand.isOnGround && demand.hasFuel && !demand.isOut &&
           demand.reverseLever > figures.reverseRaised && demand.lever <= figures.leverIdle;
}

double Engine::askedPower(const EngineFigures& figures, const EngineDemand& demand) const {
    const bool needsCranking = demand.hasStarter && m_power < kLightUp * figures.crankPower;
    if (!demand.hasFuel || demand.isOut || needsCranking)
        return demand.isCranked ? figures.crankPower : 0.0;
    const double idle = figures.idlePower;
    if (isReverseAsked(figures, demand)) {
        if (!figures.hasPropeller() && m_deployed < 1.0)
            return idle;
        const double pull = (demand.reverseLever - figures.reverseIdle) / (100.0 - figures.reverseIdle);
        return idle + std::clamp(pull, 0.0, 1.0) * (figures.reversePower - idle);
    }
    if (m_deployed > 0.0)
        return idle;
    const double lever = std::clamp(demand.lever, 0.0, 100.0) / 100.0;
    const double asked = std::max(demand.leastPower, idle + lever * (100.0 - idle)) * demand.strength;
    return demand.isSpeedLow ? std::min(asked, figures.propeller.lowPower) : asked;
}

/// A propeller's blades follow the lever: no thrust at the end of `reverseIdle`, all of the reverse at its top.
double Engine::askedDeployment(const EngineFigures& figures, const EngineDemand& demand) const {
    const double flat = 1.0 / (1.0 + figures.reverseShare);
    const bool drifts = figures.hasReverser && demand.isReverserUnlocked && demand.isOnGround;
    if (!isReverseAsked(figures, demand))
        return !drifts ? 0.0 : figures.hasPropeller() ? flat : kDriftsOpen;
    if (!figures.hasPropeller())
        return 1.0;
    const double lever = demand.reverseLever;
    if (lever <= figures.reverseIdle)
        return flat * (lever - figures.reverseRaised) / (figures.reverseIdle - figures.reverseRaised);
    return flat + (1.0 - flat) * (lever - figures.reverseIdle) / (100.0 - figures.reverseIdle);
}

void Engine::turnBlades(const EngineFigures& figures, const EngineDemand& demand, double seconds) {
    if (!demand.isReverserLocked)
        m_deployed = towards(m_deployed, askedDeployment(figures, demand), seconds / figures.reverserTransit);
    const double flat = 1.0 / (1.0 + figures.reverseShare) + 1e-9;
    const bool isTurned = figures.hasPropeller() ? m_deployed > flat : m_deployed >= 1.0;
    m_reverser = m_deployed <= 0.0 ? ReverserState::Stowed
                 : isTurned        ? ReverserState::Deployed
                                   : ReverserState::Transit;
    const double feathering = figures.propeller.featherTime;
    if (feathering > 0.0)
        m_feathered = towards(m_feathered, demand.isFeathered ? 1.0 : 0.0, seconds / feathering);
    m_mostSpeed = demand.isSpeedLow ? figures.propeller.lowSpeed : 1.0;
}

void Engine::settle(const EngineFigures& figures, const EngineDemand& demand) {
    m_deployed = askedDeployment(figures, demand);
    m_feathered = demand.isFeathered && figures.propeller.featherTime > 0.0 ? 1.0 : 0.0;
    turnBlades(figures, demand, 0.0);
    m_power = 100.0; // it runs, if it has fuel
    m_power = askedPower(figures, demand);
}

void Engine::step(const EngineFigures& figures, const EngineDemand& demand, double seconds) {
    turnBlades(figures, demand, seconds);
    const double asked = askedPower(figures, demand);
    double rate = figures.spoolNear * (asked - m_power);
    const bool isStarting = m_power < figures.idlePower || !demand.hasFuel;
    const double fastest = isStarting ? figures.startRate : figures.spoolStart + figures.spoolGain * m_power;
    const double slowest = demand.hasFuel || demand.isOut ? -figures.spoolDown : -figures.startRate;
    rate = std::clamp(rate, slowest, fastest);
    m_power = std::max(0.0, m_power + rate * seconds);
}

double Engine::thrust(const EngineFigures& figures, const AirState& air, double airspeed) const {
    const double speed = std::max(0.0, airspeed);
    const double inAir = powerInAir(figures, air.density / kSeaDensity) * m_power / 100.0;
    const double direction = 1.0 - m_deployed * (1.0 + figures.reverseShare);
    if (!figures.hasPropeller())
        return figures.ratedThrust * std::max(0.0, 1.0 - figures.machLapse * speed / air.soundSpeed) * inAir *
               direction;
    const double pull = propellerThrust(figures.propeller, figures.ratedPower * inAir, air.density, speed) * direction;
    const double turnedByAir = std::max(0.0, 1.0 - m_power / figures.idlePower);
    const double drag = 0.5 * air.density * speed * speed * figures.propeller.windmillDrag * turnedByAir;
    return (1.0 - m_feathered) * (pull - drag);
}

double Engine::propellerSpeed(const EngineFigures& figures) const {
    return figures.hasPropeller() ? flowhand::propellerSpeed(figures.propeller, m_power / 100.0, m_mostSpeed) : 0.0;
}

} // namespace flowhand
