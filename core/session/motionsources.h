#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "base/error.h"
#include "procedure/aircraftfile.h"

namespace flowhand {

/// Where a motion signal comes from.
enum class MotionSource : std::uint8_t {
    Feed,             ///< unknown while the feed does not say it
    Practice,         ///< the practice aircraft
    FeedElsePractice, ///< the practice aircraft until the feed has said it for the first time
    None              ///< unknown throughout
};

/// The source of each motion signal of a run. Without a feed all come from the practice aircraft. With one they come
/// from the feed, but for what follows its lever alone whoever flies (engine power, flap angle, gear position): that
/// comes from the practice aircraft until the feed says it. What a person chose goes before.
class MotionSources {
public:
    MotionSources() = default;
    /// `choices` are "SIGNAL=feed", "SIGNAL=practice" or "SIGNAL=none". Errors: `bad-source`, `unknown-signal`.
    [[nodiscard]] static Result<MotionSources> choose(const Aircraft& aircraft, bool hasFeed,
                                                      const std::vector<std::string>& choices);

    [[nodiscard]] bool takesFeed(SignalId signal) const;
    /// Asks only for what a practice aircraft says now.
    [[nodiscard]] bool takesPractice(SignalId signal) const;
    [[nodiscard]] bool usesPractice() const;
    /// The feed has said it: from now on it is the feed's.
    void noteFed(SignalId signal);
    /// "practice aircraft", or "NAME; practice aircraft: Engine power 1, ...; nothing: Airspeed".
    [[nodiscard]] std::string title(const Aircraft& aircraft, const std::string& feed) const;

private:
    [[nodiscard]] MotionSource of(SignalId signal) const;

    std::vector<MotionSource> m_sources; ///< by SignalId; empty: all from the practice aircraft
};

} // namespace flowhand
