#include "session/judge.h"

namespace flowhand {

void Judge::beginGuards() {
    for (std::size_t i = 0; i < m_guards.size(); ++i)
        if (!m_flow.guards[i].from)
            beginGuard(i);
}

/// `held` in it counts from here.
void Judge::beginGuard(std::size_t guard) {
    m_guards[guard].hasBegun = true;
    m_guards[guard].monitor = m_monitor.add(m_flow.guards[guard].never.condition, MarginUse::NotWanted);
    m_watched.insert_or_assign(static_cast<std::uint32_t>(*m_guards[guard].monitor), Watched{Role::Guard, guard});
    m_mustSettle = true;
}

/// Begins and ends the guards' stretches with the steps that bound them.
void Judge::serveGuards() {
    if (!std::exchange(m_hasChanged, false))
        return;
    const auto isDone = [](const StepTrack& track) {
        return track.isResolved() && track.state != StepState::Omitted && track.state != StepState::LeftOut;
    };
    for (std::size_t i = 0; i < m_guards.size(); ++i) {
        GuardTrack& track = m_guards[i];
        const Guard& guard = m_flow.guards[i];
        const StepTrack* from = guard.from ? &m_tracks[*guard.from] : nullptr;
        if (from != nullptr && !track.hasBegun && (from->due != kForever || isDone(*from)))
            beginGuard(i);
        if (track.monitor && guard.to && isDone(m_tracks[*guard.to]))
            endGuard(i);
    }
}

void Judge::endGuard(std::size_t guard) {
    GuardTrack& track = m_guards[guard];
    setGuardBroken(guard, false);
    m_watched.erase(static_cast<std::uint32_t>(*track.monitor));
    m_monitor.remove(*track.monitor);
    track.monitor.reset();
}

/// After a jump back: a stretch whose bounds lie ahead again is watched again.
void Judge::rewindGuard(std::size_t guard) {
    GuardTrack& track = m_guards[guard];
    const std::optional<std::size_t>& from = m_flow.guards[guard].from;
    const std::optional<std::size_t>& to = m_flow.guards[guard].to;
    const bool isFromAhead = from && m_tracks[*from].isComing();
    if (track.monitor && isFromAhead)
        endGuard(guard);
    if (track.monitor || !(isFromAhead || (to && !m_tracks[*to].isResolved())))
        return;
    track.hasBegun = false;
    m_hasChanged = true;
    if (!from)
        beginGuard(guard);
}

void Judge::guardChanged(std::size_t guard, const TruthChange& change) {
    setGuardBroken(guard, change.truth == Truth::True);
    if (change.isPoint && change.truth == Truth::True)
        setGuardBroken(guard, false);
}

void Judge::setGuardBroken(std::size_t guard, bool isBroken) {
    GuardTrack& track = m_guards[guard];
    if (track.isBrokenNow == isBroken)
        return;
    track.isBrokenNow = isBroken;
    track.isBroken = track.isBroken || isBroken;
    Event& event = tell(isBroken ? EventKind::GuardBroken : EventKind::GuardOver);
    event.guard = static_cast<int>(guard);
    if (isBroken)
        event.text = m_flow.guards[guard].title;
}

void Judge::serveOutcomes() {
    for (std::size_t i = 0; i < m_outcomes.size() && m_phase == SessionPhase::Running; ++i) {
        if (!m_outcomes[i].isReached)
            continue;
        m_outcome = i;
        tell(EventKind::OutcomeReached).text = m_flow.outcomes[i].name;
        end(m_flow.outcomes[i].name);
    }
}

} // namespace flowhand
