#include "session/judge.h"

namespace flowhand {

void Judge::omit(std::size_t i) {
    if (m_tracks[i].isResolved())
        return;
    tell(EventKind::StepOmitted, static_cast<int>(i));
    resolved(i, StepState::Omitted);
}

void Judge::leaveOut(std::size_t i, const Phrase& why) {
    m_tracks[i].why = why;
    tell(EventKind::StepLeftOut, static_cast<int>(i)).text = why;
    resolved(i, StepState::LeftOut);
}

void Judge::expireIfSo(std::size_t i) {
    if (m_tracks[i].isOpen() && isTrue(m_tracks[i].expiresMonitor))
        omit(i);
}

void Judge::resolved(std::size_t i, StepState state) {
    StepTrack& track = m_tracks[i];
    if (track.expires != kForever)
        m_timers.clear({track.expires, RunTimerKind::StepExpires, i});
    if (!track.pauses.empty() && track.pauses.back().to == kForever)
        track.pauses.back().to = m_now;
    track.state = state;
    m_speaker.dropCue(i);
    --m_unresolved;
    m_hasChanged = m_mayEnd = m_isStale = true;
    if (state == StepState::LeftOut)
        m_toConsider.push_back(i);
    else
        satisfy(i, state == StepState::Omitted || state == StepState::Void ? m_now : track.done);
}

bool Judge::isFlowDone() const {
    if (m_speaker.isSpeaking())
        return false;
    for (std::size_t i = 0; m_unresolved > 0 && i < m_tracks.size(); ++i) {
        const StepTrack& track = m_tracks[i];
        // An open step that only a condition ends, behind which the flow has gone on to its end.
        const bool isLeftBehind = track.isOpen() && track.expires == kForever && !m_followers[i].empty();
        if (!track.isResolved() && !isLeftBehind)
            return false;
    }
    return true;
}

void Judge::endIfDone() {
    if (m_phase == SessionPhase::Running && std::exchange(m_mayEnd, false) && isFlowDone())
        end("completed");
}

void Judge::end(const std::string& why) {
    for (std::size_t i = 0; i < m_tracks.size(); ++i) {
        if (m_tracks[i].isResolved())
            continue;
        const bool isVoid = m_outcome || !m_hasBegun;
        if (!isVoid && isOutOfSight(i)) {
            leaveOut(i, phrase("it could not be seen any more: what it needs to know was lost"));
            continue;
        }
        tell(isVoid ? EventKind::StepVoid : EventKind::StepOmitted, static_cast<int>(i));
        resolved(i, isVoid ? StepState::Void : StepState::Omitted);
    }
    for (std::size_t guard = 0; guard < m_guards.size(); ++guard)
        setGuardBroken(guard, false);
    m_speaker.clear();
    m_gate.open();
    m_phase = SessionPhase::Ended;
    tell(EventKind::RunEnded).text = why;
}

} // namespace flowhand
