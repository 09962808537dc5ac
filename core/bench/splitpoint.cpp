#include "bench/splitpoint.h"

#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <string>

namespace flowhand {

namespace {

/// A lever that rests at idle must not read as the second part; less than this share of the travel nobody feels.
constexpr double kLeastGapShare = 0.015;
constexpr double kGapSigmas = 9.0;
constexpr double kHysteresisSigmas = 6.0;
constexpr double kClearSigmas = 3.0;

std::string pairText(const std::pair<std::int64_t, std::int64_t>& pair) {
    return "[" + std::to_string(pair.first) + ", " + std::to_string(pair.second) + "]";
}

} // namespace

std::vector<RigKey> SplitPoint::keys() const {
    return {{"ranges", "[" + pairText(ranges[0]) + ", " + pairText(ranges[1]) + "]"},
            {"split", std::to_string(split)},
            {"hysteresis", std::to_string(hysteresis)}};
}

std::int64_t SplitPoint::mostEndBand() const {
    return std::min(std::llabs(ranges[0].second - ranges[0].first), std::llabs(ranges[1].second - ranges[1].first)) / 4;
}

std::optional<SplitPoint> splitPointOf(std::int64_t idle, std::int64_t first, std::int64_t second, double sigma,
                                       double spread) {
    const double travel = std::fabs(static_cast<double>(first - second));
    const auto gap =
        static_cast<std::int64_t>(std::ceil(std::max({kGapSigmas * sigma + spread / 2, kLeastGapShare * travel, 2.0})));
    if ((first > idle) == (second > idle) || std::llabs(second - idle) <= 4 * gap || std::llabs(first - idle) <= gap)
        return std::nullopt;
    const std::int64_t away = first > idle ? -1 : 1;
    const auto most = gap - static_cast<std::int64_t>(std::ceil(kClearSigmas * sigma + spread / 2));
    const auto wanted = static_cast<std::int64_t>(std::ceil(kHysteresisSigmas * sigma));
    return SplitPoint{{std::pair(idle, first), std::pair(idle + away * 2 * gap, second)},
                      idle + away * gap,
                      std::clamp<std::int64_t>(std::max(gap / 2, wanted), 0, std::max<std::int64_t>(most, 0))};
}

} // namespace flowhand
