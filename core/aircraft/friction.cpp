#include "aircraft/friction.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "aircraft/atmosphere.h"
#include "aircraft/ground.h"

namespace flowhand {

namespace {

constexpr double kPascalPerPsi = 6894.757;

struct WetCurve {
    double psi;
    double cubic, square, linear, standing; ///< of the speed in hundreds of knots
};

constexpr std::array<WetCurve, 4> kWetCurves{{{50.0, -0.0350, 0.306, -0.851, 0.883},
                                              {100.0, -0.0437, 0.320, -0.805, 0.804},
                                              {200.0, -0.0331, 0.252, -0.658, 0.692},
                                              {300.0, -0.0401, 0.263, -0.611, 0.614}}};
/// The cubics turn up again beyond the speeds they were made for.
constexpr double kFastestWet = 2.0; // hundreds of knots

// AC 25-32, table 2, from memory: code 2, slush or standing water.
constexpr double kFloating = 0.05;
constexpr double kFloatsFrom = 0.85; // of the hydroplaning speed
constexpr double kWaterMost = 0.16;
constexpr double kWaterShare = 0.5; // of wet

double at(const WetCurve& curve, double v) {
    return ((curve.cubic * v + curve.square) * v + curve.linear) * v + curve.standing;
}

} // namespace

double wetFriction(double speed, double pressure) {
    const double v = std::min(kFastestWet, speed / kMetresPerSecondPerKnot / 100.0);
    const double psi = std::clamp(pressure / kPascalPerPsi, kWetCurves.front().psi, kWetCurves.back().psi);
    std::size_t above = 1;
    while (above + 1 < kWetCurves.size() && kWetCurves[above].psi < psi)
        ++above;
    const WetCurve& low = kWetCurves[above - 1];
    const WetCurve& high = kWetCurves[above];
    const double share = (psi - low.psi) / (high.psi - low.psi);
    return at(low, v) + share * (at(high, v) - at(low, v));
}

double hydroplaningSpeed(double pressure) {
    return 9.0 * std::sqrt(pressure / kPascalPerPsi) * kMetresPerSecondPerKnot;
}

double brakingFriction(const GroundFigures& figures, double speed) {
    switch (figures.braking) {
    case Braking::Share:
        break;
    case Braking::Wet:
        return figures.antiSkidWet * wetFriction(speed, figures.tyrePressure);
    case Braking::Water:
        if (speed >= kFloatsFrom * hydroplaningSpeed(figures.tyrePressure))
            return kFloating;
        return std::min(kWaterMost, kWaterShare * figures.antiSkidWet * wetFriction(speed, figures.tyrePressure));
    case Braking::Whole:
        return figures.braked;
    }
    return figures.antiSkid * figures.friction;
}

} // namespace flowhand
