#pragma once

#include <vector>

#include "presenter/reviewrows.h"
#include "report/storeddebrief.h"

/// What stored runs become on screen: rows and words. Pure.
namespace flowhand {

[[nodiscard]] std::vector<StoredRunRow> storedRunRows(const std::vector<RunSummary>& runs);

/// Worst first, with what the instructor said of each.
[[nodiscard]] std::vector<DeviationRow> deviationRows(const Timeline& timeline, const std::vector<Note>& notes);
/// The row that these figures lead to, as DeviationRow::keys has them; -1: none.
[[nodiscard]] int deviationOfKeys(const QString& figures, int count);
[[nodiscard]] std::vector<ReviewStepRow> reviewStepRows(const Timeline& timeline);

/// The separate times of a step, each where it happened; then what it asked of its signals and what they were, and
/// what was going on.
[[nodiscard]] std::vector<EvidenceRow> evidenceRows(const Timeline& timeline, std::size_t step);
/// When a guard was broken, and for how long.
[[nodiscard]] std::vector<EvidenceRow> guardEvidenceRows(const Timeline& timeline, std::size_t guard);
/// Of the run as a whole: help, slowed time, simulated input, what the rig could not observe.
[[nodiscard]] std::vector<RemarkRow> remarkRows(const DebriefInput& input);
/// Errors that were noticed, or not, and how long it took to put them right.
[[nodiscard]] std::vector<RemarkRow> repairRows(const Timeline& timeline);

} // namespace flowhand
