#pragma once

#include <string>
#include <vector>

#include "base/phrase.h"
#include "base/signal.h"
#include "base/value.h"
#include "rig/rigfile.h"

namespace flowhand {

/// What one control of a rig can make of one cockpit signal.
struct Reach {
    bool isWired = false;
    std::size_t control = 0;   ///< index into RigFile::controls
    bool hasAxis = false;      ///< it has counts to calibrate
    bool isContinuous = false; ///< a number anywhere from `lowest` to `highest`
    double lowest = 0.0;       ///< in the signal's unit
    double highest = 0.0;      ///< in the signal's unit
    std::vector<Value> values; ///< what it can be, where it is not continuous
    double sigma = 0.0;        ///< noise of a continuous one, in the signal's unit: what the rig file says ...
    std::string measured;      ///< ... or a measurement of this date (measurednoise.h)
    double perCount = 0.0;     ///< noise of so much of the unit for each raw count of it; 0 where nothing has counts
    bool isMomentary = false;
};

/// By SignalId, for the first `controlCount` signals. Made by moving the controls of `rig` in thought, so it needs no
/// device; `rig` is only fit for this afterwards.
[[nodiscard]] std::vector<Reach> reachesOf(RigFile& rig, const SignalTable& signals, std::size_t controlCount);

/// "10 % to 80 %", "up, 4, 12".
[[nodiscard]] Phrase reachText(const Reach& reach, const Signal& signal);

} // namespace flowhand
