#pragma once

#include <cstddef>
#include <cstdint>
#include <mutex>
#include <unordered_map>
#include <vector>

#include "device/device.h"

namespace flowhand {

/// What one device's reader hands to the session thread. When `capacity` readings wait, only the newest of each input
/// is kept beside them and what it replaces is counted: the last state of every input always arrives.
class ReadingQueue {
public:
    explicit ReadingQueue(std::size_t capacity) : m_capacity(capacity) {}

    /// Reader thread. Times must not go back.
    void push(const std::vector<Reading>& readings);
    void push(DeviceNotice notice);

    /// Session thread. Appends in the order of times.
    void drain(std::vector<Reading>& readings, std::vector<DeviceNotice>& notices);

    [[nodiscard]] std::uint64_t drops() const;

private:
    void settle();

    const std::size_t m_capacity;
    mutable std::mutex m_mutex; ///< guards all below
    std::vector<Reading> m_readings;
    std::unordered_map<std::uint16_t, Reading> m_newest; ///< by input, when full
    std::vector<DeviceNotice> m_notices;
    std::uint64_t m_drops = 0;
};

} // namespace flowhand
