#pragma once

#include <optional>
#include <string>

namespace flowhand {

/// Where wind comes from and how strong it is.
struct Wind {
    double from = 0.0;  ///< deg, true, 0..360
    double speed = 0.0; ///< m/s

    bool operator==(const Wind&) const = default;
};

/// What a flight meets, where that is not as the aircraft's practice.toml has it.
struct Surroundings {
    std::string surface;        ///< one of its surfaces; empty: its own
    std::optional<Wind> wind;   ///< none: its own
    std::optional<double> mass; ///< kg at the start; none: the start place's
};

} // namespace flowhand
