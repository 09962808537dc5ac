#include "bench/inputsource.h"

#include <algorithm>
#include <utility>

#include "bench/recordeddevice.h"
#include "device/hub.h"
#include "device/recordedunit.h"
#include "device/wishes.h"

namespace flowhand {

namespace {

/// So often the bench looks at what came: nobody sees a shorter delay.
constexpr Duration kPeriod = std::chrono::milliseconds(20);

class LiveSource final : public InputSource {
public:
    LiveSource(std::unique_ptr<DeviceHub> hub, std::vector<SourceDevice> devices, std::function<bool()> isStopping)
        : m_hub(std::move(hub)), m_devices(std::move(devices)), m_isStopping(std::move(isStopping)) {}

    [[nodiscard]] const std::vector<SourceDevice>& devices() const override { return m_devices; }
    [[nodiscard]] std::vector<InputInfo> inputs(DeviceIndex device) const override { return m_hub->inputs(device); }
    [[nodiscard]] std::uint64_t reports(DeviceIndex device) const override { return m_hub->counters(device).reports; }
    [[nodiscard]] bool isRecorded() const override { return false; }

    std::optional<InputNews> next() override {
        if (m_isStopping())
            return std::nullopt;
        m_hub->waitUntil(m_hub->now() + kPeriod);
        InputNews news;
        news.now = m_hub->now();
        std::vector<DeviceNotice> notices;
        m_hub->drain(news.readings, notices);
        for (const DeviceNotice& notice : notices) {
            if (notice.change == DeviceChange::Connected)
                news.connected.push_back(notice.device);
            else
                news.messages.push_back(notice.message);
        }
        std::stable_sort(news.readings.begin(), news.readings.end(), [](const Reading& a, const Reading& b) {
            return a.time < b.time;
        });
        return news;
    }

private:
    std::unique_ptr<DeviceHub> m_hub;
    std::vector<SourceDevice> m_devices;
    std::function<bool()> m_isStopping;
};

class RecordedSource final : public InputSource {
public:
    explicit RecordedSource(std::vector<RecordedDevice> recorded) : m_recorded(std::move(recorded)) {
        for (const RecordedDevice& device : m_recorded) {
            const DeviceInfo& unit = device.unit;
            m_devices.push_back({unit.name, unit.vendor, unit.product, unit.serial, unit.port});
            m_readings.insert(m_readings.end(), device.readings.begin(), device.readings.end());
            if (!device.reports.empty())
                m_end = std::max(m_end, device.reports.back());
        }
        std::stable_sort(m_readings.begin(), m_readings.end(), [](const Reading& a, const Reading& b) {
            return a.time < b.time;
        });
    }

    [[nodiscard]] const std::vector<SourceDevice>& devices() const override { return m_devices; }
    [[nodiscard]] std::vector<InputInfo> inputs(DeviceIndex device) const override { return m_recorded[device].inputs; }
    [[nodiscard]] std::uint64_t reports(DeviceIndex device) const override {
        const std::vector<Time>& times = m_recorded[device].reports;
        return static_cast<std::uint64_t>(std::upper_bound(times.begin(), times.end(), m_now) - times.begin());
    }
    [[nodiscard]] bool isRecorded() const override { return true; }

