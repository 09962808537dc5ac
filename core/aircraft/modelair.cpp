// What moves the aircraft in the air.

#include <algorithm>
#include <cmath>

#include "aircraft/angle.h"
#include "aircraft/model.h"

namespace flowhand {

namespace {

constexpr double kStallReserve = 0.035; // rad below the stall that pitch commands stay
constexpr double kMostSlip = 0.35;      // rad; beyond, the fin stalls

/// Steady roll of a wing whose one half has dCL more lift at its flap: the moment 0.1 dCL (flaps in the middle of each
/// half, 0.2 spans from the aircraft's middle) against the damping 0.5 p b / 2V gives p = 0.4 dCL V / b. The damping is
/// from memory and about the same for all straight wings.
constexpr double kRollByFlaps = 0.4;
/// The same of the rolling moment coefficient that a slip gives: p = 4 Cl V / b.
constexpr double kRollByMoment = 4.0;

} // namespace

double AircraftModel::trimAlpha(const Forces& forces) const {
    const double scale = std::max(forces.dynamicPressure, 1.0) * m_figures.air.wingArea;
    const double needed =
        m_mass * kGravity * std::cos(m_path) / std::cos(m_bank) - forces.thrust * std::sin(m_pitch - m_path);
    const double most = m_airframe.alphaMost(m_figures.air) - kStallReserve;
    return std::min(m_airframe.alphaFor(m_figures.air, needed / scale), most);
}

/// N to the right of the path: the air on the side that the nose is turned away from, and the thrust beside it.
double AircraftModel::sideForce(const Forces& forces) const {
    const double byAir = forces.dynamicPressure * m_figures.air.wingArea * m_figures.air.slipForce * m_slip;
    return byAir + forces.thrust * std::sin(m_slip);
}

/// Uneven thrust and pedals turn the nose until the fin holds them, about as fast as the fin turns it back: a quarter
/// of its swing, well damped.
void AircraftModel::slip(const AssistCommand& command, const Forces& forces, double seconds) {
    const GroundFigures& figures = m_ground;
    const double pressure = std::max(forces.dynamicPressure, 1.0);
    const double turning = forces.thrustMoment / pressure + figures.rudderMoment * command.pedals;
    const double steady = std::clamp(turning / figures.finMoment, -kMostSlip, kMostSlip);
    const double lag = std::sqrt(figures.yawInertia / (pressure * figures.finMoment));
    m_slip += (steady - m_slip) * std::min(1.0, seconds / lag);
}

/// A hand on the yoke has to hold what flaps apart and a slip do; the assist holds it as far as the yoke would go.
double AircraftModel::rollRate(const CockpitState& cockpit, const AssistCommand& command) const {
    const double apart =
        kRollByFlaps * m_airframe.liftApart(m_figures.air) + kRollByMoment * m_figures.air.slipRoll * m_slip;
    const double outside = apart * m_speed / m_figures.air.span;
    if (outside == 0.0 || std::fabs(cockpit.yokeBank) > m_figures.assist.yokeNeutral)
        return command.bankRate + outside;
    const double most = m_figures.assist.yokeBankRate;
    return std::clamp(command.bankRate - outside, -most, most) + outside;
}

/// What the trim is worth as a share of full yoke, nose up positive, beyond what this speed wants.
double AircraftModel::trimOff(const CockpitState& cockpit, double calibrated) const {
    const TrimFigures& trim = m_figures.trim;
    if (!cockpit.pitchTrim)
        return 0.0;
    const double wanted = trim.takeOff + trim.bySpeed * std::max(0.0, calibrated - m_takeOff.vr);
    return trim.perDegree * (*cockpit.pitchTrim - wanted);
}

void AircraftModel::stepInAir(const CockpitState& cockpit, const AssistCommand& command, const Forces& forces,
                              double seconds) {
    m_wheels.centre();
    const double alpha = m_pitch - m_path;
    const double speed = std::max(m_speed, 1.0);
    const double along =
        (forces.thrust * std::cos(alpha) * std::cos(m_slip) - forces.air.drag) / m_mass - kGravity * std::sin(m_path);
    const double up = forces.thrust * std::sin(alpha) + forces.air.lift;
    const double pathRate = (up * std::cos(m_bank) / m_mass - kGravity * std::cos(m_path)) / speed;
    slip(command, forces, seconds);
    const double across = up * std::sin(m_bank) + sideForce(forces) * std::cos(m_bank);
    m_turnRate = across / (m_mass * speed * std::cos(m_path));

    const double middleSpeed = m_speed + along * seconds / 2.0;
    const double middlePath = m_path + pathRate * seconds / 2.0;
    const double middleHeading = m_heading + m_turnRate * seconds / 2.0;
    const double level = middleSpeed * std::cos(middlePath);
    const double wind = m_figures.weather.windSpeed;
    const double windFrom = m_figures.weather.windFrom * kRadiansPerDegree;
    move(level * std::sin(middleHeading) - wind * std::sin(windFrom),
         level * std::cos(middleHeading) - wind * std::cos(windFrom), seconds);
    setHeight(m_height + middleSpeed * std::sin(middlePath) * seconds);
    m_speed = std::max(0.0, m_speed + along * seconds);
    m_path += pathRate * seconds;
    m_heading = wrapped(m_heading + m_turnRate * seconds);
    m_bank += rollRate(cockpit, command) * seconds;
    const double highest = m_path + m_airframe.alphaMost(m_figures.air) - kStallReserve;
    m_pitch = std::min(m_pitch + command.pitchRate * seconds, std::max(highest, 0.0));
    if (m_height <= 0.0 && m_path < 0.0)
        touchDown();
}

void AircraftModel::touchDown() {
    m_isOnGround = true;
    m_hasLanded = true;
    m_heading = wrapped(heading());
    m_slip = 0.0;
    m_speed = std::max(0.0, m_speed * std::cos(m_path) - headwind());
    setHeight(0.0);
    m_path = 0.0;
    m_pitch = std::max(0.0, m_pitch);
}

} // namespace flowhand
