#pragma once

#include <algorithm>
#include <atomic>
#include <condition_variable>
#include <deque>
#include <map>
#include <mutex>
#include <string>

#include "base/fakeclock.h"
#include "device/hidsystem.h"

/// A unit with controls that can be read.
inline flowhand::DeviceInfo readableUnit(const std::string& path, const std::string& port, const std::string& name) {
    flowhand::DeviceInfo info;
    info.path = path;
    info.vendor = 0x1209;
    info.product = 1;
    info.port = port;
    info.name = name;
    info.readable = true;
    return info;
}

/// A readable quadrant at the path "q".
inline flowhand::DeviceInfo quadrantInfo() {
    return readableUnit("q", "port 1", "Quadrant");
}

/// Devices in memory, with the faults that real ones have. The test's thread plugs and sends; all functions from any
/// thread. Nothing sleeps: a wait ends with what it waits for, and the watch's time passes only by pass().
class FakeHid final : public flowhand::HidSystem {
public:
    void plug(const flowhand::DeviceInfo& info, std::vector<std::uint8_t> descriptor) {
        change([&] {
            m_units[info.path] = {info, std::move(descriptor), {}, true, false, 0};
        });
    }
    void unplug(const std::string& path) {
        change([&] {
            m_units.erase(path);
        });
    }
    void setReadable(const std::string& path, bool readable) {
        change([&] {
            m_units.at(path).info.readable = readable;
        });
    }
    /// The next read fails though the device stays listed.
    void breakReading(const std::string& path) {
        const std::lock_guard lock(m_mutex);
        m_units.at(path).isBroken = true;
        m_changed.notify_all();
    }
    void send(const std::string& path, std::vector<std::uint8_t> report) {
        const std::lock_guard lock(m_mutex);
        m_units.at(path).reports.push_back(std::move(report));
        m_units.at(path).isIdle = false;
        m_changed.notify_all();
    }
    /// All at once: they wait for the reader together.
    void sendAll(const std::string& path, const std::vector<std::vector<std::uint8_t>>& reports) {
        const std::lock_guard lock(m_mutex);
        Unit& unit = m_units.at(path);
        unit.reports.insert(unit.reports.end(), reports.begin(), reports.end());
        unit.isIdle = false;
        m_changed.notify_all();
    }
    /// Until the reader has dealt with every report sent.
    void waitUntilRead(const std::string& path) {
        std::unique_lock lock(m_mutex);
        m_changed.wait(lock, [&] {
            return m_units.at(path).isIdle;
        });
    }
    /// The watch's waiting time passes.
    void pass() {
        const std::lock_guard lock(m_mutex);
        m_hasPassed = true;
        m_changed.notify_all();
    }
    [[nodiscard]] int opens(const std::string& path) {
        const std::lock_guard lock(m_mutex);
        return m_units.at(path).opens;
    }

    std::vector<flowhand::DeviceInfo> list() override {
        const std::lock_guard lock(m_mutex);
        std::vector<flowhand::DeviceInfo> found;
        for (const auto& [path, unit] : m_units)
            found.push_back(unit.info);
        return found;
    }
    flowhand::Result<std::vector<std::uint8_t>> descriptor(const flowhand::DeviceInfo& device) override {
        const std::lock_guard lock(m_mutex);
        const auto found = m_units.find(device.path);
        if (found == m_units.end())
            return flowhand::failure("no-descriptor", "gone");
        return found->second.descriptor;
    }
    flowhand::Result<std::unique_ptr<flowhand::HidDevice>> open(const flowhand::DeviceInfo& device) override;
    std::unique_ptr<flowhand::HidWatch> watch() override;

private:
    friend class FakeHidDevice;
    friend class FakeHidWatch;
    struct Unit {
        flowhand::DeviceInfo info;
        std::vector<std::uint8_t> descriptor;
        std::deque<std::vector<std::uint8_t>> reports;
        bool isIdle = true;
        bool isBroken = false;
        int opens = 0;
    };

    template <class Edit>
    void change(Edit edit) {
        const std::lock_guard lock(m_mutex);
        edit();
        ++m_changes;
        m_changed.notify_all();
    }

    std::mutex m_mutex; ///< guards all below
    std::condition_variable m_changed;
    std::map<std::string, Unit> m_units;
    int m_changes = 0;
    bool m_hasPassed = false;
};

class FakeHidDevice final : public flowhand::HidDevice {
public:
    FakeHidDevice(FakeHid& system, std::string path) : m_system(system), m_path(std::move(path)) {}

    flowhand::Result<std::size_t> read(std::span<std::uint8_t> buffer, flowhand::Duration timeout) override {
        std::unique_lock lock(m_system.m_mutex);
        const auto unit = [&] {
            return m_system.m_units.find(m_path);
        };
        const auto isGone = [&] {
            return unit() == m_system.m_units.end() || unit()->second.isBroken;
        };
        if (!isGone() && unit()->second.reports.empty()) {
            unit()->second.isIdle = true;
            m_system.m_changed.notify_all();
            if (timeout == flowhand::Duration{})
                return std::size_t(0);
        }
        m_system.m_changed.wait_for(lock, timeout, [&] {
            return isGone() || !unit()->second.reports.empty();
        });
        if (isGone()) {
            if (unit() != m_system.m_units.end())
                unit()->second.isBroken = false;
            return flowhand::failure("device-lost", "gone");
        }
        auto& reports = unit()->second.reports;
        if (reports.empty())
            return std::size_t(0);
        const std::vector<std::uint8_t> report = std::move(reports.front());
        reports.pop_front();
        std::copy(report.begin(), report.end(), buffer.begin());
        return report.size();
    }

private:
    FakeHid& m_system;
    const std::string m_path;
};

class FakeHidWatch final : public flowhand::HidWatch {
public:
    explicit FakeHidWatch(FakeHid& system) : m_system(system), m_changes(system.m_changes) {}

    bool wait(flowhand::Duration) override {
        std::unique_lock lock(m_system.m_mutex);
        m_system.m_changed.wait(lock, [&] {
            return m_isWoken || m_changes != m_system.m_changes || m_system.m_hasPassed;
        });
        if (m_changes != m_system.m_changes) {
            m_changes = m_system.m_changes;
            return true;
        }
        m_system.m_hasPassed = false;
        return false;
    }
    void wake() override {
        const std::lock_guard lock(m_system.m_mutex);
        m_isWoken = true;
        m_system.m_changed.notify_all();
    }

private:
    FakeHid& m_system;
    int m_changes;
    bool m_isWoken = false;
};

inline flowhand::Result<std::unique_ptr<flowhand::HidDevice>> FakeHid::open(const flowhand::DeviceInfo& device) {
    const std::lock_guard lock(m_mutex);
    const auto found = m_units.find(device.path);
    if (found == m_units.end())
        return flowhand::failure("device-lost", "gone");
    if (!found->second.info.readable)
        return flowhand::failure("unreadable-device", found->second.info.whyNot);
    ++found->second.opens;
    return std::make_unique<FakeHidDevice>(*this, device.path);
}

inline std::unique_ptr<flowhand::HidWatch> FakeHid::watch() {
    const std::lock_guard lock(m_mutex);
    return std::make_unique<FakeHidWatch>(*this);
}
