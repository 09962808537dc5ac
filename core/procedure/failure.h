#pragma once

#include <cstddef>
#include <cstdint>

namespace flowhand {

enum class FailureKind : std::uint8_t {
    EngineOut,        ///< the engine runs down and stays so
    ReverserLocked,   ///< the reverser stays where it is
    ReverserUnlocked, ///< on the ground the reverser begins to open by itself; a propeller's blades go flat
    SteeringLost,     ///< the nosewheel goes where it is rolled; rudder and brakes still turn the aircraft
    FlapAsymmetry,    ///< one side's flap stays where it is; the drive stops when the sides are too far apart
    BrakeLost,        ///< one side's brake does nothing
    BrakeDrags        ///< one side's brake never lets go
};

enum class Side : std::uint8_t { Left, Right };

/// Something of the aircraft that no longer works. Lasts until the end of the flight.
struct Failure {
    FailureKind kind = FailureKind::EngineOut;
    std::size_t engine = 0; ///< from the left, from 0: of EngineOut and the reversers
    Side side = Side::Left; ///< of FlapAsymmetry and the brakes
    double amount = 0.0; ///< FlapAsymmetry: deg between the sides at which the drive stops. BrakeDrags: share of full
                         ///< pedal, 0..1

    bool operator==(const Failure&) const = default;
};

} // namespace flowhand
