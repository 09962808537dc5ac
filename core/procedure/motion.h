#pragma once

#include <vector>

#include "base/signal.h"

namespace flowhand {

/// The signals that tell how the aircraft moves, from the practice aircraft or a feed, the same for every aircraft.
/// None of them has a value until its source has spoken; those of the ground line have one on the ground only.
///
///   airspeed kt           calibrated
///   ground_speed kt       never negative
///   vertical_speed ft/min
///   altitude ft           pressure altitude
///   height ft             of the main wheels above the field
///   heading deg           0 .. 360, true
///   pitch deg             nose up positive
///   bank deg              right wing down positive
///   turn_rate deg/s       to the right positive
///   on_ground on/off      main wheels
///   nosewheel_angle deg   to the right positive
///   flap_angle deg        as far as the flaps are out by now, not where the lever stands
///   gear_position %       100 = down and locked
///   spoiler_position %    100 = fully up
///   autobrake_active on/off  automatic braking is pressing the brakes
///   centreline_offset m   right of the line positive
///   centreline_angle deg  pointing to the right of the line positive
///   line_curvature        in 1/km, a few metres ahead, to the right positive
///   turn_ahead on/off     the line bends here or within the next metres
///   stop_distance m       along the line to the next holding point or stand, negative past it
///   line_offset_rms m     root of the mean square of centreline_offset over the way taxied since the last stop
///   line_offset_largest m the largest of it, never negative
///   turn_speed_largest kt ground speed in the bends of the line since the last stop, the largest
///   true_airspeed kt
///   indicated_altitude ft what the altimeter shows with the setting of the cockpit
///   density_altitude ft
///   mass kg, fuel kg
///   centre_of_gravity m   ahead of the main wheels
///   aircraft.v1, .vr, .v2, .vref, .vapp kt  computed from mass, flap, wind and surface (aircraft/performance.h)
///   runway_clear on/off   the whole aircraft is off the runway and behind its holding points
///   engine_power_n %      of rated thrust's shaft speed, n = 1 .. engines
///   reverser_n            stowed, transit, deployed; of a propeller: its blades are flat in transit, reversed deployed
///   propeller_speed_n rpm of aircraft with propellers
///   track deg             over the ground, 0 .. 360, true
///   position_east m, position_north m  of the main wheels on the airport's ground plan; on the ground only
[[nodiscard]] std::vector<Signal> motionSignals(int engines, bool hasPropellers = false);

} // namespace flowhand
