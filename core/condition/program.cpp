#include "condition/program.h"

#include <algorithm>
#include <cmath>

namespace flowhand {

Kleene compare(Comparator comparator, double a, double b, bool isDiscrete) {
    if (std::isnan(a) || std::isnan(b))
        return Kleene::Unknown;
    if (isDiscrete && (a < 0.0 || b < 0.0))
        return kleene(comparator == Comparator::NotEqual);
    switch (comparator) {
    case Comparator::Less:
        return kleene(a < b);
    case Comparator::LessEqual:
        return kleene(a <= b);
    case Comparator::Greater:
        return kleene(a > b);
    case Comparator::GreaterEqual:
        return kleene(a >= b);
    case Comparator::Equal:
        return kleene(a == b);
    case Comparator::NotEqual:
        break;
    }
    return kleene(a != b);
}

Sides sidesOf(const Comparison& comparison, const std::vector<Value>& values) {
    if (comparison.isThreshold)
        return {values[indexOf(comparison.signal)].number(), comparison.constant};
    const Calculated left = comparison.left.calculate(values);
    const Calculated right = comparison.right.calculate(values);
    return {left.number, isSame(left, right) ? left.number : right.number};
}

Kleene holds(const Comparison& comparison, const std::vector<Value>& values) {
    const Sides sides = sidesOf(comparison, values);
    return compare(comparison.comparator, sides.left, sides.right, comparison.isDiscrete);
}

bool reads(const Comparison& comparison, SignalId signal) {
    return std::find(comparison.signals.begin(), comparison.signals.end(), signal) != comparison.signals.end();
}

} // namespace flowhand
