#include "paint/arcline.h"

#include <cmath>

#include <QPainter>

namespace flowhand {

ArcLine::ArcLine(QQuickItem* parent) : QQuickPaintedItem(parent) {
    setAntialiasing(true);
    const auto repaint = [this] {
        update();
    };
    connect(this, &ArcLine::fromChanged, this, repaint);
    connect(this, &ArcLine::toChanged, this, repaint);
    connect(this, &ArcLine::colorChanged, this, repaint);
    connect(this, &ArcLine::thicknessChanged, this, repaint);
    connect(this, &ArcLine::radiusChanged, this, repaint);
}

void ArcLine::paint(QPainter* painter) {
    const QRectF circle(width() / 2 - m_radius, height() / 2 - m_radius, 2 * m_radius, 2 * m_radius);
    painter->setPen(QPen(m_color, m_thickness, Qt::SolidLine, Qt::RoundCap));
    // QPainter counts sixteenths of a degree, counter-clockwise from three o'clock.
    const int start = static_cast<int>(std::lround((90.0 - m_from) * 16.0));
    const int span = static_cast<int>(std::lround((m_from - m_to) * 16.0));
    painter->drawArc(circle, start, span);
}

} // namespace flowhand
