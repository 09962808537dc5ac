#include "paint/ribbonline.h"

#include <QPainter>
#include <QPainterPath>

#include "presenter/ribbon.h"

namespace flowhand {

namespace {

/// One point every this many pixels makes the curve smooth.
constexpr double kGrain = 3.0;
/// Room for beads above and below the line.
constexpr double kInset = 8.0;

} // namespace

RibbonLine::RibbonLine(QQuickItem* parent) : QQuickPaintedItem(parent) {
    setAntialiasing(true);
    const auto repaint = [this] {
        update();
    };
    connect(this, &RibbonLine::fromChanged, this, repaint);
    connect(this, &RibbonLine::toChanged, this, repaint);
    connect(this, &RibbonLine::colorChanged, this, repaint);
    connect(this, &RibbonLine::thicknessChanged, this, repaint);
}

double RibbonLine::yAt(double across, double height, double inset) {
    return height - inset - ribbonHeight(across) * (height - 2 * inset);
}

void RibbonLine::paint(QPainter* painter) {
    if (m_to <= m_from || width() <= 0)
        return;
    QPainterPath path;
    const double begin = m_from * width();
    const double end = m_to * width();
    path.moveTo(begin, yAt(m_from, height(), kInset));
    for (double x = begin + kGrain; x < end; x += kGrain)
        path.lineTo(x, yAt(x / width(), height(), kInset));
    path.lineTo(end, yAt(m_to, height(), kInset));
    painter->setPen(QPen(m_color, m_thickness, Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin));
    painter->drawPath(path);
}

} // namespace flowhand
