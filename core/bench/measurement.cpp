#include "bench/measurement.h"

#include <algorithm>

#include "device/recordedunit.h"
#include "device/wishes.h"

namespace flowhand {

namespace {

struct Given {
    DeviceInfo unit; ///< its path is the file
    Recording recording;
};

/// By index of `devices`.
std::vector<const Given*> given(const std::vector<Given>& all, const std::vector<DeviceWish>& devices) {
    std::vector<const Given*> of(devices.size(), nullptr);
    std::vector<bool> isTaken(all.size(), false);
    for (std::size_t device = 0; device < devices.size(); ++device)
        for (std::size_t i = 0; i < all.size() && of[device] == nullptr; ++i)
            if (!isTaken[i] && mayBe(all[i].unit, devices[device])) {
                isTaken[i] = true;
                of[device] = &all[i];
            }
    return of;
}

void shift(DeviceSeries& device, Duration by) {
    for (Time& time : device.reports)
        time += by;
    for (Series& series : device.inputs) {
        for (RawChange& point : series.points)
            point.time += by;
        series.end += by;
    }
}

} // namespace

const Series* seriesIn(const Measurement& measurement, const InputRef& input) {
    const auto device = measurement.find(input.device);
    return device == measurement.end() ? nullptr : device->second.find(input.name);
}

Result<LiveMeasurement> LiveMeasurement::begin(HidSystem& system, const Clock& clock,
                                               const std::vector<DeviceWish>& devices, WantedInputs wanted) {
    LiveMeasurement live;
    const std::vector<DeviceInfo> list = system.list();
    const Time start = clock.now();
    for (auto& [index, inputs] : wanted) {
        const DeviceWish& wish = devices[index];
        const WishMatch match = matchWishes({wish}, list, {std::nullopt}).front();
        if (!match.unit)
            return tl::unexpected<Error>(match.why);
        Device device{index, wish.name, std::move(inputs), {}, nullptr};
        Result<std::vector<std::uint8_t>> descriptor = system.descriptor(*match.unit);
        if (!descriptor)
            return tl::unexpected<Error>(descriptor.error());
        device.recording.descriptor = std::move(*descriptor);
        Result<std::unique_ptr<HidDevice>> opened = system.open(*match.unit);
        if (!opened)
            return tl::unexpected<Error>(opened.error());
        device.capture = std::make_unique<ReportCapture>(std::move(*opened), clock, start);
        live.m_devices.push_back(std::move(device));
    }
    return live;
}

bool LiveMeasurement::poll() {
    bool areThere = true;
    for (Device& device : m_devices)
        areThere &= device.capture->take(device.recording.reports);
    return areThere;
}

Result<Measurement> LiveMeasurement::sofar() const {
    Measurement all;
    for (const Device& device : m_devices) {
        Result<DeviceSeries> series = seriesOf(device.recording, device.name, device.inputs);
        if (!series)
            return tl::unexpected<Error>(series.error());
        all.emplace(device.index, std::move(*series));
    }
    return all;
}

Result<Measurement> recordedMeasurement(const std::vector<std::string>& files, const std::vector<DeviceWish>& devices,
                                        const WantedInputs& wanted) {
    std::vector<Given> all;
    for (const std::string& file : files) {
        Result<Recording> recording = loadRecording(file);
        if (!recording)
            return tl::unexpected<Error>(recording.error());
        Result<DeviceInfo> unit = recordedUnit(*recording, file);
        if (!unit)
            return tl::unexpected<Error>(unit.error());
        all.push_back({std::move(*unit), std::move(*recording)});
    }
    const std::vector<const Given*> of = given(all, devices);
    std::vector<const Recording*> used;
    for (const auto& [index, inputs] : wanted) {
        const DeviceWish& wish = devices[index];
        if (of[index] == nullptr)
            return failure("no-recording",
                           "none of the recordings is of " + wishText(wish) + "; make one with 'flowhand devices " +
                               idText(wish.vendor, wish.product) + " --record FILE'",
                           wish.place);
        used.push_back(&of[index]->recording);
    }
    const std::vector<Duration> leads = recordingLeads(used);
    std::size_t at = 0;
    Measurement measurement;
    for (const auto& [index, inputs] : wanted) {
        Result<DeviceSeries> series = seriesOf(of[index]->recording, of[index]->unit.path, inputs);
        if (!series)
            return tl::unexpected<Error>(series.error());
        shift(*series, leads[at++]);
        measurement.emplace(index, std::move(*series));
    }
    return measurement;
}

} // namespace flowhand
