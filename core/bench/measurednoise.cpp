#include "bench/measurednoise.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "bench/statistics.h"
#include "rig/axisfilter.h"

namespace flowhand {

namespace {

/// Beside a movement a rest is no measure of noise (as in dwells.cpp) ...
constexpr Duration kEdge = std::chrono::milliseconds(100);
/// ... and a low-pass needs so many time constants until less than a count is left of a movement of 4,096: e^-9.
constexpr int kSettleTaus = 9;
/// Fewer reports say nothing of a deviation.
constexpr std::size_t kLeastReports = 30;

/// Where a rest is looked at: behind what comes before it.
struct Look {
    Time from{};
    Time to{};
};

std::vector<Look> looksOf(const Resting& resting, Duration median, Duration smooth) {
    std::vector<Look> looks;
    for (const Dwell& dwell : resting.dwells) {
        const Look look{dwell.begin + kEdge + median + kSettleTaus * smooth, dwell.end - kEdge};
        if (look.from < look.to)
            looks.push_back(look);
    }
    return looks;
}

/// The newer of a control's calibration and health that hold now.
const EvidenceRecord* newestOf(const std::vector<EvidenceRecord>& evidence, const ControlFingerprint& control) {
    const EvidenceRecord* newest = nullptr;
    for (const std::string_view kind : {kCalibrationEvidence, kHealthEvidence}) {
        const FoundEvidence found = findEvidence(evidence, kind, control);
        if (found.state == EvidenceState::Current &&
            (newest == nullptr || found.record->unixSeconds >= newest->unixSeconds))
            newest = found.record;
    }
    return newest;
}

/// Of its noisiest axis, in counts; nothing where none rests.
std::optional<double> sigmaIn(const EvidenceRecord& record, const BenchControl& control) {
    std::optional<double> worst;
    for (const RawTrace& trace : record.raw) {
        // Not the axes of other movements that it feels.
        const bool isAxis = std::any_of(control.axes.begin(), control.axes.end(), [&](const BenchAxis& axis) {
            return control.control->inputs()[axis.input].name == trace.input;
        });
        if (!isAxis)
            continue;
        const Series series = seriesOf(trace);
        const Resting resting = restingOf(series);
        if (resting.dwells.empty())
            continue;
        const AxisLimits& filters = control.filters.axis;
        const double sigma = noiseBehind(series, resting, filters.median, filters.smooth).value_or(resting.sigma);
        worst = std::max(worst.value_or(kRoundingNoise), sigma);
    }
    return worst;
}

} // namespace

std::optional<double> noiseBehind(const Series& series, const Resting& resting, Duration median, Duration smooth) {
    AxisLimits limits;
    limits.median = median;
    limits.smooth = smooth;
    constexpr std::int64_t kFar = std::numeric_limits<std::int64_t>::max() / 2; // no end is reached
    AxisFilter filter(limits, -kFar, kFar);
    const std::vector<Look> looks = looksOf(resting, median, smooth);
    std::vector<double> residuals;
    std::vector<double> values;
    const auto close = [&] {
        const double middle = medianOf(values);
        for (const double value : values)
            residuals.push_back(value - middle);
        values.clear();
    };
    std::size_t at = 0;
    for (const RawChange& point : series.points) {
        if (point.isNull)
            continue;
        while (filter.nextTimer() <= point.time)
            (void)filter.advance(filter.nextTimer());
        (void)filter.take(point.raw, point.time);
        for (; at < looks.size() && looks[at].to < point.time; ++at)
            close();
        if (at < looks.size() && point.time >= looks[at].from)
            values.push_back(static_cast<double>(*filter.held()));
    }
    close();
    return residuals.size() < kLeastReports ? std::nullopt : std::optional(restSigma(std::move(residuals)));
}

double lowPassShare(Duration interval, Duration tau) {
    return std::sqrt(std::tanh(seconds(interval) / (2 * seconds(tau))));
}

Duration lowPassFor(Duration interval, double share) {
    return fromSeconds(seconds(interval) / (2 * std::atanh(share * share)));
}

void takeMeasuredNoise(std::vector<Reach>& reaches, const std::vector<BenchControl>& controls,
                       const std::vector<EvidenceRecord>& evidence) {
    for (const BenchControl& control : controls) {
        const auto isOfThis = [&](const Reach& reach) {
            return reach.isWired && reach.isContinuous && reach.perCount > 0 && reach.control == control.index;
        };
        const EvidenceRecord* record = newestOf(evidence, control.fingerprint);
        if (record == nullptr || std::none_of(reaches.begin(), reaches.end(), isOfThis))
            continue;
        const std::optional<double> sigma = sigmaIn(*record, control);
        for (Reach& reach : reaches) {
            if (!sigma || !isOfThis(reach))
                continue;
            reach.sigma = *sigma * reach.perCount;
            reach.measured = dateText(record->unixSeconds);
        }
    }
}

} // namespace flowhand
