#pragma once

#include <vector>

#include "bench/workbench.h"
#include "presenter/benchrows.h"
#include "presenter/benchtrace.h"
#include "procedure/flow.h"

/// What a bench's plain values become on screen: rows and words. Pure.
namespace flowhand {

/// In the order of the cockpit's controls. `snapshot.coverage` must be there.
[[nodiscard]] std::vector<BenchControlRow> benchControlRows(const Aircraft& aircraft, const BenchSnapshot& snapshot);
/// What is wrong first.
[[nodiscard]] std::vector<FindingRow> findingRows(const std::vector<Finding>& findings);
/// The steps that need a control, those that cannot be confirmed first. `flow` < 0: of all flows.
[[nodiscard]] std::vector<CoverageRow> coverageRows(const Aircraft& aircraft, const std::vector<const Flow*>& flows,
                                                    const Coverage& coverage, int flow);
/// The bands within which steps judge the control, once each.
[[nodiscard]] std::vector<BenchTrace::Stretch> bandsOf(SignalId signal, const std::vector<const Flow*>& flows);

} // namespace flowhand
