#pragma once

namespace flowhand {

/// Tiller angle (deg, right positive) that brings the nosewheel onto the line and keeps it there: against the angle to
/// the line, and towards it by the offset over the way made in two seconds. `offsetMetres` and `angleDegrees` as the
/// motion signals centreline_offset and centreline_angle, `lineCurvature` as line_curvature (1/km, a few metres ahead).
/// For scripted hands and the demonstration.
[[nodiscard]] double tillerFor(double offsetMetres, double angleDegrees, double groundSpeedKnots, double lineCurvature);

/// The same in SI and rad: m, rad, m/s, 1/m.
[[nodiscard]] double nosewheelFor(double offset, double angle, double groundSpeed, double curvature);

} // namespace flowhand
