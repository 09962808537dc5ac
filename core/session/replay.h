#pragma once

#include <string>
#include <vector>

#include "session/record.h"
#include "session/session.h"

namespace flowhand {

/// A recorded run judged anew.
struct JudgedRun {
    std::vector<Event> events;
    std::vector<std::string> lines; ///< the events in their canonical form
    Score score;
    std::vector<StepResult> results;
};

/// Does to a session what this command did to the run.
void apply(Session& session, const RunCommand& command);

/// Judges a recorded run: the same samples and commands give the same events to the byte. Samples of one time are one
/// change; both lists are in the order of time. `end` is the run's last moment, up to which timers are served; a
/// command's time is never a sample's.
[[nodiscard]] JudgedRun judgeAgain(const Aircraft& aircraft, const Flow& flow, const SessionSetup& setup,
                                   const std::vector<Sample>& samples, const std::vector<RunCommand>& commands,
                                   Time end);

} // namespace flowhand
