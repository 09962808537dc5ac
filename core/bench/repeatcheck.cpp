#include "bench/repeatcheck.h"

#include <algorithm>
#include <cmath>

#include "base/signal.h"

namespace flowhand {

namespace {

/// Holds the places of one axis against the file.
class AxisChecker {
public:
    AxisChecker(const BenchControl& control, std::size_t axis, const AxisCalibration& now, RepeatCheck& out)
        : m_control(control), m_inFile(control.axes[axis].inFile), m_now(now), m_out(out) {
        if (control.axes.size() > 1)
            m_lead = control.axes[axis].name;
        m_travel = static_cast<double>(std::abs(now.high.at - now.low.at));
    }

    void run() {
        if (m_inFile.points.empty() && m_inFile.low && m_inFile.high) {
            judge(add(phrase("low end"), *m_inFile.low, m_now.low), std::nullopt);
            judge(add(phrase("high end"), *m_inFile.high, m_now.high), std::nullopt);
        }
        if (m_inFile.centre && m_now.centre)
            judge(add(phrase("centre"), *m_inFile.centre, m_now.centre->place), m_inFile.deadBand);
        if (m_inFile.idle && m_now.idle)
            judge(add(phrase("idle"), *m_inFile.idle, *m_now.idle), std::abs(m_inFile.split - *m_inFile.idle));
        for (std::size_t i = 0; i < m_now.gates.size(); ++i)
            judge(add(phrase("gate '{1}'").with(m_now.gates[i].position), m_inFile.gates[i].at, m_now.gates[i].place),
                  m_inFile.gates[i].band);
        checkPoints();
    }

private:
    void checkPoints() {
        if (m_inFile.points.empty())
            return;
        AxisMap::Shape shape = AxisMap::shapeThrough(m_inFile.points, m_inFile.centre);
        shape.deadBand = m_inFile.deadBand;
        shape.endBand = m_inFile.endBand;
        const AxisMap map(shape);
        for (std::size_t i = 0; i < m_now.values.size(); ++i) {
            CheckedPlace place = add(exactText(m_now.values[i].value, m_control.valueUnit), m_inFile.points[i].at,
                                     m_now.values[i].place);
            place.reads = map.value(place.found.at);
            judge(std::move(place), std::nullopt);
        }
    }

    [[nodiscard]] CheckedPlace add(Phrase name, std::int64_t inFile, const Place& found) const {
        if (!m_lead.isEmpty())
            name = phrase("{1}, {2}").with(m_lead, std::move(name));
        return {std::move(name), inFile, found, 100 * static_cast<double>(found.at - inFile) / m_travel, std::nullopt};
    }

    /// `band`: so far from its count the file still takes it for the place.
    void judge(CheckedPlace place, std::optional<std::int64_t> band) {
        const double off = std::fabs(static_cast<double>(place.found.at - place.inFile));
        const double percent = std::fabs(place.percent);
        Finding finding{
            "place",
            Soundness::Good,
            phrase("{1}: count {2}, {3} in the file: off by {4} % of the travel")
                .with(place.name, std::to_string(place.found.at), std::to_string(place.inFile), numberText(percent)),
            {},
            {}};
        if (place.reads)
            finding.text =
                phrase("{1}, reads {2}").with(std::move(finding.text), exactText(*place.reads, m_control.valueUnit));
        if (band && off + place.found.spread / 2 > static_cast<double>(*band)) {
            finding.verdict = Soundness::Bad;
            finding.reason = phrase("that is outside its band of {1} counts either side").with(std::to_string(*band));
        } else if (percent > kRepeatCaution) {
            finding.verdict = percent > kRepeatBad ? Soundness::Bad : Soundness::Caution;
            finding.reason = phrase("a lever of a training device may be off by 3 % at most");
        }
        if (finding.verdict != Soundness::Good)
            finding.remedy = phrase("calibrate it again, and see whether its arm, rod or knob has slipped");
        m_out.findings.push_back(std::move(finding));
        m_out.places.push_back(std::move(place));
    }

    const BenchControl& m_control;
    const AxisInFile& m_inFile;
    const AxisCalibration& m_now;
    RepeatCheck& m_out;
    Phrase m_lead; ///< names the input where there are several
    double m_travel = 0.0;
};

} // namespace

BenchResult<RepeatCheck> checkControl(const BenchControl& control, const Measurement& measurement) {
    const BenchResult<ControlCalibration> now = calibrateControl(control, measurement);
    if (!now)
        return tl::unexpected(now.error());
    RepeatCheck check;
    for (std::size_t i = 0; i < now->axes.size(); ++i)
        AxisChecker(control, i, now->axes[i], check).run();
    check.findings.insert(check.findings.end(), now->findings.begin(), now->findings.end());
    return check;
}

} // namespace flowhand
