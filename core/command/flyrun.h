#pragma once

#include <functional>
#include <ostream>

#include "command/assembly.h"

namespace flowhand {

/// What came out of a run that was flown without a window.
struct FlownRun {
    RunSnapshot snapshot;
    std::vector<Event> events;
    std::vector<SetUpItem> setUp; ///< of a run that was left waiting: for what
};

/// Flies a run of scripted or recorded hands as fast as the computer can. It begins with the step `from`, if that is
/// not empty. `show` gets each event as it happens. With `isWaived` the run begins although controls are not where the
/// start wants them.
[[nodiscard]] FlownRun flyScripted(RunParts parts, const std::string& from, bool isWaived,
                                   const std::function<void(const Event&)>& show);

/// A line for each control that is not where the start wants it, with a line break before it.
[[nodiscard]] std::string wantedText(const std::vector<SetUpItem>& items, const Aircraft& aircraft);

/// Flies a run by the devices in real time, on the calling thread, until it is over or `isStopping` says so (Ctrl-C).
/// `say` gets notices and what the set-up still wants, each once. With `isWaived` the run begins although controls are
/// not where the start wants them. `from` as above.
[[nodiscard]] FlownRun flyLive(RunParts parts, const Clock& clock, Time origin, const std::string& from, bool isWaived,
                               const std::function<bool()>& isStopping, const std::function<void(const Event&)>& show,
                               const std::function<void(const std::string&)>& say);

} // namespace flowhand
