#include "feed/feedclock.h"

#include <algorithm>

namespace flowhand {

namespace {

constexpr Duration kDay = std::chrono::hours(24);

/// From `before` to `after`; over midnight by the shorter way.
Duration step(Duration before, Duration after, bool isTimeOfDay) {
    Duration passed = after - before;
    if (isTimeOfDay && passed < -kDay / 2)
        passed += kDay;
    else if (isTimeOfDay && passed > kDay / 2)
        passed -= kDay;
    return passed;
}

bool goesOn(Duration own, Duration ours) {
    return own >= Duration::zero() && own <= ours + FeedClock::kMostAhead;
}

} // namespace

bool FeedClock::take(Time now, Duration own, bool isTimeOfDay) {
    if (m_own && !goesOn(step(*m_own, own, isTimeOfDay), now - m_at)) {
        if (!isNewClock(now, own, isTimeOfDay))
            return false;
        m_own.reset();
    }
    m_candidate.reset();
    follow(now, own, isTimeOfDay);
    return true;
}

/// Whether what was refused so far is a clock that goes on by itself.
bool FeedClock::isNewClock(Time now, Duration own, bool isTimeOfDay) {
    if (!m_candidate || !goesOn(step(*m_candidate, own, isTimeOfDay), now - m_candidateAt))
        m_candidateSince = now;
    m_candidate = own;
    m_candidateAt = now;
    return now - m_candidateSince >= kNewClockAfter;
}

void FeedClock::follow(Time now, Duration own, bool isTimeOfDay) {
    const bool isFirst = !m_own;
    m_total = isFirst ? Duration::zero() : m_total + step(*m_own, own, isTimeOfDay);
    m_own = own;
    m_at = now;
    m_offset = now - m_total;
    if (isFirst || now - m_spanBegan >= kDelaySpan) {
        m_quickestBefore = isFirst ? m_offset : m_quickest;
        m_quickest = m_offset;
        m_spanBegan = now;
    }
    m_quickest = std::min(m_quickest, m_offset);
}

std::optional<Duration> FeedClock::delay() const {
    return m_own ? std::optional(m_offset - std::min(m_quickest, m_quickestBefore)) : std::nullopt;
}

} // namespace flowhand
