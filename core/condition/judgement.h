#pragma once

#include <vector>

#include "condition/condition.h"
#include "condition/monitor.h"
#include "condition/trace.h"

namespace flowhand {

/// How one condition went over a trace. The domain is [first row, end).
struct Judgement {
    struct Segment {
        Time from{};
        Time to{}; ///< half-open; neighbours differ
        Truth truth = Truth::Unknown;
    };
    struct Point {
        Time time{};
        Truth truth = Truth::Unknown; ///< at this instant only; differs from the segment that it lies in
    };
    struct MarginSegment {
        Time from{};
        Time to{};
        Margin margin;
    };
    std::vector<Segment> segments;
    std::vector<Point> points;
    std::vector<MarginSegment> margins; ///< where the condition is not unknown
};

/// `end` must not be before the first row; rows from it on do not count. The reference time is the first row's.
[[nodiscard]] Judgement judge(const Condition& condition, const Trace& trace, Time end);

} // namespace flowhand
