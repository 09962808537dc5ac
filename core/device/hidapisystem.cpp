#include <algorithm>
#include <fcntl.h>
#include <hidapi/hidapi.h>
#include <linux/hidraw.h>
#include <mutex>
#include <set>
#include <sys/ioctl.h>
#include <tuple>
#include <unistd.h>

#include "device/descriptor.h"
#include "device/deviceclass.h"
#include "device/devwatch.h"
#include "device/hidsystem.h"
#include "device/sysfs.h"
#include "device/udevrule.h"

namespace flowhand {

namespace {

struct CloseDevice {
    void operator()(hid_device* device) const { hid_close(device); }
};
using OpenDevice = std::unique_ptr<hid_device, CloseDevice>;

class HidapiDevice final : public HidDevice {
public:
    explicit HidapiDevice(OpenDevice device) : m_device(std::move(device)) {}

    Result<std::size_t> read(std::span<std::uint8_t> buffer, Duration timeout) override {
        const auto milliseconds = std::chrono::ceil<std::chrono::milliseconds>(timeout).count();
        const int length =
            hid_read_timeout(m_device.get(), buffer.data(), buffer.size(), static_cast<int>(milliseconds));
        if (length < 0)
            return failure("device-lost", "the device no longer answers");
        return static_cast<std::size_t>(length);
    }

private:
    OpenDevice m_device;
};

class HidapiSystem final : public HidSystem {
public:
    HidapiSystem() { hid_init(); }
    ~HidapiSystem() override { hid_exit(); }

    std::vector<DeviceInfo> list() override;
    Result<std::vector<std::uint8_t>> descriptor(const DeviceInfo& device) override {
        return hidrawDescriptor(device.path);
    }
    Result<std::unique_ptr<HidDevice>> open(const DeviceInfo& device) override;
    std::unique_ptr<HidWatch> watch() override { return watchDev(); }

private:
    std::mutex m_mutex; ///< guards hidapi's one error text, which listing and opening write
};

DeviceInfo infoOf(const hid_device_info& entry) {
    DeviceInfo info;
    info.path = entry.path;
    info.vendor = entry.vendor_id;
    info.product = entry.product_id;
    HidrawFacts facts = hidrawFacts(info.path);
    info.name = std::move(facts.name);
    info.serial = std::move(facts.serial);
    info.port = std::move(facts.port);
    info.deviceClass = DeviceClass::Other;
    if (const auto bytes = hidrawDescriptor(info.path)) {
        if (const auto descriptor = parseDescriptor(*bytes))
            info.deviceClass = classOf(*descriptor);
    }
    info.readable = ::access(info.path.c_str(), R_OK | W_OK) == 0;
    if (!info.readable)
        info.whyNot = "no right to read " + info.path + ": " + howToAllow(info.vendor, info.product);
    return info;
}

/// hidapi lists a node once for every collection with a usage.
std::vector<DeviceInfo> HidapiSystem::list() {
    std::vector<DeviceInfo> found;
    {
        const std::lock_guard lock(m_mutex);
        const std::unique_ptr<hid_device_info, void (*)(hid_device_info*)> entries(hid_enumerate(0, 0),
                                                                                   hid_free_enumeration);
        std::set<std::string> paths;
        for (const hid_device_info* entry = entries.get(); entry; entry = entry->next)
            if (entry->path && paths.insert(entry->path).second)
                found.push_back(infoOf(*entry));
    }
    std::sort(found.begin(), found.end(), [](const DeviceInfo& a, const DeviceInfo& b) {
        return std::tie(a.port, a.path) < std::tie(b.port, b.path);
    });
    return found;
}

/// What hid_open_path() asks first. Where the answer is no, as of a node that is just going, hidapi 0.13.1 writes into
/// the device that it has freed; so it is asked before.
bool isAnswering(const std::string& path) {
    const int file = ::open(path.c_str(), O_RDWR | O_CLOEXEC);
    if (file < 0)
        return true; // hidapi says why
    int size = 0;
    const bool hasAnswered = ::ioctl(file, HIDIOCGRDESCSIZE, &size) >= 0;
    ::close(file);
    return hasAnswered;
}

Result<std::unique_ptr<HidDevice>> HidapiSystem::open(const DeviceInfo& device) {
    const std::lock_guard lock(m_mutex);
    if (!isAnswering(device.path))
        return failure("device-lost", device.path + " does not answer: unplug the device and plug it in again");
    OpenDevice opened(hid_open_path(device.path.c_str()));
    if (opened)
        return std::make_unique<HidapiDevice>(std::move(opened));
    if (::access(device.path.c_str(), F_OK) != 0)
        return failure("device-lost", device.path + " is gone: plug the device in again");
    return failure("unreadable-device",
                   "cannot open " + device.path + ": " + howToAllow(device.vendor, device.product));
}

} // namespace

std::unique_ptr<HidSystem> systemDevices() {
    return std::make_unique<HidapiSystem>();
}

} // namespace flowhand
