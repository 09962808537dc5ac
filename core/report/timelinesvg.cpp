#include "report/timelinesvg.h"

#include <algorithm>
#include <cmath>

#include "report/html.h"

namespace flowhand {

namespace {

using namespace std::chrono_literals;

constexpr double kWidth = 960.0;
constexpr double kLeft = 250.0; ///< room for names
constexpr double kRight = 12.0;
constexpr double kRow = 21.0;
constexpr double kPlot = 76.0;
constexpr std::size_t kColumns = 698; ///< one a unit of width

std::string quoted(double number) {
    return "\"" + fixed(number) + "\"";
}

/// Where a time lies, and the lines that mark round ones.
class TimeAxis {
public:
    explicit TimeAxis(Time length) : m_length(std::max<Time>(length, 1s)) {}

    [[nodiscard]] double x(Time time) const {
        const double share = seconds(std::clamp<Time>(time, Time{}, m_length)) / seconds(m_length);
        return kLeft + share * (kWidth - kLeft - kRight);
    }

    /// Grid lines from `top` to `bottom`, with the times below it where `isNamed`.
    [[nodiscard]] std::string grid(double top, double bottom, bool isNamed) const {
        std::string svg;
        for (Time time{}; time <= m_length; time += period()) {
            svg += "<line x1=" + quoted(x(time)) + " x2=" + quoted(x(time)) + " y1=" + quoted(top) +
                   " y2=" + quoted(bottom) + " stroke=\"#ccc\"/>";
            if (isNamed)
                svg += "<text x=" + quoted(x(time)) + " y=" + quoted(bottom + 15) +
                       " text-anchor=\"middle\" class=\"t\">" + clockText(time).substr(0, clockText(time).find('.')) +
                       "</text>";
        }
        return svg;
    }

private:
    /// At most ten lines.
    [[nodiscard]] Time period() const {
        for (const Time period : {Time(1s), Time(2s), Time(5s), Time(10s), Time(20s), Time(30s), Time(1min), Time(2min),
                                  Time(5min), Time(10min)})
            if (m_length / period <= 10)
                return period;
        return std::chrono::ceil<std::chrono::minutes>(m_length / 10);
    }

    Time m_length;
};

std::string head(double height, const std::string& label) {
    return "<svg class=\"picture\" viewBox=\"0 0 " + fixed(kWidth) + " " + fixed(height) +
           "\" role=\"img\" aria-label=\"" + escaped(label) + "\">";
}

/// As much of a name as fits beside the pictures.
std::string name(const std::string& text, double y) {
    return "<text x=\"0\" y=" + quoted(y) + " class=\"t\">" + escaped(text) + "</text>";
}

/// Cuts at a blank, and says so.
std::string shortened(const std::string& text) {
    constexpr std::size_t kMost = 33;
    if (text.size() <= kMost)
        return text;
    std::size_t end = text.rfind(' ', kMost - 2);
    if (end == std::string::npos || end < kMost / 2)
        end = kMost - 2;
    while (end > 0 && (static_cast<unsigned char>(text[end]) & 0xC0U) == 0x80U)
        --end;
    return text.substr(0, end) + " \xE2\x80\xA6";
}

std::string bar(double x1, double x2, double y, double height, const std::string& style, const std::string& title) {
    return "<rect x=" + quoted(x1) + " y=" + quoted(y) + " width=" + quoted(std::max(x2 - x1, 2.0)) +
           " height=" + quoted(height) + " " + style + "><title>" + escaped(title) + "</title></rect>";
}

class LanePainter {
public:
    explicit LanePainter(const Timeline& timeline) : m_timeline(timeline), m_axis(timeline.length()) {}

    std::string paint() {
        paintCalls();
        paintSteps();
        paintGuards();
        paintHolds();
        const double height = m_y + 24;
        return head(height, "The run along its time") + m_axis.grid(0, m_y, true) + m_svg + "</svg>";
    }

private:
    void row(const std::string& title) {
        m_svg += name(shortened(title), m_y + 15);
        m_y += kRow;
    }

