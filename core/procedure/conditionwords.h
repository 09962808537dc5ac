#pragma once

#include <string>

#include "procedure/aircraftfile.h"

namespace flowhand {

/// A condition as people read it on a card: "airspeed above V1 - 2 kt" for "airspeed > aircraft.v1 - 2 kt". Signals by
/// their labels, the aircraft's values as numbers with their unit. For reading only: it does not compile again.
[[nodiscard]] std::string conditionWords(const std::string& text, const Aircraft& aircraft);

} // namespace flowhand
