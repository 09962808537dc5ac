#include "session/holdclock.h"

#include <algorithm>

namespace flowhand {

Time HoldClock::toRun(Time time) const {
    return time == kForever ? kForever : time - m_left;
}

Time HoldClock::fromRun(Time runTime) const {
    if (runTime == kForever)
        return kForever;
    Time time = runTime;
    for (const Hold& hold : m_holds)
        if (hold.at < runTime)
            time += hold.left;
    return time;
}

void HoldClock::hold(Time time) {
    m_heldSince = time;
}

void HoldClock::resume(Time time) {
    const Duration left = std::max(time - m_heldSince - kTick, Duration{});
    m_holds.push_back({toRun(m_heldSince), left});
    m_left += left;
    m_heldSince = kForever;
}

} // namespace flowhand
