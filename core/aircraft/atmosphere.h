#pragma once

namespace flowhand {

/// Air at one height. SI: K, Pa, kg/m3, m/s.
struct AirState {
    double temperature = 288.15;
    double pressure = 101325.0;
    double density = 1.225;
    double soundSpeed = 340.294;
};

inline constexpr double kGravity = 9.80665;                            ///< m/s2, the standard value (BIPM)
inline constexpr double kSeaDensity = 101325.0 / (287.05287 * 288.15); ///< kg/m3, US Standard Atmosphere 1976
inline constexpr double kMetresPerFoot = 0.3048;
inline constexpr double kMetresPerSecondPerKnot = 1852.0 / 3600.0;
inline constexpr double kRadiansPerDegree = 3.14159265358979323846 / 180.0;

/// US Standard Atmosphere 1976, layers up to 20 km: 6.5 K/km below 11 km, then 216.65 K. `pressureAltitude` in
/// geopotential metres, -2,000 .. 20,000; beyond that the value at the end is given. `warmer` in K shifts the
/// temperature at each pressure, as "ISA + 10" does.
[[nodiscard]] AirState standardAir(double pressureAltitude, double warmer = 0.0);

/// Geopotential metres at which the standard atmosphere has `pressure` (Pa).
[[nodiscard]] double pressureAltitude(double pressure);
/// Pressure altitude of a place `elevation` metres above the sea when the altimeter setting is `setting` (Pa).
[[nodiscard]] double pressureAltitudeOf(double elevation, double setting);
/// Geopotential metres at which the standard atmosphere has `density` (kg/m3); dry air, below 11 km.
[[nodiscard]] double densityAltitude(double density);

/// Calibrated airspeed, true airspeed (m/s) and Mach number, subsonic:
/// qc = p0 [(1 + 0.2 (CAS/a0)^2)^3.5 - 1] = p [(1 + 0.2 M^2)^3.5 - 1].
[[nodiscard]] double machFromCalibrated(double calibrated, double pressure);
[[nodiscard]] double calibratedFromMach(double mach, double pressure);
[[nodiscard]] double trueFromCalibrated(double calibrated, const AirState& air);
[[nodiscard]] double calibratedFromTrue(double trueAirspeed, const AirState& air);
/// Calibrated airspeed for an impact pressure qc in Pa.
[[nodiscard]] double calibratedFromImpactPressure(double impactPressure);

/// Wind as felt on a course. Both in the unit of the wind's speed.
struct WindComponents {
    double head = 0.0;  ///< against the course
    double cross = 0.0; ///< from the right
};
/// `from` and `course` in degrees.
[[nodiscard]] WindComponents windComponents(double from, double speed, double course);

} // namespace flowhand
