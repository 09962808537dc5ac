#include "condition/comparing.h"

#include <algorithm>
#include <cmath>

#include "base/names.h"

namespace flowhand {

namespace {

using Kind = Syntax::Kind;

Comparator mirrored(Comparator comparator) {
    switch (comparator) {
    case Comparator::Less:
        return Comparator::Greater;
    case Comparator::LessEqual:
        return Comparator::GreaterEqual;
    case Comparator::Greater:
        return Comparator::Less;
    case Comparator::GreaterEqual:
        return Comparator::LessEqual;
    default:
        return comparator;
    }
}

} // namespace

std::optional<std::uint32_t> Comparing::refuse(const Syntax& tree, std::string code, std::string message) {
    m_complaints.error(tree.begin, std::move(code), std::move(message));
    return std::nullopt;
}

std::optional<SignalId> Comparing::signalOf(const Syntax& tree, SignalKind kind) const {
    if (tree.kind != Kind::Word)
        return std::nullopt;
    const std::optional<SignalId> id = m_scope.signals.find(tree.text);
    return id && m_scope.signals[*id].kind == kind ? id : std::nullopt;
}

std::optional<std::uint32_t> Comparing::comparison(const Syntax& tree) {
    const Syntax& left = tree.children[0];
    const Syntax& right = tree.children[1];
    if (const auto signal = signalOf(left, SignalKind::Position))
        return position(tree, *signal, right, tree.comparator);
    if (const auto signal = signalOf(right, SignalKind::Position))
        return position(tree, *signal, left, mirrored(tree.comparator));
    if (const auto signal = signalOf(left, SignalKind::OnOff))
        return onOff(tree, *signal, right);
    if (const auto signal = signalOf(right, SignalKind::OnOff))
        return onOff(tree, *signal, left);
    return numbers(tree);
}

std::optional<std::uint32_t> Comparing::standAlone(const Syntax& word) {
    const std::optional<SignalId> id = m_scope.signals.find(word.text);
    if (!id) {
        m_arithmetic.complainOfUnknown(word);
        return std::nullopt;
    }
    const Signal& signal = m_scope.signals[*id];
    if (signal.kind == SignalKind::OnOff)
        return threshold(word, *id, Comparator::Equal, 1.0, true);
    const bool isNumber = signal.kind == SignalKind::Number;
    const std::string example = isNumber ? "10" + (signal.unit.symbol.empty() ? "" : " " + signal.unit.symbol)
                                : signal.positions.empty() ? "..."
                                                           : signal.positions.front();
    return refuse(word, "wrong-type",
                  "'" + word.text + "' is a " + (isNumber ? "number" : "position") +
                      ", not on or off; compare it, as in '" + word.text + (isNumber ? " < " : " == ") + example + "'");
}

std::optional<std::string> Comparing::positionName(const Signal& signal, const Syntax& other) {
    switch (other.kind) {
    case Kind::Word:
    case Kind::Quoted:
        return other.text;
    case Kind::Number:
        if (other.unit.empty())
            return other.text;
        break;
    case Kind::Aircraft: {
        const AircraftValue* value = m_arithmetic.aircraftValue(other);
        if (value == nullptr)
            return std::nullopt;
        if (value->isWord)
            return value->word;
        break;
    }
    default:
        break;
    }
    m_complaints.error(other.begin, "wrong-type",
                       m_complaints.quoted(other.begin, other.end) + " is not a position; " + signal.name + " has " +
                           joined(signal.positions, ", "));
    return std::nullopt;
}

std::optional<std::uint32_t> Comparing::position(const Syntax& tree, SignalId id, const Syntax& other,
                                                 Comparator comparator) {
    const Signal& signal = m_scope.signals[id];
    const std::optional<std::string> name = positionName(signal, other);
    if (!name)
        return std::nullopt;
    const auto at = std::find(signal.positions.begin(), signal.positions.end(), *name);
    if (at != signal.positions.end())
        return threshold(tree, id, comparator, static_cast<double>(at - signal.positions.begin()), true);
    if (const auto second = signalOf(other, SignalKind::Position)) {
        if (m_scope.signals[*second].positions != signal.positions)
            return refuse(other, "wrong-type",
                          signal.name + " and " + other.text + " have different positions and cannot be compared");
        const bool isLeft = tree.children[0].begin != other.begin;
        return isLeft ? twoSignals(tree, id, *second) : twoSignals(tree, *second, id);
    }
    return refuse(other, "unknown-position",
                  "'" + *name + "' is not a position of " + signal.name + ", which has " +
                      joined(signal.positions, ", ") + nearestHint(*name, signal.positions));
}

std::optional<std::uint32_t> Comparing::onOff(const Syntax& tree, SignalId id, const Syntax& other) {
    if (tree.comparator != Comparator::Equal && tree.comparator != Comparator::NotEqual)
        return refuse(tree, "wrong-type", "on and off have no order; compare with '==' or '!='");
    if (const auto second = signalOf(other, SignalKind::OnOff))
        return twoSignals(tree, id, *second);
    if (other.kind != Kind::Truth)
        return refuse(other, "wrong-type",
                      "'" + m_scope.signals[id].name +
                          "' is on or off; compare it with true or false, or let it stand alone");
    return threshold(tree, id, tree.comparator, other.text == "true" ? 1.0 : 0.0, true);
}

std::optional<std::uint32_t> Comparing::numbers(const Syntax& tree) {
    std::optional<Quantity> left = m_arithmetic.quantity(tree.children[0]);
    std::optional<Quantity> right = m_arithmetic.quantity(tree.children[1]);
    if (!left || !right)
        return std::nullopt;
    Comparator comparator = tree.comparator;
    if (left->expression.isConstant() && !right->expression.isConstant()) {
        std::swap(left, right);
        comparator = mirrored(comparator);
    }
    if (!m_arithmetic.convertTo(*left, *right))
        return std::nullopt;
    const auto& steps = left->expression.steps();
    if (steps.size() == 1 && right->expression.isConstant() && !left->expression.isConstant()) {
        const std::uint32_t node =
            threshold(tree, steps[0].signal, comparator, right->expression.steps()[0].number, false);
        m_program.comparisons.back().unit = marginUnit(*left);
        return node;
    }
    Comparison result;
    result.comparator = comparator;
    result.left = left->expression;
    result.right = right->expression;
    addSignals(left->signals, right->signals);
    result.signals = left->signals;
    result.unit = marginUnit(*left);
    return add(tree, std::move(result));
}

std::size_t Comparing::marginUnit(const Quantity& quantity) {
    MarginUnit result;
    result.toSignalUnit = quantity.unit.factor;
    for (const SignalId id : quantity.signals) {
        const Unit& unit = m_scope.signals[id].unit;
        if (unit.dimension == quantity.unit.dimension) {
            result.signal = id;
            result.toSignalUnit = unit.factor == quantity.unit.factor ? 1.0 : quantity.unit.factor / unit.factor;
            break;
        }
    }
    m_program.units.push_back(result);
    m_program.hasFiniteMargin = true;
    return m_program.units.size() - 1;
}

std::uint32_t Comparing::threshold(const Syntax& tree, SignalId signal, Comparator comparator, double constant,
                                   bool isDiscrete) {
    Comparison result;
    result.comparator = comparator;
    result.isThreshold = true;
    result.isDiscrete = isDiscrete;
    result.signal = signal;
    result.constant = constant;
    result.signals = {signal};
    return add(tree, std::move(result));
}

std::uint32_t Comparing::twoSignals(const Syntax& tree, SignalId left, SignalId right) {
    Comparison result;
    result.comparator = tree.comparator;
    result.isDiscrete = true;
    result.left.push({CalculationStep::Kind::Signal, 0.0, left});
    result.right.push({CalculationStep::Kind::Signal, 0.0, right});
    addSignals(result.signals, {left, right});
    return add(tree, std::move(result));
}

std::uint32_t Comparing::add(const Syntax& tree, Comparison comparison) {
    addSignals(m_program.signals, comparison.signals);
    ProgramNode node;
    node.kind = ProgramNode::Kind::Comparison;
    node.item = static_cast<std::uint32_t>(m_program.comparisons.size());
    node.begin = comparison.begin = tree.begin;
    node.end = comparison.end = tree.end;
    m_program.comparisons.push_back(std::move(comparison));
    m_program.nodes.push_back(node);
    return static_cast<std::uint32_t>(m_program.nodes.size() - 1);
}

} // namespace flowhand
