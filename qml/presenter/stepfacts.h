#pragma once

#include <vector>

#include "presenter/controlmodel.h"
#include "presenter/rows.h"
#include "presenter/verdict.h"
#include "procedure/flow.h"
#include "session/run.h"

/// What a run's plain values become on screen: rows and words. Pure.
namespace flowhand {

/// A name of the files as a person writes it: "holding_point" as "Holding point".
[[nodiscard]] QString titleOfName(const std::string& name);
/// "you", "partner", "Cockpit", "Ground".
[[nodiscard]] QString personName(const std::string& seat, const SessionSetup& setup);
[[nodiscard]] StepRow stepRow(const Flow& flow, const RunSnapshot& snapshot, const SessionSetup& setup, int step);
/// Where the step's controls have to go, as far as its condition says so of each control alone.
[[nodiscard]] std::vector<TargetRow> targetRows(const Step& step, const RunSnapshot& snapshot,
                                                const ControlModel& controls);
[[nodiscard]] std::vector<TargetRow> setUpRows(const std::vector<SetUpItem>& items, const RunSnapshot& snapshot,
                                               const ControlModel& controls);
/// Worst first; what the floor gave back stays last.
[[nodiscard]] std::vector<LedgerRow> ledgerRows(const Score& score);
[[nodiscard]] std::vector<MotionRow> motionRows(const Aircraft& aircraft, const RunSnapshot& snapshot);

/// How a loss is shown.
[[nodiscard]] Verdict::Kind lossKind(LossKind what);
/// "88 % or more", "−5 to 5°".
[[nodiscard]] QString stretchText(const Signal& signal, double low, double high);

/// 95,500 milli-points as "95.5".
[[nodiscard]] QString shownPoints(std::int64_t milliPoints);

} // namespace flowhand
