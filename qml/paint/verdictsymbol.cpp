#include "paint/verdictsymbol.h"

#include <algorithm>

#include <QPainter>
#include <QPainterPath>

#include "presenter/verdict.h"

namespace flowhand {

namespace {

/// Drawn on a square of this many units, then scaled.
constexpr double kSide = 20.0;
const QPointF kMiddle(10.0, 10.0);

void drawTick(QPainter& painter, const QColor& color, const QColor& ground) {
    painter.setPen(Qt::NoPen);
    painter.setBrush(color);
    painter.drawEllipse(kMiddle, 9.0, 9.0);
    painter.setPen(QPen(ground, 2.2, Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin));
    painter.setBrush(Qt::NoBrush);
    painter.drawPolyline(QPolygonF({{5.8, 10.4}, {8.8, 13.4}, {14.2, 7.2}}));
}

void drawClock(QPainter& painter, const QColor& color) {
    painter.setPen(Qt::NoPen);
    painter.setBrush(color);
    painter.drawPie(QRectF(1, 1, 18, 18), 90 * 16, 180 * 16);
    painter.setBrush(Qt::NoBrush);
    painter.setPen(QPen(color, 1.8, Qt::SolidLine, Qt::RoundCap));
    painter.drawEllipse(kMiddle, 8.1, 8.1);
    painter.drawLine(kMiddle, QPointF(10, 5));
    painter.drawLine(kMiddle, QPointF(14, 12));
}

void drawCross(QPainter& painter, const QColor& color) {
    painter.setPen(QPen(color, 1.8, Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin));
    painter.setBrush(Qt::NoBrush);
    painter.drawRect(QRectF(2, 2, 16, 16));
    painter.setPen(QPen(color, 2.2, Qt::SolidLine, Qt::RoundCap));
    painter.drawLine(QPointF(6.4, 6.4), QPointF(13.6, 13.6));
    painter.drawLine(QPointF(13.6, 6.4), QPointF(6.4, 13.6));
}

void drawCrossedArrows(QPainter& painter, const QColor& color) {
    painter.setPen(QPen(color, 2.0, Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin));
    painter.setBrush(Qt::NoBrush);
    painter.drawLine(QPointF(3, 15), QPointF(16, 4));
    painter.drawLine(QPointF(3, 4), QPointF(16, 15));
    painter.drawPolyline(QPolygonF({{11.6, 3.6}, {16.4, 3.6}, {16.4, 8.2}}));
    painter.drawPolyline(QPolygonF({{11.6, 15.4}, {16.4, 15.4}, {16.4, 10.8}}));
}

void drawTilde(QPainter& painter, const QColor& color) {
    QPen dashes(color, 1.8, Qt::CustomDashLine, Qt::FlatCap);
    dashes.setDashPattern({2.2, 1.6});
    painter.setPen(dashes);
    painter.setBrush(Qt::NoBrush);
    painter.drawEllipse(kMiddle, 8.4, 8.4);
    QPainterPath tilde(QPointF(5.6, 11.2));
    tilde.cubicTo(QPointF(8.0, 6.4), QPointF(12.0, 13.6), QPointF(14.4, 8.8));
    painter.setPen(QPen(color, 2.0, Qt::SolidLine, Qt::RoundCap));
    painter.drawPath(tilde);
}

void drawRing(QPainter& painter, const QColor& color, double radius) {
    painter.setPen(QPen(color, 1.8));
    painter.setBrush(Qt::NoBrush);
    painter.drawEllipse(kMiddle, radius, radius);
}

void drawDot(QPainter& painter, const QColor& color) {
    drawRing(painter, color, 8.4);
    painter.setPen(Qt::NoPen);
    painter.setBrush(color);
    painter.drawEllipse(kMiddle, 3.2, 3.2);
}

void drawPointer(QPainter& painter, const QColor& color) {
    painter.setPen(QPen(color, 1.6, Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin));
    painter.setBrush(color);
    painter.drawPolygon(QPolygonF({{6, 4}, {15.5, 10}, {6, 16}}));
}

void drawDash(QPainter& painter, const QColor& color) {
    painter.setPen(QPen(color, 2.0, Qt::SolidLine, Qt::RoundCap));
    painter.drawLine(QPointF(5, 10), QPointF(15, 10));
}

} // namespace

VerdictSymbol::VerdictSymbol(QQuickItem* parent) : QQuickPaintedItem(parent) {
    setAntialiasing(true);
    const auto repaint = [this] {
        update();
    };
    connect(this, &VerdictSymbol::verdictChanged, this, repaint);
    connect(this, &VerdictSymbol::colorChanged, this, repaint);
    connect(this, &VerdictSymbol::groundChanged, this, repaint);
}

void VerdictSymbol::paint(QPainter* painter) {
    const double scale = std::min(width(), height()) / kSide;
    painter->scale(scale, scale);
    switch (static_cast<Verdict::Kind>(m_verdict)) {
    case Verdict::Waiting:
        return drawRing(*painter, m_color, 4.0);
    case Verdict::Due:
        return drawPointer(*painter, m_color);
    case Verdict::Done:
        return drawTick(*painter, m_color, m_ground);
    case Verdict::Late:
        return drawClock(*painter, m_color);
    case Verdict::Wrong:
        return drawCross(*painter, m_color);
    case Verdict::OutOfOrder:
        return drawCrossedArrows(*painter, m_color);
    case Verdict::Unsure:
        return drawTilde(*painter, m_color);
    case Verdict::Info:
        return drawDot(*painter, m_color);
    case Verdict::LeftOut:
        return drawDash(*painter, m_color);
    }
}

} // namespace flowhand
