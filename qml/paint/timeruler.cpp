#include "paint/timeruler.h"

#include <algorithm>
#include <array>

#include <QPainter>

namespace flowhand {

namespace {

using namespace std::chrono_literals;

constexpr std::array<Duration, 17> kPeriods = {10ms, 20ms, 50ms, 100ms, 200ms, 500ms, 1s,    2s,   5s,
                                               10s,  20s,  30s,  1min,  2min,  5min,  10min, 30min};

/// "1:05", and tenths or hundredths where the marks are as near.
QString label(Time time, Duration period) {
    const auto minutes = std::chrono::duration_cast<std::chrono::minutes>(time);
    const int decimals = period >= 1s ? 0 : period >= 100ms ? 1 : 2;
    const double rest = seconds(time - minutes);
    return QStringLiteral("%1:%2")
        .arg(minutes.count())
        .arg(rest, decimals > 0 ? 3 + decimals : 2, 'f', decimals, QLatin1Char('0'));
}

} // namespace

Duration TimeRuler::periodFor(Duration width, int most) {
    for (const Duration period : kPeriods)
        if (width / period <= most)
            return period;
    return std::chrono::ceil<std::chrono::hours>(width / std::max(most, 1));
}

void TimeRuler::paintLane(QPainter& painter) {
    const TimeWindow& window = timeline()->window();
    painter.setFont(ink()->font());
    const double widest = QFontMetricsF(painter.font()).horizontalAdvance(QStringLiteral("00:00.00")) + 16;
    const Duration period = periodFor(window.to() - window.from(), std::max(1, static_cast<int>(width() / widest)));
    for (Time time = window.from() / period * period; time <= window.to(); time += period) {
        if (time < window.from())
            continue;
        const double x = xOf(time);
        painter.setPen(QPen(ink()->line, 1));
        painter.drawLine(QPointF(x, height() - 5), QPointF(x, height()));
        painter.setPen(ink()->quiet);
        const double left = std::clamp(x - widest / 2, 0.0, width() - widest);
        const bool isAtEnd = left > x - widest / 2;
        painter.drawText(QRectF(isAtEnd ? x : left, 0, widest, height() - 5),
                         Qt::AlignVCenter | (isAtEnd                 ? Qt::AlignLeft
                                             : left < x - widest / 2 ? Qt::AlignRight
                                                                     : Qt::AlignHCenter),
                         label(time, period));
    }
}

} // namespace flowhand
