#include "command/livedevices.h"

#include <algorithm>
#include <chrono>
#include <cmath>
#include <fstream>
#include <map>
#include <utility>

#include <nlohmann/json.hpp>

#include "command/interrupt.h"
#include "device/deviceclass.h"
#include "device/hub.h"
#include "device/recording.h"
#include "device/usable.h"
#include "device/wishes.h"

namespace flowhand {

namespace {

using Json = nlohmann::ordered_json;

constexpr Duration kShowPeriod = std::chrono::milliseconds(100); // faster than this nobody reads

/// The changes of one stretch of time, the last of each input.
using Latest = std::map<std::pair<DeviceIndex, std::uint16_t>, Reading>;

double perSecond(const DeviceCounters& counters) {
    return counters.period > Duration{} ? 1.0 / seconds(counters.period) : 0.0;
}

Json countersJson(const std::string& device, const DeviceCounters& counters) {
    return {{"device", device},
            {"reports", counters.reports},
            {"per_second", perSecond(counters) > 0.0 ? Json(perSecond(counters)) : Json(nullptr)},
            {"may_be_lost", counters.suspected},
            {"replaced", counters.drops},
            {"truncated", counters.truncated},
            {"overlong", counters.overlong},
            {"unknown_id", counters.unknown}};
}

class Watcher {
public:
    Watcher(CommandLine& line, DeviceHub& hub, const LookOptions& options)
        : m_line(line), m_hub(hub), m_options(options) {}

    int run() {
        const Interrupt interrupt;
        for (Time shown{};;) {
            const Time now = m_hub.now();
            const bool isOver = interrupt.isAsked() || (m_options.length && now >= *m_options.length);
            take();
            if (isOver || now >= shown + kShowPeriod) {
                show();
                shown = now;
            }
            if (isOver) {
                showCounters();
                return kExitDone;
            }
            const Time next = now + kShowPeriod;
            m_hub.waitUntil(m_options.length ? std::min(next, *m_options.length) : next);
        }
    }

private:
    void take() {
        m_readings.clear();
        m_notices.clear();
        m_hub.drain(m_readings, m_notices);
        for (const DeviceNotice& notice : m_notices)
            showNotice(notice);
        for (const Reading& reading : m_readings) {
            if (m_options.asJson)
                showJson(reading);
            else
                m_latest[{reading.device, reading.input}] = reading;
        }
    }

    void show() {
        for (const auto& [key, reading] : m_latest) {
            const InputInfo& input = m_inputs[reading.device].at(reading.input);
            m_line.out << clockText(reading.time) << "  " << m_hub.wishes()[reading.device].name << "  " << input.name
                       << "  " << (reading.isNull ? "released" : std::to_string(reading.raw)) << "\n";
        }
        m_latest.clear();
        m_line.out << std::flush;
    }

    void showNotice(const DeviceNotice& notice) {
        const std::string& name = m_hub.wishes()[notice.device].name;
        const bool isConnected = notice.change == DeviceChange::Connected;
        if (isConnected)
            m_inputs[notice.device] = m_hub.inputs(notice.device);
        if (m_options.asJson) {
            m_line.out << Json({{"time", seconds(notice.time)},
                                {"device", name},
                                {"connected", notice.change != DeviceChange::Lost},
                                {"message", notice.message.english()}})
                              .dump(-1, ' ', false, Json::error_handler_t::replace)
                       << "\n";
            return;
        }
        m_line.out << clockText(notice.time) << "  "
                   << (isConnected ? name + "  " + std::to_string(m_inputs[notice.device].size()) + " inputs"
                                   : notice.message.english())
                   << "\n";
    }

    void showJson(const Reading& reading) {
        const InputInfo& input = m_inputs[reading.device].at(reading.input);
        m_line.out << Json({{"time", seconds(reading.time)},
                            {"device", m_hub.wishes()[reading.device].name},
                            {"input", input.name},
                            {"value", reading.isNull ? Json(nullptr) : Json(reading.raw)}})
                          .dump(-1, ' ', false, Json::error_handler_t::replace)
                   << "\n";
    }

    void showCounters() {
        for (std::size_t i = 0; i < m_hub.wishes().size(); ++i) {
            const std::string& name = m_hub.wishes()[i].name;
            const DeviceCounters counters = m_hub.counters(static_cast<DeviceIndex>(i));
            if (m_options.asJson)
                m_line.out << countersJson(name, counters).dump(-1, ' ', false, Json::error_handler_t::replace) << "\n";
            else
                m_line.out << countersText(name, counters) << "\n";
        }
        m_line.out << std::flush;
    }

