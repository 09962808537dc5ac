#pragma once

#include "base/time.h"

namespace flowhand {

/// Slow time: all of a run goes so many times slower, aircraft, limits, cues and the partner alike, on a clock of its
/// own. Hands are a person's: devices and scripted hands go by the real clock, and a lever has come to rest after the
/// same real time as ever.
class SlowTime {
public:
    /// 1: as fast as real.
    explicit SlowTime(int times = 1) : m_times(times) {}

    /// The run's last tick at or before `real`.
    [[nodiscard]] Time toRun(Time real) const { return real == kForever ? kForever : wholeTick(real / m_times); }
    /// The run's first tick at or after `real`.
    [[nodiscard]] Time toRunFrom(Time real) const {
        return real == kForever ? kForever : toRun(real + m_times * kTick - Duration(1));
    }
    [[nodiscard]] Time toReal(Time run) const { return run == kForever ? kForever : run * m_times; }
    [[nodiscard]] double scale() const { return 1.0 / m_times; }

private:
    int m_times;
};

/// How long, on a run's clock, what lasts `real` for a person; `scale` as SlowTime::scale().
[[nodiscard]] inline Duration ofHands(Duration real, double scale) {
    return scale == 1.0 ? real : wholeTick(fromSeconds(seconds(real) * scale));
}

} // namespace flowhand
