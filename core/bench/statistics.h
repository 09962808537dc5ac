#pragma once

#include <vector>

namespace flowhand {

// Robust statistics. All are 0 of nothing.

/// The value below which a share of the values lies (0 .. 1), interpolated between the two nearest.
[[nodiscard]] double percentileOf(std::vector<double> values, double share);
[[nodiscard]] inline double medianOf(std::vector<double> values) {
    return percentileOf(std::move(values), 0.5);
}
[[nodiscard]] double meanOf(const std::vector<double>& values);
/// Standard deviation of a sample, about its mean.
[[nodiscard]] double deviationOf(const std::vector<double>& values);
/// Median absolute deviation, times 1.4826: the standard deviation of normally distributed values, whatever a few
/// outliers do.
[[nodiscard]] double robustDeviationOf(const std::vector<double>& values);

/// Bits of a converter whose range is `counts` and whose noise is `sigma`, both in counts: log2(FSR / sigma), at most
/// `converterBits`. Common practice of converter data sheets ("effective resolution").
[[nodiscard]] double effectiveBits(double counts, double sigma, double converterBits);
/// log2(FSR / 6.6 sigma): 6.6 sigma (+-3.3) is exceeded by 0.1 % of normally distributed values. At most
/// `converterBits`.
[[nodiscard]] double noiseFreeBits(double counts, double sigma, double converterBits);
/// Peak to peak of noise as converter data sheets define it.
inline constexpr double kPeakToPeakSigmas = 6.6;

struct Line {
    double slope = 0.0;
    double at0 = 0.0;
    double worst = 0.0; ///< the largest deviation from it
};
/// The straight line with the smallest largest deviation in y; x must rise. IEC 60393's 'independent linearity' is that
/// deviation as a share of the applied voltage (value from memory: the standard's text was not at hand).
[[nodiscard]] Line closestLine(const std::vector<double>& x, const std::vector<double>& y);

} // namespace flowhand
