#include "bench/recordeddevice.h"

#include <utility>

#include "device/descriptor.h"
#include "device/report.h"
#include "device/wishes.h"

namespace flowhand {

namespace {

constexpr std::size_t kIdLength = 9; // "1209:0001"

/// "1209:0001 Quadrant"
bool readName(const std::string& text, RecordedDevice& device) {
    const auto id = parseIdText(text.substr(0, kIdLength));
    if (!id || (text.size() > kIdLength && text[kIdLength] != ' '))
        return false;
    device.vendor = id->first;
    device.product = id->second;
    device.name = text.size() > kIdLength ? text.substr(kIdLength + 1) : text;
    return true;
}

} // namespace

Result<RecordedDevice> readRecordedDevice(const Recording& recording, const std::string& file, DeviceIndex device) {
    RecordedDevice recorded;
    recorded.file = file;
    if (!readName(recording.device, recorded))
        return failure("bad-recording",
                       "a recording for the bench says which device it is of, as in 'device: 1209:0001 Quadrant'; "
                       "make one with 'flowhand devices --record FILE'",
                       {file});
    if (recording.descriptor.empty())
        return failure("no-descriptor",
                       "this recording has no line 'descriptor:', so nothing knows what its reports mean; make one "
                       "with 'flowhand devices --record FILE'",
                       {file});
    auto descriptor = parseDescriptor(recording.descriptor);
    if (!descriptor)
        return failure(descriptor.error().code, descriptor.error().message, {file});
    ReportDecoder decoder(std::move(*descriptor));
    recorded.inputs = decoder.inputs();
    std::vector<InputChange> changes;
    Time time = -kUntimedPeriod;
    for (const RecordedReport& report : recording.reports) {
        const Time next = report.time ? wholeTick(*report.time) : time + kUntimedPeriod;
        if (next < time)
            return failure("bad-recording",
                           "the report at " + clockText(next) + " stands behind a later one; a recording goes forward",
                           {file});
        time = next;
        recorded.reports.push_back(time);
        changes.clear();
        decoder.decode(report.bytes, changes);
        for (const InputChange& change : changes)
            recorded.readings.push_back({time, device, change.input, change.raw, change.isNull});
    }
    return recorded;
}

Result<RecordedDevice> loadRecordedDevice(const std::string& file, DeviceIndex device) {
    const Result<Recording> recording = loadRecording(file);
    if (!recording)
        return tl::unexpected<Error>(recording.error());
    return readRecordedDevice(*recording, file, device);
}

} // namespace flowhand
