#include "session/practicelink.h"

#include <algorithm>
#include <utility>

namespace flowhand {

void PracticeLink::begin(const FeedLink& link, std::vector<Sample>& motion) {
    if (!m_practice)
        return;
    const std::size_t before = motion.size();
    m_practice->begin(motion);
    link.keepPractised(motion, before);
}

void PracticeLink::fly(Time time, bool isFlying, const Session& session, const FeedLink& link,
                       std::vector<Sample>& made) {
    const bool isStepDue = isFlying && nextStep() <= time;
    if (!m_practice || (!isStepDue && !m_hasToTell && !m_isPut))
        return; // between two steps it asks for nothing
    // Nothing tells of it when a hand regains a lever: the signal is where the lever stood already.
    const std::vector<Value>& values = session.values();
    bool hasMoved = false;
    for (const CockpitControl& control : m_aircraft.controls)
        hasMoved |= tell(time, control.signal, values[indexOf(control.signal)]);
    for (const Sample& sample : made)
        if (m_aircraft.isControl(sample.signal) && !session.isOfLever(sample))
            hasMoved |= tell(time, sample.signal, sample.value);
    const std::size_t before = made.size();
    if (std::exchange(m_hasToTell, false) || (m_isPut && hasMoved))
        m_practice->settle(made);
    if (isStepDue)
        m_practice->step(made);
    link.keepPractised(made, before);
}

/// Whether the control moved.
bool PracticeLink::tell(Time time, SignalId control, Value value) {
    if (std::exchange(m_told[indexOf(control)], value) == value)
        return false;
    m_practice->take({time, control, value});
    return true;
}

std::string PracticeLink::placeFor(const Flow& flow, const std::string& id) const {
    const auto step = std::find_if(flow.steps.begin(), flow.steps.end(), [&](const Step& each) {
        return each.id == id;
    });
    if (!m_practice || step == flow.steps.end())
        return {};
    return step == flow.steps.begin() && step->jumpPlace.empty() ? flow.startPlace : step->jumpPlace;
}

Status PracticeLink::put(const std::string& place) {
    if (Status found = m_practice->put(place); !found)
        return found;
    std::fill(m_told.begin(), m_told.end(), Value());
    m_isPut = m_hasToTell = true;
    return {};
}

std::optional<GroundPosition> PracticeLink::ground(const FeedLink& link) const {
    const std::optional<SignalId> speed = m_aircraft.signals.find("ground_speed");
    if (!m_practice || !speed || !link.isPractised(*speed))
        return std::nullopt;
    return m_practice->position();
}

void PracticeLink::fail(const Failure& failure) {
    if (m_practice)
        m_practice->fail(failure);
}

void PracticeLink::follow(const std::string& route) {
    if (m_practice && !route.empty())
        m_practice->follow(route);
}

void PracticeLink::restart() {
    m_isPut = m_hasToTell = false;
    if (m_practice)
        m_practice->restart();
}

} // namespace flowhand
