#pragma once

#include <cstdint>
#include <limits>

namespace flowhand {

/// How far from changing, by the quantitative semantics of Donzé & Maler 2010: positive when true, negative when false.
struct Robust {
    double relative = 0.0;  ///< what is compared: the same for all comparisons of one condition
    double value = 0.0;     ///< in the unit of its signal
    std::uint32_t unit = 0; ///< in ConditionProgram::units

    bool operator==(const Robust&) const = default;
};

inline constexpr Robust kSurely{std::numeric_limits<double>::infinity(), std::numeric_limits<double>::infinity(), 0};
inline constexpr Robust kSurelyNot{-std::numeric_limits<double>::infinity(), -std::numeric_limits<double>::infinity(),
                                   0};

[[nodiscard]] constexpr Robust operator-(Robust a) {
    return {-a.relative, -a.value, a.unit};
}
[[nodiscard]] constexpr Robust least(Robust a, Robust b) {
    return b.relative < a.relative ? b : a;
}
[[nodiscard]] constexpr Robust greatest(Robust a, Robust b) {
    return b.relative > a.relative ? b : a;
}

/// With unknown signals, the least and the greatest that it may be; otherwise the same.
struct RobustPair {
    Robust low = kSurelyNot;
    Robust high = kSurely;

    bool operator==(const RobustPair&) const = default;
};

[[nodiscard]] constexpr RobustPair both(const Robust& robust) {
    return {robust, robust};
}
[[nodiscard]] constexpr RobustPair operator-(const RobustPair& a) {
    return {-a.high, -a.low};
}
[[nodiscard]] constexpr RobustPair least(const RobustPair& a, const RobustPair& b) {
    return {least(a.low, b.low), least(a.high, b.high)};
}
[[nodiscard]] constexpr RobustPair greatest(const RobustPair& a, const RobustPair& b) {
    return {greatest(a.low, b.low), greatest(a.high, b.high)};
}

} // namespace flowhand
