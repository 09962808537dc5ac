#pragma once

#include <optional>
#include <string>
#include <vector>

#include "procedure/aircraftfile.h"
#include "procedure/flow.h"
#include "session/event.h"

namespace flowhand {

/// The event of a canonical line (session/event.h), as it is stored; nothing when it is not one of this aircraft and
/// flow.
[[nodiscard]] std::optional<Event> parseEvent(const std::string& line, const Aircraft& aircraft, const Flow& flow);

} // namespace flowhand
