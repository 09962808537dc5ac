// Unplugs and replugs devices under a DeviceHub that reads them by hidapi, and prints as JSON what came of it. For the
// guest; needs /dev/uhid.
//
//   replug CYCLES
//
// Four devices: two equal units with serials, which the wishes name and whose ports change at each replug; two equal
// units without serials, whose ports the wishes name. Two at a time are unplugged and come back in swapped order. Each
// sends a number of its own, so that a unit taken for another is seen.

#include <algorithm>
#include <atomic>
#include <filesystem>
#include <fstream>
#include <iostream>
#include <malloc.h>
#include <map>
#include <memory>
#include <optional>
#include <unistd.h>
#include <vector>

#include "device/hub.h"
#include "device/recording.h"
#include "uhiddevice.h"

using namespace flowhand;
using namespace std::chrono_literals;

namespace {

constexpr int kWarmUp = 100; // cycles until every buffer has had its size
constexpr auto kPatience = 30s;
constexpr auto kStillTime = 5s; // with a device missing and nothing happening
constexpr std::size_t kDevices = 4;
// X and Y of a joystick, a byte each
constexpr const char* kDescriptor = "05 01 09 04 A1 01 09 30 09 31 15 00 26 FF 00 75 08 95 02 81 02 C0";

/// How often the hub asked for the list of devices, and why.
struct Scans {
    std::atomic<int> byNotice = 0;
    std::atomic<int> byPolling = 0;
    std::atomic<bool> isNoticed = false;
};

/// A watch that remembers whether it was told of a change before its time was over.
class CountingWatch final : public HidWatch {
public:
    CountingWatch(std::unique_ptr<HidWatch> watch, Scans& scans) : m_watch(std::move(watch)), m_scans(scans) {}
    bool wait(Duration timeout) override {
        const Time start = m_clock.now();
        const bool mayHaveChanged = m_watch->wait(timeout);
        if (mayHaveChanged && m_clock.now() - start < timeout)
            m_scans.isNoticed = true;
        return mayHaveChanged;
    }
    void wake() override { m_watch->wake(); }

private:
    std::unique_ptr<HidWatch> m_watch;
    Scans& m_scans;
    SteadyClock m_clock;
};

/// The system's devices, with the scans of the bus counted.
class CountingSystem final : public HidSystem {
public:
    std::vector<DeviceInfo> list() override {
        ++(scans.isNoticed.exchange(false) ? scans.byNotice : scans.byPolling);
        return m_system->list();
    }
    Result<std::vector<std::uint8_t>> descriptor(const DeviceInfo& device) override {
        return m_system->descriptor(device);
    }
    Result<std::unique_ptr<HidDevice>> open(const DeviceInfo& device) override { return m_system->open(device); }
    std::unique_ptr<HidWatch> watch() override { return std::make_unique<CountingWatch>(m_system->watch(), scans); }

    Scans scans;

private:
    std::unique_ptr<HidSystem> m_system = systemDevices();
};

/// What a leak would make grow.
struct Footprint {
    std::size_t files = 0;
    std::size_t threads = 0;
    std::size_t heapBytes = 0;
    std::size_t residentBytes = 0;
};

std::size_t entriesOf(const char* folder) {
    const std::filesystem::directory_iterator entries(folder);
    return static_cast<std::size_t>(std::distance(begin(entries), end(entries)));
}

Footprint footprint() {
    Footprint now;
    now.files = entriesOf("/proc/self/fd");
    now.threads = entriesOf("/proc/self/task");
    now.heapBytes = mallinfo2().uordblks;
    std::size_t pages = 0;
    std::ifstream("/proc/self/statm") >> pages >> pages;
    now.residentBytes = pages * static_cast<std::size_t>(sysconf(_SC_PAGESIZE));
    return now;
}

std::vector<DeviceWish> wishes() {
    return {{"first by serial", 0x1209, 0x0001, "A1", "", {}},
            {"second by serial", 0x1209, 0x0001, "B2", "", {}},
            {"first by port", 0x1209, 0x0002, "", "hub/1", {}},
            {"second by port", 0x1209, 0x0002, "", "hub/2", {}}};
}

class Desk {
public:
    explicit Desk(std::size_t cycles) {
        found.reserve(cycles);
        for (std::size_t i = 0; i < kDevices; ++i)
            plug(i);
        auto hub = DeviceHub::open(system, m_clock, m_clock.now(), wishes());
        if (!hub)
            giveUp(hub.error().message);
        m_hub = std::move(*hub);
        await([&] {
            return std::all_of(m_isConnected.begin(), m_isConnected.end(), [](bool is) {
                return is;
            });
        });
        for (std::size_t i = 0; i < kDevices; ++i)
            prove(i);
        system.scans.byNotice = system.scans.byPolling = 0;
    }

    /// Both of a pair go, the second one first or last, and come back the other way round: two cycles.
    void swap(std::size_t first, bool isSecondFirst) {
        const std::size_t early = isSecondFirst ? first + 1 : first;
        const std::size_t late = isSecondFirst ? first : first + 1;
        for (const std::size_t device : {early, late})
            m_devices[device].reset();
        await([&] {
            return !m_isConnected[early] && !m_isConnected[late];
        });
        std::map<std::size_t, Time> plugged;
        for (const std::size_t device : {late, early}) {
            plug(device);
            plugged[device] = m_hub->now();
        }
        await([&] {
            return m_isConnected[early] && m_isConnected[late];
        });
        for (const std::size_t device : {early, late}) {
            found.push_back(std::max(m_connectedAt[device] - plugged[device], Time{}));
            prove(device);
        }
    }

