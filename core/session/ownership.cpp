#include "session/ownership.h"

namespace flowhand {

Ownership::Ownership(const Aircraft& aircraft, const std::vector<ControlFacts>& facts, double timeScale)
    : m_controls(aircraft.controls.size()), m_levers(aircraft, facts, timeScale) {
    for (std::size_t i = 0; i < m_controls.size() && i < facts.size(); ++i)
        m_controls[i].isReal =
            facts[i].isWired && !facts[i].isSimulated && aircraft.controls[i].kind != ControlKind::Button;
}

bool Ownership::partnerMoved(SignalId control, Value lever, Value value) {
    Control& track = m_controls[indexOf(control)];
    if (!track.isReal)
        return false;
    if (!track.isPartners) {
        track.isPartners = true;
        track.lever = lever;
        m_levers.restAt(control, lever);
    }
    track.wanted = value;
    track.wantsMatch = !m_levers.isSamePlace(control, track.lever, value);
    return track.wantsMatch;
}

void Ownership::handMoved(Time time, SignalId control, Value value, ControlId by) {
    m_controls[indexOf(control)].lever = value;
    (void)m_levers.take(time, control, value, Actor::Hand, by);
}

void Ownership::leverStands(SignalId control, Value value) {
    m_controls[indexOf(control)].lever = value;
    m_levers.restAt(control, value);
}

bool Ownership::isMatched(SignalId control) const {
    const Control& track = m_controls[indexOf(control)];
    return track.isPartners && track.wantsMatch && m_levers.isSamePlace(control, track.lever, track.wanted);
}

void Ownership::matched(SignalId control) {
    m_controls[indexOf(control)].wantsMatch = false;
    m_controls[indexOf(control)].isPartners = false;
}

void Ownership::settle(Time time, std::vector<ControlMovement>& settled) {
    const std::size_t before = settled.size();
    m_levers.settle(time, settled);
    for (std::size_t i = before; i < settled.size(); ++i)
        m_controls[indexOf(settled[i].control)].isPartners = false;
}

} // namespace flowhand
