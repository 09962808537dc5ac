#pragma once

#include <vector>

#include "presenter/rows.h"
#include "procedure/library.h"

/// The way from gate to gate as a line, and where flows lie on it: lengths 0..1 across, heights 0..1 up. From the phase
/// list and the flow files alone.
namespace flowhand {

[[nodiscard]] std::vector<PhaseRow> phaseRows();
/// Height of the line at `across`: level in phases that end as high as they begin, smooth between.
[[nodiscard]] double ribbonHeight(double across);
/// All flows of all aircraft, `rowId` counting through.
[[nodiscard]] std::vector<FlowRow> flowRows(const std::vector<AircraftFolder>& library);

} // namespace flowhand
