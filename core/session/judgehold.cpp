#include <algorithm>

#include "session/judge.h"

namespace flowhand {

namespace {

/// How near a lever has to come to where it was: as near as a hand finds the place again.
constexpr double kTolerance = 0.05; // of its range

} // namespace

void Judge::hold(Time time, const Phrase& reason) {
    holdFor(time, EventKind::Held, reason);
}

void Judge::gap(Time time, const Phrase& reason) {
    holdFor(time, EventKind::Gap, reason);
}

void Judge::holdFor(Time time, EventKind kind, const Phrase& reason) {
    advance(time);
    if (m_phase != SessionPhase::Running)
        return;
    m_real = time;
    m_now = m_clock.toRun(time);
    m_clock.hold(time);
    m_phase = SessionPhase::Held;
    m_holdReason = reason;
    m_heldValues = m_values;
    for (const CockpitControl& control : m_aircraft.controls)
        if (value(control.signal).isKnown())
            m_knownValues[indexOf(control.signal)] = value(control.signal);
    tell(kind).text = reason;
}

/// Not of springs, which go back by themselves, nor of what the rig lacks or the partner holds.
bool Judge::isAskedFor(SignalId id) const {
    const CockpitControl& control = m_aircraft.control(id);
    const bool isSprung =
        control.kind == ControlKind::Button || (control.isContinuous && control.kind != ControlKind::Lever);
    return !isSprung && isAvailable(id) && !m_ownership.isPartners(id);
}

double Judge::tolerance(SignalId control) const {
    const Signal& signal = m_aircraft.signals[control];
    return kTolerance * (signal.highest - signal.lowest);
}

/// Controls stand where `values` says.
std::vector<StartValue> Judge::heldState(const std::vector<Value>& values) const {
    std::vector<StartValue> wanted;
    for (const CockpitControl& control : m_aircraft.controls) {
        const Value value = values[indexOf(control.signal)];
        if (value.isKnown() && isAskedFor(control.signal))
            wanted.push_back({control.signal, value, tolerance(control.signal)});
    }
    return wanted;
}

void Judge::resume(Time time) {
    if (m_phase != SessionPhase::Held)
        return;
    m_real = time;
    m_phase = SessionPhase::SetUp;
    closeGate(GatePurpose::Resume, heldState(m_knownValues));
    passGate(time);
}

void Judge::letGoOn(Time time) {
    m_clock.resume(time);
    m_real = time;
    m_now = m_clock.toRun(time);
    m_phase = SessionPhase::Running;
    m_holdReason = {};
}

/// What was moved while the run stood is where it is, and was no movement.
void Judge::takeInStanding() {
    for (std::size_t i = 0; i < m_values.size(); ++i) {
        const SignalId signal{static_cast<std::uint32_t>(i)};
        if (m_aircraft.isControl(signal) && m_ownership.isMatched(signal))
            matched(signal, m_values[i]);
        if (m_values[i] == m_heldValues[i])
            continue;
        m_monitor.set(signal, m_values[i]);
        if (m_aircraft.isControl(signal))
            m_movements.restAt(signal, m_values[i]);
    }
    settleConditions();
}

void Judge::resumeNow(Time time) {
    m_real = time;
    Event& event = tell(EventKind::Resumed, m_lastDone ? static_cast<int>(*m_lastDone) : -1);
    if (m_lastDone)
        event.text = step(*m_lastDone).title;
    letGoOn(time);
    takeInStanding();
    if (m_speaker.isSpeaking())
        speakAgain();
    else if (m_lastDone)
        say(WordsPurpose::Remark, *m_lastDone, "cockpit", "Going on after: " + step(*m_lastDone).title);
    endInstant();
}

/// Words that were broken off are spoken once more, whole.
void Judge::speakAgain() {
    m_timers.clear(RunTimerKind::WordsEnd, 0);
    if (m_speaker.isSpeaking())
        beginWords();
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
    standForSetUp(time);
    m_goingTo = static_cast<std::size_t>(found - m_tracks.begin());
    std::vector<Value> before(m_values.size());
    for (std::size_t n = 0; n < found->controls.size(); ++n)
        before[indexOf(found->controls[n])] = found->atDue[n];
    closeGate(GatePurpose::Repeat, heldState(before));
    passGate(time);
}

void Judge::repeatNow(Time time) {
    reopen(m_goingTo);
    letGoOn(time);
    takeInStanding();
    cue(m_goingTo, m_now);
    endInstant();
}

/// As if its turn had not come. A step that the rig cannot do stays left out, but what follows waits for its turn
/// again.
void Judge::reopen(std::size_t i) {
    StepTrack& track = m_tracks[i];
    m_timers.clear(RunTimerKind::StepExpires, i);
    m_timers.clear(RunTimerKind::PartnerActs, i);
    m_isStale = true;
    if (track.state == StepState::LeftOut) {
        track.isSatisfied = false;
        return;
    }
    if (track.isResolved())
        ++m_unresolved;
    for (const SignalId control : track.controls)
        if (m_credited[indexOf(control)] == i + 1)
            m_credited[indexOf(control)] = 0;
    StepTrack fresh;
    fresh.doer = track.doer;
    fresh.heldAtStart = track.heldAtStart;
    fresh.controls = track.controls;
    fresh.whenSince = track.whenSince;
    fresh.trueSince = track.trueSince;
    fresh.doneMonitor = track.doneMonitor;
    fresh.whenMonitor = track.whenMonitor;
    fresh.expiresMonitor = track.expiresMonitor;
    fresh.suspendMonitor = track.suspendMonitor;
    track = std::move(fresh);
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
