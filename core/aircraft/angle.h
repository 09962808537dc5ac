#pragma once

#include <cmath>

#include "aircraft/atmosphere.h"

namespace flowhand {

inline constexpr double kFullTurn = 360.0 * kRadiansPerDegree;

/// The same direction between half a turn left and half a turn right, rad.
[[nodiscard]] inline double wrapped(double angle) {
    return std::remainder(angle, kFullTurn);
}

} // namespace flowhand
