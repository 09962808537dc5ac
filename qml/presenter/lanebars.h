#pragma once

#include <optional>
#include <vector>

#include <QString>

#include "review/timeline.h"
#include "store/note.h"

/// What a timeline's lanes draw, laid out once when a run is opened. Pure.
namespace flowhand {

/// Something that lasted, or a moment (from == to).
struct LaneBar {
    Time from{};
    Time to{};
    int line = 0; ///< of its lane, from above
    QString text;
    int verdict = 0; ///< Verdict::Kind
    int step = -1;
    std::optional<Time> tick; ///< the first movement, within it
};

/// The bars of one lane, in the order of their beginnings.
struct LaneBars {
    std::vector<LaneBar> bars;
    int lines = 1;
};

/// Steps from due (or the first movement, where it came before) to done or given up.
[[nodiscard]] LaneBars stepBars(const Timeline& timeline);
/// Broken guards.
[[nodiscard]] LaneBars guardBars(const Timeline& timeline);
[[nodiscard]] LaneBars callBars(const Timeline& timeline);
/// In which the run stood, or input was lost.
[[nodiscard]] LaneBars holdBars(const Timeline& timeline);
[[nodiscard]] LaneBars noteBars(const Timeline& timeline, const std::vector<Note>& notes);

/// What a step wanted of a signal, for as long as it was open.
struct LaneLimit {
    Time from{};
    Time to{};
    int step = -1;
    bool isBand = false; ///< its margin was judged against the middle of it
    std::vector<ValueRange> ranges;
};

/// By SignalId.
[[nodiscard]] std::vector<std::vector<LaneLimit>> laneLimits(const Timeline& timeline);

/// What became of a step, as one of the symbols.
[[nodiscard]] int verdictOfStep(const ReviewedRun& run, std::size_t step);

} // namespace flowhand
