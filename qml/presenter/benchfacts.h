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

/// What is plotted of a control: its range in its own unit with the bands that steps judge, or the travel of a lever
/// with gates in counts with the bands of its gates.
struct PlotScale {
    double lowest = 0.0;
    double highest = 1.0;
    std::vector<BenchTrace::Stretch> bands;
    std::vector<BenchTrace::Mark> marks;
};
[[nodiscard]] PlotScale plotScaleOf(SignalId signal, const Aircraft& aircraft, const std::vector<const Flow*>& flows,
                                    const std::vector<GateTravel>& travels);

/// What the filters of a control cost and may cost: "Filters: median of 4 ms. Late by 2 ms; 100 ms are allowed."
[[nodiscard]] QString filterSentence(const ControlFilters& filters);
/// What its measurement asks to change of them; empty: nothing.
[[nodiscard]] QString filterChangeSentence(const ControlFilters& filters);

/// Which devices are there, or what to do when none is.
[[nodiscard]] QString deviceSentence(const std::vector<BenchDevice>& devices);
/// "31 of 40 steps can be confirmed; 12 were seen working."
[[nodiscard]] QString coverageSentence(const std::vector<CoverageRow>& rows);
/// Wired controls that no step needs; empty when there are none.
[[nodiscard]] QString orphanSentence(const Aircraft& aircraft, const Coverage& coverage);
/// "0 deg, 35 deg, 70 deg": places of which a builder could give the true values; empty where there are none.
[[nodiscard]] QString valuesExample(const Signal& signal);

} // namespace flowhand
