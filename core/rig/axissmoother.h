#pragma once

#include <cstdint>
#include <deque>
#include <optional>

#include "base/time.h"

namespace flowhand {

/// The median of what an axis said over the last `window`, each count weighed by how long it stood: only changes
/// travel, so there are no reports to count. What is shorter than half the window leaves no trace; all else is late by
/// that half, as a median of N reports is by (N - 1) / 2 intervals.
class TimedMedian {
public:
    /// The window is rounded up to two whole ticks; 0: no median.
    explicit TimedMedian(Duration window) : m_half(std::chrono::ceil<std::chrono::microseconds>(window / 2)) {}

    std::int64_t take(std::int64_t raw, Time time);
    std::int64_t advance(Time time);
    /// When the median may change though nothing is reported.
    [[nodiscard]] Time nextTimer() const { return m_next; }
    void forget();

private:
    struct Stretch {
        std::int64_t raw = 0;
        Time since{};
    };
    [[nodiscard]] std::int64_t medianAt(Time time) const;
    [[nodiscard]] Time nextChange(Time time) const;
    [[nodiscard]] Duration weightOf(std::size_t at, Time time) const;

    Duration m_half;
    std::deque<Stretch> m_stretches; ///< the last one is what it says now; the first reaches back beyond the window
    std::int64_t m_median = 0;
    Time m_next = kForever;
};

/// A low-pass of first order, dy/dt = (x - y) / tau, solved exactly between two changes of x:
/// y(t) = x + (y0 - x) exp(-t / tau). Behind a steady movement it is late by tau.
class LowPass {
public:
    /// 0: no low-pass.
    explicit LowPass(Duration tau) : m_tau(tau) {}

    std::int64_t take(std::int64_t raw, Time time);
    std::int64_t advance(Time time);
    [[nodiscard]] Time nextTimer() const;
    void forget() { m_target.reset(); }

private:
    [[nodiscard]] std::int64_t count() const;

    Duration m_tau;
    std::optional<std::int64_t> m_target;
    double m_value = 0.0; ///< at m_time
    Time m_time{};
};

} // namespace flowhand
