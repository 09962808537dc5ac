#include "presenter/screenhands.h"

#include <algorithm>
#include <cmath>

namespace flowhand {

namespace {

/// A held key takes a lever over its whole travel in two seconds, a calm push.
constexpr double kTravelSeconds = 2.0;
/// A spring is quicker than the hand.
constexpr double kSpringSeconds = 0.8;
constexpr double kNudgesPerTravel = 20.0;

bool isNumber(const ControlState& control) {
    return control.signal().kind == SignalKind::Number;
}

double travel(const ControlState& control) {
    return control.highest() - control.lowest();
}

Value valueFor(const ControlState& control, double value) {
    switch (control.signal().kind) {
    case SignalKind::Number:
        return Value::number(std::clamp(value, control.lowest(), control.highest()));
    case SignalKind::OnOff:
        return Value::onOff(value > 0.5);
    case SignalKind::Position:
        break;
    }
    const auto last = static_cast<double>(control.signal().positions.size()) - 1.0;
    return Value::position(static_cast<int>(std::lround(std::clamp(value, 0.0, last))));
}

} // namespace

ScreenHands::ScreenHands(const ControlModel& controls, Move move) : m_controls(controls), m_move(std::move(move)) {}

ControlState* ScreenHands::named(const std::string& name) const {
    for (ControlState* control : m_controls.all())
        if (control->signal().name == name)
            return control;
    return nullptr;
}

double ScreenHands::current(const ControlState& control) const {
    const auto put = m_put.find(const_cast<ControlState*>(&control));
    if (put != m_put.end())
        return put->second;
    return control.isKnown() ? control.value() : control.restValue();
}

void ScreenHands::set(ControlState& control, double value) {
    if (!control.isMovable())
        return;
    const Value wanted = valueFor(control, value);
    m_put[&control] = wanted.number();
    m_move(control.id(), wanted);
}

void ScreenHands::step(ControlState& control, int direction) {
    set(control, std::max(0.0, current(control) + direction));
}

void ScreenHands::toggle(ControlState& control) {
    set(control, current(control) > 0.5 ? 0.0 : 1.0);
}

void ScreenHands::apply(const KeyBinding& binding, ControlState& control) {
    if (binding.action == KeyAction::Toggle)
        return toggle(control);
    if (binding.action == KeyAction::Press)
        return set(control, 1.0);
    const int direction = binding.action == KeyAction::Raise ? 1 : -1;
    if (!isNumber(control))
        return step(control, direction);
    m_returning.erase(&control);
    m_pushes[&control] = direction;
}

bool ScreenHands::press(int key) {
    bool isOurs = false;
    for (const KeyBinding& binding : keyBindings()) {
        if (binding.key != key)
            continue;
        for (const std::string& name : binding.controls)
            if (ControlState* control = named(name)) {
                apply(binding, *control);
                isOurs = true;
            }
    }
    return isOurs;
}

bool ScreenHands::release(int key) {
    bool isOurs = false;
    for (const KeyBinding& binding : keyBindings()) {
        if (binding.key != key)
            continue;
        for (const std::string& name : binding.controls)
            if (ControlState* control = named(name)) {
                letGo(*control);
                isOurs = true;
            }
    }
    return isOurs;
}

void ScreenHands::put(ControlState& control, double value) {
    m_pushes.erase(&control);
    m_returning.erase(&control);
    if (valueFor(control, value) != valueFor(control, current(control)) || !control.isKnown())
        set(control, value);
}

void ScreenHands::letGo(ControlState& control) {
    m_pushes.erase(&control);
    if (control.kind() == ControlState::Button)
        set(control, 0.0);
    else if (control.springs())
        m_returning.insert(&control);
}

void ScreenHands::nudge(ControlState& control, int direction) {
    m_returning.erase(&control);
    if (isNumber(control))
        set(control, current(control) + direction * travel(control) / kNudgesPerTravel);
    else
        step(control, direction);
}

void ScreenHands::advance(double elapsedSeconds) {
    for (const auto& [control, direction] : m_pushes)
        set(*control, current(*control) + direction * elapsedSeconds * travel(*control) / kTravelSeconds);
    for (auto it = m_returning.begin(); it != m_returning.end();) {
        ControlState& control = **it;
        const double way = control.restValue() - current(control);
        const double most = elapsedSeconds * travel(control) / kSpringSeconds;
        set(control, current(control) + std::clamp(way, -most, most));
        it = std::abs(way) <= most ? m_returning.erase(it) : std::next(it);
    }
}

void ScreenHands::settle() {
    std::erase_if(m_put, [this](const auto& put) {
        return m_pushes.count(put.first) == 0 && m_returning.count(put.first) == 0;
    });
}

void ScreenHands::reset() {
    m_pushes.clear();
    m_returning.clear();
    m_put.clear();
}

} // namespace flowhand
