#include "bench/recordeddevice.h"

#include <utility>

#include "device/descriptor.h"
#include "device/recordedunit.h"

namespace flowhand {

Result<RecordedDevice> readRecordedDevice(const Recording& recording, const std::string& file, DeviceIndex device,
                                          Duration lead) {
    Result<DeviceInfo> unit = recordedUnit(recording, file);
    if (!unit)
        return tl::unexpected<Error>(unit.error());
    auto descriptor = parseDescriptor(recording.descriptor);
    if (!descriptor)
        return failure(descriptor.error().code, descriptor.error().message, {file});
    ReportDecoder decoder(std::move(*descriptor));
    RecordedDevice recorded{std::move(*unit), decoder.inputs(), {}, {}};
    const Status decoded =
        decodeReports(recording, file, decoder, Untimed::Spaced,
                      [&](Time time, const RecordedReport&, ReportFit, const std::vector<InputChange>& changes) {
                          const Time tick = wholeTick(time + lead);
                          recorded.reports.push_back(tick);
                          for (const InputChange& change : changes)
                              recorded.readings.push_back({tick, device, change.input, change.raw, change.isNull});
                      });
    if (!decoded)
        return tl::unexpected<Error>(decoded.error());
    return recorded;
}

} // namespace flowhand
