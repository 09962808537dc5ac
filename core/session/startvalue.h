#pragma once

#include "procedure/aircraftfile.h"
#include "procedure/flow.h"

namespace flowhand {

/// Where a simulated control stands at the start of a flow; where the flow says nothing: off, first position, in the
/// middle or at rest.
[[nodiscard]] Value startOf(const Flow& flow, const Aircraft& aircraft, SignalId control);

} // namespace flowhand
