#include "rig/axismap.h"

#include <algorithm>
#include <cmath>

namespace flowhand {

namespace {

double between(double low, double high, double share) {
    return low + (high - low) * std::clamp(share, 0.0, 1.0);
}

} // namespace

AxisMap::AxisMap(const Shape& shape) : m_shape(shape) {
    const double band = static_cast<double>(shape.endBand);
    const double way = static_cast<double>(std::abs(shape.to - shape.from));
    if (shape.centre) {
        const double dead = static_cast<double>(shape.deadBand) + band;
        const double lower = static_cast<double>(std::abs(*shape.centre - shape.from)) - dead;
        const double upper = static_cast<double>(std::abs(shape.to - *shape.centre)) - dead;
        m_valuePerCount = std::max(std::fabs(shape.values[1] - shape.values[0]) / lower,
                                   std::fabs(shape.values[2] - shape.values[1]) / upper);
    } else {
        m_valuePerCount = std::fabs(shape.values[2] - shape.values[0]) / (way - 2 * band);
    }
    m_stepsPerUnit = std::pow(10.0, -std::floor(std::log10(m_valuePerCount / 2)));
}

/// Works on counts that rise from `from` to `to`, so that an inverted axis is computed with the very same numbers.
double AxisMap::unrounded(double x, double deadBand) const {
    const double end = std::fabs(static_cast<double>(m_shape.to - m_shape.from)) - static_cast<double>(m_shape.endBand);
    const double start = static_cast<double>(m_shape.endBand);
    const auto& [low, middle, high] = m_shape.values;
    if (!m_shape.centre)
        return between(low, high, (x - start) / (end - start));
    const double centre = std::fabs(static_cast<double>(*m_shape.centre - m_shape.from));
    if (x < centre - deadBand)
        return between(middle, low, (centre - deadBand - x) / (centre - deadBand - start));
    if (x > centre + deadBand)
        return between(middle, high, (x - centre - deadBand) / (end - centre - deadBand));
    return middle;
}

double AxisMap::value(std::int64_t raw, std::int64_t deadBand) const {
    const std::int64_t sign = m_shape.to >= m_shape.from ? 1 : -1;
    const double x = static_cast<double>(sign * (raw - m_shape.from));
    const double rounded = std::round(unrounded(x, static_cast<double>(deadBand)) * m_stepsPerUnit) / m_stepsPerUnit;
    return rounded == 0.0 ? 0.0 : rounded; // no negative zero
}

std::int64_t AxisMap::raw(double wanted) const {
    const auto& [low, middle, high] = m_shape.values;
    const double sign = m_shape.to >= m_shape.from ? 1.0 : -1.0;
    const double from = static_cast<double>(m_shape.from) + sign * static_cast<double>(m_shape.endBand);
    const double to = static_cast<double>(m_shape.to) - sign * static_cast<double>(m_shape.endBand);
    if (!m_shape.centre)
        return std::llround(between(from, to, (wanted - low) / (high - low)));
    const double centre = static_cast<double>(*m_shape.centre);
    const double dead = sign * static_cast<double>(m_shape.deadBand);
    const double toLow = (wanted - middle) / (low - middle);
    const double toHigh = (wanted - middle) / (high - middle);
    if (toLow > 0)
        return std::llround(between(centre - dead, from, toLow));
    if (toHigh > 0)
        return std::llround(between(centre + dead, to, toHigh));
    return *m_shape.centre;
}

double AxisMap::share(std::int64_t raw) const {
    return std::clamp(static_cast<double>(raw - m_shape.from) / static_cast<double>(m_shape.to - m_shape.from), 0.0,
                      1.0);
}

std::int64_t AxisMap::low() const {
    return std::min(m_shape.from, m_shape.to);
}

std::int64_t AxisMap::high() const {
    return std::max(m_shape.from, m_shape.to);
}

double AxisMap::travel() const {
    return std::fabs(m_shape.values[2] - m_shape.values[0]);
}

} // namespace flowhand
