#pragma once

#include <vector>

#include "presenter/rows.h"
#include "presenter/runmaker.h"

/// What there is to choose from. Pure.
namespace flowhand {

/// One kind of flights of one aircraft: its flows, or its scenarios. Never empty.
struct FlightGroup {
    const AircraftFolder* folder = nullptr;
    bool isScenarios = false;
};

/// Of each aircraft its flows, then its scenarios. The library must outlive it.
[[nodiscard]] std::vector<FlightGroup> flightGroups(const std::vector<AircraftFolder>& library);
[[nodiscard]] std::vector<GroupRow> groupRows(const std::vector<FlightGroup>& groups);
/// In the order in which they are offered. A scenario whose first flow is missing has none.
[[nodiscard]] std::vector<FlightChoice> flightsOf(const FlightGroup& group);
/// All flows that are flown when nothing leads elsewhere, in their order.
[[nodiscard]] std::vector<const Flow*> flowsOf(const FlightChoice& choice);
/// `rowId` counts through.
[[nodiscard]] std::vector<FlowRow> flowRows(const std::vector<FlightChoice>& choices);

} // namespace flowhand
