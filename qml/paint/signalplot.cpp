#include "paint/signalplot.h"

#include <algorithm>
#include <cmath>

#include <QPainter>

#include "presenter/controlstate.h"

namespace flowhand {

namespace {

/// Above and below, in pixels, so that a line at an end is whole.
constexpr double kRoom = 4.0;

} // namespace

SignalPlot::SignalPlot(QQuickItem* parent) : LanePaint(parent) {
    connect(this, &SignalPlot::signalChanged, this, [this] {
        update();
    });
}

SignalPlot::Scale SignalPlot::scale() const {
    const Signal& signal = timeline()->timeline().run().aircraft.signals[id()];
    if (signal.kind == SignalKind::OnOff)
        return {0.0, 1.0};
    if (signal.kind == SignalKind::Position)
        return {0.0, std::max(1.0, static_cast<double>(signal.positions.size()) - 1.0)};
    // Controls over their travel, so that a picture says how far they were moved; the rest over what it was.
    if (timeline()->timeline().run().aircraft.isControl(id()) && signal.highest > signal.lowest)
        return {signal.lowest, signal.highest};
    const std::optional<SignalTrack::Extent> extent = timeline()->timeline().signal(id()).extent();
    if (!extent)
        return {0.0, 1.0};
    const double low = std::min(extent->lowest, 0.0);
    return {low, extent->highest > low ? extent->highest : low + 1.0};
}

double SignalPlot::yOf(double value) const {
    const double share = (value - m_scale.low) / (m_scale.high - m_scale.low);
    return height() - kRoom - std::clamp(share, 0.0, 1.0) * (height() - 2 * kRoom);
}

void SignalPlot::paintLane(QPainter& painter) {
    const std::vector<Signal>& all = timeline()->timeline().run().aircraft.signals.all();
    if (m_signal < 0 || static_cast<std::size_t>(m_signal) >= all.size())
        return;
    m_scale = scale();
    paintLimits(painter);
    paintLine(painter);
    paintEnds(painter);
}

void SignalPlot::paintLimits(QPainter& painter) const {
    for (const LaneLimit& limit : timeline()->limits(id())) {
        if (!isSeen(limit.from, limit.to))
            continue;
        const bool isChosen = limit.step == timeline()->chosenStep();
        QColor fill = ink()->accent;
        fill.setAlphaF(isChosen ? 0.34F : 0.16F);
        const double from = xOf(limit.from);
        const double width = std::max(3.0, xOf(limit.to) - from);
        for (const ValueRange& range : limit.ranges) {
            // One value alone, as a gate, is a strip.
            const double top = std::min(yOf(range.highest), yOf(range.lowest) - 3.0) - 2.0;
            const QRectF rect(from, top, width, yOf(range.lowest) + 2.0 - top);
            painter.fillRect(rect, fill);
            painter.setPen(QPen(ink()->accent, isChosen ? 2 : 1, limit.isBand ? Qt::SolidLine : Qt::DotLine));
            painter.drawLine(rect.topLeft(), rect.topRight());
            painter.drawLine(rect.bottomLeft(), rect.bottomRight());
        }
    }
}

void SignalPlot::paintLine(QPainter& painter) const {
    const TimeWindow& window = timeline()->window();
    const auto count = static_cast<std::size_t>(width());
    const std::vector<SignalColumn> columns =
        timeline()->timeline().signal(id()).columns(window.from(), window.to(), count);
    QColor gap = ink()->unsure;
    gap.setAlphaF(0.16F);
    painter.setPen(QPen(ink()->text, 1.5));
    bool isOn = false;
    double before = 0.0;
    QPolygonF line;
    const auto finish = [&] {
        if (line.size() > 1)
            painter.drawPolyline(line);
        line.clear();
    };
    for (std::size_t i = 0; i < columns.size(); ++i) {
        const SignalColumn& column = columns[i];
        const double x = static_cast<double>(i) + 0.5;
        if (column.hasGap)
            painter.fillRect(QRectF(x - 0.5, 0, 1, height()), gap);
        if (!column.isKnown) {
            finish();
            isOn = false;
            continue;
        }
        if (isOn)
            line << QPointF(x, yOf(before));
        line << QPointF(x, yOf(column.first));
        if (column.lowest != column.highest)
            line << QPointF(x, yOf(column.lowest)) << QPointF(x, yOf(column.highest)) << QPointF(x, yOf(column.last));
        isOn = !column.hasGap;
        before = column.last;
        if (column.hasGap)
            finish();
    }
    finish();
}

/// What the top and the foot stand for.
void SignalPlot::paintEnds(QPainter& painter) const {
    const Signal& signal = timeline()->timeline().run().aircraft.signals[id()];
    painter.setFont(ink()->font());
    painter.setPen(ink()->quiet);
    const auto text = [&](double value) {
        return shownValue(signal, signal.kind == SignalKind::OnOff ? Value::onOff(value > 0.5) : Value::number(value));
    };
    if (height() < 2.2 * ink()->size)
        return;
    const QFontMetricsF metrics(painter.font());
    QColor paper = ink()->ground;
    paper.setAlphaF(0.8F); // the line goes on below it
    const auto draw = [&](double value, double top) {
        const QString words = text(value);
        const double wide = metrics.horizontalAdvance(words) + 6;
        const QRectF room(width() - wide, top, wide, ink()->size + 2);
        painter.fillRect(room, paper);
        painter.drawText(room, Qt::AlignCenter, words);
    };
    draw(m_scale.high, 0);
    draw(m_scale.low, height() - ink()->size - 2);
}

} // namespace flowhand
