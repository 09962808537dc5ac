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

double combine(Kind kind, double a, double b) {
    if (std::isnan(a) || std::isnan(b))
        return kUnknownNumber;
    switch (kind) {
    case Kind::Add:
        return finiteOrUnknown(a + b);
    case Kind::Subtract:
        return finiteOrUnknown(a - b);
    case Kind::Multiply:
        return finiteOrUnknown(a * b);
    case Kind::Divide:
        return b == 0.0 ? kUnknownNumber : finiteOrUnknown(a / b);
    case Kind::Smaller:
        return std::min(a, b);
    default:
        return std::max(a, b);
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

double Expression::evaluate(const std::vector<Value>& values) const {
    double stack[kDeepestStack];
    int top = -1;
    for (const CalculationStep& step : m_steps) {
        switch (step.kind) {
        case Kind::Constant:
            stack[++top] = step.number;
            break;
        case Kind::Signal:
            stack[++top] = values[indexOf(step.signal)].number();
            break;
        case Kind::Scale:
            stack[top] = finiteOrUnknown(stack[top] * step.number);
            break;
        case Kind::Negate:
            stack[top] = -stack[top];
            break;
        case Kind::Absolute:
            stack[top] = std::fabs(stack[top]);
            break;
        default:
            --top;
            stack[top] = combine(step.kind, stack[top], stack[top + 1]);
            break;
        }
    }
    assert(top == 0);
    return finiteOrUnknown(stack[0]);
}

} // namespace flowhand
