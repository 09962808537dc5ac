#include "condition/margins.h"

#include <algorithm>
#include <cmath>

namespace flowhand {

using Kind = ProgramNode::Kind;

Margins::Margins(const Condition& condition, Time start)
    : m_condition(condition), m_program(&m_condition.program()), m_reference(keyAt(start)),
      m_comparisons(m_program->comparisons.size()), m_nodes(m_program->nodes.size()),
      m_isInside(m_program->nodes.size(), false) {
    if (!m_program->movements.empty())
        m_travel.emplace(condition, start);
    for (const ProgramNode& node : m_program->nodes) {
        if (node.kind == Kind::Rise)
            m_states.emplace_back(Rise{});
        else if (node.kind == Kind::Moved)
            m_states.emplace_back(std::monostate{});
        else if (remembers(node.kind))
            m_states.emplace_back(Window{KeyWindow(node), {}});
    }
    for (std::size_t i = m_program->nodes.size(); i-- > 0;) {
        const ProgramNode& node = m_program->nodes[i];
        const bool isInside = m_isInside[i] || remembers(node.kind);
        for (const std::uint32_t child : {node.left, node.right})
            if (child != ProgramNode::kNone)
                m_isInside[child] = isInside;
    }
}

Robust Margins::robust(double value, std::size_t unit) const {
    const MarginUnit& in = m_program->units[unit];
    const double inSignalUnit = value * in.toSignalUnit;
    return {inSignalUnit * in.toRelative, inSignalUnit, static_cast<std::uint32_t>(unit)};
}

RobustPair Margins::compared(const Comparison& comparison, const std::vector<Value>& values) const {
    if (comparison.isDiscrete) {
        const Kleene is = holds(comparison, values);
        return {isCertain(is) ? kSurely : kSurelyNot, isPossible(is) ? kSurely : kSurelyNot};
    }
    const Sides sides = sidesOf(comparison, values);
    const double apart = sides.right - sides.left;
    if (std::isnan(apart))
        return {};
    switch (comparison.comparator) {
    case Comparator::Less:
    case Comparator::LessEqual:
        return both(robust(apart, comparison.unit));
    case Comparator::Greater:
    case Comparator::GreaterEqual:
        return both(robust(-apart, comparison.unit));
    case Comparator::Equal:
        return both(robust(-std::fabs(apart), comparison.unit));
    case Comparator::NotEqual:
        break;
    }
    return both(robust(std::fabs(apart), comparison.unit));
}

void Margins::step(Key now, const std::vector<Value>& values) {
    advance(now - 1);
    for (std::size_t i = 0; i < m_comparisons.size(); ++i)
        m_comparisons[i] = compared(m_program->comparisons[i], values);
    if (m_travel)
        m_travel->refreshAll(values);
    evaluate(now);
}

void Margins::setReference(Time reference, Key now) {
    advance(now);
    m_reference = keyAt(reference);
    if (m_travel)
        m_travel->setReference(reference);
    evaluate(now);
}

RobustPair Margins::at(Key now) {
    advance(now);
    if (m_next <= now)
        evaluate(now);
    return m_nodes.back();
}

void Margins::advance(Key now) {
    while (m_nextInside <= now)
        evaluate(m_nextInside);
}

void Margins::evaluate(Key now) {
    m_now = now;
    m_next = m_nextInside = kNever;
    if (m_travel) {
        static_cast<void>(m_travel->step(now));
        m_next = m_nextInside = m_travel->next();
    }
    for (std::size_t i = 0; i < m_nodes.size(); ++i) {
        const ProgramNode& node = m_program->nodes[i];
        Key next = kNever;
        switch (node.kind) {
        case Kind::Constant:
            m_nodes[i] = both(node.constant == Kleene::True ? kSurely : kSurelyNot);
            break;
        case Kind::Comparison:
            m_nodes[i] = m_comparisons[node.item];
            break;
        case Kind::Not:
            m_nodes[i] = -m_nodes[node.right];
            break;
        case Kind::And:
            m_nodes[i] = least(m_nodes[node.left], m_nodes[node.right]);
            break;
        case Kind::Or:
            m_nodes[i] = greatest(m_nodes[node.left], m_nodes[node.right]);
            break;
        default:
            m_nodes[i] = look(node, now, next);
            break;
        }
        m_next = std::min(m_next, next);
        if (m_isInside[i])
            m_nextInside = std::min(m_nextInside, next);
    }
}

RobustPair Margins::look(const ProgramNode& node, Key now, Key& next) {
    State& state = m_states[node.state];
    if (Window* asWindow = std::get_if<Window>(&state))
        return window(*asWindow, node, now, next);
    if (Rise* asRise = std::get_if<Rise>(&state))
        return rise(*asRise, now, m_nodes[node.right], next);
    return moved(node);
}

RobustPair Margins::window(Window& state, const ProgramNode& node, Key now, Key& next) {
    const RobustPair left = node.kind == Kind::Since ? m_nodes[node.left] : both(kSurely);
    const bool isHeld = node.kind == Kind::Held;
    const RobustPair right = m_nodes[node.right];
    const RobustPair highest = state.highest.step(state.window, now, isHeld ? -right : right, left);
    next = state.highest.next(state.window);
    if (!isHeld)
        return highest;
    const Key due = m_reference + state.window.longest;
    if (now >= due)
        return -highest;
    next = std::min(next, due);
    return both(kSurelyNot);
}

RobustPair Margins::rise(Rise& state, Key now, const RobustPair& operand, Key& next) const {
    if (now != state.now) {
        state.before = state.operand;
        state.now = now;
    }
    state.operand = operand;
    const RobustPair after = least(operand, -operand);
    const RobustPair is = isMoment(now) ? least(operand, -state.before) : after;
    next = is == after ? kNever : now + 1;
    return is;
}

RobustPair Margins::moved(const ProgramNode& node) const {
    const Movement& movement = m_program->movements[node.item];
    const Watch::Travel certain = m_travel->certainTravel(node);
    const Watch::Travel possible = m_travel->possibleTravel(node);
    const RobustPair stretch = node.right == ProgramNode::kNone ? both(kSurely) : m_nodes[node.right];
    return least(RobustPair{robust(certain.beyond(movement.distance), movement.unit),
                            robust(possible.beyond(movement.distance), movement.unit)},
                 stretch);
}

Margin marginOf(const ConditionProgram& program, const RobustPair& robust, Kleene truth) {
    if (truth == Kleene::Unknown)
        return {};
    const Robust& decides = truth == Kleene::True ? robust.low : robust.high;
    if (std::isinf(decides.value))
        return {decides.value, kNoSignal};
    return {decides.value + 0.0, program.units[decides.unit].signal}; // + 0.0: no negative zero
}

} // namespace flowhand
