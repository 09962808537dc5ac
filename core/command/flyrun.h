#pragma once

#include <functional>
#include <ostream>

#include "command/assembly.h"

namespace flowhand {

/// What came out of a run that was flown without a window.
struct FlownRun {
    RunSnapshot snapshot;
    std::vector<Event> events;
};

/// Flies a run of scripted hands as fast as the computer can. `show` gets each event as it happens.
[[nodiscard]] FlownRun flyScripted(RunParts parts, const std::function<void(const Event&)>& show);

/// Flies a run by the devices in real time, on the calling thread, until it is over or `isStopping` says so (Ctrl-C).
/// `say` gets notices and what the set-up still wants, each once. With `isWaived` the run begins although controls are
/// not where the start wants them.
[[nodiscard]] FlownRun flyLive(RunParts parts, const Clock& clock, Time origin, bool isWaived,
                               const std::function<bool()>& isStopping, const std::function<void(const Event&)>& show,
                               const std::function<void(const std::string&)>& say);

} // namespace flowhand
