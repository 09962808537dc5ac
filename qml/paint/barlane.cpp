#include "paint/barlane.h"

#include <algorithm>
#include <cmath>
#include <vector>

#include <QPainter>

namespace flowhand {

namespace {

constexpr double kLeast = 3.0; ///< pixels: a bar that lasts no time at this zoom is still seen
constexpr double kRoom = 2.0;

} // namespace

BarLane::BarLane(QQuickItem* parent) : LanePaint(parent) {
    connect(this, &BarLane::kindChanged, this, [this] {
        update();
    });
}

double BarLane::lineHeight() const {
    return height() / timeline()->bars(m_kind).lines;
}

QRectF BarLane::rectOf(const LaneBar& bar) const {
    const double from = xOf(bar.from);
    const double top = bar.line * lineHeight() + kRoom;
    return {from, top, std::max(kLeast, xOf(bar.to) - from), lineHeight() - 2 * kRoom};
}

void BarLane::paintLane(QPainter& painter) {
    const LaneBars& lane = timeline()->bars(m_kind);
    painter.setFont(ink()->font());
    // A name may run on beyond its bar, up to the next one of its line.
    std::vector<double> until(static_cast<std::size_t>(lane.lines), width());
    for (auto bar = lane.bars.rbegin(); bar != lane.bars.rend(); ++bar) {
        if (!isSeen(bar->from, bar->to) && bar->from > timeline()->window().to())
            continue;
        if (xOf(bar->to) < -width() / 2)
            continue;
        paintBar(painter, *bar);
        paintName(painter, *bar, until[static_cast<std::size_t>(bar->line)]);
        until[static_cast<std::size_t>(bar->line)] = rectOf(*bar).left();
    }
}

void BarLane::paintBar(QPainter& painter, const LaneBar& bar) const {
    const QColor color = ink()->ofVerdict(bar.verdict);
    const QRectF rect = rectOf(bar);
    if (bar.from == bar.to) {
        painter.setRenderHint(QPainter::Antialiasing);
        painter.setPen(Qt::NoPen);
        painter.setBrush(color);
        painter.drawEllipse(QPointF(rect.left(), rect.center().y()), 4.0, 4.0);
        painter.setRenderHint(QPainter::Antialiasing, false);
        return;
    }
    QColor fill = color;
    fill.setAlphaF(0.28F);
    painter.fillRect(rect, fill);
    painter.fillRect(QRectF(rect.left(), rect.bottom() - 3, rect.width(), 3), color);
    if (bar.tick && isSeen(*bar.tick, *bar.tick))
        painter.fillRect(QRectF(std::round(xOf(*bar.tick)), rect.top(), 1, rect.height()), ink()->text);
    if (bar.step >= 0 && bar.step == timeline()->chosenStep() && m_kind == ReviewTimeline::Steps) {
        painter.setPen(QPen(ink()->accent, 2));
        painter.setBrush(Qt::NoBrush);
        painter.drawRect(rect.adjusted(-1, 0, 1, 0));
    }
}

void BarLane::paintName(QPainter& painter, const LaneBar& bar, double until) const {
    constexpr double kGap = 5.0;
    const QRectF rect = rectOf(bar);
    const double from = std::max(rect.left(), 0.0) + kGap + (bar.from == bar.to ? kGap : 0.0);
    const double room = until - from - kGap;
    const QFontMetricsF metrics(painter.font());
    // A word that is cut to a letter or two says nothing.
    if (room < metrics.averageCharWidth() * 6)
        return;
    painter.setPen(ink()->text);
    painter.drawText(QRectF(from, rect.top(), room, rect.height() - 2), Qt::AlignLeft | Qt::AlignVCenter,
                     metrics.elidedText(bar.text, Qt::ElideRight, room));
}

int BarLane::stepAt(double x, double y) const {
    if (timeline() == nullptr || timeline()->isEmpty())
        return -1;
    constexpr double kReach = 4.0;
    for (const LaneBar& bar : timeline()->bars(m_kind).bars)
        if (bar.step >= 0 && rectOf(bar).adjusted(-kReach, -kRoom, kReach, kRoom).contains(QPointF(x, y)))
            return bar.step;
    return -1;
}

} // namespace flowhand
