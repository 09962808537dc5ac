#pragma once

#include <cstdint>
#include <set>
#include <tuple>

#include "base/time.h"

namespace flowhand {

/// What a run waits for by time alone.
enum class RunTimerKind : std::uint8_t { WordsEnd, PartnerActs, PartnerLetsGo, StepExpires };

struct RunTimer {
    Time time{};
    RunTimerKind kind = RunTimerKind::WordsEnd;
    std::size_t step = 0;

    bool operator<(const RunTimer& other) const {
        return std::tie(time, kind, step) < std::tie(other.time, other.kind, other.step);
    }
};

/// Those set, the earliest first; simultaneous ones in the order of their kinds and steps. Times of the run's clock.
class RunTimers {
public:
    void set(const RunTimer& timer) { m_timers.insert(timer); }
    void clear(const RunTimer& timer) { m_timers.erase(timer); }
    /// All of this kind and step, whenever they are.
    void clear(RunTimerKind kind, std::size_t step) {
        std::erase_if(m_timers, [&](const RunTimer& timer) {
            return timer.kind == kind && timer.step == step;
        });
    }
    [[nodiscard]] Time next() const { return m_timers.empty() ? kForever : m_timers.begin()->time; }
    /// The first that is due at `time`, taken out; check next() before.
    RunTimer take() {
        const RunTimer timer = *m_timers.begin();
        m_timers.erase(m_timers.begin());
        return timer;
    }

private:
    std::set<RunTimer> m_timers;
};

} // namespace flowhand
