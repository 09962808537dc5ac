#pragma once

#include <optional>
#include <string>
#include <vector>

#include "bench/benchcontrol.h"
#include "bench/coverage.h"
#include "bench/reach.h"

namespace flowhand {

/// A filter may take this part of the time in which a step is on time (`within`), so that nobody is late by it ...
inline constexpr int kFilterPart = 10;
/// ... and this at most: what a training device of the upper levels may take from hand to answer (14 CFR Part 60,
/// C2A 4.a.2, transport delay). Both are our own choice.
inline constexpr Duration kMostFilterDelay = std::chrono::milliseconds(100);

/// What the steps of some flows ask of one control of the rig.
struct StepDemand {
    std::optional<double> band; ///< the narrowest that a step (or a gate) judges it in, in raw counts; none: no number
    Phrase bandOf;              ///< title of that step; of gates: "the gate '12'"
    Duration delay = kMostFilterDelay; ///< so late filters may make it
    std::string delayOf;               ///< title of the step that allows no more; empty: kMostFilterDelay does
};

/// One for each of `controls`. `reaches` are those of the same rig.
[[nodiscard]] std::vector<StepDemand> stepDemandsOf(const std::vector<BenchControl>& controls,
                                                    const std::vector<Reach>& reaches, const CoverageInput& input);

} // namespace flowhand
