#include <algorithm>

#include "session/judge.h"

namespace flowhand {

namespace {

/// How near a lever has to come to where it was: as near as a hand finds the place again.
constexpr double kTolerance = 0.05; // of its range

} // namespace

void Judge::hold(Time time, const std::string& reason) {
    advance(time);
    if (m_phase != SessionPhase::Running)
        return;
    m_real = time;
    m_now = m_clock.toRun(time);
    m_clock.hold(time);
    m_phase = SessionPhase::Held;
    m_holdReason = reason;
    m_heldValues = m_values;
    const bool isLoss = reason.find(" lost") != std::string::npos;
    tell(isLoss ? EventKind::Gap : EventKind::Held).text = reason;
}

/// Controls stand where `values` says; springs, which go back by themselves, and what the partner holds aside.
std::vector<StartValue> Judge::heldState(const std::vector<Value>& values) const {
    std::vector<StartValue> wanted;
    for (const CockpitControl& control : m_aircraft.controls) {
        const bool isSprung =
            control.kind == ControlKind::Button || (control.isContinuous && control.kind != ControlKind::Lever);
        const Value value = values[indexOf(control.signal)];
        if (isSprung || !value.isKnown() || !isAvailable(control.signal) || m_ownership.isPartners(control.signal))
            continue;
        const Signal& signal = m_aircraft.signals[control.signal];
        wanted.push_back({control.signal, value, kTolerance * (signal.highest - signal.lowest)});
    }
    return wanted;
}

void Judge::resume(Time time) {
    if (m_phase != SessionPhase::Held)
        return;
    m_real = time;
    m_phase = SessionPhase::SetUp;
    closeGate(GatePurpose::Resume, heldState(m_heldValues));
    passGate(time);
}

/// The clock goes on. What was moved meanwhile stands where it is, and was no movement.
void Judge::goOn(Time time) {
    m_clock.resume(time);
    m_real = time;
    m_now = m_clock.toRun(time);
    m_phase = SessionPhase::Running;
    for (std::size_t i = 0; i < m_values.size(); ++i) {
        const SignalId signal{static_cast<std::uint32_t>(i)};
        if (m_aircraft.isControl(signal) && m_ownership.isMatched(signal)) {
            m_ownership.matched(signal);
            tell(EventKind::Matched).signal = signal;
            m_events.back().value = m_values[i];
        }
        if (m_values[i] == m_heldValues[i])
            continue;
        m_monitor.set(signal, m_values[i]);
        if (m_aircraft.isControl(signal))
            m_movements.restAt(signal, m_values[i]);
    }
    settleConditions();
}

void Judge::resumeNow(Time time) {
    m_holdReason.clear();
    m_real = time;
    Event& event = tell(EventKind::Resumed, m_lastDone ? static_cast<int>(*m_lastDone) : -1);
    if (m_lastDone)
        event.text = step(*m_lastDone).title;
    goOn(time);
    if (m_speaker.isSpeaking()) { // broken off by the hold: once more, whole
        m_timers.clear({m_wordsEnd, RunTimerKind::WordsEnd, 0});
        beginWords();
    } else if (m_lastDone) {
        say(WordsPurpose::Remark, *m_lastDone, "cockpit", "Going on after: " + step(*m_lastDone).title);
    }
    endInstant();
}

void Judge::repeat(Time time) {
    advance(time);
    if (m_phase != SessionPhase::Running)
        return;
    const auto isOpen = [&](const StepTrack& track) {
        return track.isOpen() && track.doer == Doer::Hand;
    };
    const auto found = std::find_if(m_tracks.begin(), m_tracks.end(), isOpen);
    if (found == m_tracks.end())
        return;
    m_real = time;
    m_now = m_clock.toRun(time);
    m_clock.hold(time);
    m_phase = SessionPhase::SetUp;
    m_repeated = static_cast<std::size_t>(found - m_tracks.begin());
    m_heldValues = m_values;
    std::vector<Value> before(m_values.size());
    for (std::size_t n = 0; n < found->controls.size(); ++n)
        before[indexOf(found->controls[n])] = found->atDue[n];
    closeGate(GatePurpose::Repeat, heldState(before));
    passGate(time);
}

void Judge::repeatNow(Time time) {
    StepTrack& track = m_tracks[m_repeated];
    if (track.expires != kForever)
        m_timers.clear({track.expires, RunTimerKind::StepExpires, m_repeated});
    track.state = StepState::Waiting;
    track.isCued = track.wasMoved = false;
    track.fit = kNoSignal;
    track.due = track.seen = track.expires = kForever;
    track.pauses.clear();
    track.why.clear();
    goOn(time);
    cue(m_repeated, m_now);
    endInstant();
}

void Judge::stop(Time time) {
    advance(time);
    if (m_phase == SessionPhase::Ended)
        return;
    m_real = time;
    if (m_phase == SessionPhase::Running)
        m_now = m_clock.toRun(time);
    end("stopped");
}

} // namespace flowhand
