#pragma once

#include <string>
#include <vector>

namespace flowhand {

/// One gate of the flap lever.
struct FlapFigures {
    std::string position;  ///< as named on the lever
    double angle = 0.0;    ///< deg
    double lift = 0.0;     ///< lift coefficient at no angle of attack
    double drag = 0.0;     ///< added to the drag coefficient
    double liftMost = 0.0; ///< lift coefficient at the stall
};

struct AerodynamicFigures {
    double wingArea = 0.0;          ///< m2
    double span = 0.0;              ///< m
    double liftSlope = 0.0;         ///< per rad
    double drag = 0.0;              ///< drag coefficient without lift, all retracted
    double inducedDrag = 0.0;       ///< k in CD = CD0 + k CL^2
    double gearDrag = 0.0;          ///< added, gear down
    double spoilerDrag = 0.0;       ///< added, spoilers fully up
    double spoilerLiftLoss = 0.0;   ///< share of the lift that fully raised spoilers take
    double wingHeight = 0.0;        ///< m above the main wheels' soles, for ground effect
    double slipRoll = 0.0;          ///< rolling moment coefficient per rad that the nose is off the path, to its side
    double slipForce = 0.0;         ///< side force coefficient per rad of it
    double flapRate = 0.0;          ///< deg/s
    bool isFlapElectric = false;    ///< moves with the battery or a running engine only
    double gearTransit = 1.0;       ///< s
    double spoilerTransit = 1.0;    ///< s
    std::vector<FlapFigures> flaps; ///< by rising angle

    /// Of that position of the lever; null without one.
    [[nodiscard]] const FlapFigures* flap(const std::string& position) const;
};

/// N; lift across the flow, drag along it.
struct AirForces {
    double lift = 0.0;
    double drag = 0.0;
};

/// Where flaps, gear and spoilers are wanted.
struct AirframeDemand {
    double flapAngle = 0.0; ///< deg
    bool isGearDown = true;
    bool areSpoilersUp = false;
};

/// Why the flaps of the two sides may differ: one stays where it was when this came, and the drive stops once the other
/// is so far from it.
struct FlapFault {
    bool isThere = false;
    bool isLeft = false;    ///< the side that stays
    double mostApart = 0.0; ///< deg
};

/// Flaps, gear and spoilers on their way, and the forces of the air.
class Airframe {
public:
    void settle(const AirframeDemand& demand);
    void step(const AerodynamicFigures& figures, const AirframeDemand& demand, double seconds,
              const FlapFault& fault = {});

    [[nodiscard]] double flapAngle() const { return (m_flapLeft + m_flapRight) / 2.0; } ///< deg, both sides' middle
    [[nodiscard]] double gearDown() const { return m_gearDown; }                        ///< 0 up .. 1 down
    [[nodiscard]] double spoilersUp() const { return m_spoilersUp; }

    /// `dynamicPressure` Pa, `alpha` rad, `height` of the wheels, m.
    [[nodiscard]] AirForces forces(const AerodynamicFigures& figures, double dynamicPressure, double alpha,
                                   double height) const;
    /// Angle of attack (rad) at which the lift coefficient is `lift`, as the flaps are now.
    [[nodiscard]] double alphaFor(const AerodynamicFigures& figures, double lift) const;
    [[nodiscard]] double alphaMost(const AerodynamicFigures& figures) const;
    [[nodiscard]] FlapFigures flapNow(const AerodynamicFigures& figures) const;
    /// How much more lift coefficient the left wing's flap gives than the right one's: rolls to the right.
    [[nodiscard]] double liftApart(const AerodynamicFigures& figures) const;

private:
    double m_flapLeft = 0.0;
    double m_flapRight = 0.0;
    double m_gearDown = 1.0;
    double m_spoilersUp = 0.0;
};

/// Share of the induced drag that is left `height` m above the ground with a wing of `span` m:
/// (16 h/b)^2 / (1 + (16 h/b)^2), McCormick's approximation (from memory).
[[nodiscard]] double groundEffect(double height, double span);

} // namespace flowhand
