#pragma once

#include <cstdint>
#include <optional>

#include "base/time.h"
#include "rig/axissmoother.h"

namespace flowhand {

/// Standard deviation of rounding to whole counts: 1 / sqrt(12).
inline constexpr double kRoundingNoise = 0.28867513459481287;

/// What an axis's raw counts are freed of before they mean anything.
struct AxisLimits {
    double noise = kRoundingNoise; ///< standard deviation at rest, behind `median` and `smooth`, in counts
    std::int64_t leastChange = 1;  ///< smaller changes are noise and do not travel, in counts
    std::int64_t spikeLimit = 0;   ///< a larger jump must last for `settle`, in counts; 0: no limit
    Duration settle{};
    Duration median{}; ///< window of the median; 0: none
    Duration smooth{}; ///< time constant of the low-pass behind it; 0: none
};

/// Keeps noise and the spikes of a worn potentiometer from travelling.
class AxisFilter {
public:
    /// Reaching or leaving beyond `low` or `high` (the ends of the travel, low < high) always travels.
    AxisFilter(AxisLimits limits, std::int64_t low, std::int64_t high)
        : m_limits(limits), m_low(low), m_high(high), m_median(limits.median), m_lowPass(limits.smooth) {}

    /// True when held() has changed.
    [[nodiscard]] bool take(std::int64_t raw, Time time);
    [[nodiscard]] bool advance(Time time);
    [[nodiscard]] Time nextTimer() const;
    void forget();

    /// The count that counts; nothing before the first reading.
    [[nodiscard]] const std::optional<std::int64_t>& held() const { return m_held; }
    [[nodiscard]] const AxisLimits& limits() const { return m_limits; }

private:
    [[nodiscard]] bool consider(std::int64_t raw, Time time);
    [[nodiscard]] bool follow(std::int64_t raw);
    [[nodiscard]] Time suspectTimer() const { return m_suspect ? m_suspectSince + m_limits.settle : kForever; }
    [[nodiscard]] bool isJump(std::int64_t from, std::int64_t to) const;

    AxisLimits m_limits;
    std::int64_t m_low;
    std::int64_t m_high;
    std::optional<std::int64_t> m_held;
    std::optional<std::int64_t> m_suspect;
    Time m_suspectSince{};
    TimedMedian m_median;
    LowPass m_lowPass;
};

} // namespace flowhand
