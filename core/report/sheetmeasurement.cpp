#include "report/sheetmeasurement.h"

#include <algorithm>
#include <cmath>

#include "base/signal.h"
#include "base/valuewords.h"
#include "bench/measured.h"
#include "bench/measurement.h"
#include "bench/millistext.h"
#include "bench/statistics.h"

namespace flowhand {

namespace {

constexpr std::size_t kTravelBins = 120;
constexpr std::size_t kNoiseBins = 31;
/// The noise's plot reaches so many standard deviations to either side.
constexpr double kNoiseReach = 5.0;

SheetHistogram histogramOf(const std::vector<double>& values, double low, double high, std::size_t bins) {
    SheetHistogram histogram{low, high, std::vector<std::size_t>(bins)};
    if (!(low < high))
        return histogram;
    for (const double value : values) {
        const double share = (value - low) / (high - low);
        if (share >= 0 && share <= 1)
            ++histogram.counts[std::min(bins - 1, static_cast<std::size_t>(share * static_cast<double>(bins)))];
    }
    return histogram;
}

/// `input` as a bench control names it.
const RawTrace* traceOf(const EvidenceRecord* record, const std::string& input) {
    if (record == nullptr)
        return nullptr;
    const auto found = std::find_if(record->raw.begin(), record->raw.end(), [&](const RawTrace& trace) {
        return (trace.input == input || trace.device + ": " + trace.input == input) && trace.changes.size() > 1;
    });
    return found == record->raw.end() ? nullptr : &*found;
}

void draw(SheetAxis& axis, const RawTrace& trace) {
    const Series series = seriesOf(trace);
    std::vector<double> values;
    for (const RawChange& point : series.points)
        values.push_back(static_cast<double>(point.raw));
    const auto [low, high] = std::minmax_element(values.begin(), values.end());
    axis.travel = histogramOf(values, *low, *high, kTravelBins);
    const Resting resting = restingOf(series);
    std::vector<double> residuals;
    for (const Dwell& dwell : resting.dwells)
        residuals.insert(residuals.end(), dwell.residuals.begin(), dwell.residuals.end());
    // As wide as whole counts are, or noise of less than one would look like a comb.
    const double step = std::max(1.0, std::ceil(2 * kNoiseReach * resting.sigma / static_cast<double>(kNoiseBins)));
    const double reach = step * static_cast<double>(kNoiseBins) / 2;
    axis.noise = histogramOf(residuals, -reach, reach, kNoiseBins);
}

class Collector {
public:
    Collector(const BenchControl& control, const std::vector<EvidenceRecord>& evidence)
        : m_control(control), m_evidence(evidence) {}

    Result<SheetMeasurements> run() {
        Status status = takeCalibration();
        if (status)
            status = takeHealth();
        if (status)
            status = takeRepeat();
        if (!status)
            return tl::unexpected<Error>(status.error());
        for (SheetAxis& axis : m_out.axes)
            if (const RawTrace* trace = bestTrace(axis.name))
                draw(axis, *trace);
        m_out.filters = englishOf(filterWords(m_control.filters));
        if (m_control.filters.isOfAxis)
            m_out.filters.push_back(m_control.filters.delay() > Duration{}
                                        ? "late by " + millisText(m_control.filters.delay())
                                        : std::string("nothing makes it late"));
        return std::move(m_out);
    }

private:
    /// The record if it holds; null, and `isStale`, if it is of another wiring.
    const EvidenceRecord* find(std::string_view kind, std::string& date, bool& isStale) {
        const FoundEvidence found = findEvidence(m_evidence, kind, m_control.fingerprint);
        if (found.state == EvidenceState::None)
            return nullptr;
        date = dateText(found.record->unixSeconds);
        isStale = found.state == EvidenceState::Stale;
        if (isStale)
            return nullptr;
        for (Finding& finding : findingsIn(found.record->result))
            if (finding.verdict >= Soundness::Caution)
                m_out.cautions.push_back(std::move(finding));
        return found.record;
    }

    Status takeCalibration() {
        m_calibration = find(kCalibrationEvidence, m_out.calibrated, m_out.isCalibrationStale);
        if (m_calibration == nullptr)
            return {};
        const Result<std::vector<AxisCalibration>> axes = calibrationOf(*m_calibration);
        if (!axes)
            return tl::unexpected<Error>(axes.error());
        for (std::size_t i = 0; i < axes->size() && i < m_control.axes.size(); ++i) {
            const BenchAxis& axis = m_control.axes[i];
            m_out.axes.push_back({axis.name.isEmpty() ? m_control.inputNames[axis.input] : axis.name.english(),
                                  (*axes)[i],
                                  std::nullopt,
                                  {},
                                  {}});
        }
        return {};
    }

    Status takeHealth() {
        m_health = find(kHealthEvidence, m_out.measured, m_out.isHealthStale);
        if (m_health == nullptr)
            return {};
        Result<ControlHealth> health = healthOf(*m_health);
        if (!health)
            return tl::unexpected<Error>(health.error());
        for (auto& [input, axis] : health->axes) {
            const auto known = std::find_if(m_out.axes.begin(), m_out.axes.end(), [&, name = input](const auto& other) {
                return other.name == name;
            });
            if (known != m_out.axes.end())
                known->health = std::move(axis);
            else
                m_out.axes.push_back({input, std::nullopt, std::move(axis), {}, {}});
        }
        for (auto& [input, contact] : health->contacts)
            m_out.contacts.push_back({input, contact});
        m_out.switches = std::move(health->switches);
        return {};
    }

    Status takeRepeat() {
        bool isStale = false;
        std::string date;
        const EvidenceRecord* repeat = find(kRepeatEvidence, date, isStale);
        if (repeat == nullptr)
            return {};
        const Result<double> worst = repeatErrorOf(*repeat);
        if (!worst)
            return tl::unexpected<Error>(worst.error());
        m_out.repeated = date;
        m_out.repeatPercent = *worst;
        return {};
    }

    /// The calibration's shows its places, the other its movement.
    [[nodiscard]] const RawTrace* bestTrace(const std::string& axis) const {
        const std::string input = axis.substr(0, axis.find(" with its switch"));
        const RawTrace* trace = traceOf(m_calibration, input);
        return trace != nullptr ? trace : traceOf(m_health, input);
    }

    const BenchControl& m_control;
    const std::vector<EvidenceRecord>& m_evidence;
    const EvidenceRecord* m_calibration = nullptr;
    const EvidenceRecord* m_health = nullptr;
    SheetMeasurements m_out;
};

} // namespace

Result<SheetMeasurements> sheetMeasurementsOf(const BenchControl& control,
                                              const std::vector<EvidenceRecord>& evidence) {
    return Collector(control, evidence).run();
}

} // namespace flowhand
