#include "command/identify.h"

#include <algorithm>

#include <nlohmann/json.hpp>

#include "command/interrupt.h"
#include "device/hub.h"
#include "device/wiggle.h"
#include "device/wishes.h"

namespace flowhand {

namespace {

using Json = nlohmann::ordered_json;

constexpr Duration kLookPeriod = std::chrono::milliseconds(50); // a movement is named at once for a person

class Identifying {
public:
    Identifying(CommandLine& line, DeviceHub& hub, const LookOptions& options, Duration restTime)
        : m_line(line), m_hub(hub), m_options(options), m_restTime(restTime) {}

    int run() {
        const Interrupt interrupt;
        const Time end = m_options.length ? m_restTime + *m_options.length : kForever;
        say("Leave all controls alone ...");
        for (bool isWatching = false; !interrupt.isAsked() && m_hub.now() < end;) {
            if (!isWatching && m_hub.now() >= m_restTime) {
                isWatching = true;
                m_watch.watch();
                say("Now move one control of the unit to be told, to and fro.");
            }
            take();
            if (const auto moved = m_watch.moved(); moved && isWatching) {
                show(*moved);
                return kExitDone;
            }
            m_hub.waitUntil(std::min(end, m_hub.now() + kLookPeriod));
        }
        return complain(m_line, {"nothing-moved",
                                 "no unit moved more than the others: move one control of one unit from end to end, "
                                 "and leave the others alone",
                                 {}});
    }

private:
    void say(const std::string& text) {
        if (!m_options.asJson)
            m_line.out << text << std::endl;
    }

    void take() {
        m_readings.clear();
        m_notices.clear();
        m_hub.drain(m_readings, m_notices);
        auto notice = m_notices.begin();
        const auto takeNotices = [&](Time until) {
            for (; notice != m_notices.end() && notice->time <= until; ++notice)
                takeNotice(*notice);
        };
        for (const Reading& reading : m_readings) {
            takeNotices(reading.time);
            m_watch.take(reading);
        }
        takeNotices(kForever);
    }

    void takeNotice(const DeviceNotice& notice) {
        if (notice.change == DeviceChange::Connected)
            m_watch.connect(notice.device, m_hub.inputs(notice.device));
        else if (notice.change == DeviceChange::Lost)
            m_watch.lose(notice.device);
        if (!notice.message.isEmpty())
            m_line.err << notice.message.english() << std::endl;
    }

    void show(const WiggleWatch::Moved& moved) {
        const DeviceWish& unit = m_hub.wishes()[moved.device];
        if (m_options.asJson) {
            m_line.out << Json({{"id", idText(unit.vendor, unit.product)},
                                {"name", unit.name},
                                {"serial", unit.serial},
                                {"port", unit.port},
                                {"input", moved.input}})
                              .dump(-1, ' ', false, Json::error_handler_t::replace)
                       << "\n";
            return;
        }
        m_line.out << "It is " << unit.name << ": " << moved.input
                   << " moved. Write into its [[device]] in the rig file:\n"
                   << "    id = \"" << idText(unit.vendor, unit.product) << "\"\n";
        if (isSerialItsOwn(moved.device))
            m_line.out << "    serial = \"" << unit.serial << "\"\n";
        else if (!unit.port.empty())
            m_line.out << "    port = \"" << unit.port << "\" # keep it plugged in there\n";
    }

    /// Cheap units often share one serial.
    [[nodiscard]] bool isSerialItsOwn(DeviceIndex device) const {
        const std::vector<DeviceWish>& all = m_hub.wishes();
        return !all[device].serial.empty() && std::count_if(all.begin(), all.end(), [&](const DeviceWish& other) {
                                                  return other.serial == all[device].serial;
                                              }) == 1;
    }

    CommandLine& m_line;
    DeviceHub& m_hub;
    const LookOptions& m_options;
    const Duration m_restTime;
    WiggleWatch m_watch;
    std::vector<Reading> m_readings;
    std::vector<DeviceNotice> m_notices;
};

} // namespace

int identifyDevice(CommandLine& line, HidSystem& system, const std::vector<DeviceInfo>& devices,
                   const LookOptions& options, Duration restTime) {
    const SteadyClock clock;
    const auto hub = DeviceHub::open(system, clock, clock.now(), wishesFor(devices));
    if (!hub)
        return complain(line, hub.error());
    return Identifying(line, **hub, options, restTime).run();
}

} // namespace flowhand
