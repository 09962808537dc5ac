#include "aircraft/model.h"

#include <algorithm>
#include <cmath>

#include "aircraft/angle.h"

namespace flowhand {

namespace {

constexpr double kLookAhead = 3.0; // m of the line in front of the nosewheel whose curvature is told

double crossOf(PlanPoint point, const LinePoint& line) {
    return (point.x - line.at.x) * std::cos(line.heading) - (point.y - line.at.y) * std::sin(line.heading);
}

PilotAssist::Phase firstPhase(const StartPlace& place) {
    if (place.height <= 0.0)
        return !place.isTakeOffRoll && (place.sink > 0.0 || place.calibrated > 0.0) ? PilotAssist::Phase::Lower
                                                                                    : PilotAssist::Phase::Roll;
    return place.sink > 0.0 ? PilotAssist::Phase::Approach : PilotAssist::Phase::Climb;
}

/// Engines from left to right, evenly; m, right of the middle positive.
double engineArm(std::size_t engine, std::size_t engines, double outermost) {
    if (engines < 2)
        return 0.0;
    return outermost * (2.0 * static_cast<double>(engine) / static_cast<double>(engines - 1) - 1.0);
}

} // namespace

AircraftModel::AircraftModel(const PracticeFigures& figures, const GroundPlan& plan, const Route& route,
                             const StartPlace& place, const FlightValues& values, const CockpitState& cockpit)
    : m_figures(figures), m_plan(plan), m_route(&route), m_values(values), m_engines(cockpit.engines.size()),
      m_isFeatheredByItself(cockpit.engines.size(), false), m_assist(firstPhase(place)), m_ground(figures.wheels) {
    putInPlace(place, cockpit);
}

void AircraftModel::putInPlace(const StartPlace& place, const CockpitState& cockpit) {
    const RouteMark* mark = m_route->mark(place.mark);
    m_routeDistance = (mark != nullptr ? mark->distance : 0.0) + place.beyond;
    const LinePoint start = m_route->line.pointAt(m_routeDistance);
    m_heading = start.heading;
    m_at = {start.at.x - m_figures.wheels.wheelbase * std::sin(m_heading),
            start.at.y - m_figures.wheels.wheelbase * std::cos(m_heading)};
    m_lastGround = m_at;
    load(place.mass > 0.0 ? place.mass : m_figures.mass.mass);
    setHeight(std::max(0.0, place.height));
    lookAtRoute();
    m_nose = nosewheel();
    m_line = start;
    m_isOnGround = m_height <= 0.0;
    m_hasLanded = m_isOnGround && place.calibrated > 0.0 && !place.isTakeOffRoll;
    const double airspeed = place.calibrated > 0.0 ? trueFromCalibrated(place.calibrated, air()) : 0.0;
    m_speed = m_isOnGround ? std::max(0.0, airspeed - (airspeed > 0.0 ? headwind() : 0.0)) : airspeed;
    m_airframe.settle(airframeDemand(cockpit));
    for (std::size_t i = 0; i < m_engines.size(); ++i)
        m_engines[i].settle(m_figures.engine, engineDemand(cockpit, i));
    workOutSpeeds();
    if (m_isOnGround)
        return;
    m_path = -std::asin(std::clamp(place.sink / std::max(m_speed, 1.0), -0.5, 0.5));
    m_pitch = m_path + trimAlpha(forces());
}

void AircraftModel::setHeight(double height) {
    m_height = height;
    m_air =
        standardAir(pressureAltitudeOf(m_plan.elevation + height, m_figures.weather.setting), m_figures.weather.warmer);
}

/// What of the route does not change on the way.
void AircraftModel::lookAtRoute() {
    m_runway.reset();
    for (const char* name : {"threshold", "line_up"})
        if (const RouteMark* mark = m_route->mark(name))
            m_runway = m_route->line.pointAt(mark->distance);
    const RouteMark* threshold = m_route->mark("threshold");
    m_threshold = threshold != nullptr ? std::optional(threshold->distance) : std::nullopt;
}

void AircraftModel::findLine() {
    m_nose = nosewheel();
    m_routeDistance = m_route->line.nearest(m_nose, m_routeDistance);
    m_line = m_route->line.pointAt(m_routeDistance);
}

double AircraftModel::headwind() const {
    const Weather& weather = m_figures.weather;
    return weather.windSpeed == 0.0 ? 0.0
                                    : weather.windSpeed * std::cos(weather.windFrom * kRadiansPerDegree - m_heading);
}

PlanPoint AircraftModel::nosewheel() const {
    return {m_at.x + m_figures.wheels.wheelbase * std::sin(heading()),
            m_at.y + m_figures.wheels.wheelbase * std::cos(heading())};
}

bool AircraftModel::areLeversClosed(const CockpitState& cockpit) const {
    return std::all_of(cockpit.engines.begin(), cockpit.engines.end(), [&](const EngineControls& engine) {
        return engine.lever <= m_figures.engine.leverIdle;
    });
}

AirframeDemand AircraftModel::airframeDemand(const CockpitState& cockpit) const {
    // The gear cannot be raised while the aircraft stands on it.
    const double flap = hasPower(cockpit) ? cockpit.flapAngle : m_airframe.flapAngle();
    return {flap, cockpit.isGearDown || m_isOnGround, cockpit.spoilers == SpoilerLever::Up || m_areSpoilersOut};
}

EngineDemand AircraftModel::engineDemand(const CockpitState& cockpit, std::size_t engine) const {
    const EngineControls& controls = cockpit.engines[engine];
    const double idle = m_figures.engine.idlePower;
    const double least = m_isTakeOffLatched ? idle + m_values.takeOffLever / 100.0 * (100.0 - idle) : 0.0;
    const bool hasSpark = m_figures.engine.kind != EngineKind::Piston || cockpit.magnetos != Magnetos::Off;
    EngineDemand demand;
    demand.lever = controls.lever;
    demand.reverseLever = controls.reverseLever;
    demand.leastPower = least;
    demand.hasFuel =
        m_fuel > 0.0 && controls.hasFuel && !controls.isFireHandlePulled && cockpit.isFuelSelected && hasSpark;
    demand.isOnGround = m_isOnGround;
    demand.hasStarter = controls.hasStarter && m_figures.engine.crankPower > 0.0;
    demand.isCranked = controls.isCranked && cockpit.hasBattery;
    demand.isFeathered = controls.isFeathered || m_isFeatheredByItself[engine];
    demand.isSpeedLow = controls.isSpeedLow;
    demand.strength = strength(cockpit);
    for (const Failure& failure : m_failures) {
        demand.isOut |= failure.kind == FailureKind::EngineOut && failure.engine == engine;
        demand.isReverserLocked |= failure.kind == FailureKind::ReverserLocked && failure.engine == engine;
        demand.isReverserUnlocked |= failure.kind == FailureKind::ReverserUnlocked && failure.engine == engine;
    }
    return demand;
}

/// Share of a piston engine's power that mixture, carburettor heat and magnetos leave. The best mixture grows leaner
/// with thinner air; common practice, the shape of the curve assumed.
double AircraftModel::strength(const CockpitState& cockpit) const {
    const PistonFigures& piston = m_figures.piston;
    if (m_figures.engine.kind != EngineKind::Piston)
        return 1.0;
    const double rich = cockpit.mixture / std::min(1.0, air().density / kSeaDensity) - 1.0;
    const double off = rich > 0.0 ? piston.richLoss * rich : piston.leanLoss * -rich;
    const double byMixture = std::max(0.0, 1.0 - off * std::fabs(rich));
    const double byHeat = cockpit.hasCarburettorHeat ? 1.0 - piston.heatLoss : 1.0;
    return byMixture * byHeat * (cockpit.magnetos == Magnetos::One ? 1.0 - piston.magnetoLoss : 1.0);
}

/// What moves the flaps: electric ones need the battery or an engine that turns its generator.
bool AircraftModel::hasPower(const CockpitState& cockpit) const {
    return !m_figures.air.isFlapElectric || cockpit.hasBattery ||
           std::any_of(m_engines.begin(), m_engines.end(), [&](const Engine& engine) {
               return engine.power() > m_figures.engine.idlePower / 2.0;
           });
}

/// Armed, it feathers the propeller of an engine that gives nothing while its lever asks for take-off power.
void AircraftModel::latchFeathers(const CockpitState& cockpit) {
    const EngineFigures& figures = m_figures.engine;
    for (std::size_t i = 0; i < m_engines.size(); ++i) {
        const bool isLost = cockpit.engines[i].lever > figures.propeller.autofeatherLever &&
                            m_engines[i].power() < figures.propeller.autofeatherPower;
        const bool othersWell = std::all_of(m_engines.begin(), m_engines.end(), [&](const Engine& other) {
            return &other == &m_engines[i] || other.power() > figures.propeller.autofeatherLever;
        });
        m_isFeatheredByItself[i] =
            cockpit.isAutofeatherArmed && (m_isFeatheredByItself[i] || (isLost && othersWell && m_engines.size() > 1));
    }
}

/// The take-off button holds take-off thrust until a lever is moved back.
void AircraftModel::latchTakeOff(const CockpitState& cockpit) {
    if (cockpit.engines.empty() || m_values.takeOffLever <= 0.0)
        return;
    double lowest = cockpit.engines.front().lever;
    for (const EngineControls& engine : cockpit.engines)
        lowest = std::min(lowest, engine.lever);
    if (cockpit.isTakeOffPressed && m_isOnGround && lowest > m_figures.engine.leverIdle && !m_isTakeOffLatched) {
        m_isTakeOffLatched = true;
        m_latchedLever = lowest;
    }
    m_isTakeOffLatched = m_isTakeOffLatched && lowest > m_latchedLever - m_figures.engine.leverIdle;
}

void AircraftModel::latchSpoilers(const CockpitState& cockpit) {
    const bool mayStay = cockpit.spoilers == SpoilerLever::Armed && m_isOnGround && areLeversClosed(cockpit);
    m_areSpoilersOut = mayStay && (m_areSpoilersOut || m_speed > m_figures.autobrake.takeOffFrom);
}

void AircraftModel::moveParts(const CockpitState& cockpit, double seconds) {
    latchTakeOff(cockpit);
    latchSpoilers(cockpit);
    latchFeathers(cockpit);
    for (std::size_t i = 0; i < m_engines.size(); ++i)
        m_engines[i].step(m_figures.engine, engineDemand(cockpit, i), seconds);
    m_airframe.step(m_figures.air, airframeDemand(cockpit), seconds, m_flapFault);
}

AircraftModel::Forces AircraftModel::forces() const {
    const AirState& now = air();
    Forces result;
    result.airspeed = m_isOnGround ? m_speed + headwind() : m_speed;
    for (std::size_t i = 0; i < m_engines.size(); ++i) {
        const double thrust = m_engines[i].thrust(m_figures.engine, now, result.airspeed);
        result.thrust += thrust;
        result.thrustMoment -= thrust * engineArm(i, m_engines.size(), m_figures.body.engineArm);
    }
    result.calibrated = result.airspeed > 0.0 ? calibratedFromTrue(result.airspeed, now) : 0.0;
    result.dynamicPressure = 0.5 * now.density * result.airspeed * result.airspeed;
    result.air = m_airframe.forces(m_figures.air, result.dynamicPressure, m_pitch - m_path, m_height);
    return result;
}

double AircraftModel::groundSpeed() const {
    if (m_isOnGround)
        return m_speed;
    const double along = m_speed * std::cos(m_path) - headwind();
    const double across =
        -m_figures.weather.windSpeed * std::sin(m_figures.weather.windFrom * kRadiansPerDegree - m_heading);
    return std::hypot(along, across);
}

double AircraftModel::track() const {
    if (m_isOnGround)
        return m_heading;
    const double along = m_speed * std::cos(m_path) - headwind();
    const double across =
        -m_figures.weather.windSpeed * std::sin(m_figures.weather.windFrom * kRadiansPerDegree - m_heading);
    return m_heading + std::atan2(across, along);
}

AssistView AircraftModel::assistView(const CockpitState& cockpit, const Forces& forces) const {
    const double over = track();
    AssistView view;
    view.calibrated = forces.calibrated;
    view.trueSpeed = forces.airspeed;
    view.acceleration = (forces.thrust - forces.air.drag) / m_mass;
    view.height = m_height;
    view.path = m_path;
    view.pitch = m_pitch;
    view.bank = m_bank;
    view.trimAlpha = m_isOnGround ? 0.0 : trimAlpha(forces);
    view.thresholdDistance = m_threshold ? *m_threshold - m_routeDistance : 0.0;
    view.lineOffset = crossOf(m_nose, m_line);
    view.lineAngle = wrapped(over - m_line.heading);
    const LinePoint runway = runwayLine();
    view.runwayOffset = crossOf(m_nose, runway);
    view.runwayAngle = wrapped(over - runway.heading);
    view.groundSpeed = groundSpeed();
    view.leastLever = 100.0;
    for (const EngineControls& engine : cockpit.engines)
        view.leastLever = std::min(view.leastLever, engine.lever);
    if (m_isTakeOffLatched)
        view.leastLever = std::max(view.leastLever, m_values.takeOffLever);
    view.tiller = cockpit.tiller;
    view.pedals = cockpit.pedals;
    view.pedalsWanted = -forces.thrustMoment / (std::max(forces.dynamicPressure, 1.0) * m_figures.wheels.rudderMoment);
    view.trimOff = trimOff(cockpit, view.calibrated);
    view.yokePitch = cockpit.yokePitch;
    view.yokeBank = cockpit.yokeBank;
    view.isOnGround = m_isOnGround;
    view.isOnRunwayLine = m_line.curvature == 0.0 && m_plan.runway.distanceTo(m_line.at) < m_plan.runway.width / 2.0;
    return view;
}

void AircraftModel::move(double east, double north, double seconds) {
    m_at.x += east * seconds;
    m_at.y += north * seconds;
}

/// What the elevator can lift grows with the square of the airspeed; trim nose down takes of it, nose up adds.
void AircraftModel::rotateOnGround(const AssistCommand& command, double calibrated, double seconds) {
    const double from = m_figures.body.elevatorFrom;
    const bool canRaise = calibrated * calibrated * command.elevator >= from * from;
    const double rate = canRaise ? command.pitchRate : std::min(command.pitchRate, -m_figures.assist.lowerRate);
    m_pitch = std::clamp(m_pitch + rate * seconds, 0.0, std::max(m_pitch, m_figures.assist.rotatePitch));
}

void AircraftModel::stepOnGround(const CockpitState& cockpit, const AssistCommand& command, const Forces& forces,
                                 double seconds) {
    const double weight = m_mass * kGravity;
    const double onWheels = weight - forces.air.lift - forces.thrust * std::sin(m_pitch);
    if (onWheels <= 0.0) {
        m_isOnGround = false;
        m_hasLanded = false;
        m_speed = forces.airspeed;
        m_wheels.centre();
        stepInAir(cockpit, command, forces, seconds);
        return;
    }
    const double forward = forces.thrust * std::cos(m_pitch) - forces.air.drag;
    const AutobrakeView braking{true,
                                areLeversClosed(cockpit),
                                m_hasLanded,
                                m_speed,
                                std::max(cockpit.brakeLeft, cockpit.brakeRight),
                                (m_figures.wheels.rolling * onWheels - forward) / m_mass,
                                m_mass,
                                2.0 * m_figures.wheels.brakeForce};
    const SteeringDemand steering =
        steeringDemand(cockpit, m_autobrake.step(m_figures.autobrake, cockpit.autobrake, braking), command.nosewheel);
    const double wind = m_figures.weather.windSpeed;
    const double crosswind =
        wind == 0.0 ? 0.0 : wind * std::sin(m_figures.weather.windFrom * kRadiansPerDegree - m_heading);
    const double sideslip = crosswind == 0.0 ? 0.0 : std::atan2(crosswind, std::max(forces.airspeed, 1.0));
    const RollingState rolling{m_mass,
                               m_speed,
                               onWheels,
                               forward,
                               forces.thrustMoment,
                               forces.dynamicPressure,
                               sideslip,
                               m_pitch < m_figures.body.raisedNose};
    const double before = m_speed;
    m_speed = std::max(0.0, m_speed + m_wheels.step(m_ground, steering, rolling, seconds) * seconds);
    m_turnRate = m_wheels.yawRate();
    const double halfway = m_heading + m_turnRate * seconds / 2.0;
    const double mean = (before + m_speed) / 2.0;
    if (mean > 0.0) {
        move(mean * std::sin(halfway), mean * std::cos(halfway), seconds);
        m_heading = wrapped(m_heading + m_turnRate * seconds);
    }
    m_bank += command.bankRate * seconds;
    m_path = 0.0;
    rotateOnGround(command, forces.calibrated, seconds);
}

void AircraftModel::step(const CockpitState& cockpit, double seconds) {
    moveParts(cockpit, seconds);
    burnFuel(seconds);
    workOutSpeeds();
    const Forces now = forces();
    const AssistCommand command =
        m_assist.fly(m_figures.assist, {m_takeOff.vr, m_takeOff.v2}, assistView(cockpit, now), seconds);
    if (m_isOnGround)
        stepOnGround(cockpit, command, now, seconds);
    else
        stepInAir(cockpit, command, now, seconds);
    findLine();
    m_altimeterSetting = cockpit.altimeterSetting;
    if (!m_isOnGround)
        return;
    m_lastGround = m_at;
    m_quality.step(crossOf(m_nose, m_line), m_speed, m_line.curvature != 0.0, seconds);
}

bool AircraftModel::isRunwayClear() const {
    const auto isOff = [&](double along) {
        const PlanPoint point{m_at.x + along * std::sin(m_heading), m_at.y + along * std::cos(m_heading)};
        return m_plan.runway.distanceTo(point) >= m_plan.runway.clearDistance;
    };
    return m_isOnGround && isOff(m_figures.body.noseAhead) && isOff(-m_figures.body.tailBehind);
}

MotionState AircraftModel::motion() const {
    const LinePoint& line = m_line;
    const double degrees = 1.0 / kRadiansPerDegree;
    const double airspeed = m_isOnGround ? m_speed + headwind() : m_speed;
    MotionState state;
    state.airspeed = airspeed > 0.0 ? calibratedFromTrue(airspeed, air()) / kMetresPerSecondPerKnot : 0.0;
    state.groundSpeed = groundSpeed() / kMetresPerSecondPerKnot;
    state.verticalSpeed = m_speed * std::sin(m_path) / kMetresPerFoot * 60.0;
    state.altitude = pressureAltitudeOf(m_plan.elevation + m_height, m_figures.weather.setting) / kMetresPerFoot;
    state.height = m_height / kMetresPerFoot;
    const double nose = wrapped(heading());
    state.heading = nose < 0.0 ? (nose + kFullTurn) * degrees : nose * degrees;
    const double over = wrapped(track());
    state.track = (over < 0.0 ? over + kFullTurn : over) * degrees;
    state.positionEast = m_lastGround.x;
    state.positionNorth = m_lastGround.y;
    state.pitch = m_pitch * degrees;
    state.bank = m_bank * degrees;
    state.turnRate = m_turnRate * degrees;
    state.nosewheelAngle = m_wheels.nosewheel() * degrees;
    state.flapAngle = m_airframe.flapAngle();
    state.gearPosition = m_airframe.gearDown() * 100.0;
    state.spoilerPosition = m_airframe.spoilersUp() * 100.0;
    state.centrelineOffset = crossOf(m_nose, line);
    state.centrelineAngle = wrapped(nose - line.heading) * degrees;
    state.lineCurvature = m_route->line.pointAt(m_routeDistance + kLookAhead).curvature * 1000.0;
    state.stopDistance = m_route->nextStop(m_routeDistance, m_plan.stopPassed) - m_routeDistance;
    state.lineOffsetRms = m_quality.rms();
    state.lineOffsetLargest = m_quality.largest();
    state.turnSpeedLargest = m_quality.turnSpeed() / kMetresPerSecondPerKnot;
    state.trueAirspeed = airspeed / kMetresPerSecondPerKnot;
    const double setting = m_altimeterSetting > 0.0 ? m_altimeterSetting : m_figures.weather.setting;
    state.indicatedAltitude = state.altitude - pressureAltitude(setting) / kMetresPerFoot;
    state.densityAltitude = densityAltitude(air().density) / kMetresPerFoot;
    tellLoading(state);
    state.isOnGround = m_isOnGround;
    state.isAutobrakeActive = m_isOnGround && m_autobrake.isActive();
    state.isTurnAhead = m_isOnGround && m_route->line.bends(m_routeDistance - m_figures.wheels.wheelbase,
                                                            m_routeDistance + m_plan.turnNotice);
    state.isRunwayClear = isRunwayClear();
    for (const Engine& engine : m_engines) {
        state.enginePower.push_back(engine.power());
        state.reversers.push_back(engine.reverser());
        state.propellerSpeed.push_back(engine.propellerSpeed(m_figures.engine));
    }
    return state;
}

} // namespace flowhand
