#pragma once

#include <vector>

#include "bench/finding.h"
#include "bench/series.h"

namespace flowhand {

/// How a device keeps its time.
struct DeviceHealth {
    std::size_t reports = 0;
    bool isPaced = false; ///< at its own pace; else only when something changes, and a gap means nothing
    Duration interval{};  ///< the middle one
    Duration jitter{};    ///< standard deviation of the intervals but those of dropouts
    Duration longest{};
    std::size_t dropouts = 0; ///< intervals of three and more usual ones
    double lost = 0.0;        ///< share of the time that they take
    std::vector<Finding> findings;
};

[[nodiscard]] DeviceHealth measureDevice(const DeviceSeries& device);

} // namespace flowhand
