#pragma once

#include <string>
#include <vector>

#include "aircraft/aerodynamics.h"
#include "aircraft/assist.h"
#include "aircraft/engine.h"
#include "aircraft/ground.h"
#include "base/error.h"
#include "procedure/aircraftfile.h"

namespace flowhand {

/// What is on board besides the empty aircraft, kg.
struct Loading {
    double fuel = 0.0;
    double payload = 0.0;
};

/// Masses in kg, arms in m ahead of the main wheels.
struct MassFigures {
    double mass = 0.0;  ///< at the start unless the place says otherwise
    double least = 0.0; ///< with its crew and a little fuel
    double most = 0.0;
    double empty = 0.0;
    double emptyArm = 0.0;
    double payloadArm = 0.0;
    double fuel = 0.0; ///< at the start
    double fuelMost = 0.0;
    double fuelArm = 0.0;
    double forwardLimit = 0.0; ///< the centre of gravity lies between these
    double aftLimit = 0.0;
    double flowIdle = 0.0;        ///< kg/h of fuel, an engine running with no power
    double flowFull = 0.0;        ///< kg/h at 100 %
    double centreOfGravity = 0.0; ///< at the start

    /// For a mass other than at the start: payload is added or taken off, and fuel once there is no payload left.
    [[nodiscard]] Loading loadingFor(double wanted) const;
    /// m ahead of the main wheels.
    [[nodiscard]] double centre(const Loading& loading) const;
    /// Error `out-of-limits` when mass, fuel or centre of gravity lies outside the limits, with the figures.
    [[nodiscard]] Status check(double wanted) const;
};

enum class SpeedMethod : std::uint8_t { Balanced, Simple };

/// How V speeds are worked out (performance.h). Multiples of the stall speed.
struct PerformanceFigures {
    SpeedMethod method = SpeedMethod::Simple;
    double rotate = 0.0;        ///< VR
    double safety = 0.0;        ///< V2
    double reference = 0.0;     ///< VREF
    double windShare = 0.0;     ///< of the headwind, added for the approach
    double leastAddition = 0.0; ///< m/s
    double mostAddition = 0.0;
};

/// What a runway's surface does to tyres.
struct SurfaceFigures {
    std::string name;
    double friction = 0.0;
    double rolling = 0.0;
    double breakaway = 0.0;
    Braking braking = Braking::Share;
    double braked = 0.0;
};

/// Where the nose and the tail end, and what turns about what.
struct BodyFigures {
    double noseAhead = 0.0;    ///< m from the main wheels to the tip of the nose
    double tailBehind = 0.0;   ///< m from the main wheels to the end of the tail
    double engineArm = 0.0;    ///< m from the middle to each outer engine
    double raisedNose = 0.0;   ///< rad of pitch above which the nosewheel is off the ground
    double elevatorFrom = 0.0; ///< m/s calibrated from which the elevator can raise the nose
};

/// What the elevator trim does. Its control is in deg, nose up positive.
struct TrimFigures {
    double takeOff = 0.0;   ///< deg, wanted at VR and below
    double bySpeed = 0.0;   ///< deg for each m/s above VR
    double perDegree = 0.0; ///< share of full yoke that a degree off is worth
};

/// What a piston engine loses by its mixture, its carburettor heat and one magneto.
struct PistonFigures {
    double richLoss = 0.0;    ///< share of power for the square of the share by which the mixture is too rich ...
    double leanLoss = 0.0;    ///< ... and too lean
    double heatLoss = 0.0;    ///< share of power, carburettor heat on
    double magnetoLoss = 0.0; ///< share of power on one magneto
};

/// One setting of the automatic brake.
struct AutobrakeFigures {
    std::string position;
    double deceleration = 0.0; ///< m/s2; 0 = off
    bool isForTakeOff = false; ///< waits for closed levers in a take-off roll instead of a touchdown
};

struct AutobrakeCommon {
    double takeOffFrom = 0.0; ///< m/s ground speed, below which a rejected take-off is not braked automatically
    double pedalOff = 0.0;    ///< share of toe brake that switches it off
    std::vector<AutobrakeFigures> settings;
};

struct Weather {
    double windFrom = 0.0;     ///< deg
    double windSpeed = 0.0;    ///< m/s
    double setting = 101325.0; ///< altimeter, Pa
    double warmer = 0.0;       ///< K than standard
};

/// A control's state that a place starts from, in the signal's own unit.
struct PlaceControl {
    SignalId signal = kNoSignal;
    Value value;
};

/// Where and how a run can begin.
struct StartPlace {
    std::string name;
    std::string route;
    std::string mark;
    double beyond = 0.0;        ///< m past the mark, of the nosewheel
    double height = 0.0;        ///< m
    double calibrated = 0.0;    ///< m/s
    double sink = 0.0;          ///< m/s
    double mass = 0.0;          ///< kg; 0: as the file has it
    bool isTakeOffRoll = false; ///< on the ground at speed before a take-off, not after a landing
    std::vector<PlaceControl> controls;
};

/// Everything in a practice.toml. Immutable once read.
struct PracticeFigures {
    std::string ground; ///< folder in procedures/ with the ground.toml
    MassFigures mass;
    PerformanceFigures performance;
    int engines = 0;
    BodyFigures body;
    EngineFigures engine;
    PistonFigures piston;
    AerodynamicFigures air;
    GroundFigures wheels;
    AutobrakeCommon autobrake;
    TrimFigures trim;
    AssistFigures assist;
    Weather weather;
    std::vector<SurfaceFigures> surfaces;
    std::string surface; ///< that it rolls on, by name
    std::vector<StartPlace> places;

    [[nodiscard]] const StartPlace* place(const std::string& name) const;
    /// Rolls on another of its surfaces from now on. Error `unknown-surface` lists them.
    [[nodiscard]] Status setSurface(const std::string& name);
};

/// Reads the practice.toml at `file`, for the controls of `aircraft`.
[[nodiscard]] Result<PracticeFigures> loadPractice(const std::string& file, const Aircraft& aircraft);
/// The practice.toml beside the aircraft's own file.
[[nodiscard]] Result<PracticeFigures> loadPracticeOf(const Aircraft& aircraft);

} // namespace flowhand
