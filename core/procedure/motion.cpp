#include "procedure/motion.h"

#include <string>
#include <utility>

namespace flowhand {

namespace {

Signal number(std::string name, std::string label, const char* unit, double lowest, double highest, double scale) {
    Signal signal;
    signal.name = std::move(name);
    signal.label = std::move(label);
    signal.unit = *findUnit(unit);
    signal.lowest = lowest;
    signal.highest = highest;
    signal.scale = scale;
    return signal;
}

Signal onOff(std::string name, std::string label) {
    Signal signal;
    signal.name = std::move(name);
    signal.label = std::move(label);
    signal.kind = SignalKind::OnOff;
    return signal;
}

Signal reverser(const std::string& engine) {
    Signal signal;
    signal.name = "reverser_" + engine;
    signal.label = "Reverser " + engine;
    signal.kind = SignalKind::Position;
    signal.positions = {"stowed", "transit", "deployed"};
    return signal;
}

} // namespace

std::vector<Signal> motionSignals(int engines, bool hasPropellers) {
    std::vector<Signal> signals = {
        number("airspeed", "Airspeed", "kt", 0, 500, 100),
        number("ground_speed", "Ground speed", "kt", 0, 600, 100),
        number("vertical_speed", "Vertical speed", "ft/min", -6000, 6000, 1000),
        number("altitude", "Altitude", "ft", -2000, 45000, 1000),
        number("height", "Height", "ft", 0, 45000, 500),
        number("heading", "Heading", "deg", 0, 360, 30),
        number("pitch", "Pitch", "deg", -90, 90, 10),
        number("bank", "Bank", "deg", -180, 180, 30),
        number("turn_rate", "Turn rate", "deg/s", -60, 60, 10),
        onOff("on_ground", "On ground"),
        number("nosewheel_angle", "Nosewheel angle", "deg", -90, 90, 30),
        number("flap_angle", "Flap angle", "deg", 0, 60, 10),
        number("gear_position", "Gear position", "%", 0, 100, 50),
        number("spoiler_position", "Spoiler position", "%", 0, 100, 50),
        onOff("autobrake_active", "Automatic braking"),
        number("centreline_offset", "Offset from the line", "m", -500, 500, 5),
        number("centreline_angle", "Angle to the line", "deg", -180, 180, 10),
        number("line_curvature", "Curvature of the line", "", -100, 100, 20),
        onOff("turn_ahead", "Turn ahead"),
        number("stop_distance", "Distance to stop", "m", -500, 10000, 50),
        onOff("runway_clear", "Runway clear"),
        number("line_offset_rms", "Offset from the line, mean", "m", 0, 500, 5),
        number("line_offset_largest", "Offset from the line, largest", "m", 0, 500, 5),
        number("turn_speed_largest", "Speed in turns, largest", "kt", 0, 600, 10),
        number("true_airspeed", "True airspeed", "kt", 0, 700, 100),
        number("indicated_altitude", "Altitude shown", "ft", -4000, 47000, 1000),
        number("density_altitude", "Density altitude", "ft", -20000, 60000, 1000),
        number("mass", "Mass", "kg", 0, 1e6, 1000),
        number("fuel", "Fuel", "kg", 0, 1e6, 1000),
        number("centre_of_gravity", "Centre of gravity", "m", -50, 50, 1),
        number("aircraft.v1", "V1", "kt", 0, 500, 100),
        number("aircraft.vr", "VR", "kt", 0, 500, 100),
        number("aircraft.v2", "V2", "kt", 0, 500, 100),
        number("aircraft.vref", "VREF", "kt", 0, 500, 100),
        number("aircraft.vapp", "Approach speed", "kt", 0, 500, 100),
    };
    for (int engine = 1; engine <= engines; ++engine) {
        const std::string which = std::to_string(engine);
        signals.push_back(number("engine_power_" + which, "Engine power " + which, "%", 0, 110, 20));
        signals.push_back(reverser(which));
        if (hasPropellers)
            signals.push_back(number("propeller_speed_" + which, "Propeller speed " + which, "rpm", 0, 4000, 1000));
    }
    // Behind all that older runs know, whose samples count the signals.
    signals.push_back(number("track", "Track", "deg", 0, 360, 30));
    signals.push_back(number("position_east", "Position, east", "m", -20000, 20000, 50));
    signals.push_back(number("position_north", "Position, north", "m", -20000, 20000, 50));
    return signals;
}

} // namespace flowhand
