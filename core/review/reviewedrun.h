#pragma once

#include <vector>

#include "procedure/aircraftfile.h"
#include "procedure/flow.h"
#include "session/event.h"
#include "session/record.h"
#include "session/samplesbysignal.h"
#include "session/score.h"
#include "session/stretch.h"

namespace flowhand {

/// A run as it is gone through: what was recorded, and one judgement of it. Borrows all of it. Times are those of the
/// record, which count while the run is held.
struct ReviewedRun {
    const Flow& flow;
    const Aircraft& aircraft;
    const RunHeader& header;
    const SamplesBySignal& samples;
    const std::vector<Event>& events;       ///< in their order
    const std::vector<StepResult>& results; ///< by step
    const Score& score;
    Time length{};
    std::vector<Stretch> missing = {}; ///< in which samples were lost in the store; rising
};

} // namespace flowhand