    /// Nothing happens for a while, with a device missing.
    void stayStill() {
        m_devices[0].reset();
        await([&] {
            return !m_isConnected[0];
        });
        const Time end = m_hub->now() + kStillTime;
        const int before = scanCount();
        while (m_hub->now() < end) {
            m_hub->waitUntil(end);
            drain();
        }
        stillScans = scanCount() - before;
    }

    [[nodiscard]] int scanCount() const { return system.scans.byNotice + system.scans.byPolling; }

    CountingSystem system;
    std::vector<Duration> found; ///< from when the node was there to when the hub had it open
    std::vector<std::string> wrong;
    int stillScans = 0;

private:
    void plug(std::size_t device) {
        const DeviceWish wish = wishes()[device];
        // A unit with a serial comes up at another port each time, and takes the other's of before.
        const std::string port =
            wish.port.empty() ? "far/" + std::to_string((device + m_plugged++) % 3) + "/" + std::to_string(device)
                              : wish.port;
        m_devices[device] = std::make_unique<UhidDevice>(
            DeviceShape{"desk", wish.vendor, wish.product, port, wish.serial, *parseHex(kDescriptor)});
    }

    void drain() {
        std::vector<DeviceNotice> notices;
        m_readings.clear();
        m_hub->drain(m_readings, notices);
        for (const DeviceNotice& notice : notices) {
            if (notice.change == DeviceChange::Remark)
                wrong.push_back("remark: " + notice.message.english());
            else
                m_isConnected[notice.device] = notice.change == DeviceChange::Connected;
            if (notice.change == DeviceChange::Connected)
                m_connectedAt[notice.device] = notice.time;
        }
    }

    template <class Condition>
    void await(Condition isSo) {
        const Time end = m_hub->now() + kPatience;
        for (drain(); !isSo(); drain()) {
            if (m_hub->now() >= end)
                giveUp("a device did not come or go within " + std::to_string(kPatience.count()) + " s");
            m_hub->waitUntil(end);
        }
    }

    /// The unit is the one that was wished: what it sends comes from it.
    void prove(std::size_t device) {
        const auto own = static_cast<std::uint8_t>(device + 1);
        const auto fresh = static_cast<std::uint8_t>(++m_sent % 250 + 1);
        m_devices[device]->send({own, fresh});
        std::map<std::uint16_t, std::int64_t> heard; // by input
        await([&] {
            for (const Reading& reading : m_readings) {
                if (reading.device == device)
                    heard[reading.input] = reading.raw;
                else
                    wrong.push_back("what device " + std::to_string(device) + " sent came from device " +
                                    std::to_string(reading.device));
            }
            return heard.count(1) != 0 || !wrong.empty();
        });
        if (heard[0] != own || heard[1] != fresh)
            wrong.push_back("device " + std::to_string(device) + " sent another's number");
        const std::optional<DeviceInfo> unit = m_hub->connected(static_cast<DeviceIndex>(device));
        if (!unit || unit->serial != m_devices[device]->shape().serial || unit->port != m_devices[device]->shape().port)
            wrong.push_back("device " + std::to_string(device) + " is another unit");
    }

    SteadyClock m_clock;
    std::vector<std::unique_ptr<UhidDevice>> m_devices{kDevices};
    std::unique_ptr<DeviceHub> m_hub;
    std::vector<bool> m_isConnected = std::vector<bool>(kDevices, false);
    std::vector<Time> m_connectedAt = std::vector<Time>(kDevices);
    std::vector<Reading> m_readings;
    std::size_t m_plugged = 0;
    int m_sent = 0;
};

void print(const char* name, const Footprint& footprint) {
    std::cout << ",\n\"" << name << "\": {\"files\": " << footprint.files << ", \"threads\": " << footprint.threads
              << ", \"heap_bytes\": " << footprint.heapBytes << ", \"resident_bytes\": " << footprint.residentBytes
              << '}';
}

double milliseconds(Duration duration) {
    return std::chrono::duration<double, std::milli>(duration).count();
}

} // namespace

int main(int argc, char** argv) {
    const int cycles = argc == 2 ? std::stoi(argv[1]) : 0;
    if (cycles <= 0)
        giveUp("usage: replug CYCLES");
    Desk desk(static_cast<std::size_t>(kWarmUp + cycles));
    std::size_t step = 0;
    const auto play = [&](int count) {
        for (int done = 0; done < count && desk.wrong.empty(); done += 2, ++step)
            desk.swap(step % 2 * 2, step / 2 % 2 != 0);
    };
    const SteadyClock clock;
    play(kWarmUp);
    const Footprint before = footprint();
    const Time start = clock.now();
    const int polledBefore = desk.system.scans.byPolling;
    play(cycles);
    const Footprint after = footprint();
    const Duration took = clock.now() - start;
    const int polled = desk.system.scans.byPolling - polledBefore;
    desk.stayStill();
    std::sort(desk.found.begin(), desk.found.end());
    std::cout << "{\"cycles\": " << desk.found.size() - kWarmUp << ", \"seconds\": " << seconds(took)
              << ", \"scans_by_notice\": " << desk.system.scans.byNotice << ", \"scans_by_polling\": " << polled
              << ", \"still_seconds\": " << seconds(kStillTime) << ", \"still_scans\": " << desk.stillScans
              << ",\n\"found_ms\": {\"median\": " << milliseconds(desk.found[desk.found.size() / 2])
              << ", \"p99\": " << milliseconds(desk.found[desk.found.size() * 99 / 100])
              << ", \"most\": " << milliseconds(desk.found.back()) << '}';
    print("before", before);
    print("after", after);
    std::cout << ",\n\"wrong\": [";
    for (std::size_t i = 0; i < desk.wrong.size(); ++i)
        std::cout << (i ? ", " : "") << '"' << desk.wrong[i] << '"';
    std::cout << "]}" << std::endl;
}
