#include "condition/watch.h"

#include <algorithm>
#include <cmath>

namespace flowhand {

using Kind = ProgramNode::Kind;

Watch::Watch(const Condition& condition, Time start)
    : m_condition(condition), m_program(&m_condition.program()), m_reference(keyAt(start)),
      m_comparisons(m_program->comparisons.size(), Kleene::Unknown),
      m_numbers(m_program->movements.size(), std::numeric_limits<double>::quiet_NaN()),
      m_nodes(m_program->nodes.size()) {
    m_states.reserve(m_program->stateCount);
    for (const ProgramNode& node : m_program->nodes) {
        if (node.kind == Kind::Once || node.kind == Kind::Since)
            m_states.emplace_back(Window{KeyWindow(node), {}, {}});
        else if (node.kind == Kind::Held)
            m_states.emplace_back(Held{});
        else if (node.kind == Kind::Rise)
            m_states.emplace_back(TruthRise{});
        else if (node.kind == Kind::Moved)
            m_states.emplace_back(Moved{});
    }
}

bool Watch::refresh(std::size_t index, const std::vector<Value>& values) {
    if (index < m_comparisons.size()) {
        const Kleene is = holds(m_program->comparisons[index], values);
        const bool isNew = is != m_comparisons[index];
        m_comparisons[index] = is;
        return isNew;
    }
    index -= m_comparisons.size();
    const double number = m_program->movements[index].expression.evaluate(values);
    const bool isNew = number != m_numbers[index] && !(std::isnan(number) && std::isnan(m_numbers[index]));
    m_numbers[index] = number;
    return isNew;
}

void Watch::refreshAll(const std::vector<Value>& values) {
    for (std::size_t i = 0; i < inputCount(); ++i)
        refresh(i, values);
}

void Watch::setReference(Time reference) {
    m_reference = keyAt(reference);
    for (State& state : m_states)
        if (Moved* moved = std::get_if<Moved>(&state))
            moved->open.clear();
}

Kleene Watch::step(Key now) {
    m_next = kNever;
    for (std::size_t i = 0; i < m_nodes.size(); ++i) {
        const ProgramNode& node = m_program->nodes[i];
        switch (node.kind) {
        case Kind::Constant:
            m_nodes[i] = node.constant;
            break;
        case Kind::Comparison:
            m_nodes[i] = m_comparisons[node.item];
            break;
        case Kind::Not:
            m_nodes[i] = !m_nodes[node.right];
            break;
        case Kind::And:
            m_nodes[i] = m_nodes[node.left] && m_nodes[node.right];
            break;
        case Kind::Or:
            m_nodes[i] = m_nodes[node.left] || m_nodes[node.right];
            break;
        default:
            m_nodes[i] = look(node, now);
            break;
        }
    }
    return m_nodes.back();
}

Kleene Watch::look(const ProgramNode& node, Key now) {
    State& state = m_states[node.state];
    if (Window* asWindow = std::get_if<Window>(&state))
        return window(*asWindow, now, node.kind == Kind::Since ? m_nodes[node.left] : Kleene::True,
                      m_nodes[node.right]);
    if (Held* asHeld = std::get_if<Held>(&state))
        return held(*asHeld, node, now, m_nodes[node.right]);
    if (Moved* asMoved = std::get_if<Moved>(&state))
        return moved(*asMoved, node, now);
    TruthRise& rise = std::get<TruthRise>(state);
    const Kleene is = rise.step(now, m_nodes[node.right]);
    m_next = std::min(m_next, rise.next());
    return is;
}

Kleene Watch::window(Window& state, Key now, Kleene left, Kleene right) {
    const bool certain = state.certain.step(state.window, now, isCertain(right), isCertain(left));
    const bool possible = state.possible.step(state.window, now, isPossible(right), isPossible(left));
    m_next = std::min({m_next, state.certain.next(), state.possible.next()});
    return kleene(certain, possible);
}

Kleene Watch::held(Held& state, const ProgramNode& node, Key now, Kleene right) {
    const Key length = keyAt(*node.longest);
    const bool certain = state.certain.step(length, m_reference, now, isCertain(right));
    const bool possible = state.possible.step(length, m_reference, now, isPossible(right));
    m_next = std::min({m_next, state.certain.next(), state.possible.next()});
    return kleene(certain, possible);
}

Kleene Watch::moved(Moved& state, const ProgramNode& node, Key now) {
    const double number = m_numbers[node.item];
    const double distance = m_program->movements[node.item].distance;
    if (node.right == ProgramNode::kNone) {
        state.open.add(number);
    } else {
        state.certain.step(now, number, isCertain(m_nodes[node.right]));
        state.possible.step(now, number, isPossible(m_nodes[node.right]));
    }
    const Travel certain = certainTravel(node);
    const Travel possible = possibleTravel(node);
    return kleene(certain.isInside && certain.beyond(distance) >= 0.0,
                  possible.isInside && possible.beyond(distance) >= 0.0);
}

Watch::Travel Watch::certainTravel(const ProgramNode& node) const {
    const Moved& state = std::get<Moved>(m_states[node.state]);
    if (node.right != ProgramNode::kNone && !isCertain(m_nodes[node.right]))
        return {};
    const Range& range = node.right == ProgramNode::kNone ? state.open : state.certain.range();
    return {range.hasNumber(), range.width(), range.doubt()};
}

Watch::Travel Watch::possibleTravel(const ProgramNode& node) const {
    const Moved& state = std::get<Moved>(m_states[node.state]);
    const bool isInside = node.right == ProgramNode::kNone || isPossible(m_nodes[node.right]);
    const Range& range = node.right == ProgramNode::kNone ? state.open : state.possible.range();
    const double width = range.hasUnknown() ? std::numeric_limits<double>::infinity() : range.width();
    return isInside ? Travel{true, width, range.doubt()} : Travel{};
}

} // namespace flowhand
