#pragma once

#include <string>

#include "review/reviewedrun.h"

namespace flowhand {

// A run as tables for other programs: RFC 4180, UTF-8, lines end with CR LF, times in seconds from the start of the run
// to the microsecond, numbers with a point and as many digits as give them back exactly.

/// A line an event: time_s, event, step, guard, signal, value, unit, control, margin, margin_unit, by, text.
[[nodiscard]] std::string eventsCsv(const ReviewedRun& run);

/// A line a change: time_s, signal, value, unit, actor, origin, control. A value unknown is empty. `samples`: the
/// run's, in their order.
[[nodiscard]] std::string signalsCsv(const ReviewedRun& run, const std::vector<Sample>& samples);

} // namespace flowhand
