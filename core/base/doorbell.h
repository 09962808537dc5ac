#pragma once

#include <condition_variable>
#include <mutex>
#include <utility>

#include "base/time.h"

namespace flowhand {

/// Wakes one waiting thread. A ring before the wait is not lost. All functions from any thread.
class Doorbell {
public:
    void ring() {
        {
            const std::lock_guard lock(m_mutex);
            if (m_isRung)
                return;
            m_isRung = true;
        }
        m_condition.notify_one();
    }
    /// Until rung, at the longest for `duration`; the ring is then used up. Whether there was one.
    bool wait(Duration duration) {
        std::unique_lock lock(m_mutex);
        m_condition.wait_for(lock, duration, [this] {
            return m_isRung;
        });
        return std::exchange(m_isRung, false);
    }

private:
    std::mutex m_mutex; ///< guards m_isRung
    std::condition_variable m_condition;
    bool m_isRung = false;
};

} // namespace flowhand
