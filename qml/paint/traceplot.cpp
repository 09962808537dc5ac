#include "paint/traceplot.h"

#include <algorithm>
#include <cmath>
#include <optional>
#include <vector>

#include <QPainter>

namespace flowhand {

namespace {

/// Of the item's width, for how often the control stood where.
constexpr double kSharesWidth = 0.14;
/// Above and below the range, in pixels, so that a line at an end is whole.
constexpr double kRoom = 6.0;
constexpr std::size_t kBins = 60;

} // namespace

TracePlot::TracePlot(QQuickItem* parent) : QQuickPaintedItem(parent) {
    const auto repaint = [this] {
        update();
    };
    connect(this, &TracePlot::inkChanged, this, repaint);
    connect(this, &TracePlot::axisChanged, this, repaint);
    connect(this, &TracePlot::bandChanged, this, repaint);
    connect(this, &TracePlot::fontChanged, this, repaint);
}

void TracePlot::setTrace(BenchTrace* trace) {
    if (trace == m_trace)
        return;
    if (m_trace != nullptr)
        m_trace->disconnect(this);
    m_trace = trace;
    if (m_trace != nullptr)
        connect(m_trace, &BenchTrace::changed, this, [this] {
            update();
        });
    Q_EMIT traceChanged();
    update();
}

double TracePlot::yOf(double value) const {
    const double share = (value - m_trace->lowest()) / (m_trace->highest() - m_trace->lowest());
    return height() - kRoom - std::clamp(share, 0.0, 1.0) * (height() - 2 * kRoom);
}

void TracePlot::paint(QPainter* painter) {
    if (m_trace == nullptr || width() < 10 || height() < 3 * kRoom)
        return;
    const double plotWidth = width() * (1.0 - kSharesWidth);
    paintBands(*painter);
    paintMarks(*painter, plotWidth);
    if (m_trace->points().empty())
        return;
    paintLine(*painter, plotWidth);
    paintShares(*painter, plotWidth + 8);
}

void TracePlot::paintBands(QPainter& painter) const {
    QColor fill = m_band;
    fill.setAlphaF(0.18F);
    for (const BenchTrace::Stretch& band : m_trace->bands()) {
        const double top = yOf(band.high);
        const double foot = yOf(band.low);
        painter.fillRect(QRectF(0, top, width(), std::max(2.0, foot - top)), fill);
        painter.setPen(QPen(m_band, 1));
        painter.drawLine(QPointF(0, top), QPointF(width(), top));
        painter.drawLine(QPointF(0, foot), QPointF(width(), foot));
    }
}

void TracePlot::paintMarks(QPainter& painter, double plotWidth) const {
    painter.setFont(m_font);
    const double tall = painter.fontMetrics().height();
    double free = height(); // above it there is no name yet
    for (const BenchTrace::Mark& mark : m_trace->marks()) {
        const double y = yOf(mark.at);
        painter.setPen(QPen(m_axis, 1, Qt::DotLine));
        painter.drawLine(QPointF(0, y), QPointF(width(), y));
        // On its line, but whole at either edge; where marks are close, a name is left out.
        const double foot = std::clamp(y - 2, tall, height() - 2);
        if (foot > free)
            continue;
        painter.setPen(m_ink);
        painter.drawText(QPointF(4, foot - painter.fontMetrics().descent() + 2), mark.name);
        free = foot - tall;
    }
    painter.setPen(QPen(m_axis, 1));
    painter.drawLine(QPointF(plotWidth, 0), QPointF(plotWidth, height()));
}

/// A bar for each column of pixels, over all that the control did in its time and from where it stood before; columns
/// that are alike are one bar. Lines with a pen cost more.
void TracePlot::paintLine(QPainter& painter, double plotWidth) const {
    const auto columns = static_cast<int>(plotWidth);
    const Time begin = m_trace->now() - BenchTrace::kShown;
    const double perColumn = double(BenchTrace::kShown.count()) / double(columns);
    const auto& points = m_trace->points();
    std::vector<QRectF> bars;
    std::size_t at = 0;
    std::optional<double> held; // the value before the column; nothing while it is unknown
    for (int column = 0; column < columns; ++column) {
        const Time end = begin + Duration(static_cast<std::int64_t>(perColumn * double(column + 1)));
        std::optional<double> low = held;
        std::optional<double> high = held;
        for (; at < points.size() && points[at].time <= end; ++at) {
            held = points[at].value;
            if (held) {
                low = std::min(low.value_or(*held), *held);
                high = std::max(high.value_or(*held), *held);
            }
        }
        if (!low)
            continue;
        const double top = std::round(yOf(*high)) - 1.0;
        const QRectF bar(column, top, 1.0, std::round(yOf(*low)) + 1.0 - top);
        const bool isAlike = !bars.empty() && bars.back().right() == bar.left() && bars.back().top() == bar.top() &&
                             bars.back().height() == bar.height();
        if (isAlike)
            bars.back().setRight(bar.right());
        else
            bars.push_back(bar);
    }
    for (const QRectF& bar : bars)
        painter.fillRect(bar, m_ink);
}

void TracePlot::paintShares(QPainter& painter, double from) const {
    std::vector<double> held(kBins, 0.0); // ns in each bin of the range
    const auto& points = m_trace->points();
    for (std::size_t i = 0; i < points.size(); ++i) {
        if (!points[i].value)
            continue;
        const Time begin = std::max(points[i].time, m_trace->now() - BenchTrace::kShown);
        const Time end = i + 1 < points.size() ? points[i + 1].time : m_trace->now();
        const double share = (*points[i].value - m_trace->lowest()) / (m_trace->highest() - m_trace->lowest());
        const double bin = std::clamp(share, 0.0, 1.0) * double(kBins - 1);
        if (end > begin)
            held[static_cast<std::size_t>(std::lround(bin))] += double((end - begin).count());
    }
    const double most = *std::max_element(held.begin(), held.end());
    if (most <= 0.0)
        return;
    const double step = (height() - 2 * kRoom) / double(kBins - 1);
    for (std::size_t bin = 0; bin < kBins; ++bin) {
        // The square root lets what is rare be seen beside what is usual.
        const double length = std::sqrt(held[bin] / most) * (width() - from - 2);
        const double y = height() - kRoom - double(bin) * step;
        if (length > 0.0)
            painter.fillRect(QRectF(from, y - step / 2, std::max(1.0, length), std::max(1.0, step - 0.5)), m_ink);
    }
}

} // namespace flowhand
