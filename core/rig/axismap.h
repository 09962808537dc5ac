#pragma once

#include <array>
#include <cstdint>
#include <optional>
#include <vector>

namespace flowhand {

/// Raw counts to a number of a signal: straight from one end of the travel to the other, or bent at a centre and at
/// points whose values are known. Counts beyond the ends read as the ends. Values are rounded to a power of ten finer
/// than one count, so that the same count is always the same value.
class AxisMap {
public:
    /// A count whose value is known.
    struct Point {
        std::int64_t at = 0;
        double value = 0.0;
    };

    struct Shape {
        std::int64_t from = 0; ///< raw at values[0]; larger than `to` on an axis that runs backwards
        std::int64_t to = 0;   ///< raw at values[2]
        std::optional<std::int64_t> centre;
        std::int64_t deadBand = 0; ///< either side of the centre, in counts
        std::int64_t endBand = 0;  ///< at each end, in counts
        std::array<double, 3> values{};
        std::vector<Point> points{}; ///< between the ends, without the centre, from `from` on
    };

    /// Through these, two or more, of which the first and the last are the ends; the centre, if any, is one of the
    /// others and says what it means.
    [[nodiscard]] static Shape shapeThrough(const std::vector<Point>& points, std::optional<std::int64_t> centre);

    AxisMap() = default;
    /// from != to, the centre strictly between them, the bands smaller than the ways they stand in, and from `from` to
    /// `to` the values rise. A point in a band reads as the band.
    explicit AxisMap(const Shape& shape);

    [[nodiscard]] double value(std::int64_t raw) const { return value(raw, m_shape.deadBand); }
    /// With another dead band, which must be fit as well.
    [[nodiscard]] double value(std::int64_t raw, std::int64_t deadBand) const;
    /// The count that comes nearest to `value`.
    [[nodiscard]] std::int64_t raw(double value) const;
    /// Where along the travel, 0 at `from` .. 1 at `to`, whatever the values.
    [[nodiscard]] double share(std::int64_t raw) const;

    [[nodiscard]] const Shape& shape() const { return m_shape; }
    [[nodiscard]] std::int64_t low() const;  ///< the lower raw end
    [[nodiscard]] std::int64_t high() const; ///< the higher raw end
    /// Of the steepest stretch: how much of the value one count is.
    [[nodiscard]] double valuePerCount() const { return m_valuePerCount; }
    [[nodiscard]] double travel() const;

private:
    /// Where a stretch begins or ends: `half` counts either side of `x` read as `value`.
    struct Knot {
        double x = 0.0; ///< counts from `from` towards `to`
        double half = 0.0;
        double value = 0.0;
    };

    [[nodiscard]] std::vector<Knot> knots(double deadBand) const;
    [[nodiscard]] static double unrounded(const std::vector<Knot>& knots, double x);

    Shape m_shape;
    std::vector<Knot> m_knots; ///< with the dead band of the shape
    double m_valuePerCount = 1.0;
    double m_stepsPerUnit = 1.0; ///< of the rounding; a power of ten
};

} // namespace flowhand
