#pragma once

#include <vector>

#include "aircraft/engine.h"
#include "base/sample.h"
#include "procedure/aircraftfile.h"

namespace flowhand {

/// The motion signals (procedure/motion.h) before rounding, each in its signal's unit.
struct MotionState {
    double airspeed = 0.0;
    double groundSpeed = 0.0;
    double verticalSpeed = 0.0;
    double altitude = 0.0;
    double height = 0.0;
    double heading = 0.0;
    double track = 0.0;
    double positionEast = 0.0;
    double positionNorth = 0.0;
    double pitch = 0.0;
    double bank = 0.0;
    double turnRate = 0.0;
    double nosewheelAngle = 0.0;
    double flapAngle = 0.0;
    double gearPosition = 0.0;
    double spoilerPosition = 0.0;
    double centrelineOffset = 0.0;
    double centrelineAngle = 0.0;
    double lineCurvature = 0.0;
    double stopDistance = 0.0;
    double lineOffsetRms = 0.0;
    double lineOffsetLargest = 0.0;
    double turnSpeedLargest = 0.0;
    double trueAirspeed = 0.0;
    double indicatedAltitude = 0.0;
    double densityAltitude = 0.0;
    double mass = 0.0;
    double fuel = 0.0;
    double centreOfGravity = 0.0;
    double v1 = 0.0;
    double vr = 0.0;
    double v2 = 0.0;
    double vref = 0.0;
    double vapp = 0.0;
    bool isOnGround = true;
    bool isAutobrakeActive = false;
    bool isTurnAhead = false;
    bool isRunwayClear = false;
    std::vector<double> enginePower;
    std::vector<double> propellerSpeed; ///< rpm
    std::vector<ReverserState> reversers;
};

/// Keeps motion within its signals' ranges, rounds it to the grain a person or a condition can tell apart and lets only
/// changes through. The table must outlive it.
class MotionWriter {
public:
    MotionWriter(const SignalTable& signals, std::size_t engines);
    void write(const MotionState& state, Time time, std::vector<Sample>& out);

private:
    void putNumber(SignalId signal, double number, double perUnit, Time time, std::vector<Sample>& out);
    void put(SignalId signal, Value value, Time time, std::vector<Sample>& out);

    const SignalTable& m_signals;
    std::vector<SignalId> m_numbers; ///< in the order of the table of numbers
    std::vector<SignalId> m_flags;
    std::vector<SignalId> m_powers;
    std::vector<SignalId> m_reversers;
    std::vector<SignalId> m_propellers; ///< kNoSignal without propellers
    SignalId m_heading;                 ///< goes round at 360
    SignalId m_track;                   ///< goes round at 360
    std::vector<Value> m_last;          ///< by SignalId
};

} // namespace flowhand
