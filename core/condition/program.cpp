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

Kleene holds(const Comparison& comparison, const std::vector<Value>& values) {
    if (comparison.isThreshold)
        return compare(comparison.comparator, values[indexOf(comparison.signal)].number(), comparison.constant,
                       comparison.isDiscrete);
    return compare(comparison.comparator, comparison.left.evaluate(values), comparison.right.evaluate(values),
                   comparison.isDiscrete);
}

bool reads(const Comparison& comparison, SignalId signal) {
    return std::find(comparison.signals.begin(), comparison.signals.end(), signal) != comparison.signals.end();
}

} // namespace flowhand
