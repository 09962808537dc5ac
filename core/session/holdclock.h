#pragma once

#include <vector>

#include "base/time.h"

namespace flowhand {

/// A run's own clock, which stands while the run is held: conditions, limits and pauses of a run are timed by it.
/// Each hold longer than that takes one tick of it, so that what came before a hold and what comes after have different
/// times.
class HoldClock {
public:
    /// `time` must not lie in a hold.
    [[nodiscard]] Time toRun(Time time) const;
    /// Into the past and the future, as if no hold will follow.
    [[nodiscard]] Time fromRun(Time runTime) const;

    void hold(Time time);
    void resume(Time time);
    [[nodiscard]] bool isHeld() const { return m_heldSince != kForever; }

private:
    struct Hold {
        Time at{}; ///< on the run's clock
        Duration left{};
    };
    std::vector<Hold> m_holds;
    Duration m_left{}; ///< sum of all
    Time m_heldSince = kForever;
};

} // namespace flowhand
