#pragma once

#include <cstddef>

#include "procedure/library.h"

namespace flowhand {

/// What a scenario has outside its file: its flows, its place and surroundings, the routes its events lead onto, and
/// the hands that demonstrate it. Returns how many scripts of hands were looked at.
[[nodiscard]] std::size_t lintScenario(const Scenario& scenario, const AircraftFolder& folder, Problems& problems);

} // namespace flowhand
