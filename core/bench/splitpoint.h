#pragma once

#include <array>
#include <cstdint>
#include <optional>
#include <utility>
#include <vector>

#include "rig/rigedit.h"

namespace flowhand {

/// How one axis is parted into two signals, as a rig file says it. In counts.
struct SplitPoint {
    std::array<std::pair<std::int64_t, std::int64_t>, 2> ranges; ///< idle to full of the first, and of the second
    std::int64_t split = 0;
    std::int64_t hysteresis = 0;

    /// `ranges`, `split`, `hysteresis`.
    [[nodiscard]] std::vector<RigKey> keys() const;
    /// A quarter of the shorter part.
    [[nodiscard]] std::int64_t mostEndBand() const;
};

/// From where the lever rests at idle (within `spread` counts, with noise of standard deviation `sigma`) and at its far
/// ends. The split lies beyond idle by 9 sigma and half the spread, or 1.5 % of the travel: with a hysteresis of 6
/// sigma (or half that way) idle is then 3 sigma away from being taken for the second part. Nothing when idle does not
/// lie between the ends, or the second part is shorter than four times that.
[[nodiscard]] std::optional<SplitPoint> splitPointOf(std::int64_t idle, std::int64_t first, std::int64_t second,
                                                     double sigma, double spread);

} // namespace flowhand
