#pragma once

#include <chrono>
#include <cstdint>
#include <string>
#include <string_view>

#include "base/error.h"

namespace flowhand {

/// Nanoseconds from the start of the run, on a steady clock. Every time that enters a session is a whole
/// number of microseconds (`kTick`), because that is the grain in which runs are stored.
using Time = std::chrono::nanoseconds;
using Duration = std::chrono::nanoseconds;

inline constexpr Time kForever = Time::max();
inline constexpr Duration kTick = std::chrono::microseconds(1);

/// The last whole tick at or before `time`.
[[nodiscard]] constexpr Time wholeTick(Time time) {
    return std::chrono::floor<std::chrono::microseconds>(time);
}

[[nodiscard]] constexpr double seconds(Duration duration) {
    return std::chrono::duration<double>(duration).count();
}

/// Nearest nanosecond. `value` must lie within +-9e9.
[[nodiscard]] Duration fromSeconds(double value);

/// Reads "2 s", "300 ms", "1.5 min" exactly (decimal, no rounding through double below 1 ns).
[[nodiscard]] Result<Duration> parseDuration(std::string_view text);

/// `m:ss.s`, as times are shown on screen and in print.
[[nodiscard]] std::string clockText(Time time);

/// The one clock. Only readers and the run thread ask it; core is told the time.
class Clock {
public:
    virtual ~Clock() = default;
    /// Any thread. Time since an arbitrary fixed origin, never going back.
    [[nodiscard]] virtual Time now() const = 0;
};

/// The run's time for stamps: whole ticks from `origin`.
struct RunClock {
    const Clock& clock;
    Time origin{};
    [[nodiscard]] Time now() const { return wholeTick(clock.now() - origin); }
};

/// std::chrono::steady_clock.
class SteadyClock final : public Clock {
public:
    [[nodiscard]] Time now() const override;
};

} // namespace flowhand
