#pragma once

#include "aircraft/atmosphere.h"

namespace flowhand {

struct PropellerFigures {
    double diameter = 0.0;      ///< m
    double efficiency = 0.0;    ///< share of the shaft's power that reaches the slipstream, at speed
    double standingShare = 0.0; ///< share of the ideal thrust that is left standing still, where the blades are steep
    double fullFrom = 0.0;      ///< m/s true, from which it loses no more than its efficiency says
    double windmillDrag = 0.0;  ///< m2 of drag area, turned by the air alone, not feathered
    double featherTime = 0.0;   ///< s; 0: does not feather
    double ratedSpeed = 0.0;    ///< rpm at full power
    double lowSpeed = 1.0;      ///< share of it that the condition lever's 'low' holds
    double lowPower = 100.0;    ///< %, the most that the engine gives there
    double autofeatherLever = 100.0; ///< %, lever and other engine's power from which automatic feathering watches
    double autofeatherPower = 0.0;   ///< %, engine; below it the engine counts as lost
};

/// N, from `power` (W at the shaft) in air of `density` (kg/m3) at `airspeed` (m/s true, 0 or more): momentum theory
/// of an actuator disc (Rankine and Froude; after Glauert), P = T (V + v), T = 2 rho A (V + v) v, with the file's
/// losses. Falls with speed; standing still it is (2 rho A P^2)^(1/3).
[[nodiscard]] double propellerThrust(const PropellerFigures& figures, double power, double density, double airspeed);

/// rpm of a propeller of fixed pitch: what it takes grows with the cube of its speed. `share` of the rated power, 0 ..
/// 1. One with a governor turns no faster than `most` (share of the rated speed).
[[nodiscard]] double propellerSpeed(const PropellerFigures& figures, double share, double most);

} // namespace flowhand
