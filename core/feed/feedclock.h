#pragma once

#include <optional>

#include "base/time.h"

namespace flowhand {

/// Follows a feed's own clock: refuses what is older than what came before or far ahead of the time that has passed,
/// and tells how late messages come. A clock that was set anew (the sender began again) is taken over once it has gone
/// on alone for kNewClockAfter. Told the time; feed thread.
class FeedClock {
public:
    /// How much faster than ours its clock may run between two messages: more than any delay in a queue.
    static constexpr Duration kMostAhead = std::chrono::seconds(5);
    /// Shorter than the silence after which a feed is lost, longer than datagrams overtake each other.
    static constexpr Duration kNewClockAfter = std::chrono::seconds(1);
    /// The quickest message of this time is the measure of the others' delay; clocks drift apart little in it.
    static constexpr Duration kDelaySpan = std::chrono::seconds(30);

    /// Whether a message with time `own` that came at `now` is to be taken. With `isTimeOfDay` the clock goes on from
    /// midnight.
    [[nodiscard]] bool take(Time now, Duration own, bool isTimeOfDay);

    /// Of the last message taken; none: the feed has no clock.
    [[nodiscard]] std::optional<Duration> own() const { return m_own; }
    /// How much later the last message came than the quickest one: what the way adds at its worst. The way's whole
    /// delay cannot be known without clocks that agree.
    [[nodiscard]] std::optional<Duration> delay() const;

private:
    [[nodiscard]] bool isNewClock(Time now, Duration own, bool isTimeOfDay);
    void follow(Time now, Duration own, bool isTimeOfDay);

    std::optional<Duration> m_own;
    Time m_at{}; ///< when m_own came
    std::optional<Duration> m_candidate;
    Time m_candidateSince{};
    Time m_candidateAt{};

    Duration m_total{}; ///< the way its clock has gone, over midnights
    Duration m_offset{};
    Duration m_quickest{};
    Duration m_quickestBefore{};
    Time m_spanBegan{};
};

} // namespace flowhand
