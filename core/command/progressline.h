#pragma once

#include <string>

#include "procedure/flow.h"
#include "session/event.h"

namespace flowhand {

/// One event as a line for a terminal, such as "0:12.3  done     Taxi light on"; empty for what a pilot need not see at
/// once.
[[nodiscard]] std::string progressLine(const Event& event, const Flow& flow, const Aircraft& aircraft);

} // namespace flowhand
