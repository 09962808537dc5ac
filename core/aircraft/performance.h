#pragma once

#include <string>

#include "aircraft/practicefile.h"

namespace flowhand {

/// Take-off speeds, m/s calibrated.
struct TakeOffSpeeds {
    double v1 = 0.0;
    double vr = 0.0;
    double v2 = 0.0;
};

/// What a take-off or a landing is worked out for. SI.
struct PerformanceCase {
    double mass = 0.0;     ///< kg
    std::string flap;      ///< position of the flap lever
    double lever = 0.0;    ///< %, of the take-off
    double headwind = 0.0; ///< m/s along the runway, tail negative
    AirState air;          ///< on the runway
};

/// Stall speed in level flight, m/s calibrated (taken as equivalent: at these speeds the two differ by less than 0.2
/// %): Vs = sqrt(2 m g / (rho0 S CLmax)).
[[nodiscard]] double stallSpeed(const AerodynamicFigures& air, double mass, const std::string& flap);

/// VR and V2 as the file's multiples of the stall speed. V1 by the file's method:
/// balanced: where stopping takes as much runway as going on with one engine failed to 35 ft (14 CFR 25.109, 25.113 in
/// outline: two seconds more at V1's speed before the brakes, no reverse), not below the speed from which the rudder
/// holds the live engine, not above VR; simple: V1 = VR, as one engine has nothing to go on with.
[[nodiscard]] TakeOffSpeeds takeOffSpeeds(const PracticeFigures& figures, const PerformanceCase& now);

/// VREF, the file's multiple of the stall speed with the landing flap, m/s calibrated.
[[nodiscard]] double referenceSpeed(const PracticeFigures& figures, double mass, const std::string& flap);
/// VREF and the file's share of the headwind, within its least and most addition (common practice).
[[nodiscard]] double approachSpeed(const PracticeFigures& figures, double reference, double headwind);

/// m of runway from standing to `speed` (m/s calibrated), all engines.
[[nodiscard]] double takeOffRoll(const PracticeFigures& figures, const PerformanceCase& now, double speed);

/// m of runway from standing: all engines to `v1`, then stopped (accelerate-stop), or with one engine failed on to 35
/// ft (accelerate-go).
[[nodiscard]] double accelerateStop(const PracticeFigures& figures, const PerformanceCase& now, double v1);
[[nodiscard]] double accelerateGo(const PracticeFigures& figures, const PerformanceCase& now, double v1);

/// m/s true airspeed from which full rudder balances the thrust of the engines less one, nosewheel not counted. 0 with
/// engines in the middle.
[[nodiscard]] double leastControlSpeed(const PracticeFigures& figures, const PerformanceCase& now);

} // namespace flowhand
