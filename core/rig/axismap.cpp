#include "rig/axismap.h"

#include <algorithm>
#include <cmath>

namespace flowhand {

namespace {

double between(double low, double high, double share) {
    return low + (high - low) * std::clamp(share, 0.0, 1.0);
}

} // namespace

AxisMap::Shape AxisMap::shapeThrough(const std::vector<Point>& points, std::optional<std::int64_t> centre) {
    Shape shape;
    shape.from = points.front().at;
    shape.to = points.back().at;
    shape.centre = centre;
    shape.values = {points.front().value, points.front().value, points.back().value};
    for (std::size_t i = 1; i + 1 < points.size(); ++i) {
        if (points[i].at == centre)
            shape.values[1] = points[i].value;
        else
            shape.points.push_back(points[i]);
    }
    return shape;
}

AxisMap::AxisMap(const Shape& shape) : m_shape(shape), m_knots(knots(static_cast<double>(shape.deadBand))) {
    m_valuePerCount = 0.0;
    double flattest = 0.0;
    for (std::size_t i = 1; i < m_knots.size(); ++i) {
        const Knot& a = m_knots[i - 1];
        const Knot& b = m_knots[i];
        const double slope = (b.value - a.value) / (b.x - b.half - a.x - a.half);
        m_valuePerCount = std::max(m_valuePerCount, slope);
        flattest = i == 1 ? slope : std::min(flattest, slope);
    }
    m_stepsPerUnit = std::pow(10.0, -std::floor(std::log10(flattest / 2)));
}

/// Works on counts that rise from `from` to `to`, so that an inverted axis is computed with the very same numbers.
std::vector<AxisMap::Knot> AxisMap::knots(double deadBand) const {
    const auto along = [this](std::int64_t raw) {
        return std::fabs(static_cast<double>(raw - m_shape.from));
    };
    const double start = static_cast<double>(m_shape.endBand);
    const double end = along(m_shape.to) - start;
    const double centre = along(m_shape.centre.value_or(m_shape.from));
    std::vector<Knot> all = {{start, 0.0, m_shape.values[0]}};
    for (const Point& point : m_shape.points) {
        const double x = along(point.at);
        if (x > start && x < end && (!m_shape.centre || std::fabs(x - centre) > deadBand))
            all.push_back({x, 0.0, point.value});
    }
    if (m_shape.centre)
        all.push_back({centre, deadBand, m_shape.values[1]});
    all.push_back({end, 0.0, m_shape.values[2]});
    std::sort(all.begin(), all.end(), [](const Knot& a, const Knot& b) {
        return a.x < b.x;
    });
    return all;
}

double AxisMap::unrounded(const std::vector<Knot>& knots, double x) {
    const Knot* before = nullptr;
    for (const Knot& knot : knots) {
        if (x <= knot.x + knot.half) {
            if (before == nullptr || x >= knot.x - knot.half)
                return knot.value;
            const double begin = before->x + before->half;
            return between(before->value, knot.value, (x - begin) / (knot.x - knot.half - begin));
        }
        before = &knot;
    }
    return knots.back().value;
}

double AxisMap::value(std::int64_t raw, std::int64_t deadBand) const {
    const std::int64_t sign = m_shape.to >= m_shape.from ? 1 : -1;
    const double x = static_cast<double>(sign * (raw - m_shape.from));
    const double exact =
        deadBand == m_shape.deadBand ? unrounded(m_knots, x) : unrounded(knots(static_cast<double>(deadBand)), x);
    const double rounded = std::round(exact * m_stepsPerUnit) / m_stepsPerUnit;
    return rounded == 0.0 ? 0.0 : rounded; // no negative zero
}

std::int64_t AxisMap::raw(double wanted) const {
    const double sign = m_shape.to >= m_shape.from ? 1.0 : -1.0;
    const auto counts = [&](double x) {
        return std::llround(static_cast<double>(m_shape.from) + sign * x);
    };
    const Knot* before = nullptr;
    for (const Knot& knot : m_knots) {
        if (wanted <= knot.value) {
            if (before == nullptr || wanted == knot.value)
                return counts(knot.x);
            const double begin = before->x + before->half;
            const double share = (wanted - before->value) / (knot.value - before->value);
            return counts(between(begin, knot.x - knot.half, share));
        }
        before = &knot;
    }
    return counts(m_knots.back().x);
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
