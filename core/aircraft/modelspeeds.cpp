// Loading, fuel and the speeds that follow from them.

#include <cmath>

#include "aircraft/model.h"

namespace flowhand {

namespace {

constexpr double kHour = 3600.0; // s
/// V speeds are worked out again when the mass has changed by so much: half of that in speed.
constexpr double kSpeedsAfter = 0.005;
/// m/s over the ground: in a roll that has begun the take-off speeds stay as they were worked out.
constexpr double kRollBegun = 15.0;

} // namespace

/// A point of the runway's centreline with its heading as the route goes along it; of a route without a runway, the
/// line where the aircraft is.
LinePoint AircraftModel::runwayLine() const {
    return m_runway ? *m_runway : m_line;
}

double AircraftModel::runwayHeadwind() const {
    const double course = runwayLine().heading;
    return m_figures.weather.windSpeed * std::cos(m_figures.weather.windFrom * kRadiansPerDegree - course);
}

void AircraftModel::load(double mass) {
    const Loading loading = m_figures.mass.loadingFor(mass);
    m_mass = mass;
    m_fuel = loading.fuel;
    m_payload = loading.payload;
    m_ground.centreOfGravity = m_figures.mass.centre(loading);
}

void AircraftModel::burnFuel(double seconds) {
    const MassFigures& mass = m_figures.mass;
    double flow = 0.0; // kg/h
    for (const Engine& engine : m_engines)
        flow += engine.power() <= 0.0 ? 0.0 : mass.flowIdle + (mass.flowFull - mass.flowIdle) * engine.power() / 100.0;
    const double burnt = std::min(m_fuel, flow / kHour * seconds);
    m_fuel -= burnt;
    m_mass -= burnt;
    m_ground.centreOfGravity = mass.centre({m_fuel, m_payload});
}

void AircraftModel::workOutSpeeds() {
    const bool isNew = m_speedsFor == 0.0;
    if (!isNew && (std::fabs(m_mass - m_speedsFor) < kSpeedsAfter * m_mass || (m_isOnGround && m_speed > kRollBegun)))
        return;
    m_speedsFor = m_mass;
    PerformanceCase now;
    now.mass = m_mass;
    now.flap = m_values.plannedFlap;
    now.lever = m_values.takeOffLever > 0.0 ? m_values.takeOffLever : 100.0;
    now.headwind = runwayHeadwind();
    now.air = standardAir(pressureAltitudeOf(m_plan.elevation, m_figures.weather.setting), m_figures.weather.warmer);
    if (m_isOnGround || isNew)
        m_takeOff = flowhand::takeOffSpeeds(m_figures, now);
    m_reference = referenceSpeed(m_figures, m_mass, m_values.landingFlap);
    m_approach = approachSpeed(m_figures, m_reference, now.headwind);
}

void AircraftModel::tellLoading(MotionState& state) const {
    state.mass = m_mass;
    state.fuel = m_fuel;
    state.centreOfGravity = m_ground.centreOfGravity;
    state.v1 = m_takeOff.v1 / kMetresPerSecondPerKnot;
    state.vr = m_takeOff.vr / kMetresPerSecondPerKnot;
    state.v2 = m_takeOff.v2 / kMetresPerSecondPerKnot;
    state.vref = m_reference / kMetresPerSecondPerKnot;
    state.vapp = m_approach / kMetresPerSecondPerKnot;
}

} // namespace flowhand
