#include "paint/trendplot.h"

#include <algorithm>
#include <cmath>

#include <QPainter>
#include <QPainterPath>

namespace flowhand {

namespace {

constexpr double kDot = 4.0;   ///< radius of a run's dot
constexpr double kInset = 6.0; ///< room for a dot at an edge

} // namespace

TrendPlot::TrendPlot(QQuickItem* parent) : QQuickPaintedItem(parent) {
    setAntialiasing(true);
    connect(this, &TrendPlot::changed, this, [this] {
        update();
    });
}

double TrendPlot::topOf(const QList<QPointF>& points) {
    double most = 0.0;
    for (const QPointF& point : points)
        most = std::max(most, point.y());
    if (most <= 0.0)
        return 1.0;
    const double power = std::pow(10.0, std::floor(std::log10(most)));
    for (const double factor : {1.0, 2.0, 5.0})
        if (most <= factor * power)
            return factor * power;
    return 10.0 * power;
}

QPointF TrendPlot::placeOf(const QPointF& point) const {
    const double span = std::max(m_runs, 2) - 1; // one more, where the curve goes on to the next run
    const double all = m_curve.isEmpty() ? span : span + 1;
    return {kInset + (point.x() - 1.0) / all * (width() - 2 * kInset),
            height() - kInset - point.y() / m_highest * (height() - 2 * kInset)};
}

void TrendPlot::paint(QPainter* painter) {
    if (width() <= 2 * kInset || height() <= 2 * kInset || m_highest <= 0.0)
        return;
    painter->setPen(QPen(m_axis, 1));
    for (const double part : {0.0, 0.5, 1.0}) {
        const double y = std::round(placeOf({1, part * m_highest}).y()) + 0.5;
        painter->drawLine(QPointF(0, y), QPointF(width(), y));
    }
    QPainterPath line;
    for (const QPointF& point : m_curve)
        line.elementCount() == 0 ? line.moveTo(placeOf(point)) : line.lineTo(placeOf(point));
    painter->setPen(QPen(m_ink, 2, Qt::DashLine));
    painter->drawPath(line);
    painter->setPen(QPen(m_ink, 2));
    for (const QPointF& point : m_points) {
        painter->setBrush(m_passed.contains(static_cast<int>(point.x())) ? m_ink : m_ground);
        painter->drawEllipse(placeOf(point), kDot, kDot);
    }
}

} // namespace flowhand
