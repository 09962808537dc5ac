#include <algorithm>
#include <sstream>

#include "session/judge.h"

namespace flowhand {

void Judge::unobserved(Time time, const std::string& names) {
    if (m_hasBegun || m_phase == SessionPhase::Ended)
        return;
    m_real = time;
    std::istringstream list(names);
    for (std::string name; list >> name;)
        if (const std::optional<SignalId> id = m_aircraft.signals.find(name); id && !m_aircraft.isControl(*id))
            m_unobserved[indexOf(*id)] = true;
}

void Judge::carryOn(Time time) {
    if (m_phase == SessionPhase::SetUp && !m_hasBegun && !m_gate.isClosed())
        begin(time);
}

void Judge::happen(Time time, const std::string& id) {
    advance(time);
    const auto event = std::find_if(m_setup.events.begin(), m_setup.events.end(), [&](const SetupEvent& each) {
        return each.id == id;
    });
    if (m_phase == SessionPhase::Ended || event == m_setup.events.end())
        return;
    m_real = time;
    tell(EventKind::ScenarioEvent).text = event->title;
    if (m_phase != SessionPhase::Running)
        return;
    m_now = m_clock.toRun(time);
    if (!event->words.empty())
        say(WordsPurpose::Remark, kNoStep, event->by, event->words);
}

void Judge::setMotion(SignalId signal, Value value) {
    Value& now = m_values[indexOf(signal)];
    if (value.isKnown())
        m_outOfSight[indexOf(signal)] = false;
    else if (now.isKnown())
        m_outOfSight[indexOf(signal)] = true;
    now = value;
}

bool Judge::isUnobserved(SignalId signal) const {
    return m_unobserved[indexOf(signal)];
}

/// A signal that the condition reads and nothing says; kNoSignal: all can be known.
SignalId Judge::unobservedIn(const std::optional<PlacedCondition>& condition) const {
    if (condition)
        for (const SignalId id : condition->condition.signals())
            if (isUnobserved(id))
                return id;
    return kNoSignal;
}

/// Steps that would never become due, or never be done, whatever the crew does; and guards that see less than they
/// should.
void Judge::leaveOutUnobserved() {
    for (std::size_t i = 0; i < m_tracks.size(); ++i)
        for (const SignalId need : step(i).needs)
            if (isUnobserved(need) && !m_tracks[i].isResolved())
                leaveOut(i, phrase("it cannot be judged: nothing tells {1}").with(m_aircraft.signals[need].label));
    for (std::size_t i = 0; i < m_guards.size(); ++i)
        for (const SignalId id : m_flow.guards[i].never.condition.signals())
            if (isUnobserved(id)) {
                Event& event = tell(EventKind::GuardLeftOut);
                event.guard = static_cast<int>(i);
                event.text = phrase("not watched: nothing tells {1}").with(m_aircraft.signals[id].label);
                break;
            }
}

/// It was not done, and what it needs to know is not known any more: nobody can say whose fault that is.
bool Judge::isOutOfSight(std::size_t i) const {
    return std::any_of(step(i).needs.begin(), step(i).needs.end(), [&](SignalId need) {
        return m_outOfSight[indexOf(need)];
    });
}

} // namespace flowhand
