#pragma once

#include <string>

#include "procedure/flow.h"

namespace flowhand {

/// The cockpit's areas as blocks with their controls, and the way of the flow's hand over them, as inline SVG: black on
/// white, 960 units wide. A control that the flow works has the numbers of its steps. Without a flow, the plan alone.
[[nodiscard]] std::string panelSvg(const Aircraft& aircraft, const Flow* flow);

} // namespace flowhand