    CommandLine& m_line;
    DeviceHub& m_hub;
    const LookOptions& m_options;
    std::map<DeviceIndex, std::vector<InputInfo>> m_inputs;
    std::vector<Reading> m_readings;
    std::vector<DeviceNotice> m_notices;
    Latest m_latest;
};

/// Equal units are told apart by their ports: who moves a lever sees which it is.
std::string nameAmong(const DeviceInfo& device, const std::vector<DeviceInfo>& devices) {
    const auto namesakes = std::count_if(devices.begin(), devices.end(), [&](const DeviceInfo& other) {
        return other.name == device.name;
    });
    return namesakes > 1 ? device.name + " at " + device.port : device.name;
}

} // namespace

Result<std::vector<DeviceInfo>> devicesToOpen(std::vector<DeviceInfo> devices, bool areNamed, bool areNamedByRig) {
    const auto isControls = [](const DeviceInfo& device) {
        return device.deviceClass == DeviceClass::Controls;
    };
    const auto isNotControls = [&](const DeviceInfo& device) {
        return !isControls(device);
    };
    // The keyboard or mouse part of a unit that has controls as well is passed over
    if (!areNamed || std::any_of(devices.begin(), devices.end(), isControls))
        devices.erase(std::remove_if(devices.begin(), devices.end(), isNotControls), devices.end());
    if (devices.empty())
        return failure("no-device", "no controls are connected: plug them in, and see 'flowhand devices'");
    for (const DeviceInfo& device : devices)
        if (isPrivate(device.deviceClass) && !areNamedByRig)
            return failure("private-device", idText(device.vendor, device.product) + " " + device.name + " is a " +
                                                 className(device.deviceClass) +
                                                 ": it is opened only when a rig file names it, by --rig FILE");
    return devices;
}

std::string countersText(const std::string& device, const DeviceCounters& counters) {
    std::string text =
        device + "  " + std::to_string(counters.reports) + (counters.reports == 1 ? " report" : " reports");
    if (perSecond(counters) > 0.0)
        text += ", " + std::to_string(std::lround(perSecond(counters))) + " a second";
    const std::pair<std::uint64_t, const char*> troubles[] = {
        {counters.suspected, " may have been lost"},
        {counters.drops, " changes gave way to newer ones"},
        {counters.truncated, " shorter than the descriptor says"},
        {counters.overlong, " longer than the descriptor says"},
        {counters.unknown, " with an id that the descriptor does not have"}};
    for (const auto& [count, trouble] : troubles)
        if (count > 0)
            text += ", " + std::to_string(count) + trouble;
    return text;
}

std::vector<DeviceWish> wishesFor(const std::vector<DeviceInfo>& devices) {
    std::vector<DeviceWish> wishes;
    for (const DeviceInfo& device : devices)
        wishes.push_back({nameAmong(device, devices), device.vendor, device.product, device.serial, device.port, {}});
    return wishes;
}

int watchDevices(CommandLine& line, HidSystem& system, const std::vector<DeviceInfo>& devices,
                 const LookOptions& options) {
    const SteadyClock clock;
    const auto hub = DeviceHub::open(system, clock, clock.now(), wishesFor(devices));
    if (!hub)
        return complain(line, hub.error());
    return Watcher(line, **hub, options).run();
}

int recordDevice(CommandLine& line, HidSystem& system, const DeviceInfo& device, const std::string& file,
                 const LookOptions& options) {
    const auto descriptor = system.descriptor(device);
    if (!descriptor)
        return complain(line, descriptor.error());
    if (const auto decoder = decoderFor(*descriptor, wishesFor({device}).front()); !decoder)
        return complain(line, decoder.error());
    const auto opened = system.open(device);
    if (!opened)
        return complain(line, opened.error());
    const Interrupt interrupt;
    const SteadyClock clock;
    const Time start = clock.now();
    std::ofstream out(file, std::ios::trunc);
    out << recordingHead({idText(device.vendor, device.product) + " " + device.name,
                          device.port,
                          device.serial,
                          Time(std::chrono::system_clock::now().time_since_epoch()),
                          *descriptor,
                          {}});

    std::vector<std::uint8_t> buffer(HidSystem::kMostReportBytes);
    std::size_t reports = 0;
    while (out && !interrupt.isAsked() && !(options.length && clock.now() - start >= *options.length)) {
        const auto length = (*opened)->read(buffer, DeviceHub::kReadWait);
        const Time time = clock.now() - start;
        if (!length) {
            if (!interrupt.isAsked())
                line.err << device.name << " was unplugged; what it sent until then is kept\n";
            break;
        }
        if (*length == 0)
            continue;
        out << recordingLine({time, {buffer.begin(), buffer.begin() + static_cast<std::ptrdiff_t>(*length)}});
        ++reports;
    }
    out.close();
    if (!out)
        return complain(line,
                        {"unwritable-file", "cannot write it: is the folder there, and the disk not full?", {file}});
    line.out << reports << " reports in " << file << "\n";
    return kExitDone;
}

} // namespace flowhand
