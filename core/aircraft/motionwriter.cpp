#include "aircraft/motionwriter.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <string>

namespace flowhand {

namespace {

struct NumberEntry {
    const char* name;
    double MotionState::*value;
    double perUnit; ///< grains in one unit of the signal
};

constexpr std::array<NumberEntry, 34> kNumbers{{
    {"airspeed", &MotionState::airspeed, 10.0},
    {"ground_speed", &MotionState::groundSpeed, 10.0},
    {"vertical_speed", &MotionState::verticalSpeed, 0.1},
    {"altitude", &MotionState::altitude, 1.0},
    {"height", &MotionState::height, 1.0},
    {"heading", &MotionState::heading, 10.0},
    {"pitch", &MotionState::pitch, 10.0},
    {"bank", &MotionState::bank, 10.0},
    {"turn_rate", &MotionState::turnRate, 10.0},
    {"nosewheel_angle", &MotionState::nosewheelAngle, 10.0},
    {"flap_angle", &MotionState::flapAngle, 10.0},
    {"gear_position", &MotionState::gearPosition, 1.0},
    {"spoiler_position", &MotionState::spoilerPosition, 1.0},
    {"centreline_offset", &MotionState::centrelineOffset, 20.0},
    {"centreline_angle", &MotionState::centrelineAngle, 10.0},
    {"line_curvature", &MotionState::lineCurvature, 10.0},
    {"stop_distance", &MotionState::stopDistance, 2.0},
    {"track", &MotionState::track, 10.0},
    {"position_east", &MotionState::positionEast, 5.0},
    {"position_north", &MotionState::positionNorth, 5.0},
    {"line_offset_rms", &MotionState::lineOffsetRms, 20.0},
    {"line_offset_largest", &MotionState::lineOffsetLargest, 20.0},
    {"turn_speed_largest", &MotionState::turnSpeedLargest, 10.0},
    {"true_airspeed", &MotionState::trueAirspeed, 1.0},
    {"indicated_altitude", &MotionState::indicatedAltitude, 0.1},
    {"density_altitude", &MotionState::densityAltitude, 0.01},
    {"mass", &MotionState::mass, 0.1},
    {"fuel", &MotionState::fuel, 0.1},
    {"centre_of_gravity", &MotionState::centreOfGravity, 100.0},
    {"aircraft.v1", &MotionState::v1, 1.0},
    {"aircraft.vr", &MotionState::vr, 1.0},
    {"aircraft.v2", &MotionState::v2, 1.0},
    {"aircraft.vref", &MotionState::vref, 1.0},
    {"aircraft.vapp", &MotionState::vapp, 1.0},
}};

struct FlagEntry {
    const char* name;
    bool MotionState::*value;
};

constexpr std::array<FlagEntry, 4> kFlags{{
    {"on_ground", &MotionState::isOnGround},
    {"autobrake_active", &MotionState::isAutobrakeActive},
    {"turn_ahead", &MotionState::isTurnAhead},
    {"runway_clear", &MotionState::isRunwayClear},
}};

constexpr double kPowerPerUnit = 10.0;
constexpr double kPropellerPerUnit = 0.1; // tens of rpm

} // namespace

MotionWriter::MotionWriter(const SignalTable& signals, std::size_t engines)
    : m_signals(signals), m_heading(signals.find("heading").value_or(kNoSignal)),
      m_track(signals.find("track").value_or(kNoSignal)), m_last(signals.size()) {
    const auto find = [&](const std::string& name) {
        return signals.find(name).value_or(kNoSignal);
    };
    for (const NumberEntry& entry : kNumbers)
        m_numbers.push_back(find(entry.name));
    for (const FlagEntry& entry : kFlags)
        m_flags.push_back(find(entry.name));
    for (std::size_t i = 1; i <= engines; ++i) {
        m_powers.push_back(find("engine_power_" + std::to_string(i)));
        m_reversers.push_back(find("reverser_" + std::to_string(i)));
        m_propellers.push_back(find("propeller_speed_" + std::to_string(i)));
    }
}

void MotionWriter::putNumber(SignalId signal, double number, double perUnit, Time time, std::vector<Sample>& out) {
    if (signal == kNoSignal)
        return;
    const double kept = std::clamp(number, m_signals[signal].lowest, m_signals[signal].highest);
    const double value = std::round(kept * perUnit) / perUnit;
    const bool isNorth = (signal == m_heading || signal == m_track) && value >= 360.0;
    put(signal, Value::number(value == 0.0 || isNorth ? 0.0 : value), time, out); // no negative zero
}

void MotionWriter::put(SignalId signal, Value value, Time time, std::vector<Sample>& out) {
    if (signal == kNoSignal || m_last[indexOf(signal)] == value)
        return;
    m_last[indexOf(signal)] = value;
    out.push_back({time, signal, value, Actor::Machine, Origin::Practice, kNoControl});
}

void MotionWriter::write(const MotionState& state, Time time, std::vector<Sample>& out) {
    for (std::size_t i = 0; i < kNumbers.size(); ++i)
        putNumber(m_numbers[i], state.*kNumbers[i].value, kNumbers[i].perUnit, time, out);
    for (std::size_t i = 0; i < kFlags.size(); ++i)
        put(m_flags[i], Value::onOff(state.*kFlags[i].value), time, out);
    for (std::size_t i = 0; i < m_powers.size(); ++i) {
        putNumber(m_powers[i], state.enginePower[i], kPowerPerUnit, time, out);
        put(m_reversers[i], Value::position(static_cast<int>(state.reversers[i])), time, out);
        putNumber(m_propellers[i], state.propellerSpeed[i], kPropellerPerUnit, time, out);
    }
}

} // namespace flowhand
