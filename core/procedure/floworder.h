#pragma once

#include "procedure/library.h"

namespace flowhand {

/// The aircraft file's list of its flows, which says their order within a phase. It may name flows that are not there.
inline constexpr const char* kFlowOrderKey = "flows";

/// Sorts an aircraft's flows in the order of the flight: by first phase, then as the aircraft file lists them, those it
/// does not list last, by last phase.
void putInOrder(AircraftFolder& folder);

} // namespace flowhand
