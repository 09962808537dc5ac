#include "progress/forgetting.h"

#include <algorithm>
#include <cmath>

namespace flowhand {

double Memory::halfLifeDays() const {
    return std::clamp(std::exp2(static_cast<double>(right - wrong)), kShortestHalfLife, kLongestHalfLife);
}

double Memory::strengthAt(std::int64_t unixMillis) const {
    const double days = static_cast<double>(unixMillis - lastUnixMillis) / static_cast<double>(kDayMillis);
    return std::exp2(-std::max(days, 0.0) / halfLifeDays());
}

std::int64_t Memory::dueUnixMillis() const {
    if (!isLastPassed)
        return lastUnixMillis;
    return lastUnixMillis + std::llround(halfLifeDays() * static_cast<double>(kDayMillis));
}

Memory memoryOf(const std::vector<RunMoment>& runs) {
    Memory memory;
    bool isFirst = true;
    for (const RunMoment& run : runs) {
        if (isFirst || run.unixMillis - memory.lastUnixMillis > kSittingGapMillis)
            ++(run.isPassed ? memory.right : memory.wrong);
        memory.lastUnixMillis = run.unixMillis;
        memory.isLastPassed = run.isPassed;
        isFirst = false;
    }
    return memory;
}

} // namespace flowhand
