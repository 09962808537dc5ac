#pragma once

#include <vector>

#include "presenter/rows.h"
#include "presenter/runmaker.h"

namespace flowhand {

/// What is said of a scenario before it is flown: aircraft, place, wind, runway, mass, flows, and whether something may
/// happen, not what. Empty for a flow alone. `figures`: of the aircraft, which count where the scenario says nothing;
/// null: unknown.
[[nodiscard]] std::vector<FactRow> briefingRows(const FlightChoice& choice, const PracticeFigures* figures);

} // namespace flowhand
