#pragma once

#include <vector>

#include "base/signal.h"

namespace flowhand {

/// The signals that tell how the aircraft moves, from the practice aircraft or a feed, the same for every aircraft.
/// Per engine n from 1: engine_power_n (%), reverser_n (stowed, transit, deployed).
///
///   airspeed kt (calibrated) · ground_speed kt · vertical_speed ft/min · altitude ft (pressure) · height ft (above the
///   field) · heading deg (0..360) · pitch deg · bank deg · turn_rate deg/s · on_ground on/off · nosewheel_angle deg ·
///   centreline_offset m (right of the line positive) · centreline_angle deg (pointing right of the line positive) ·
///   stop_distance m (to the next holding point or stand along the line) · flap_angle position-like deg · gear_position
///   %(100 down) · runway_clear on/off · turn_ahead on/off (the line bends here or within the next metres)
[[nodiscard]] std::vector<Signal> motionSignals(int engines);

} // namespace flowhand
