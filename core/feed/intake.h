#pragma once

#include <array>
#include <string>
#include <vector>

#include "feed/feedclock.h"
#include "feed/message.h"

namespace flowhand {

/// A motion signal that a feed has changed.
struct FeedChange {
    Time time{}; ///< stamped as the message came
    SignalId signal = kNoSignal;
    Value value;
};

enum class FeedNews : std::uint8_t {
    Heard, ///< it speaks (again), and has said all that can be waited for
    Lost
};

struct FeedNotice {
    Time time{};
    FeedNews news = FeedNews::Heard;
};

/// Looks at what messages say before anything else sees it: times that go back, values that cannot be, more changes
/// than anyone can use; and at what they no longer say. Told the time, which does not go back; feed thread.
class FeedIntake {
public:
    /// NMEA talkers and GDL 90 speak once a second: three in a row are missing.
    static constexpr Duration kLostAfter = std::chrono::seconds(3);
    /// After the first message: whatever speaks once a second has spoken.
    static constexpr Duration kListenFor = std::chrono::seconds(2);
    /// A signal changes no more often: 50 times a second is finer than a person or a condition can tell apart.
    static constexpr Duration kLeastBetween = std::chrono::milliseconds(20);
    /// So far outside its range, as a share of it, a number is put at the range's end: an airspeed of -0.2 kt at
    /// rest. Beyond it is refused.
    static constexpr double kOvershoot = 0.01;

    explicit FeedIntake(FeedSignals signals);

    void take(Time now, const FeedMessage& message, FeedTally& tally, std::vector<FeedChange>& changes,
              std::vector<FeedNotice>& notices);
    /// What happens by time alone. Call at least ten times a second.
    void pass(Time now, std::vector<FeedChange>& changes, std::vector<FeedNotice>& notices);

    [[nodiscard]] bool isHeard() const { return m_state == State::Heard; }
    [[nodiscard]] const FeedClock& clock() const { return m_clock; }
    /// Messages a second, over the last whole seconds.
    [[nodiscard]] double rate(Time now) const;
    /// When the last message with motion came; kForever: none did.
    [[nodiscard]] Time lastMessage() const { return m_lastMessage; }
    /// By SignalId; unknown: not said, or not for kLostAfter.
    [[nodiscard]] std::vector<Value> values() const;

private:
    enum class State : std::uint8_t { Silent, Listening, Heard };
    struct Track {
        Value passed; ///< on to the session
        Value newest; ///< as said last
        Time passedAt = Time::min() / 2;
        Time saidAt = kForever; ///< kForever: not said, or too long ago
        bool wasSaid = false;   ///< before the feed was lost
    };

    [[nodiscard]] bool accept(const FeedValue& said, Value& value) const;
    void say(Time now, SignalId signal, Value value, std::vector<FeedChange>& changes);
    void hand(Time now, SignalId signal, std::vector<FeedChange>& changes);
    void count(Time now);
    void listen(Time now, std::vector<FeedNotice>& notices);
    void lose();
    void forget(Time now, std::vector<FeedChange>& changes);

    const FeedSignals m_signals;
    std::vector<Track> m_tracks; ///< by SignalId
    FeedClock m_clock;
    State m_state = State::Silent;
    Time m_lastMessage = kForever;
    Time m_firstMessage{}; ///< since it was silent
    static constexpr std::size_t kRateSeconds = 5;
    std::array<std::uint32_t, kRateSeconds + 1> m_counts{}; ///< messages of a second, the present one among them
    std::int64_t m_second = 0;                              ///< the present one
};

} // namespace flowhand
