#pragma once

#include <string>
#include <vector>

#include "review/timeline.h"

namespace flowhand {

// Pictures of a run for a printed page, as inline SVG, black on white; what is shaded is hatched or grey, so that it
// survives a black and white printer. All are 960 units wide, over the same stretch of time.

/// The lanes: calls, each step from due to done with its first movement, guards, holds.
[[nodiscard]] std::string lanesSvg(const Timeline& timeline);

/// One signal over the run, with the values that steps wanted of it while they were open, and gaps as gaps.
[[nodiscard]] std::string signalSvg(const Timeline& timeline, SignalId signal);

/// The signals worth a plot: the speeds, then those that steps judged; of them what moved, at most `most`.
[[nodiscard]] std::vector<SignalId> signalsToPlot(const Timeline& timeline, std::size_t most);

} // namespace flowhand
