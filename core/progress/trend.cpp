#include "progress/trend.h"

#include <algorithm>

namespace flowhand {

std::optional<double> trendOf(const std::vector<double>& values) {
    if (values.size() < kFewestForTrend)
        return std::nullopt;
    std::vector<double> slopes;
    slopes.reserve(values.size() * (values.size() - 1) / 2);
    for (std::size_t i = 0; i < values.size(); ++i)
        for (std::size_t j = i + 1; j < values.size(); ++j)
            slopes.push_back((values[j] - values[i]) / static_cast<double>(j - i));
    std::sort(slopes.begin(), slopes.end());
    const std::size_t middle = slopes.size() / 2;
    return slopes.size() % 2 == 1 ? slopes[middle] : (slopes[middle - 1] + slopes[middle]) / 2.0;
}

} // namespace flowhand
