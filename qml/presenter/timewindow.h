#pragma once

#include "base/time.h"

namespace flowhand {

/// The stretch of a run that a timeline shows. A share is 0 at its left edge and 1 at its right. Pure.
class TimeWindow {
public:
    /// A millisecond is told from the next one at any width of screen.
    static constexpr Duration kNarrowest = std::chrono::milliseconds(200);

    /// All of a run.
    void begin(Time length);
    [[nodiscard]] Time from() const { return m_from; }
    [[nodiscard]] Time to() const { return m_from + m_width; }
    [[nodiscard]] Time at(double share) const;
    [[nodiscard]] double shareOf(Time time) const;

    /// What lies at `share` stays there. `factor` > 1 shows less.
    void zoom(double factor, double share);
    /// By a share of its width; later when positive.
    void pan(double share);
    void fit() { begin(m_length); }
    void show(Time from, Time to);
    /// Moves only where `time` lies outside, and then puts it into the middle.
    void reveal(Time time);
    /// Moves by whole widths, as a page is turned, so that `time` is seen and what comes after it too.
    void follow(Time time);

private:
    void place(Time from, Duration width);

    Time m_length{};
    Time m_from{};
    Duration m_width = kNarrowest;
};

} // namespace flowhand
