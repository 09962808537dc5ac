#pragma once

#include <cmath>
#include <cstdint>
#include <limits>
#include <vector>

#include "base/signal.h"
#include "base/value.h"

namespace flowhand {

/// One step of a calculation on a stack of numbers.
struct CalculationStep {
    enum class Kind : std::uint8_t {
        Constant, ///< pushes `number`
        Signal,   ///< pushes its value, in its own unit
        Scale,    ///< times `number`: a change of unit
        Negate,
        Absolute,
        Add, ///< from here on: takes two, pushes one
        Subtract,
        Multiply,
        Divide,
        Smaller,
        Larger
    };
    Kind kind = Kind::Constant;
    double number = 0.0;
    SignalId signal = kNoSignal;
};

/// A binary fraction is not the decimal that was written, by at most this share of it.
inline constexpr double kRounding = std::numeric_limits<double>::epsilon() / 2.0;

/// A number that was calculated, and how far rounding may have led it from what decimals would give: 0.1 + 0.2 is 0.3.
struct Calculated {
    double number = 0.0;
    double doubt = 0.0;
};

/// Whether decimals may be the same.
[[nodiscard]] inline bool isSame(const Calculated& a, const Calculated& b) {
    return std::fabs(a.number - b.number) <= a.doubt + b.doubt;
}

/// Most numbers on the stack at once; deeper ones are refused when compiled.
inline constexpr int kDeepestStack = 64;

/// Arithmetic on signals, in postfix order.
class Expression {
public:
    void push(CalculationStep step) { m_steps.push_back(step); }
    void append(const Expression& other) { m_steps.insert(m_steps.end(), other.m_steps.begin(), other.m_steps.end()); }
    [[nodiscard]] const std::vector<CalculationStep>& steps() const { return m_steps; }
    [[nodiscard]] bool isConstant() const;
    [[nodiscard]] int deepest() const;

    /// NaN (unknown) when a signal in it is unknown or a result is not finite, as after a division by 0.
    [[nodiscard]] double evaluate(const std::vector<Value>& values) const { return calculate(values).number; }
    [[nodiscard]] Calculated calculate(const std::vector<Value>& values) const;

private:
    std::vector<CalculationStep> m_steps;
};

} // namespace flowhand