    void paintCalls() {
        if (m_timeline.calls().empty())
            return;
        for (const Call& call : m_timeline.calls())
            m_svg +=
                bar(m_axis.x(call.from), m_axis.x(call.to), m_y + 6, 8, "fill=\"#777\"", call.by + ": " + call.text);
        row("Words spoken");
    }

    void paintSteps() {
        const ReviewedRun& run = m_timeline.run();
        for (std::size_t i = 0; i < m_timeline.steps().size(); ++i) {
            const StepTimes& times = m_timeline.steps()[i];
            const std::string verdict = stepVerdict(run.flow, run.results, run.score, i).english();
            if (const std::optional<Episode> open = m_timeline.openStretch(i)) {
                const bool isGood = verdict == "done" || verdict == "done, found set";
                const std::string style = isGood       ? "fill=\"#cfcfcf\" stroke=\"#111\""
                                          : times.done ? "fill=\"#777\" stroke=\"#111\""
                                                       : "fill=\"#fff\" stroke=\"#111\" stroke-dasharray=\"4 2\"";
                m_svg += bar(m_axis.x(open->from), m_axis.x(open->to.value_or(m_timeline.length())), m_y + 4, 12, style,
                             run.flow.steps[i].title + ": " + verdict);
            }
            if (times.firstMovement)
                m_svg += "<line x1=" + quoted(m_axis.x(*times.firstMovement)) +
                         " x2=" + quoted(m_axis.x(*times.firstMovement)) + " y1=" + quoted(m_y + 1) +
                         " y2=" + quoted(m_y + 19) + " stroke=\"#111\" stroke-width=\"1.5\"/>";
            row(run.flow.steps[i].title);
        }
    }

    void paintGuards() {
        for (std::size_t i = 0; i < m_timeline.guards().size(); ++i) {
            if (m_timeline.guards()[i].empty())
                continue;
            const std::string& title = m_timeline.run().flow.guards[i].title;
            for (const Episode& episode : m_timeline.guards()[i])
                m_svg += bar(m_axis.x(episode.from), m_axis.x(episode.to.value_or(m_timeline.length())), m_y + 4, 12,
                             "fill=\"#111\"", "broken: " + title);
            row("Broken: " + title);
        }
    }

    void paintHolds() {
        if (m_timeline.holds().empty())
            return;
        for (const Hold& hold : m_timeline.holds())
            m_svg += bar(m_axis.x(hold.episode.from), m_axis.x(hold.episode.to.value_or(m_timeline.length())), m_y + 6,
                         8, "fill=\"#eee\" stroke=\"#777\"", hold.reason.english());
        row("Held, or input lost");
    }

    const Timeline& m_timeline;
    TimeAxis m_axis;
    double m_y = 0.0;
    std::string m_svg;
};

class SignalPainter {
public:
    SignalPainter(const Timeline& timeline, SignalId signal)
        : m_timeline(timeline), m_id(signal), m_signal(timeline.run().aircraft.signals[signal]),
          m_axis(timeline.length()) {
        const SignalTrack::Extent extent = timeline.signal(signal).extent().value_or(SignalTrack::Extent{0.0, 1.0});
        m_low = m_signal.kind == SignalKind::Number ? std::min(extent.lowest, 0.0) : 0.0;
        m_high = m_signal.kind == SignalKind::Number     ? extent.highest
                 : m_signal.kind == SignalKind::Position ? static_cast<double>(m_signal.positions.size()) - 1.0
                                                         : 1.0;
        if (!(m_high > m_low))
            m_high = m_low + 1.0;
    }

    [[nodiscard]] std::string paint() const {
        return head(kPlot + 4, m_signal.label + " over the run") + m_axis.grid(4, kPlot, false) + limits() +
               "<rect x=" + quoted(kLeft) + " y=\"4\" width=" + quoted(kWidth - kLeft - kRight) +
               " height=" + quoted(kPlot - 4) + " fill=\"none\" stroke=\"#777\"/>" +
               "<text x=\"0\" y=\"20\" class=\"t b\">" + escaped(shortened(m_signal.label)) + "</text>" + scale() +
               "<path d=\"" + path() + "\" fill=\"none\" stroke=\"#111\" stroke-width=\"1.3\"/></svg>";
    }

private:
    [[nodiscard]] double y(double value) const {
        const double share = std::clamp((value - m_low) / (m_high - m_low), 0.0, 1.0);
        return kPlot - 6 - share * (kPlot - 16);
    }

