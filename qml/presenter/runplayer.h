#pragma once

#include <array>
#include <cstddef>
#include <optional>

#include "base/time.h"

namespace flowhand {

/// A stretch that is played over and over.
struct LoopStretch {
    Time from{};
    Time to{};
};

/// The pace at which a run is gone through. Pure: it is told how much time has passed.
class RunPlayer {
public:
    static constexpr std::array<double, 7> kPaces = {0.1, 0.2, 0.5, 1.0, 2.0, 5.0, 10.0};

    [[nodiscard]] bool isPlaying() const { return m_isPlaying; }
    void setPlaying(bool isPlaying) { m_isPlaying = isPlaying; }
    [[nodiscard]] double pace() const { return kPaces[m_pace]; }
    void slower() { m_pace -= m_pace > 0 ? 1 : 0; }
    void faster() { m_pace += m_pace + 1 < kPaces.size() ? 1 : 0; }

    /// Where `now` has come to after `passed` of real time; at the end of the run it stops playing, at the end of a
    /// loop it begins that again.
    [[nodiscard]] Time advance(Time now, Duration passed, Time length, const std::optional<LoopStretch>& loop);

private:
    bool m_isPlaying = false;
    std::size_t m_pace = 3;
};

} // namespace flowhand