    std::optional<InputNews> next() override {
        if (m_now >= m_end)
            return std::nullopt;
        InputNews news;
        if (m_now == Time{})
            for (std::size_t i = 0; i < m_devices.size(); ++i)
                news.connected.push_back(static_cast<DeviceIndex>(i));
        m_now = std::min(m_now + kPeriod, m_end);
        news.now = m_now;
        for (; m_at < m_readings.size() && m_readings[m_at].time <= m_now; ++m_at)
            news.readings.push_back(m_readings[m_at]);
        return news;
    }

private:
    std::vector<RecordedDevice> m_recorded;
    std::vector<SourceDevice> m_devices;
    std::vector<Reading> m_readings;
    std::size_t m_at = 0;
    Time m_now{};
    Time m_end{};
};

} // namespace

Result<std::unique_ptr<InputSource>> liveSource(HidSystem& system, const Clock& clock,
                                                const std::vector<DeviceWish>& wishes,
                                                std::function<bool()> isStopping) {
    std::vector<DeviceWish> opened;
    std::vector<SourceDevice> devices;
    for (const DeviceInfo& device : system.list()) {
        const bool isWished = std::any_of(wishes.begin(), wishes.end(), [&](const DeviceWish& wish) {
            return wish.vendor == device.vendor && wish.product == device.product;
        });
        if (device.deviceClass != DeviceClass::Controls && !isWished)
            continue; // what people type is nobody's business unless their rig names the device
        opened.push_back({device.name, device.vendor, device.product, device.serial, device.port, {}});
        devices.push_back({device.name, device.vendor, device.product, device.serial, device.port});
    }
    if (opened.empty())
        return failure("no-device", "no controls are connected: plug them in, and see 'flowhand devices'");
    auto hub = DeviceHub::open(system, clock, clock.now(), std::move(opened));
    if (!hub)
        return tl::unexpected<Error>(hub.error());
    return std::make_unique<LiveSource>(std::move(*hub), std::move(devices), std::move(isStopping));
}

Result<std::unique_ptr<InputSource>> recordedSource(const std::vector<std::string>& files) {
    std::vector<Recording> recordings;
    for (const std::string& file : files) {
        Result<Recording> recording = loadRecording(file);
        if (!recording)
            return tl::unexpected<Error>(recording.error());
        recordings.push_back(std::move(*recording));
    }
    std::vector<const Recording*> all;
    for (const Recording& recording : recordings)
        all.push_back(&recording);
    const std::vector<Duration> leads = recordingLeads(all);
    std::vector<RecordedDevice> recorded;
    for (std::size_t i = 0; i < files.size(); ++i) {
        Result<RecordedDevice> device =
            readRecordedDevice(recordings[i], files[i], static_cast<DeviceIndex>(i), leads[i]);
        if (!device)
            return tl::unexpected<Error>(device.error());
        recorded.push_back(std::move(*device));
    }
    return std::make_unique<RecordedSource>(std::move(recorded));
}

std::vector<SourceMatch> matchSource(const InputSource& source, const std::vector<DeviceWish>& wishes) {
    std::vector<DeviceInfo> units;
    for (std::size_t i = 0; i < source.devices().size(); ++i) {
        const SourceDevice& device = source.devices()[i];
        DeviceInfo unit;
        unit.path = std::to_string(i); // tells equal units of recordings apart
        unit.vendor = device.vendor;
        unit.product = device.product;
        unit.serial = device.serial;
        unit.port = device.port;
        unit.name = device.name;
        unit.readable = true;
        units.push_back(std::move(unit));
    }
    std::vector<bool> isTaken(units.size(), false);
    std::vector<SourceMatch> matches(wishes.size());
    if (source.isRecorded()) { // a recording may know neither serial nor port: equal units in the order of the files
        for (std::size_t i = 0; i < wishes.size(); ++i) {
            for (std::size_t unit = 0; unit < units.size() && !matches[i].device; ++unit) {
                if (isTaken[unit] || !mayBe(units[unit], wishes[i]))
                    continue;
                isTaken[unit] = true;
                matches[i].device = static_cast<DeviceIndex>(unit);
            }
            if (!matches[i].device)
                matches[i].why = phrase("no recording is of {1}").with(wishText(wishes[i]));
        }
        return matches;
    }
    const std::vector<std::optional<DeviceInfo>> known(wishes.size());
    const std::vector<WishMatch> found = matchWishes(wishes, units, known);
    for (std::size_t i = 0; i < found.size(); ++i) {
        if (found[i].unit)
            matches[i].device = static_cast<DeviceIndex>(std::stoul(found[i].unit->path));
        else
            matches[i].why = found[i].why.code == "device-missing" ? notPluggedIn(wishes[i]) : found[i].why.message;
    }
    return matches;
}

} // namespace flowhand
