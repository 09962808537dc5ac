#include "report/sheetplots.h"

#include <algorithm>
#include <cmath>

#include "base/signal.h"
#include "report/html.h"

namespace flowhand {

namespace {

constexpr double kHeight = 70.0;
constexpr double kBase = 52.0; ///< below it stand the labels
constexpr double kTop = 6.0;
constexpr double kMargin = 14.0;
/// Of 18 measured switches the longest bounced for 6.2 ms (J. Ganssle, A Guide to Debouncing, second-hand).
constexpr std::int64_t kPublishedMicros = 6200;

class Drawing {
public:
    Drawing(double width, const std::string& title)
        : m_width(width),
          m_text("<svg width=\"" + fixed(width) + "\" height=\"" + fixed(kHeight) + "\" viewBox=\"0 0 " + fixed(width) +
                 " " + fixed(kHeight) + "\" role=\"img\" aria-label=\"" + escaped(title) + "\">") {}

    void range(double low, double high) {
        m_low = low;
        m_high = high;
    }
    [[nodiscard]] double x(double value) const {
        return kMargin + (value - m_low) / (m_high - m_low) * (m_width - 2 * kMargin);
    }
    void bar(double from, double to, double height, const char* fill) {
        const double left = std::clamp(x(from), 0.0, m_width);
        const double right = std::clamp(x(to), left + 0.5, m_width);
        m_text += "<rect x=\"" + fixed(left) + "\" y=\"" + fixed(kBase - height) + "\" width=\"" + fixed(right - left) +
                  "\" height=\"" + fixed(height) + "\" fill=\"" + fill + "\"/>";
    }
    void mark(double at, bool isDashed) {
        m_text += "<line x1=\"" + fixed(x(at)) + "\" x2=\"" + fixed(x(at)) + "\" y1=\"" + fixed(kTop) + "\" y2=\"" +
                  fixed(kBase) + "\" stroke=\"#111\" stroke-width=\"0.8\"" +
                  (isDashed ? " stroke-dasharray=\"3 2\"/>" : "/>");
    }
    /// Left out where it would cover the one before.
    void label(double at, const std::string& text) {
        const double half = 2.6 * static_cast<double>(text.size());
        const double middle = std::clamp(x(at), half, m_width - half);
        if (middle - half < m_labelled)
            return;
        m_labelled = middle + half + 2;
        m_text += "<text x=\"" + fixed(middle) + "\" y=\"" + fixed(kBase + 11) +
                  "\" font-size=\"9\" text-anchor=\"middle\" fill=\"#111\">" + escaped(text) + "</text>";
    }
    void curve(const std::string& points) {
        m_text += "<polyline points=\"" + points + "\" fill=\"none\" stroke=\"#111\" stroke-width=\"1\"/>";
    }
    std::string end() {
        m_text += "<line x1=\"0\" x2=\"" + fixed(m_width) + "\" y1=\"" + fixed(kBase) + "\" y2=\"" + fixed(kBase) +
                  "\" stroke=\"#111\" stroke-width=\"0.8\"/></svg>";
        return std::move(m_text);
    }

private:
    double m_width;
    double m_low = 0.0;
    double m_high = 1.0;
    double m_labelled = 0.0; ///< up to here
    std::string m_text;
};

/// Tallest first would hide all else: the square root keeps what was passed in a moment visible beside long rests.
double heightOf(std::size_t count, std::size_t most) {
    return (kBase - kTop) * std::sqrt(static_cast<double>(count) / static_cast<double>(most));
}

void addBars(Drawing& drawing, const SheetHistogram& histogram) {
    const std::size_t most =
        std::max<std::size_t>(1, *std::max_element(histogram.counts.begin(), histogram.counts.end()));
    const double step = (histogram.high - histogram.low) / static_cast<double>(histogram.counts.size());
    for (std::size_t i = 0; i < histogram.counts.size(); ++i)
        if (histogram.counts[i] > 0)
            drawing.bar(histogram.low + step * static_cast<double>(i),
                        histogram.low + step * static_cast<double>(i + 1), heightOf(histogram.counts[i], most), "#555");
}

void addBand(Drawing& drawing, std::int64_t at, std::int64_t half) {
    drawing.bar(static_cast<double>(at - half), static_cast<double>(at + half), kBase - kTop, "#ddd");
}

} // namespace

std::string travelPlot(const SheetAxis& axis) {
    if (axis.travel.counts.empty() || !(axis.travel.low < axis.travel.high))
        return {};
    Drawing drawing(330.0, axis.name + ": how long it was at each count");
    drawing.range(axis.travel.low, axis.travel.high);
    std::vector<std::pair<std::int64_t, std::string>> places;
    if (const std::optional<AxisCalibration>& calibration = axis.calibration) {
        for (const GatePlace& gate : calibration->gates) {
            addBand(drawing, gate.place.at, gate.band);
            places.emplace_back(gate.place.at, gate.position);
        }
        if (calibration->centre) {
            addBand(drawing, calibration->centre->place.at, calibration->centre->deadBand);
            places.emplace_back(calibration->centre->place.at, "centre");
        }
        if (calibration->idle)
            places.emplace_back(calibration->idle->at, "idle");
        for (const ValuePlace& value : calibration->values)
            places.emplace_back(value.place.at, numberText(value.value));
        if (calibration->gates.empty() && calibration->values.empty()) {
            addBand(drawing, calibration->low.at, calibration->endBand);
            addBand(drawing, calibration->high.at, calibration->endBand);
            places.emplace_back(calibration->low.at, std::to_string(calibration->low.at));
            places.emplace_back(calibration->high.at, std::to_string(calibration->high.at));
        }
    } else {
        places = {{std::llround(axis.travel.low), numberText(axis.travel.low)},
                  {std::llround(axis.travel.high), numberText(axis.travel.high)}};
    }
    addBars(drawing, axis.travel);
    std::sort(places.begin(), places.end());
    for (const auto& [at, name] : places) {
        drawing.mark(static_cast<double>(at), true);
        drawing.label(static_cast<double>(at), name);
    }
    return drawing.end();
}

std::string noisePlot(const SheetAxis& axis) {
    const SheetHistogram& histogram = axis.noise;
    std::size_t all = 0;
    for (const std::size_t count : histogram.counts)
        all += count;
    const double sigma = axis.health ? axis.health->sigma : axis.calibration ? axis.calibration->noise : 0.0;
    if (all == 0 || sigma <= 0)
        return {};
    Drawing drawing(190.0, axis.name + ": noise at rest");
    drawing.range(histogram.low, histogram.high);
    addBars(drawing, histogram);
    // What a normal distribution would have in each bin, by the same scale.
    const std::size_t most = *std::max_element(histogram.counts.begin(), histogram.counts.end());
    const double step = (histogram.high - histogram.low) / static_cast<double>(histogram.counts.size());
    const auto below = [&](double value) {
        return 0.5 * std::erfc(-value / (sigma * std::sqrt(2.0)));
    };
    std::string points;
    for (std::size_t i = 0; i < histogram.counts.size(); ++i) {
        const double from = histogram.low + step * static_cast<double>(i);
        const double share = (below(from + step) - below(from)) * static_cast<double>(all) / static_cast<double>(most);
        points += fixed(drawing.x(from + step / 2)) + "," +
                  fixed(kBase - (kBase - kTop) * std::sqrt(std::clamp(share, 0.0, 1.0))) + " ";
    }
    drawing.curve(points);
    for (const double at : {-3 * sigma, 3 * sigma})
        if (at > histogram.low && at < histogram.high)
            drawing.mark(at, true);
    drawing.label(-3 * sigma, "-3 sigma");
    drawing.label(0, "0");
    drawing.label(3 * sigma, "3 sigma");
    return drawing.end();
}

std::string bouncePlot(const SheetContact& contact) {
    const auto& counts = contact.health.histogram;
    const std::size_t most = *std::max_element(counts.begin(), counts.end());
    if (most == 0)
        return {};
    Drawing drawing(260.0, contact.name + ": how long it bounced");
    drawing.range(0.0, static_cast<double>(counts.size()));
    double published = 0.0; // in bins
    for (std::size_t i = 0; i < counts.size(); ++i) {
        const auto at = static_cast<double>(i);
        const std::int64_t from = i == 0 ? 0 : kBounceBinsMicros[i - 1];
        const bool isLast = i == kBounceBinsMicros.size();
        if (!isLast && from <= kPublishedMicros && kPublishedMicros < kBounceBinsMicros[i])
            published =
                at + static_cast<double>(kPublishedMicros - from) / static_cast<double>(kBounceBinsMicros[i] - from);
        if (counts[i] > 0)
            drawing.bar(at + 0.1, at + 0.9, (kBase - kTop) * static_cast<double>(counts[i]) / static_cast<double>(most),
                        "#555");
        if (!isLast)
            drawing.label(at + 1, numberText(static_cast<double>(kBounceBinsMicros[i]) / 1000));
    }
    drawing.mark(published, true);
    return drawing.end();
}

} // namespace flowhand
