#pragma once

#include <cstdint>
#include <set>
#include <tuple>

#include "base/time.h"

namespace flowhand {

/// What a run waits for by time alone.
enum class TimerKind : std::uint8_t { WordsEnd, PartnerActs, PartnerLetsGo, StepExpires };

struct Timer {
    Time time{};
    TimerKind kind = TimerKind::WordsEnd;
    std::size_t step = 0;

    bool operator<(const Timer& other) const {
        return std::tie(time, kind, step) < std::tie(other.time, other.kind, other.step);
    }
};

/// Those set, the earliest first; simultaneous ones in the order of their kinds and steps. Times of the run's clock.
class Timers {
public:
    void set(const Timer& timer) { m_timers.insert(timer); }
    void clear(const Timer& timer) { m_timers.erase(timer); }
    [[nodiscard]] Time next() const { return m_timers.empty() ? kForever : m_timers.begin()->time; }
    /// The first that is due at `time`, taken out; check next() before.
    Timer take() {
        const Timer timer = *m_timers.begin();
        m_timers.erase(m_timers.begin());
        return timer;
    }

private:
    std::set<Timer> m_timers;
};

} // namespace flowhand
