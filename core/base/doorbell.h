#pragma once

#include <algorithm>
#include <atomic>
#include <chrono>
#include <condition_variable>
#include <cstdint>
#include <mutex>

#include "base/time.h"

namespace flowhand {

/// How soon a ring wants to be heard.
enum class Hurry : std::uint8_t {
    Later = 1, ///< when the waiter has rested for long
    Soon = 2,  ///< when it has rested for a little
    Now = 4
};

/// Wakes one waiting thread. A ring before the wait is not lost. All functions from any thread.
class Doorbell {
public:
    void ring(Hurry hurry = Hurry::Now) {
        const unsigned ring = bitOf(hurry);
        const unsigned before = m_rung.fetch_or(ring);
        const unsigned heard = m_heard;
        if ((heard & ring) == 0 || (heard & before) != 0)
            return;                              // nobody listens to it yet, or who waits knows
        { const std::lock_guard lock(m_mutex); } // a wait that has looked at the rings sleeps by now
        m_condition.notify_one();
    }
    /// Until rung, at the longest for `duration`; Soon is heard only after `soon` of it, Later after `later`. A Soon
    /// that is the first for long is heard at once. All rings are then used up. Whether there was one.
    bool wait(Duration duration, Duration soon = {}, Duration later = {}) {
        const auto begin = std::chrono::steady_clock::now();
        std::unique_lock lock(m_mutex);
        const bool isSoonFrequent = m_hasSoonRung;
        const bool isRung = (isSoonFrequent && listen(lock, bitOf(Hurry::Now), begin, std::min(soon, duration))) ||
                            listen(lock, bitOf(Hurry::Now) | bitOf(Hurry::Soon), begin, std::min(later, duration)) ||
                            listen(lock, kAll, begin, duration);
        m_heard = 0;
        m_hasSoonRung = (m_rung.exchange(0) & bitOf(Hurry::Soon)) != 0;
        return isRung;
    }

private:
    static constexpr unsigned bitOf(Hurry hurry) { return static_cast<unsigned>(hurry); }
    static constexpr unsigned kAll = 7;

    bool listen(std::unique_lock<std::mutex>& lock, unsigned heard, std::chrono::steady_clock::time_point begin,
                Duration duration) {
        const auto isRung = [&] {
            return (m_rung & heard) != 0;
        };
        m_heard = heard; // before looking: a ring from now on sees it, or is seen
        return isRung() || (duration > Duration{} && m_condition.wait_until(lock, begin + duration, isRung));
    }

    std::mutex m_mutex; ///< held between looking at the rings and sleeping
    std::condition_variable m_condition;
    std::atomic<unsigned> m_rung = 0;  ///< since the last wait
    std::atomic<unsigned> m_heard = 0; ///< what ends the wait; 0: nobody waits
    bool m_hasSoonRung = false;        ///< in or before the last wait; the waiter's
};

} // namespace flowhand
