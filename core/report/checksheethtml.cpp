#include <algorithm>
#include <cmath>

#include "base/names.h"
#include "report/checksheet.h"
#include "report/html.h"

namespace flowhand {

namespace {

/// Besides what the pages share: the measurements of one control.
constexpr const char* kMeasurementStyle = R"(
section { break-inside: avoid; border-bottom: 0.2mm solid #999; padding-bottom: 2mm; } h3 { font-size: 11pt; margin: 3mm 0 1mm; } h3 .small { font-weight: 400; }
.figures td { border: 0; padding: 0.2mm 3mm 0.2mm 0; font-size: 9.5pt; } .figures td:first-child { white-space: nowrap; color: #333; } .figures { width: auto; }
.plots { display: flex; flex-wrap: wrap; gap: 2mm 6mm; margin-top: 1.5mm; } figure { margin: 0; } figcaption { font-size: 8.5pt; color: #333; }
)";

constexpr double kPlotWidth = 220.0;
constexpr double kPlotHeight = 56.0;

std::string day(const std::string& date) {
    return date.substr(0, 10);
}

/// How the signal went over the walk, with what was asked of it: the band at each end, or a line for each position.
class Plot {
public:
    Plot(const WalkedSignalRecord& record, const Signal& signal, double length)
        : m_record(record), m_signal(signal), m_length(std::max(length, 0.1)) {
        const bool isNumber = signal.kind == SignalKind::Number;
        m_low = isNumber ? record.lowEnd.value_or(signal.lowest) : 0.0;
        m_high = isNumber                              ? record.highEnd.value_or(signal.highest)
                 : signal.kind == SignalKind::Position ? static_cast<double>(signal.positions.size()) - 1.0
                                                       : 1.0;
        if (!(m_high > m_low))
            m_high = m_low + 1.0;
    }

    [[nodiscard]] std::string svg() const {
        if (m_record.trace.size() < 2)
            return {};
        std::string text = "<svg width=\"" + fixed(kPlotWidth) + "\" height=\"" + fixed(kPlotHeight) +
                           "\" viewBox=\"0 0 " + fixed(kPlotWidth) + " " + fixed(kPlotHeight) +
                           "\" role=\"img\" aria-label=\"" + escaped(m_signal.label) + " over " + fixed(m_length) +
                           " s\"><rect x=\"0\" y=\"0\" width=\"" + fixed(kPlotWidth) + "\" height=\"" +
                           fixed(kPlotHeight) + "\" fill=\"#fff\" stroke=\"#777\"/>";
        if (m_signal.kind == SignalKind::Number)
            text += band(m_low) + band(m_high) + (m_record.centre ? band(0.0) : std::string());
        else
            for (double level = 0.0; level <= m_high; level += 1.0)
                text += line(level);
        return text + trace() + "</svg>";
    }

private:
    [[nodiscard]] double y(double value) const {
        const double share = (value - m_low) / (m_high - m_low);
        return kPlotHeight - 6.0 - std::clamp(share, -0.08, 1.08) * (kPlotHeight - 12.0);
    }
    [[nodiscard]] double x(double time) const {
        return 2.0 + std::clamp(time / m_length, 0.0, 1.0) * (kPlotWidth - 4.0);
    }
    [[nodiscard]] std::string band(double at) const {
        const double top = y(std::min(at + m_record.tolerance, m_high + 0.08 * (m_high - m_low)));
        const double bottom = y(std::max(at - m_record.tolerance, m_low - 0.08 * (m_high - m_low)));
        return "<rect x=\"0\" y=\"" + fixed(top) + "\" width=\"" + fixed(kPlotWidth) + "\" height=\"" +
               fixed(std::max(bottom - top, 1.0)) + "\" fill=\"#ddd\"/>";
    }
    [[nodiscard]] std::string line(double at) const {
        return "<line x1=\"0\" x2=\"" + fixed(kPlotWidth) + "\" y1=\"" + fixed(y(at)) + "\" y2=\"" + fixed(y(at)) +
               "\" stroke=\"#bbb\" stroke-dasharray=\"3 3\"/>";
    }
    /// Signals are constant between their changes: steps, never slopes.
    [[nodiscard]] std::string trace() const {
        std::string points;
        double before = 0.0;
        bool isFirst = true;
        for (const auto& [time, value] : m_record.trace) {
            if (m_signal.kind != SignalKind::Number && value < 0.0)
                continue; // between two positions
            if (!isFirst)
                points += fixed(x(time)) + "," + fixed(y(before)) + " ";
            points += fixed(x(time)) + "," + fixed(y(value)) + " ";
            before = value;
            isFirst = false;
        }
        points += fixed(x(m_length)) + "," + fixed(y(before));
        return "<polyline points=\"" + points + "\" fill=\"none\" stroke=\"#111\" stroke-width=\"1.2\"/>";
    }

    const WalkedSignalRecord& m_record;
    const Signal& m_signal;
    double m_low = 0.0;
    double m_high = 1.0;
    double m_length; ///< of the walk, in seconds
};

class Page {
public:
    Page(const CheckSheet& sheet, const SignalTable& signals) : m_sheet(sheet), m_signals(signals) {}

    std::string html() {
        m_html = "<!DOCTYPE html>\n<html lang=\"en\"><head><meta charset=\"utf-8\"><title>Check sheet: " +
                 escaped(m_sheet.rigTitle) + "</title><meta name=\"viewport\" content=\"width=device-width\"><style>" +
                 kPageStyle + kMeasurementStyle + "</style></head><body>\n";
        writeHead();
        writeControls();
        writeMeasurements();
        writeTolerances();
        writeCautions();
        m_html += "<div class=\"sign\"><div>Checked by</div><div>Date</div></div>\n</body></html>\n";
        return std::move(m_html);
    }

private:
    void writeHead() {
        m_html += "<h1>Check sheet: " + escaped(m_sheet.rigTitle) + "</h1>\n<table class=\"facts\">";
        const auto fact = [&](const std::string& name, const std::string& value) {
            m_html += "<tr><td>" + name + "</td><td>" + escaped(value) + "</td></tr>";
        };
        fact("Rig file", m_sheet.rigFile);
        fact("Aircraft", m_sheet.aircraftTitle);
        fact("Made", dateText(m_sheet.unixSeconds));
        fact("Confirmed",
             std::to_string(m_sheet.confirmedCount()) + " of " + std::to_string(m_sheet.controls.size()) + " controls");
        m_html += "</table>\n<p class=\"note\">This is a builder's own check. It qualifies nothing and certifies "
                  "nothing. Flowhand is a hobby trainer and is not for real-world flight training.</p>\n";
    }

    void writeControls() {
        m_html += "<h2>Controls</h2>\n<table><thead><tr><th style=\"width: 24%\">Control</th><th style=\"width: 16%\">"
                  "State</th><th>What was seen</th><th style=\"width: 228px\">The walk</th></tr></thead><tbody>\n";
        for (const SheetControl& control : m_sheet.controls) {
            m_html += "<tr><td><b>" + escaped(control.name) + "</b><div class=\"small\">" + escaped(control.inputs) +
                      "</div></td><td>" + stateOf(control) + "</td><td>" + seenOf(control) + "</td><td>" +
                      plotsOf(control) + "</td></tr>\n";
        }
        m_html += "</tbody></table>\n";
    }

    [[nodiscard]] static std::string stateOf(const SheetControl& control) {
        std::string text;
        if (!control.walk)
            text = "<span class=\"no\">not walked</span>";
        else if (control.isStale)
            text = "<span class=\"no\">stale</span>: changed since the walk of <span class=\"nowrap\">" +
                   day(control.walked) + "</span>";
        else if (!control.isConfirmed)
            text = "<span class=\"no\">not confirmed</span> <span class=\"nowrap\">" + day(control.walked) + "</span>";
        else
            text = "confirmed <span class=\"nowrap\">" + day(control.walked) + "</span>";
        if (control.walk && control.walk->isRecorded)
            text += "<div class=\"small\">from a recording</div>";
        if (control.isCalibrated)
            text += "<div class=\"small\">calibrated <span class=\"nowrap\">" + day(control.measurements.calibrated) +
                    "</span></div>";
        return text;
    }

    [[nodiscard]] const WalkedSignalRecord* recordOf(const SheetControl& control, SignalId id) const {
        if (!control.walk)
            return nullptr;
        const auto found = std::find_if(control.walk->signals.begin(), control.walk->signals.end(),
                                        [&](const WalkedSignalRecord& record) {
                                            return record.signal == m_signals[id].name;
                                        });
        return found == control.walk->signals.end() ? nullptr : &*found;
    }

    [[nodiscard]] std::string seenOf(const SheetControl& control) const {
        std::string text;
        for (std::size_t i = 0; i < control.signals.size(); ++i) {
            const Signal& signal = m_signals[control.signals[i]];
            if (control.signals.size() > 1)
                text += "<div><b>" + escaped(signal.label) + "</b></div>";
            if (const WalkedSignalRecord* record = recordOf(control, control.signals[i]))
                text += figuresOf(*record, signal);
            if (control.sigmas[i] > 0)
                text += "<div class=\"small\">noise (1 sigma) " + numberOf(signal, control.sigmas[i]) + ", " +
                        (control.noiseDate.empty() ? std::string("by the rig file") : "measured") + "</div>";
        }
        if (control.walk && !control.walk->movedInstead.empty())
            text +=
                "<div class=\"small\">moved at the same time: " + escaped(joined(control.walk->movedInstead, ", ")) +
                "</div>";
        return text;
    }

    [[nodiscard]] static std::string numberOf(const Signal& signal, double number) {
        return "<span class=\"nowrap\">" + escaped(valueText(signal, Value::number(number))) + "</span>";
    }

    [[nodiscard]] static std::string figuresOf(const WalkedSignalRecord& record, const Signal& signal) {
        std::string text;
        if (record.lowest && record.highest)
            text += "<div>" + numberOf(signal, *record.lowest) + " to " + numberOf(signal, *record.highest) + "</div>";
        if (record.lowEnd && record.highEnd)
            text += "<div class=\"small\">asked: " + numberOf(signal, *record.lowEnd) + " to " +
                    numberOf(signal, *record.highEnd) + ", \xC2\xB1" + numberOf(signal, record.tolerance) + "</div>";
        if (record.centre)
            text += "<div class=\"small\">back at its centre: " + numberOf(signal, *record.centre) + "</div>";
        if (!record.seen.empty())
            text += "<div>" + escaped(joined(record.seen, ", ")) + "</div>";
        if (!record.missing.empty())
            text += "<div class=\"no\">not seen: " + escaped(record.missing) + "</div>";
        return text;
    }

    [[nodiscard]] std::string plotsOf(const SheetControl& control) const {
        std::string text;
        for (const SignalId id : control.signals)
            if (const WalkedSignalRecord* record = recordOf(control, id))
                text += Plot(*record, m_signals[id], control.walk->seconds).svg();
        return text;
    }

    void writeMeasurements() {
        const bool isAny =
            std::any_of(m_sheet.controls.begin(), m_sheet.controls.end(), [](const SheetControl& control) {
                return !control.measurements.isEmpty();
            });
        if (!isAny)
            return;
        m_html += "<h2>Calibration and signal</h2>\n<p class=\"small\">As measured, before any filter. Grey in a plot: "
                  "bands of gates, of ends and of the centre. The height of a bar is the square root of the time, so "
                  "that what was only passed can be seen.</p>\n";
        for (const SheetControl& control : m_sheet.controls)
            if (!control.measurements.isEmpty())
                m_html += "<section><h3>" + escaped(control.name) + " <span class=\"small\">" +
                          escaped(control.inputs) + "</span></h3>" + sheetMeasurementsHtml(control.measurements) +
                          "</section>\n";
    }

    /// Those that the controls were walked with, most often all the same.
    void writeTolerances() {
        std::vector<std::pair<WalkTolerances, std::vector<std::string>>> walked;
        for (const SheetControl& control : m_sheet.controls) {
            if (!control.walk)
                continue;
            const auto known = std::find_if(walked.begin(), walked.end(), [&](const auto& other) {
                return other.first == control.walk->tolerances;
            });
            if (known != walked.end())
                known->second.push_back(control.name);
            else
                walked.push_back({control.walk->tolerances, {control.name}});
        }
        if (walked.empty())
            walked.push_back({m_sheet.tolerances, {}});
        m_html += "<h2>Tolerances</h2>\n";
        for (const auto& [asked, names] : walked)
            m_html += "<p>" + (walked.size() > 1 ? escaped(joined(names, ", ")) + ": " : std::string()) +
                      tolerancesOf(asked) + "</p>\n";
        m_html +=
            "<p>Every gate and position, for half a second. Every twentieth of the travel between the ends.</p>\n"
            "<p class=\"small\">The goals (" +
            figuresOf(WalkTolerances{}) +
            ", and every gate) are figures of 14 CFR Part 60, edition of January 2014, table A2A entries 2.a.4, 2.a.5 "
            "and 2.a.8. They are for qualified training devices, measured against an aircraft; here the lever is "
            "measured against its own calibration. Grey in a plot: where the control had to come to. Dashed: its "
            "positions.</p>\n";
    }

    [[nodiscard]] static std::string figuresOf(const WalkTolerances& asked) {
        return "controls that turn \xC2\xB1" + fixed(asked.steeringDegrees) + "\xC2\xB0, levers \xC2\xB1" +
               fixed(asked.leverDegrees) + "\xC2\xB0 or \xC2\xB1" + fixed(asked.leverShare * 100) + " %";
    }

    [[nodiscard]] static std::string tolerancesOf(const WalkTolerances& asked) {
        return "Asked for: " + figuresOf(asked) + " of the travel where they are not in degrees." +
               (asked == WalkTolerances{} ? "" : " <b>Other than the goals</b>: the builder has set them so.");
    }

    void writeCautions() {
        m_html += "<h2>Cautions</h2>\n<ul><li>Wire low voltage only, disconnect before you solder, fuse every supply, "
                  "and keep to the electrical code of the place where you live.</li><li>A control was seen working on "
                  "the day of its walk. A changed wiring or calibration makes that stale; a loose screw does not show "
                  "here.</li><li>Learn to fly from a licensed instructor.</li>";
        for (const std::string& remark : m_sheet.remarks)
            m_html += "<li>" + escaped(remark) + "</li>";
        m_html += "</ul>\n";
    }

    const CheckSheet& m_sheet;
    const SignalTable& m_signals;
    std::string m_html;
};

} // namespace

std::string checkSheetHtml(const CheckSheet& sheet, const SignalTable& signals) {
    return Page(sheet, signals).html();
}

} // namespace flowhand
