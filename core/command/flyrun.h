#pragma once

#include <functional>
#include <ostream>

#include "command/assembly.h"

namespace flowhand {

/// What came out of one flow of a flight that was flown without a window.
struct FlownRun {
    const Flow* flow = nullptr;
    RunHeader header;
    RunSnapshot snapshot;
    std::vector<Event> events;
    std::vector<SetUpItem> setUp; ///< of a run that was left waiting: for what
};

/// How a flight begins.
struct FlightStart {
    std::string from;      ///< the step to begin with; empty: the first
    bool isPlaced = false; ///< the aircraft stands where it was wished, not where that step would have it
    bool isWaived = false; ///< begins although controls are not where the start wants them
};

/// Gets each event as it happens, with its flow.
using ShowEvent = std::function<void(const Event&, const Flow&)>;

/// Flies scripted or recorded hands as fast as the computer can, one flow after the other.
[[nodiscard]] std::vector<FlownRun> flyScripted(RunParts parts, const FlightStart& start, const ShowEvent& show);

/// A line for each control that is not where the start wants it, with a line break before it.
[[nodiscard]] std::string wantedText(const std::vector<SetUpItem>& items, const Aircraft& aircraft);

/// What a flight in real time runs by.
struct LiveFlight {
    const Clock& clock;
    Time origin{};                               ///< the clock's time at which the flight's is 0
    Doorbell& bell;                              ///< ends a wait where there are no devices
    std::function<bool()> isStopping;            ///< asked often: Ctrl-C
    std::function<void(const std::string&)> say; ///< gets notices and what the set-up still wants, each once
};

/// Flies in real time, by devices or a feed, on the calling thread, until the flight is over or `isStopping` says so.
[[nodiscard]] std::vector<FlownRun> flyLive(RunParts parts, const LiveFlight& live, const FlightStart& start,
                                            const ShowEvent& show);

} // namespace flowhand
