#pragma once

#include <vector>

#include "procedure/library.h"
#include "progress/plan.h"

namespace flowhand {

/// How a pilot gets on, on one rig (or on all, where that was asked for). Derived from the runs and the time alone.
/// Formulas: README.md.
struct Progress {
    std::vector<FlowProgress> flows; ///< in the order of the flight; those that are no longer there last
    Plan plan;
};

[[nodiscard]] Progress progressOf(const std::vector<PractisedRun>& runs, const std::vector<KnownFlow>& known,
                                  const Moment& now);

/// The flows of a library, an aircraft after the other, each in the order of the flight.
[[nodiscard]] std::vector<KnownFlow> knownFlows(const std::vector<AircraftFolder>& library);

/// What the plan rests on and how far that is proven, for whoever reads it.
[[nodiscard]] Phrase forgettingNote();

} // namespace flowhand
