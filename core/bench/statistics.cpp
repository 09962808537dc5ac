#include "bench/statistics.h"

#include <algorithm>
#include <cmath>

namespace flowhand {

namespace {

constexpr double kRobustFactor = 1.4826; ///< 1 / 0.6745, the upper quartile of the normal distribution

double bits(double ratio, double converterBits) {
    return ratio > 1.0 ? std::min(std::log2(ratio), converterBits) : 0.0;
}

} // namespace

double percentileOf(std::vector<double> values, double share) {
    if (values.empty())
        return 0.0;
    const double place = std::clamp(share, 0.0, 1.0) * static_cast<double>(values.size() - 1);
    const auto below = static_cast<std::size_t>(place);
    const auto at = values.begin() + static_cast<std::ptrdiff_t>(below);
    std::nth_element(values.begin(), at, values.end());
    if (below + 1 >= values.size())
        return *at;
    const double next = *std::min_element(at + 1, values.end());
    return *at + (next - *at) * (place - static_cast<double>(below));
}

double meanOf(const std::vector<double>& values) {
    double sum = 0.0;
    for (const double value : values)
        sum += value;
    return values.empty() ? 0.0 : sum / static_cast<double>(values.size());
}

double deviationOf(const std::vector<double>& values) {
    if (values.size() < 2)
        return 0.0;
    const double mean = meanOf(values);
    double sum = 0.0;
    for (const double value : values)
        sum += (value - mean) * (value - mean);
    return std::sqrt(sum / static_cast<double>(values.size() - 1));
}

double robustDeviationOf(const std::vector<double>& values) {
    const double middle = medianOf(values);
    std::vector<double> away;
    away.reserve(values.size());
    for (const double value : values)
        away.push_back(std::fabs(value - middle));
    return kRobustFactor * medianOf(std::move(away));
}

double effectiveBits(double counts, double sigma, double converterBits) {
    return sigma > 0.0 ? bits(counts / sigma, converterBits) : converterBits;
}

double noiseFreeBits(double counts, double sigma, double converterBits) {
    return sigma > 0.0 ? bits(counts / (kPeakToPeakSigmas * sigma), converterBits) : converterBits;
}

/// The best line runs parallel to one through two of the points; with the few points of a calibration all are tried.
Line closestLine(const std::vector<double>& x, const std::vector<double>& y) {
    Line best;
    bool isFirst = true;
    for (std::size_t i = 0; i < x.size(); ++i)
        for (std::size_t j = i + 1; j < x.size(); ++j) {
            if (!(x[j] > x[i]))
                continue;
            const double slope = (y[j] - y[i]) / (x[j] - x[i]);
            double low = y[0] - slope * x[0];
            double high = low;
            for (std::size_t k = 1; k < x.size(); ++k) {
                low = std::min(low, y[k] - slope * x[k]);
                high = std::max(high, y[k] - slope * x[k]);
            }
            if (isFirst || (high - low) / 2 < best.worst)
                best = {slope, (low + high) / 2, (high - low) / 2};
            isFirst = false;
        }
    return best;
}

} // namespace flowhand
