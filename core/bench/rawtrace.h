#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "base/time.h"

namespace flowhand {

/// One input's value, changed.
struct RawChange {
    Time time{};
    std::int64_t raw = 0;
    bool isNull = false; ///< a released hat; then `raw` means nothing

    bool operator==(const RawChange&) const = default;
};

/// What one input sent over a stretch of time, as evidence keeps it: its changes and how often its device reported.
struct RawTrace {
    std::string device; ///< as the rig file names it
    std::string input;
    Time begin{};
    Time end{};
    std::uint64_t reports = 0; ///< of its device, changed or not, from begin to end
    std::vector<RawChange> changes;

    bool operator==(const RawTrace&) const = default;
};

} // namespace flowhand