    [[nodiscard]] std::string scale() const {
        const auto label = [&](double value, double at) {
            const Value shown = m_signal.kind == SignalKind::OnOff ? Value::onOff(value > 0.5) : Value::number(value);
            return "<text x=" + quoted(kLeft - 6) + " y=" + quoted(at) + " text-anchor=\"end\" class=\"t\">" +
                   escaped(valueText(m_signal, shown)) + "</text>";
        };
        return label(m_high, 18) + label(m_low, kPlot - 2);
    }

    /// Shaded: what a step wanted of it while it was open.
    [[nodiscard]] std::string limits() const {
        std::string svg;
        for (std::size_t step = 0; step < m_timeline.steps().size(); ++step) {
            const std::optional<Episode> open = m_timeline.openStretch(step);
            if (!open)
                continue;
            for (const SignalLimits& one : m_timeline.limits(step)) {
                if (one.signal != m_id)
                    continue;
                for (const ValueRange& range : one.band.empty() ? one.allowed : one.band)
                    svg += shade(*open, range, m_timeline.run().flow.steps[step].title);
            }
        }
        return svg;
    }

    [[nodiscard]] std::string shade(const Episode& open, const ValueRange& range, const std::string& title) const {
        // A single value, as of a gate, is drawn as a strip.
        const double top = std::min(y(range.highest), y(range.lowest) - 6);
        return bar(m_axis.x(open.from), m_axis.x(open.to.value_or(m_timeline.length())), top - 2,
                   y(range.lowest) - top + 4, "fill=\"#d4d4d4\"", "wanted: " + title);
    }

    [[nodiscard]] std::string path() const {
        std::string path;
        bool isOn = false;
        double before = 0.0;
        const std::vector<SignalColumn> columns =
            m_timeline.signal(m_id).columns(Time{}, m_timeline.length() + kTick, kColumns);
        for (std::size_t i = 0; i < columns.size(); ++i) {
            const SignalColumn& column = columns[i];
            if (!column.isKnown) {
                isOn = false;
                continue;
            }
            const std::string x = fixed(kLeft + (kWidth - kLeft - kRight) * static_cast<double>(i) / kColumns);
            if (!isOn)
                path += "M" + x + " " + fixed(y(column.first));
            else if (column.lowest != column.highest || column.last != before)
                path += "H" + x;
            if (column.lowest != column.highest || column.first != before)
                path += "V" + fixed(y(column.first)) + "V" + fixed(y(column.lowest)) + "V" + fixed(y(column.highest)) +
                        "V" + fixed(y(column.last));
            isOn = !column.hasGap;
            before = column.last;
        }
        if (isOn)
            path += "H" + fixed(kWidth - kRight);
        return path;
    }

    const Timeline& m_timeline;
    SignalId m_id;
    const Signal& m_signal;
    TimeAxis m_axis;
    double m_low = 0.0;
    double m_high = 1.0;
};

} // namespace

std::string lanesSvg(const Timeline& timeline) {
    return LanePainter(timeline).paint();
}

std::string signalSvg(const Timeline& timeline, SignalId signal) {
    return SignalPainter(timeline, signal).paint();
}

std::vector<SignalId> signalsToPlot(const Timeline& timeline, std::size_t most) {
    const std::vector<SignalId> moving = timeline.movingSignals();
    std::vector<SignalId> plotted;
    const auto add = [&](SignalId signal) {
        const bool isMoving = std::find(moving.begin(), moving.end(), signal) != moving.end();
        const bool isNew = std::find(plotted.begin(), plotted.end(), signal) == plotted.end();
        if (isMoving && isNew && plotted.size() < most)
            plotted.push_back(signal);
    };
    for (const char* name : {"ground_speed", "airspeed"})
        if (const std::optional<SignalId> signal = timeline.run().aircraft.signals.find(name))
            add(*signal);
    for (std::size_t step = 0; step < timeline.steps().size(); ++step)
        for (const SignalLimits& limits : timeline.limits(step))
            add(limits.signal);
    return plotted;
}

} // namespace flowhand
