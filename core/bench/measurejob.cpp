#include <optional>
#include <utility>

#include "bench/benchjob.h"
#include "bench/guidance.h"
#include "bench/keepresult.h"
#include "bench/measurement.h"

namespace flowhand {

namespace {

/// As often as a person reads a new line.
constexpr Duration kLookPeriod = std::chrono::seconds(1);
/// Longest measurement of one control.
constexpr Duration kLongest = std::chrono::minutes(3);

/// Calibrates a control, or measures its signal, from every report of its device.
class MeasureJob final : public BenchJob {
public:
    MeasureJob(const BenchWish& wish, const BenchTaskScope& scope, HidSystem& system, const Clock& clock, Time now)
        : m_aircraft(scope.aircraft), m_flows(scope.flows), m_rig(scope.rig), m_begin(now), m_looked(now) {
        m_view.task = wish.task;
        m_view.signal = wish.signal;
        m_view.stageCount = 1;
        const BenchStatus begun = begin(wish.words, system, clock);
        if (!begun)
            end(false, {begun.error().words});
        else
            m_view.ask = wish.task == BenchTask::Measure ? healthAsk({&*m_control}) : calibrationAsk(*m_control);
    }

    void take(const InputNews& news, const std::vector<Sample>& /*samples*/) override {
        if (m_view.isOver)
            return;
        const bool isThere = m_live->poll();
        const bool isLate = news.now - m_begin >= kLongest;
        if (isThere && !isLate && news.now - m_looked < kLookPeriod)
            return;
        m_looked = news.now;
        const Result<Measurement> sofar = m_live->sofar();
        if (!isThere || isLate)
            return finish(sofar);
        if (!sofar)
            return; // nothing came yet
        const Guidance guidance = m_view.task == BenchTask::Measure ? guideHealth({&*m_control}, *sofar)
                                                                    : guideCalibration(*m_control, *sofar);
        if (guidance.isComplete)
            return finish(sofar);
        if (!guidance.text.isEmpty())
            m_view.ask = guidance.text;
    }

    void next(Time /*now*/) override {
        if (m_view.isOver)
            return;
        (void)m_live->poll();
        finish(m_live->sofar());
    }

    [[nodiscard]] BenchTaskView view() const override { return m_view; }
    [[nodiscard]] bool takeWritten() override { return std::exchange(m_hasWritten, false); }

private:
    BenchStatus begin(const std::string& values, HidSystem& system, const Clock& clock) {
        const Signal& signal = m_aircraft.signals[m_view.signal];
        Result<std::vector<BenchControl>> controls = benchControlsOf(m_rig.rig, m_aircraft.signals);
        if (!controls)
            return tl::unexpected<BenchError>(controls.error());
        m_controls = std::move(*controls);
        const Result<const BenchControl*> found = findBenchControl(m_controls, signal.name);
        if (!found)
            return tl::unexpected<BenchError>(found.error());
        m_control = **found;
        if (m_view.task != BenchTask::Measure && !m_control->canBeCalibrated())
            return tl::unexpected(calibrateControl(*m_control, {}).error());
        if (!values.empty())
            if (const BenchStatus given = giveValues(*m_control, signal, values); !given)
                return given;
        Result<LiveMeasurement> live = LiveMeasurement::begin(system, clock, m_rig.rig.devices, inputsOf(*m_control));
        if (!live)
            return tl::unexpected<BenchError>(live.error());
        m_live.emplace(std::move(*live));
        return {};
    }

    void finish(const Result<Measurement>& measurement) {
        m_live.reset();
        if (!measurement)
            return end(false, {describe(measurement.error())});
        const BenchResult<std::vector<Finding>> findings = m_view.task == BenchTask::Calibrate ? calibrate(*measurement)
                                                           : m_view.task == BenchTask::Check   ? check(*measurement)
                                                                                               : measure(*measurement);
        if (!findings)
            return end(false, {findings.error().words});
        m_hasWritten = true;
        std::vector<Phrase> words = {m_view.task == BenchTask::Calibrate
                                         ? phrase("Its calibration is written into the rig file.")
                                     : m_view.task == BenchTask::Check
                                         ? phrase("It was calibrated again to compare; the rig file stays as it is.")
                                         : phrase("It is measured.")};
        for (const Finding& finding : *findings)
            if (finding.verdict == Soundness::Bad || finding.verdict == Soundness::Caution)
                words.push_back(phrase("{1}. {2}").with(finding.text, finding.remedy));
        end(worstOf(*findings) != Soundness::Bad, std::move(words));
    }

    BenchResult<std::vector<Finding>> calibrate(const Measurement& measurement) {
        BenchResult<KeptCalibration> kept =
            keepCalibration(m_rig.file, m_rig.rig, m_aircraft, *m_control, measurement, false);
        if (!kept)
            return tl::unexpected(kept.error());
        return std::move(kept->calibration.findings);
    }

    /// How far its places are from those of the rig file.
    BenchResult<std::vector<Finding>> check(const Measurement& measurement) {
        BenchResult<RepeatCheck> check = checkControl(*m_control, measurement);
        if (!check)
            return tl::unexpected(check.error());
        if (const Status kept = keepRepeatCheck(m_rig.file, m_rig.rig, *m_control, measurement, *check); !kept)
            return tl::unexpected<BenchError>(kept.error());
        return std::move(check->findings);
    }

    BenchResult<std::vector<Finding>> measure(const Measurement& measurement) {
        const Result<ControlHealth> health = measureControl(*m_control, measurement, true);
        if (!health)
            return tl::unexpected<BenchError>(health.error());
        const std::vector<EvidenceRecord> none;
        const std::vector<StepDemand> demands =
            stepDemandsOf(m_controls, m_rig.reaches, {m_aircraft, m_flows, none, m_aircraft.seats});
        const FilterAdvice filters = adviseFilters(*m_control, *health, measurement, demands[m_control->index]);
        if (const Status kept = keepHealth(m_rig.file, m_rig.rig, *m_control, measurement, *health, filters); !kept)
            return tl::unexpected<BenchError>(kept.error());
        std::vector<Finding> findings = health->findings();
        for (const auto& [name, device] : deviceHealthsOf(measurement, m_rig.rig.devices))
            for (const Finding& finding : device.findings)
                findings.push_back({finding.check, finding.verdict, phrase("{1}: {2}").with(name, finding.text),
                                    finding.reason, finding.remedy});
        findings.insert(findings.end(), filters.findings.begin(), filters.findings.end());
        return findings;
    }

    void end(bool isGood, std::vector<Phrase> words) {
        m_view.isOver = true;
        m_view.isGood = isGood;
        m_view.goodCount = isGood ? 1 : 0;
        m_view.ask = {};
        m_view.outcome = std::move(words);
    }

    const Aircraft& m_aircraft;
    const std::vector<const Flow*>& m_flows;
    const BenchRigState& m_rig;
    std::vector<BenchControl> m_controls;
    std::optional<BenchControl> m_control; ///< one of them, with the values that were given
    std::optional<LiveMeasurement> m_live;
    Time m_begin;
    Time m_looked;
    BenchTaskView m_view;
    bool m_hasWritten = false;
};

} // namespace

std::unique_ptr<BenchJob> measureJob(const BenchWish& wish, const BenchTaskScope& scope, HidSystem& system,
                                     const Clock& clock, Time now) {
    return std::make_unique<MeasureJob>(wish, scope, system, clock, now);
}

} // namespace flowhand
