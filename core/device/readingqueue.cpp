#include "device/readingqueue.h"

#include <algorithm>

namespace flowhand {

void ReadingQueue::push(const std::vector<Reading>& readings) {
    const std::lock_guard lock(m_mutex);
    for (const Reading& reading : readings) {
        if (m_readings.size() < m_capacity && m_newest.empty()) {
            m_readings.push_back(reading);
            continue;
        }
        const auto [kept, isNew] = m_newest.insert_or_assign(reading.input, reading);
        if (!isNew)
            ++m_drops;
    }
}

void ReadingQueue::push(DeviceNotice notice) {
    const std::lock_guard lock(m_mutex);
    settle(); // after a new connection an input's number may mean another one
    m_notices.push_back(std::move(notice));
}

void ReadingQueue::drain(std::vector<Reading>& readings, std::vector<DeviceNotice>& notices) {
    const std::lock_guard lock(m_mutex);
    settle();
    readings.insert(readings.end(), m_readings.begin(), m_readings.end());
    notices.insert(notices.end(), std::make_move_iterator(m_notices.begin()), std::make_move_iterator(m_notices.end()));
    m_readings.clear();
    m_notices.clear();
}

std::uint64_t ReadingQueue::drops() const {
    const std::lock_guard lock(m_mutex);
    return m_drops;
}

/// Moves the newest readings to the end of the queue: one an input, so that it stays bounded.
void ReadingQueue::settle() {
    if (m_newest.empty())
        return;
    const auto firstNew = static_cast<std::ptrdiff_t>(m_readings.size());
    for (const auto& [input, reading] : m_newest)
        m_readings.push_back(reading);
    m_newest.clear();
    std::sort(m_readings.begin() + firstNew, m_readings.end(), [](const Reading& a, const Reading& b) {
        return a.time != b.time ? a.time < b.time : a.input < b.input;
    });
}

} // namespace flowhand
