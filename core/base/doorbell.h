#pragma once

#include <atomic>
#include <condition_variable>
#include <mutex>

#include "base/time.h"

namespace flowhand {

/// Wakes one waiting thread. A ring before the wait is not lost. All functions from any thread.
class Doorbell {
public:
    void ring() {
        if (m_isRung.exchange(true))
            return;                              // who waits knows
        { const std::lock_guard lock(m_mutex); } // a wait that has looked at it sleeps by now
        m_condition.notify_one();
    }
    /// Until rung, at the longest for `duration`; the ring is then used up. Whether there was one.
    bool wait(Duration duration) {
        std::unique_lock lock(m_mutex);
        m_condition.wait_for(lock, duration, [this] {
            return m_isRung.load();
        });
        return m_isRung.exchange(false);
    }

private:
    std::mutex m_mutex; ///< held between looking at m_isRung and sleeping
    std::condition_variable m_condition;
    std::atomic<bool> m_isRung = false;
};

} // namespace flowhand
