#include "aircraft/ground.h"

#include <algorithm>
#include <cmath>

#include "aircraft/atmosphere.h"

namespace flowhand {

namespace {

/// Keeps the slip of a nosewheel that hardly moves finite; far below walking pace.
constexpr double kSlipFloor = 0.1; // m/s

double closer(double from, double to, double seconds, double lag) {
    return from + (to - from) * std::min(1.0, seconds / lag);
}

} // namespace

double authority(double speed, double slow, double fast, double least) {
    const double share = std::clamp((speed - slow) / (fast - slow), 0.0, 1.0);
    return 1.0 + share * (least - 1.0);
}

double turnRadiusMain(double wheelbase, double nosewheel) {
    return wheelbase / std::tan(nosewheel);
}

double turnRadiusNose(double wheelbase, double nosewheel) {
    return wheelbase / std::sin(nosewheel);
}

double turnRate(double wheelbase, double nosewheel, double speed) {
    return speed * std::tan(nosewheel) / wheelbase;
}

double turnRadiusOuterWheel(double wheelbase, double track, double nosewheel) {
    return turnRadiusMain(wheelbase, nosewheel) + track / 2.0;
}

void GroundHandling::centre() {
    m_yawRate = 0.0;
    m_nosewheel = 0.0;
    m_brakeLeft = 0.0;
    m_brakeRight = 0.0;
}

void GroundHandling::turnNosewheel(const GroundFigures& figures, const SteeringDemand& demand, double speed,
                                   double seconds) {
    if (demand.isSteeringLost) {
        const double rolled = std::atan2(figures.wheelbase * m_yawRate, std::max(speed, kSlipFloor));
        m_nosewheel = std::clamp(rolled, -figures.steeringLimit, figures.steeringLimit);
        return;
    }
    const double byTiller =
        demand.tiller * authority(speed, figures.tillerSlow, figures.tillerFast, figures.tillerLeast);
    const double byPedals =
        demand.pedals * figures.pedalAngle * authority(speed, figures.pedalSlow, figures.pedalFast, figures.pedalLeast);
    const double wanted =
        std::clamp(byTiller + byPedals + demand.assist, -figures.steeringLimit, figures.steeringLimit);
    const double most = figures.steeringRate * seconds;
    m_nosewheel += std::clamp(wanted - m_nosewheel, -most, most);
}

void GroundHandling::pressBrakes(const GroundFigures& figures, const SteeringDemand& demand, const RollingState& state,
                                 double seconds) {
    const double parked = demand.isParked ? figures.parkingBrake : 0.0;
    const double least = std::max(parked, demand.automaticBrake);
    const auto asked = [&](double pedal, double drag, bool isLost) {
        return std::max(isLost ? 0.0 : std::max(least, pedal), drag);
    };
    m_pressureLeft = closer(m_pressureLeft, asked(demand.brakeLeft, demand.dragLeft, demand.isLeftBrakeLost), seconds,
                            figures.brakeLag);
    m_pressureRight = closer(m_pressureRight, asked(demand.brakeRight, demand.dragRight, demand.isRightBrakeLost),
                             seconds, figures.brakeLag);
    const double onNose = state.isNoseDown ? figures.centreOfGravity / figures.wheelbase : 0.0;
    const double onSide = state.weightOnWheels * (1.0 - onNose) / 2.0;
    const double most = brakingFriction(figures, state.speed) * onSide;
    m_brakeLeft = std::min(most, m_pressureLeft * figures.brakeForce);
    m_brakeRight = std::min(most, m_pressureRight * figures.brakeForce);
}

double GroundHandling::turn(const GroundFigures& figures, const SteeringDemand& demand, const RollingState& state,
                            double seconds) {
    const double isRolling = state.speed > 0.0 ? 1.0 : 0.0;
    const double outside =
        state.thrustMoment +
        state.dynamicPressure * (figures.rudderMoment * demand.pedals + figures.finMoment * state.sideslip) +
        (m_brakeRight - m_brakeLeft) * figures.track / 2.0 * isRolling;
    const double onNose = state.isNoseDown ? state.weightOnWheels * figures.centreOfGravity / figures.wheelbase : 0.0;
    const double most = figures.friction * onNose;

    // I dr/dt = M + F L cos(d) - m a V r about the main wheels, F = C (V sin(d) - L r cos(d)) / |v nose|; implicit in
    // r, because at walking pace the tyre is far stiffer than the step. Aircraft that stand do not yaw.
    const double arm = figures.wheelbase * std::cos(m_nosewheel);
    const double noseSpeed = std::hypot(state.speed, figures.wheelbase * m_yawRate) + kSlipFloor;
    const double stiffness = demand.isSteeringLost ? 0.0 : figures.corneringForce / noseSpeed;
    const double stable = figures.yawInertia / seconds + state.mass * figures.centreOfGravity * state.speed;
    const double pull = stiffness * state.speed * std::sin(m_nosewheel);
    double rate = (figures.yawInertia / seconds * m_yawRate + outside + pull * arm) / (stable + stiffness * arm * arm);
    double force = pull - stiffness * arm * rate;
    if (std::fabs(force) > most) {
        force = std::copysign(most, force);
        rate = (figures.yawInertia / seconds * m_yawRate + outside + force * arm) / stable;
    }
    const double sideLimit = figures.friction * kGravity / std::max(state.speed, kSlipFloor);
    m_yawRate = isRolling * std::clamp(rate, -sideLimit, sideLimit);
    return isRolling * force;
}

double GroundHandling::step(const GroundFigures& figures, const SteeringDemand& demand, const RollingState& state,
                            double seconds) {
    turnNosewheel(figures, demand, state.speed, seconds);
    pressBrakes(figures, demand, state, seconds);
    const double side = turn(figures, demand, state, seconds);
    const double brakes = m_brakeLeft + m_brakeRight;
    if (state.speed <= 0.0 && state.forward <= figures.breakaway * state.weightOnWheels + brakes)
        return 0.0;
    const double resisting = figures.rolling * state.weightOnWheels + brakes + std::fabs(side * std::sin(m_nosewheel));
    // What resists can stop the aircraft, not push it back.
    return std::max((state.forward - resisting) / state.mass, -state.speed / seconds);
}

} // namespace flowhand
