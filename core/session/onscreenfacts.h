#pragma once

#include <vector>

#include "procedure/aircraftfile.h"
#include "rig/controlfacts.h"

namespace flowhand {

/// What is known of an aircraft's controls where no rig has them, by signal: moved on screen or by a script, without
/// noise, over their whole travel, and named as their signals.
[[nodiscard]] std::vector<ControlFacts> onScreenFacts(const Aircraft& aircraft);

} // namespace flowhand
