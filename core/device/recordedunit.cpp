#include "device/recordedunit.h"

#include <algorithm>
#include <tuple>

#include "device/wishes.h"

namespace flowhand {

namespace {

/// What either does not say may be anything.
bool mayBeSame(const std::string& recorded, const std::string& wished) {
    return recorded.empty() || wished.empty() || recorded == wished;
}

} // namespace

Result<DeviceInfo> recordedUnit(const Recording& recording, const std::string& file) {
    const std::size_t space = recording.device.find(' ');
    const auto id = parseIdText(std::string_view(recording.device).substr(0, space));
    if (!id)
        return failure("bad-recording",
                       "this is no recording of a device: it has no line like 'device: 1209:0001 Quadrant', as "
                       "'flowhand devices --record FILE' writes it",
                       {file});
    if (recording.descriptor.empty())
        return failure("bad-recording",
                       "this recording has no line 'descriptor: ...', so nothing knows what its reports mean; make one "
                       "with 'flowhand devices --record FILE'",
                       {file});
    DeviceInfo unit;
    unit.path = file;
    std::tie(unit.vendor, unit.product) = *id;
    unit.name = space == std::string::npos ? recording.device : recording.device.substr(space + 1);
    unit.port = recording.port;
    unit.serial = recording.serial;
    return unit;
}

bool mayBe(const DeviceInfo& unit, const DeviceWish& wish) {
    return unit.vendor == wish.vendor && unit.product == wish.product && mayBeSame(unit.serial, wish.serial) &&
           mayBeSame(unit.port, wish.port);
}

std::vector<Duration> recordingLeads(const std::vector<const Recording*>& recordings) {
    std::vector<Duration> leads(recordings.size(), Duration{});
    Time first = kForever;
    for (const Recording* recording : recordings) {
        if (!recording->started)
            return leads;
        first = std::min(first, *recording->started);
    }
    for (std::size_t i = 0; i < leads.size(); ++i)
        leads[i] = *recordings[i]->started - first;
    return leads;
}

Status decodeReports(const Recording& recording, const std::string& file, ReportDecoder& decoder, Untimed untimed,
                     const TakeReport& take) {
    std::vector<InputChange> changes;
    Time last{};
    std::size_t number = 0;
    for (const RecordedReport& report : recording.reports) {
        ++number;
        if (!report.time && untimed == Untimed::Refused)
            return failure("bad-recording",
                           "report " + std::to_string(number) + " has no time: it cannot be told when it came", {file});
        const Time time = report.time ? *report.time : number == 1 ? Time{} : last + kUntimedPeriod;
        if (time < last)
            return failure("bad-recording", "report " + std::to_string(number) + " is earlier than the one before it",
                           {file});
        last = time;
        changes.clear();
        const ReportFit fit = decoder.decode(report.bytes, changes);
        take(time, report, fit, changes);
    }
    return {};
}

} // namespace flowhand
