#include "paint/runribbon.h"

#include <algorithm>
#include <cmath>

#include <QPainter>
#include <QPainterPath>

#include "presenter/stepfacts.h"

namespace flowhand {

namespace {

constexpr double kInset = 8.0;  ///< pixels above and below the line
constexpr double kMarks = 9.0;  ///< pixels at the foot, for losses
constexpr double kFlown = 20.0; ///< ft; less is a bounce or a wheel on a hump

} // namespace

double RunRibbon::acrossOf(Time time) const {
    return seconds(time) / std::max(timeline()->length(), 1e-3) * width();
}

double RunRibbon::yAt(Time time) const {
    const double foot = height() - kMarks - kInset;
    if (!m_heightSignal || m_highest < kFlown)
        return foot;
    const Value value = timeline()->timeline().signal(*m_heightSignal).at(time);
    if (!value.isKnown())
        return foot;
    // The root lets the first feet be seen beside a climb of thousands.
    return foot - std::sqrt(std::clamp(value.number() / m_highest, 0.0, 1.0)) * (foot - kInset);
}

void RunRibbon::paintLane(QPainter& painter) {
    const Timeline& timeline = this->timeline()->timeline();
    m_heightSignal = timeline.run().aircraft.signals.find("height");
    m_highest = 0.0;
    if (m_heightSignal)
        if (const auto extent = timeline.signal(*m_heightSignal).extent())
            m_highest = extent->highest;
    paintStretch(painter);
    painter.setRenderHint(QPainter::Antialiasing);
    paintLine(painter);
    paintBeads(painter);
    paintLosses(painter);
}

void RunRibbon::paintStretch(QPainter& painter) const {
    const TimeWindow& window = timeline()->window();
    if (window.from() <= Time{} && window.to() >= timeline()->timeline().length())
        return; // all of it: nothing to tell apart
    const double from = acrossOf(window.from());
    const QRectF rect(from, 0.5, std::max(4.0, acrossOf(window.to()) - from), height() - 1);
    QColor fill = ink()->accent;
    fill.setAlphaF(0.13F);
    painter.fillRect(rect, fill);
    painter.setPen(QPen(ink()->accent, 1));
    painter.drawLine(rect.topLeft(), rect.bottomLeft());
    painter.drawLine(rect.topRight(), rect.bottomRight());
}

void RunRibbon::paintLine(QPainter& painter) const {
    constexpr double kGrain = 3.0; // pixels a point
    const double length = timeline()->length();
    QPainterPath path(QPointF(0, yAt({})));
    for (double x = kGrain; x < width() + kGrain; x += kGrain)
        path.lineTo(x, yAt(fromSeconds(std::min(x / width(), 1.0) * length)));
    painter.setPen(QPen(ink()->line, 2));
    painter.setBrush(Qt::NoBrush);
    painter.drawPath(path);
}

void RunRibbon::paintBeads(QPainter& painter) const {
    for (const LaneBar& bar : timeline()->bars(ReviewTimeline::Steps).bars) {
        const bool isChosen = bar.step == timeline()->chosenStep();
        painter.setPen(QPen(isChosen ? ink()->accent : ink()->ground, isChosen ? 2 : 1));
        painter.setBrush(ink()->ofVerdict(bar.verdict));
        painter.drawEllipse(QPointF(acrossOf(bar.to), yAt(bar.to)), isChosen ? 6.0 : 4.5, isChosen ? 6.0 : 4.5);
    }
}

void RunRibbon::paintLosses(QPainter& painter) const {
    painter.setPen(Qt::NoPen);
    for (const Deviation& deviation : timeline()->timeline().deviations()) {
        painter.setBrush(ink()->ofVerdict(lossKind(deviation.what)));
        const double x = acrossOf(deviation.time);
        const double foot = height() - 1;
        painter.drawPolygon(QPolygonF({{x, foot - kMarks}, {x + 5, foot}, {x - 5, foot}}));
    }
}

} // namespace flowhand
