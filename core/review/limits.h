#pragma once

#include <vector>

#include "procedure/aircraftfile.h"
#include "procedure/flow.h"

namespace flowhand {

/// Values of a signal between which something holds, both included; of positions and on/off their numbers.
struct ValueRange {
    double lowest = 0.0;
    double highest = 0.0;
};

/// What a step asks of one signal.
struct SignalLimits {
    SignalId signal = kNoSignal;
    std::vector<ValueRange> allowed; ///< where its condition can be true; rising, apart from each other
    std::vector<ValueRange> band;    ///< its `band`, against whose middle the margin is judged; at most one
};

/// Of each signal that the step's condition asks something of by its value, other signals being as `values` (by
/// SignalId) have them. Signals without a known range, and those of which every value or none will do, are not in it.
[[nodiscard]] std::vector<SignalLimits> limitsOf(const Step& step, const Aircraft& aircraft,
                                                 const std::vector<Value>& values);

} // namespace flowhand
