#pragma once

#include <vector>

#include <QList>
#include <QPointF>

#include "presenter/progressrows.h"
#include "progress/progress.h"

namespace flowhand {

// What the Progress place shows of a record, as rows and points.

[[nodiscard]] std::vector<PlannedRow> plannedRows(const Plan& plan);
[[nodiscard]] std::vector<AheadRow> aheadRows(const Plan& plan, const Moment& now);
/// `library` says where each flow lies on the ribbon.
[[nodiscard]] std::vector<FlownFlowRow> flownFlowRows(const Progress& progress,
                                                      const std::vector<AircraftFolder>& library, const Moment& now);
[[nodiscard]] std::vector<StepRateRow> stepRateRows(const FlowProgress& flow);

/// A point a run: its number, and its points (0..100).
[[nodiscard]] QList<QPointF> scorePoints(const FlowProgress& flow);
/// The same of the pace in seconds; runs without one are left out.
[[nodiscard]] QList<QPointF> pacePoints(const FlowProgress& flow);
/// The learning curve at each run and at the next; empty: there is none.
[[nodiscard]] QList<QPointF> curvePoints(const FlowProgress& flow);
/// The numbers of the runs that passed.
[[nodiscard]] QList<int> passedRuns(const FlowProgress& flow);

} // namespace flowhand
