#pragma once

#include <string>

#include "device/hidsystem.h"
#include "measured.h"
#include "procedure/library.h"

/// The cockpit that the streaming devices are wired to: X of each device is a lever, button 1 of the first one the taxi
/// light; and a flow of steps that each press of that button sees at once.
class RateFlight {
public:
    static constexpr std::size_t kDevices = 8;
    static constexpr std::uint16_t kVendor = 0x1209;
    static constexpr std::uint16_t kFirstProduct = 0xE000;

    /// Writes the aircraft, its flow, the rig and the runs below `folder`.
    RateFlight(const std::string& folder, std::size_t devices, std::size_t steps);

    [[nodiscard]] const std::string& procedures() const { return m_procedures; }
    [[nodiscard]] const std::string& rigFile() const { return m_rigFile; }
    [[nodiscard]] const std::string& storeFile() const { return m_storeFile; }

    /// Flies without a window, as 'flowhand practise' does, until `isOver()`.
    [[nodiscard]] Measured fly(flowhand::HidSystem& system, bool (*isOver)()) const;

private:
    std::string m_procedures;
    std::string m_rigFile;
    std::string m_storeFile;
    std::size_t m_devices;
};
