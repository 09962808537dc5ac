#include "aircraft/atmosphere.h"

#include <algorithm>
#include <cmath>

namespace flowhand {

namespace {

// US Standard Atmosphere 1976 (NOAA, NASA, USAF), sea level and the two lowest layers.
constexpr double kSeaTemperature = 288.15;   // K
constexpr double kSeaPressure = 101325.0;    // Pa
constexpr double kLapse = 0.0065;            // K per geopotential metre
constexpr double kGasConstant = 287.05287;   // J/(kg K)
constexpr double kHeatRatio = 1.4;           // gamma
constexpr double kTropopause = 11000.0;      // geopotential m
constexpr double kUpperTemperature = 216.65; // K
constexpr double kLowest = -2000.0;
constexpr double kHighest = 20000.0;
constexpr double kExponent = kGravity / (kGasConstant * kLapse);

double soundSpeedAt(double temperature) {
    return std::sqrt(kHeatRatio * kGasConstant * temperature);
}

double tropopausePressure() {
    return kSeaPressure * std::pow(kUpperTemperature / kSeaTemperature, kExponent);
}

double seaSoundSpeed() {
    return soundSpeedAt(kSeaTemperature);
}

} // namespace

AirState standardAir(double altitude, double warmer) {
    altitude = std::clamp(altitude, kLowest, kHighest);
    const double temperature = altitude < kTropopause ? kSeaTemperature - kLapse * altitude : kUpperTemperature;
    AirState air;
    air.pressure = altitude < kTropopause ? kSeaPressure * std::pow(temperature / kSeaTemperature, kExponent)
                                          : tropopausePressure() * std::exp(-kGravity * (altitude - kTropopause) /
                                                                            (kGasConstant * kUpperTemperature));
    air.temperature = temperature + warmer;
    air.density = air.pressure / (kGasConstant * air.temperature);
    air.soundSpeed = soundSpeedAt(air.temperature);
    return air;
}

double pressureAltitude(double pressure) {
    if (pressure < tropopausePressure())
        return kTropopause - std::log(pressure / tropopausePressure()) * kGasConstant * kUpperTemperature / kGravity;
    return kSeaTemperature / kLapse * (1.0 - std::pow(pressure / kSeaPressure, 1.0 / kExponent));
}

double pressureAltitudeOf(double elevation, double setting) {
    return elevation + pressureAltitude(setting);
}

double densityAltitude(double density) {
    const double seaDensity = kSeaPressure / (kGasConstant * kSeaTemperature);
    return kSeaTemperature / kLapse * (1.0 - std::pow(density / seaDensity, 1.0 / (kExponent - 1.0)));
}

double machFromCalibrated(double calibrated, double pressure) {
    const double ratio = calibrated / seaSoundSpeed();
    const double impact = kSeaPressure * (std::pow(1.0 + 0.2 * ratio * ratio, 3.5) - 1.0);
    return std::sqrt(5.0 * (std::pow(impact / pressure + 1.0, 2.0 / 7.0) - 1.0));
}

double calibratedFromMach(double mach, double pressure) {
    return calibratedFromImpactPressure(pressure * (std::pow(1.0 + 0.2 * mach * mach, 3.5) - 1.0));
}

double calibratedFromImpactPressure(double impactPressure) {
    return seaSoundSpeed() * std::sqrt(5.0 * (std::pow(impactPressure / kSeaPressure + 1.0, 2.0 / 7.0) - 1.0));
}

double trueFromCalibrated(double calibrated, const AirState& air) {
    return machFromCalibrated(calibrated, air.pressure) * air.soundSpeed;
}

double calibratedFromTrue(double trueAirspeed, const AirState& air) {
    return calibratedFromMach(trueAirspeed / air.soundSpeed, air.pressure);
}

WindComponents windComponents(double from, double speed, double course) {
    const double angle = (from - course) * kRadiansPerDegree;
    return {speed * std::cos(angle), speed * std::sin(angle)};
}

} // namespace flowhand
