#include "aircraft/steering.h"

#include <algorithm>
#include <cmath>

#include "aircraft/atmosphere.h"

namespace flowhand {

namespace {

constexpr double kTillerMost = 70.0;  // deg, a tiller's travel either side
constexpr double kClosingTime = 2.0;  // s in which an offset is closed
constexpr double kClosingLeast = 4.0; // m, the same when nearly standing
constexpr double kClosingAngle = 25.0 * kRadiansPerDegree;
constexpr double kReaction = 0.1; // s by which the nosewheel lags what is asked

} // namespace

double nosewheelFor(double offset, double angle, double groundSpeed, double curvature) {
    const double way = std::max(kClosingLeast, kClosingTime * groundSpeed);
    const double closing = std::clamp(std::atan(-offset / way), -kClosingAngle, kClosingAngle);
    return closing - angle + kReaction * groundSpeed * curvature;
}

double tillerFor(double offsetMetres, double angleDegrees, double groundSpeedKnots, double lineCurvature) {
    const double wheel = nosewheelFor(offsetMetres, angleDegrees * kRadiansPerDegree,
                                      groundSpeedKnots * kMetresPerSecondPerKnot, lineCurvature / 1000.0);
    return std::clamp(wheel / kRadiansPerDegree, -kTillerMost, kTillerMost);
}

} // namespace flowhand
