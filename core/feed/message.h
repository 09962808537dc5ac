#pragma once

#include <cstdint>
#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "base/signal.h"
#include "base/time.h"

namespace flowhand {

/// The motion signals that a feed may speak of: those of `table` from `first` on. The cockpit's controls come before
/// them; a feed never moves a control. The table must outlive whatever holds this.
struct FeedSignals {
    const SignalTable* table = nullptr;
    std::size_t first = 0;

    /// kNoSignal: there is none of that name, or it is a control.
    [[nodiscard]] SignalId find(std::string_view name) const;
    [[nodiscard]] const Signal& operator[](SignalId id) const { return (*table)[id]; }
};

struct FeedValue {
    SignalId signal = kNoSignal;
    Value value; ///< in the signal's unit, of any size; unknown: the feed says that it does not know
};

/// What one message says. All of it is of the same moment.
struct FeedMessage {
    std::vector<FeedValue> values;
    std::optional<Duration> time; ///< of the feed's own clock
    bool isTimeOfDay = false;     ///< `time` begins anew at midnight
};

using FeedSink = std::function<void(const FeedMessage&)>;

/// What came, by what became of it.
struct FeedTally {
    static constexpr std::size_t kMostNames = 8; ///< enough to see which naming the sender uses

    std::uint64_t bytes = 0;
    std::uint64_t messages = 0;    ///< read and taken
    std::uint64_t others = 0;      ///< sound, of kinds that say nothing of motion
    std::uint64_t malformed = 0;   ///< not of the format
    std::uint64_t badChecksum = 0; ///< damaged on the way, or forged
    std::uint64_t oversized = 0;   ///< longer than a message of the format can be
    std::uint64_t unknownNames = 0;
    std::uint64_t refused = 0;   ///< values without or with a wrong unit, not of the signal, or far outside its range
    std::uint64_t backwards = 0; ///< messages older than one before, or far ahead of the time that has passed
    std::uint64_t foreign = 0;   ///< datagrams from another computer than the one named
    std::uint64_t dropped = 0;   ///< changes that a newer one replaced because nobody took them in time
    std::vector<std::string> names; ///< of unknownNames, the first few that look like names
};

} // namespace flowhand
