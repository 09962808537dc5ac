#include "bench/measurement.h"

#include <algorithm>
#include <optional>

#include "device/wishes.h"

namespace flowhand {

namespace {

constexpr std::size_t kIdLength = 9; // "1209:0001"

/// What either does not say may be anything.
bool mayBe(const std::string& recorded, const std::string& wished) {
    return recorded.empty() || wished.empty() || recorded == wished;
}

bool isOf(const Recording& recording, const DeviceWish& wish) {
    const std::string id = recording.device.size() < kIdLength ? "" : recording.device.substr(0, kIdLength);
    return mayBe(id, idText(wish.vendor, wish.product)) && mayBe(recording.serial, wish.serial) &&
           mayBe(recording.port, wish.port);
}

struct Given {
    std::string file;
    Recording recording;
};

/// By index of `devices`.
std::vector<const Given*> given(const std::vector<Given>& all, const std::vector<DeviceWish>& devices) {
    std::vector<const Given*> of(devices.size(), nullptr);
    std::vector<bool> isTaken(all.size(), false);
    for (std::size_t device = 0; device < devices.size(); ++device)
        for (std::size_t i = 0; i < all.size() && of[device] == nullptr; ++i)
            if (!isTaken[i] && isOf(all[i].recording, devices[device])) {
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
        all.push_back({file, std::move(*recording)});
    }
    const std::vector<const Given*> of = given(all, devices);
    std::optional<Time> first = Time::max();
    for (const auto& [index, inputs] : wanted) {
        const DeviceWish& wish = devices[index];
        if (of[index] == nullptr)
            return failure("no-recording",
                           "none of the recordings is of " + wishText(wish) + "; make one with 'flowhand devices " +
                               idText(wish.vendor, wish.product) + " --record FILE'",
                           wish.place);
        const std::optional<Time>& started = of[index]->recording.started;
        first = first && started ? std::optional(std::min(*first, *started)) : std::nullopt;
    }
    Measurement measurement;
    for (const auto& [index, inputs] : wanted) {
        Result<DeviceSeries> series = seriesOf(of[index]->recording, of[index]->file, inputs);
        if (!series)
            return tl::unexpected<Error>(series.error());
        if (first)
            shift(*series, *of[index]->recording.started - *first);
        measurement.emplace(index, std::move(*series));
    }
    return measurement;
}

} // namespace flowhand
