#include "aircraft/propeller.h"

#include <algorithm>
#include <cmath>

namespace flowhand {

namespace {

constexpr double kQuarterPi = 45.0 * kRadiansPerDegree;
/// Newton's method from above converges to the last bit within so many rounds for any speed and power.
constexpr int kRounds = 6;

/// v of (V + v)^2 v = k: the speed that the disc adds to the air.
double inducedSpeed(double airspeed, double k) {
    double v = std::cbrt(k); // exact standing still, above the root otherwise
    for (int i = 0; i < kRounds && airspeed > 0.0; ++i) {
        const double through = airspeed + v;
        v -= (through * through * v - k) / (through * (through + 2.0 * v));
    }
    return v;
}

} // namespace

double propellerThrust(const PropellerFigures& figures, double power, double density, double airspeed) {
    if (power <= 0.0)
        return 0.0;
    const double disc = 2.0 * density * kQuarterPi * figures.diameter * figures.diameter;
    const double v = inducedSpeed(airspeed, figures.efficiency * power / disc);
    const double steep = std::min(1.0, airspeed / figures.fullFrom);
    return disc * (airspeed + v) * v * (figures.standingShare + (1.0 - figures.standingShare) * steep);
}

double propellerSpeed(const PropellerFigures& figures, double share, double most) {
    return figures.ratedSpeed * std::min(most, std::cbrt(std::clamp(share, 0.0, 1.0)));
}

} // namespace flowhand
