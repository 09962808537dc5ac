#include "condition/monitor.h"

#include <cmath>

#include "condition/engine.h"

namespace flowhand {

Monitor::Monitor(const SignalTable& signals) : m_engine(std::make_unique<Engine>(signals)) {}
Monitor::~Monitor() = default;
Monitor::Monitor(Monitor&&) noexcept = default;
Monitor& Monitor::operator=(Monitor&&) noexcept = default;

MonitorId Monitor::add(const Condition& condition, MarginUse margin) {
    return MonitorId{m_engine->add(condition, margin)};
}
void Monitor::remove(MonitorId which) {
    m_engine->remove(static_cast<std::uint32_t>(which));
}
void Monitor::setReference(MonitorId which, Time reference) {
    m_engine->setReference(static_cast<std::uint32_t>(which), reference);
}

void Monitor::beginAnew() {
    m_engine->isAnew = m_engine->hasBegun;
}

void Monitor::set(SignalId id, Value value) {
    WatchedSignal& signal = m_engine->signals[indexOf(id)];
    if (!signal.isPending) {
        if (value == m_engine->values[indexOf(id)])
            return;
        signal.isPending = true;
        m_engine->pending.push_back(static_cast<std::uint32_t>(id));
    }
    signal.pending = std::isfinite(value.number()) ? value : Value::unknown();
}

void Monitor::settle(Time time, std::vector<TruthChange>& changes) {
    m_engine->settle(time, changes);
}

Time Monitor::nextTimer() const {
    const Key soonest = m_engine->timers.soonest();
    return soonest == kNever ? kForever : timeOf(soonest);
}

Truth Monitor::truth(MonitorId which) const {
    const Watched& place = m_engine->watched[static_cast<std::uint32_t>(which)];
    return truthOf(place.momentKey == keyAt(m_engine->now) ? place.moment : place.after);
}

Margin Monitor::margin(MonitorId which) const {
    Watched& place = m_engine->watched[static_cast<std::uint32_t>(which)];
    const ConditionProgram& program = place.condition->program();
    const Key now = keyAt(m_engine->now);
    const Kleene truth = place.momentKey == now ? place.moment : place.after;
    if (place.margins)
        return marginOf(program, place.margins->at(now), truth);
    if (program.hasFiniteMargin && program.stateCount == 0) {
        Margins margins(*place.condition, m_engine->now);
        margins.step(now, m_engine->values);
        return marginOf(program, margins.at(now), truth);
    }
    return marginOf(
        program, {truth == Kleene::True ? kSurely : kSurelyNot, truth == Kleene::False ? kSurelyNot : kSurely}, truth);
}

Value Monitor::value(SignalId signal) const {
    return m_engine->values[indexOf(signal)];
}
const std::vector<Value>& Monitor::values() const {
    return m_engine->values;
}

} // namespace flowhand
