#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "base/phrase.h"

namespace flowhand {

/// A phase of a flight from gate to gate. `height` 0..1 is how high the ribbon runs at its end: level where the
/// aircraft rolls.
struct Phase {
    std::string id;
    Phrase title;
    double height = 0.0;
};

/// In the order of the flight: gate, taxi_out, line_up, take_off, climb, cruise, descent, approach, landing, taxi_in,
/// gate_in.
[[nodiscard]] const std::vector<Phase>& phases();
[[nodiscard]] std::optional<std::size_t> findPhase(std::string_view id);

} // namespace flowhand
