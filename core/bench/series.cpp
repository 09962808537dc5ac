#include "bench/series.h"

#include <algorithm>

#include "bench/statistics.h"
#include "device/recordedunit.h"

namespace flowhand {

namespace {

/// Reports come at a device's own pace when nine of ten intervals lie this near to the middle one.
constexpr double kPacedSpread = 0.5;
/// An hour at 1 kHz: a file that claims more is not believed.
constexpr std::uint64_t kMostReports = 3'600'000;

bool isWanted(const std::string& name, const std::vector<std::string>& inputs) {
    return inputs.empty() || std::find(inputs.begin(), inputs.end(), name) != inputs.end();
}

std::vector<double> intervalsOf(const std::vector<Time>& reports) {
    std::vector<double> intervals;
    for (std::size_t i = 1; i < reports.size(); ++i)
        intervals.push_back(seconds(reports[i] - reports[i - 1]));
    return intervals;
}

} // namespace

const Series* DeviceSeries::find(const std::string& input) const {
    const auto found = std::find_if(inputs.begin(), inputs.end(), [&](const Series& series) {
        return series.input.name == input;
    });
    return found == inputs.end() ? nullptr : &*found;
}

Duration DeviceSeries::medianInterval() const {
    const std::vector<double> intervals = intervalsOf(reports);
    return intervals.empty() ? Duration{} : fromSeconds(medianOf(intervals));
}

bool DeviceSeries::isPaced() const {
    if (repeats > 0)
        return true;
    std::vector<double> intervals = intervalsOf(reports);
    if (intervals.size() < 20)
        return false;
    const double middle = medianOf(intervals);
    const auto near = std::count_if(intervals.begin(), intervals.end(), [&](double interval) {
        return std::abs(interval - middle) <= kPacedSpread * middle;
    });
    return static_cast<double>(near) >= 0.9 * static_cast<double>(intervals.size());
}

Result<DeviceSeries> seriesOf(const Recording& recording, const std::string& name,
                              const std::vector<std::string>& inputs) {
    if (recording.descriptor.empty())
        return failure("no-descriptor",
                       "this recording has no descriptor; make one with 'flowhand devices --record FILE'", {name});
    if (recording.reports.empty())
        return failure("empty-recording", "this recording has no report; move the control while it is made", {name});
    Result<Descriptor> descriptor = parseDescriptor(recording.descriptor);
    if (!descriptor)
        return tl::unexpected(descriptor.error());
    ReportDecoder decoder(std::move(*descriptor));
    const bool hasIds = decoder.descriptor().hasReportIds;
    std::vector<RawChange> states(decoder.inputs().size());
    std::vector<std::size_t> places(states.size(), states.size()); ///< in the series
    DeviceSeries device;
    for (std::size_t i = 0; i < states.size(); ++i)
        if (isWanted(decoder.inputs()[i].name, inputs)) {
            places[i] = device.inputs.size();
            device.inputs.push_back({decoder.inputs()[i], {}, {}});
        }
    const auto take = [&](Time time, const RecordedReport& report, ReportFit fit,
                          const std::vector<InputChange>& changes) {
        if (fit == ReportFit::UnknownId || report.bytes.empty())
            return;
        device.reports.push_back(time);
        device.repeats += changes.empty() ? 1 : 0;
        for (const InputChange& change : changes)
            states[change.input] = {time, change.raw, change.isNull};
        for (std::size_t i = 0; i < states.size(); ++i)
            if (places[i] < states.size() && (!hasIds || decoder.inputs()[i].key.reportId == report.bytes.front()))
                device.inputs[places[i]].points.push_back({time, states[i].raw, states[i].isNull});
    };
    if (const Status decoded = decodeReports(recording, name, decoder, Untimed::Refused, take); !decoded)
        return tl::unexpected<Error>(decoded.error());
    for (Series& series : device.inputs)
        series.end = device.reports.empty() ? Time{} : device.reports.back();
    return device;
}

Series seriesOf(const RawTrace& trace) {
    Series series;
    series.input.name = trace.input;
    series.end = trace.end;
    const std::size_t reports = std::min<std::uint64_t>(trace.reports, kMostReports);
    if (trace.changes.empty() || reports < 2 || trace.end <= trace.begin) {
        series.points = trace.changes;
        return series;
    }
    const double interval = seconds(trace.end - trace.begin) / static_cast<double>(reports - 1);
    std::size_t at = 0;
    for (std::size_t i = 0; i < reports; ++i) {
        const Time time = trace.begin + fromSeconds(interval * static_cast<double>(i));
        while (at + 1 < trace.changes.size() && trace.changes[at + 1].time <= time + kTick) // rounded to whole ticks
            ++at;
        series.points.push_back({time, trace.changes[at].raw, trace.changes[at].isNull});
    }
    return series;
}

RawTrace rawTraceOf(const Series& series, const std::string& device, std::size_t reports) {
    RawTrace trace{device, series.input.name, {}, series.end, reports, {}};
    if (!series.points.empty())
        trace.begin = series.points.front().time;
    for (const RawChange& point : series.points) {
        const RawChange kept{wholeTick(point.time), point.isNull ? 0 : point.raw, point.isNull};
        if (trace.changes.empty() || trace.changes.back().raw != kept.raw || trace.changes.back().isNull != kept.isNull)
            trace.changes.push_back(kept);
    }
    return trace;
}

} // namespace flowhand
