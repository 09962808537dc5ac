#include <cmath>

#include "base/names.h"
#include "base/signal.h"
#include "bench/millistext.h"
#include "report/html.h"
#include "report/sheetmeasurement.h"
#include "report/sheetplots.h"

namespace flowhand {

namespace {

std::string shown(double value) {
    return numberText(std::round(value * 100) / 100);
}

std::string counts(double value) {
    return shown(value) + " counts";
}

/// The measurements of one control.
class Figures {
public:
    explicit Figures(const SheetMeasurements& of) : m_of(of) {}

    std::string html() {
        m_html = "<table class=\"figures\">";
        writeDates();
        for (const SheetAxis& axis : m_of.axes)
            writeAxis(axis);
        for (const SheetContact& contact : m_of.contacts)
            writeContact(contact);
        for (const SwitchHealth& health : m_of.switches)
            fact("Between positions", "none closed for " + millisText(health.longestNone) + " at most (" +
                                          millisText(health.usualNone) + " usually), two for " +
                                          millisText(health.longestBoth) + " at most; " +
                                          std::to_string(health.changes) + " changes");
        if (!m_of.filters.empty())
            fact("Filters", joined(m_of.filters, ", "));
        m_html += "</table>";
        writePlots();
        writeCautions();
        return std::move(m_html);
    }

private:
    void fact(const std::string& name, const std::string& value) {
        m_html += "<tr><td>" + escaped(name) + "</td><td>" + escaped(value) + "</td></tr>";
    }

    static std::string dated(const std::string& date, bool isStale) {
        return date.substr(0, 10) + (isStale ? ", stale: wiring or calibration has changed since" : "");
    }

    void writeDates() {
        if (!m_of.calibrated.empty())
            fact("Calibrated", dated(m_of.calibrated, m_of.isCalibrationStale));
        if (!m_of.repeated.empty())
            fact("Checked again", m_of.repeated.substr(0, 10) + ": within " + shown(m_of.repeatPercent) +
                                      " % of the travel of where the rig file has its places");
        if (!m_of.measured.empty())
            fact("Signal measured", dated(m_of.measured, m_of.isHealthStale));
    }

    void writeAxis(const SheetAxis& axis) {
        const std::string lead = m_of.axes.size() > 1 ? axis.name + ": " : std::string();
        if (axis.calibration)
            writeCalibration(lead, *axis.calibration);
        if (axis.health)
            writeHealth(lead, *axis.health);
    }

    void writeCalibration(const std::string& lead, const AxisCalibration& axis) {
        fact(lead + "Travel", "counts " + std::to_string(axis.low.at) + " to " + std::to_string(axis.high.at) + ", " +
                                  shown(100 * axis.share) + " % of the converter; comes back within " +
                                  shown(axis.repeatPercent) + " % of it");
        if (axis.centre)
            fact(lead + "Centre", "count " + std::to_string(axis.centre->place.at) + " \xC2\xB1" +
                                      std::to_string(axis.centre->deadBand) + ", " +
                                      std::to_string(axis.centre->place.visits) + " returns within " +
                                      counts(axis.centre->place.spread));
        if (axis.idle)
            fact(lead + "Idle", placeText(*axis.idle));
        for (const GatePlace& gate : axis.gates)
            fact(lead + "Gate " + gate.position, placeText(gate.place) + "; band \xC2\xB1" + std::to_string(gate.band));
        for (const ValuePlace& value : axis.values)
            fact(lead + "At " + numberText(value.value), placeText(value.place));
        if (axis.linearity)
            fact(lead + "Independent linearity", shown(*axis.linearity) + " % of the applied voltage");
    }

    static std::string placeText(const Place& place) {
        return "count " + std::to_string(place.at) + ", held " + std::to_string(place.visits) + " times within " +
               counts(place.spread) + (place.backlash ? ", backlash " + counts(std::fabs(*place.backlash)) : "");
    }

    void writeHealth(const std::string& lead, const AxisHealth& axis) {
        fact(lead + "Noise", "sigma " + counts(axis.sigma) + ", peak to peak " + counts(axis.peakToPeak) + "; " +
                                 shown(axis.effectiveBits) + " effective and " + shown(axis.noiseFreeBits) +
                                 " noise-free bits");
        std::string wear =
            axis.spikes == 0 ? "no spike" : std::to_string(axis.spikes) + (axis.spikes == 1 ? " spike" : " spikes");
        if (!axis.gaps.empty())
            wear += ", " + std::to_string(axis.gaps.size()) + " gaps";
        if (axis.deadCodes)
            wear += ", " + shown(100 * *axis.deadCodes) + " % of the counts never come";
        if (axis.drift)
            wear += ", drift " + counts(*axis.drift) + " in " + shown(seconds(axis.restLength)) + " s";
        fact(lead + "Track", wear);
        if (axis.hysteresis)
            fact(lead + "Hysteresis", counts(std::fabs(*axis.hysteresis)));
        if (axis.returnError)
            fact(lead + "Return", "within " + counts(*axis.returnError) + " of the middle");
        if (axis.linearity)
            fact(lead + "Independent linearity", shown(*axis.linearity) + " % of the applied voltage");
    }

    void writeContact(const SheetContact& contact) {
        const ContactHealth& health = contact.health;
        if (health.changes == 0)
            return fact(contact.name, "did not change");
        fact(contact.name, "bounces for " + millisText(health.longestBounce) + " at most, " +
                               millisText(health.meanBounce) + " on average of " + std::to_string(health.changes) +
                               " changes" +
                               (health.chatter > 0 ? "; chattered " + std::to_string(health.chatter) + " times" : ""));
    }

    void figure(const std::string& svg, const std::string& caption) {
        if (!svg.empty())
            m_html += "<figure>" + svg + "<figcaption>" + escaped(caption) + "</figcaption></figure>";
    }

    void writePlots() {
        m_html += "<div class=\"plots\">";
        for (const SheetAxis& axis : m_of.axes) {
            const std::string lead = m_of.axes.size() > 1 ? axis.name + ": " : std::string();
            figure(travelPlot(axis), lead + "counts, and how long it was at each");
            figure(noisePlot(axis), lead + "noise at rest");
        }
        for (const SheetContact& contact : m_of.contacts)
            figure(bouncePlot(contact), contact.name + ": bounce in ms; dashed: longest published, 6.2 ms");
        m_html += "</div>";
    }

    void writeCautions() {
        if (m_of.cautions.empty())
            return;
        m_html += "<ul>";
        for (const Finding& finding : m_of.cautions)
            m_html +=
                "<li><b>" + escaped(finding.check) + ", " + soundnessName(finding.verdict) +
                "</b>: " + escaped(finding.text.english()) +
                (finding.remedy.isEmpty() ? ""
                                          : " <span class=\"small\">" + escaped(finding.remedy.english()) + "</span>") +
                "</li>";
        m_html += "</ul>";
    }

    const SheetMeasurements& m_of;
    std::string m_html;
};

} // namespace

std::string sheetMeasurementsHtml(const SheetMeasurements& measurements) {
    return Figures(measurements).html();
}

} // namespace flowhand
