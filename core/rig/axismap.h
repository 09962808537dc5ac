#pragma once

#include <array>
#include <cstdint>
#include <optional>

namespace flowhand {

/// Raw counts to a number of a signal: straight from one end of the travel to the other, or bent at a centre.
/// Counts beyond the ends read as the ends. Values are rounded to a power of ten finer than one count, so that the
/// same count is always the same value.
class AxisMap {
public:
    struct Shape {
        std::int64_t from = 0; ///< raw at values[0]; larger than `to` on an axis that runs backwards
        std::int64_t to = 0;   ///< raw at values[2]
        std::optional<std::int64_t> centre;
        std::int64_t deadBand = 0; ///< either side of the centre, in counts
        std::int64_t endBand = 0;  ///< at each end, in counts
        std::array<double, 3> values{};
    };

    AxisMap() = default;
    /// from != to, the centre strictly between them, the bands smaller than the ways they stand in.
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
    /// Of the steeper half: how much of the value one count is.
    [[nodiscard]] double valuePerCount() const { return m_valuePerCount; }
    [[nodiscard]] double travel() const;

private:
    [[nodiscard]] double unrounded(double x, double deadBand) const;

    Shape m_shape;
    double m_valuePerCount = 1.0;
    double m_stepsPerUnit = 1.0; ///< of the rounding; a power of ten
};

} // namespace flowhand
