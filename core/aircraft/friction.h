#pragma once

#include <cstdint>

namespace flowhand {

struct GroundFigures;

/// How hard a surface lets an aircraft brake.
enum class Braking : std::uint8_t {
    Share, ///< anti-skid reaches its share of the friction there is
    Wet,   ///< 14 CFR 25.109(c): falls with speed and tyre pressure
    Water, ///< standing water or slush: tyres float above 85 % of the hydroplaning speed
    Whole  ///< the braking coefficient is known as a whole, anti-skid included
};

/// The most that braked tyres give at `speed` (m/s over the ground), as a share of the weight on them.
[[nodiscard]] double brakingFriction(const GroundFigures& figures, double speed);

/// Maximum friction of tyre and wet smooth runway, 14 CFR 25.109(c)(1): cubics of the speed for four tyre pressures
/// (the coefficients from memory), in between in proportion, beyond as at the end. `speed` m/s, `pressure` Pa.
[[nodiscard]] double wetFriction(double speed, double pressure);

/// m/s from which a rotating tyre of `pressure` (Pa) floats: 9 sqrt(psi) kt (Horne, NASA TN D-2056, from memory).
[[nodiscard]] double hydroplaningSpeed(double pressure);

} // namespace flowhand
