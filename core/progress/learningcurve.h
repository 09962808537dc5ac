#pragma once

#include <cstddef>
#include <cstdint>
#include <optional>
#include <vector>

#include "base/phrase.h"

namespace flowhand {

/// The time that the n-th try took.
struct TimedTry {
    int number = 1; ///< n >= 1, counted over all tries, whether timed or not
    double seconds = 0.0;
};

/// With fewer no curve is shown: two parameters through five points say little of the sixth.
inline constexpr std::size_t kFewestForCurve = 6;

enum class CurveKind : std::uint8_t {
    PowerLaw,   ///< T = a n^-b: Newell and Rosenbloom 1981, 'Mechanisms of skill acquisition and the law of practice'
    Exponential ///< T = a e^(-b n): Heathcote, Brown and Mewhort 2000, Psychon. Bull. Rev. 7, 185-207
};

/// How the time falls with practice. No asymptote: least squares of ln T then has one answer, and a curve through few
/// runs cannot tell where the falling ends. So it is no forecast beyond the next few runs. Sources from memory.
struct LearningCurve {
    CurveKind kind = CurveKind::PowerLaw;
    double scale = 0.0;    ///< a, in s
    double rate = 0.0;     ///< b; > 0: it gets quicker
    double residual = 0.0; ///< root mean square of ln T less the curve's: 0.1 is about a tenth of T
    std::size_t tries = 0; ///< that it was fitted to

    [[nodiscard]] double secondsAt(double number) const;
};

/// Of the two kinds the one with the smaller residual; the power law where they are equal. Nothing for fewer than
/// kFewestForCurve tries of more than 0 s, or all with one number.
[[nodiscard]] std::optional<LearningCurve> learningCurve(const std::vector<TimedTry>& tries);

/// One kind's fit, by least squares of ln T over ln n or n. Two tries of different numbers at least.
[[nodiscard]] LearningCurve fittedCurve(CurveKind kind, const std::vector<TimedTry>& tries);

/// "power law of practice", "exponential".
[[nodiscard]] Phrase nameOf(CurveKind kind);

} // namespace flowhand
