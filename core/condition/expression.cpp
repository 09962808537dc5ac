#include "condition/expression.h"

#include <algorithm>
#include <cassert>
#include <cmath>
#include <limits>

namespace flowhand {

namespace {

using Kind = CalculationStep::Kind;

constexpr double kUnknownNumber = std::numeric_limits<double>::quiet_NaN();

double finiteOrUnknown(double number) {
    return std::isfinite(number) ? number : kUnknownNumber;
}

/// `number`, rounded once more than what `doubt` says.
Calculated rounded(double number, double doubt) {
    return {finiteOrUnknown(number), doubt + kRounding * std::fabs(number)};
}

/// The doubts add up to first order: J. H. Wilkinson, Rounding Errors in Algebraic Processes (1963), running error
/// analysis; from memory.
Calculated combine(Kind kind, const Calculated& a, const Calculated& b) {
    if (std::isnan(a.number) || std::isnan(b.number))
        return {kUnknownNumber};
    switch (kind) {
    case Kind::Add:
        return rounded(a.number + b.number, a.doubt + b.doubt);
    case Kind::Subtract:
        return rounded(a.number - b.number, a.doubt + b.doubt);
    case Kind::Multiply:
        return rounded(a.number * b.number, std::fabs(a.number) * b.doubt + std::fabs(b.number) * a.doubt);
    case Kind::Divide:
        if (std::fabs(b.number) <= b.doubt)
            return {kUnknownNumber};
        return rounded(a.number / b.number, (a.doubt + std::fabs(a.number / b.number) * b.doubt) / std::fabs(b.number));
    case Kind::Smaller:
        return b.number < a.number ? b : a;
    default:
        return a.number < b.number ? b : a;
    }
}

} // namespace

bool Expression::isConstant() const {
    return std::none_of(m_steps.begin(), m_steps.end(), [](const CalculationStep& step) {
        return step.kind == Kind::Signal;
    });
}

int Expression::deepest() const {
    int depth = 0;
    int deepest = 0;
    for (const CalculationStep& step : m_steps) {
        if (step.kind == Kind::Constant || step.kind == Kind::Signal)
            ++depth;
        else if (step.kind >= Kind::Add)
            --depth;
        deepest = std::max(deepest, depth);
    }
    return deepest;
}

Calculated Expression::calculate(const std::vector<Value>& values) const {
    Calculated stack[kDeepestStack];
    int top = -1;
    for (const CalculationStep& step : m_steps) {
        switch (step.kind) {
        case Kind::Constant:
            stack[++top] = rounded(step.number, 0.0);
            break;
        case Kind::Signal:
            stack[++top] = rounded(values[indexOf(step.signal)].number(), 0.0);
            break;
        case Kind::Scale:
            stack[top] = combine(Kind::Multiply, stack[top], rounded(step.number, kRounding * step.number));
            break;
        case Kind::Negate:
            stack[top].number = -stack[top].number;
            break;
        case Kind::Absolute:
            stack[top].number = std::fabs(stack[top].number);
            break;
        default:
            --top;
            stack[top] = combine(step.kind, stack[top], stack[top + 1]);
            break;
        }
    }
    assert(top == 0);
    return {finiteOrUnknown(stack[0].number), stack[0].doubt};
}

} // namespace flowhand
