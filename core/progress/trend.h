#pragma once

#include <cstddef>
#include <optional>
#include <vector>

namespace flowhand {

/// With fewer runs no trend is told: three points make three slopes, and one odd run bends the middle one.
inline constexpr std::size_t kFewestForTrend = 4;

/// Change from one value to the next: the median of the slopes between all pairs, which one odd value does not move
/// (Theil 1950; Sen 1968, 'Estimates of the regression coefficient based on Kendall's tau', J. Am. Stat. Assoc. 63,
/// 1379-1389; from memory). In the values' unit a value. Nothing for fewer than kFewestForTrend.
[[nodiscard]] std::optional<double> trendOf(const std::vector<double>& values);

} // namespace flowhand
