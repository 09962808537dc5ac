#include <algorithm>

#include "session/judge.h"

namespace flowhand {

namespace {

/// How near a lever has to come to where it was: as near as a hand finds the place again.
constexpr double kTolerance = 0.05; // of its range

} // namespace

bool Judge::isAvailable(SignalId control) const {
    const std::size_t at = indexOf(control);
    return at >= m_setup.controls.size() || m_setup.controls[at].isWired || m_setup.controls[at].isSimulated;
}

double Judge::sigma(SignalId control) const {
    const std::size_t at = indexOf(control);
    return at < m_setup.controls.size() ? m_setup.controls[at].sigma : 0.0;
}

/// A change while the run stands: where things are, and no movement.
void Judge::stand(const Sample& sample) {
    if (indexOf(sample.signal) >= m_values.size())
        return;
    const bool isControl = m_aircraft.isControl(sample.signal);
    if (isControl && sample.actor == Actor::Hand && m_ownership.isPartners(sample.signal)) {
        m_ownership.leverStands(sample.signal, sample.value);
        return;
    }
    m_values[indexOf(sample.signal)] = sample.value;
    if (isControl)
        m_by[indexOf(sample.signal)] = sample.control;
}

void Judge::start(Time time) {
    if (m_phase != SessionPhase::SetUp || m_hasBegun || m_gate.isClosed())
        return;
    m_real = time;
    std::vector<StartValue> wanted;
    for (const StartValue& value : m_flow.start)
        if (m_aircraft.isControl(value.signal) && isAvailable(value.signal))
            wanted.push_back(value);
    closeGate(GatePurpose::Start, std::move(wanted));
    passGate(time);
}

void Judge::closeGate(GatePurpose purpose, std::vector<StartValue> wanted) {
    m_gate.close(purpose, std::move(wanted));
    for (const SetUpItem& item : m_gate.wrong(m_values)) {
        Event& event = tell(EventKind::SetUpWanted);
        event.signal = item.signal;
        event.value = item.wanted;
    }
}

void Judge::passGate(Time time) {
    if (m_gate.wrong(m_values).empty())
        go(time);
}

void Judge::waive(Time time) {
    if (!m_gate.isClosed())
        return;
    m_real = time;
    for (const SetUpItem& item : m_gate.wrong(m_values)) {
        Event& event = tell(EventKind::SetUpWaived);
        event.signal = item.signal;
        event.value = item.found;
    }
    go(time);
}

void Judge::go(Time time) {
    const GatePurpose purpose = m_gate.purpose();
    m_gate.open();
    if (purpose == GatePurpose::Start)
        begin(time);
    else if (purpose == GatePurpose::Resume)
        resumeNow(time);
    else
        repeatNow(time);
}

void Judge::begin(Time time) {
    m_real = time;
    m_now = m_clock.toRun(time);
    m_phase = SessionPhase::Running;
    m_hasBegun = true;
    m_begun = m_now;
    tell(EventKind::RunStarted);
    m_movements.rest(m_values);
    addMonitors();
    settleConditions();
    for (OutcomeTrack& track : m_outcomes)
        track.isReached = false;
    for (std::size_t i = 0; i < m_tracks.size(); ++i)
        m_tracks[i].heldAtStart = step(i).done && step(i).done->condition.holdsNow(m_values) == Truth::True;
    leaveOutMissing();
    for (std::size_t i = 0; i < m_tracks.size(); ++i)
        m_toConsider.push_back(i);
    beginGuards();
    m_mayEnd = true;
    endInstant();
}

void Judge::addMonitors() {
    for (std::size_t i = 0; i < m_values.size(); ++i)
        if (m_values[i].isKnown())
            m_monitor.set(SignalId(static_cast<std::uint32_t>(i)), m_values[i]);
    std::vector<TruthChange> none;
    m_monitor.settle(m_now, none);
    m_settledAt = m_now;
    for (std::size_t i = 0; i < m_tracks.size(); ++i) {
        watch(m_tracks[i].doneMonitor, step(i).done, Role::Done, i);
        watch(m_tracks[i].whenMonitor, step(i).when, Role::When, i);
        watch(m_tracks[i].expiresMonitor, step(i).expires, Role::Expires, i);
        watch(m_tracks[i].suspendMonitor, step(i).suspend, Role::Suspend, i);
    }
    for (std::size_t i = 0; i < m_outcomes.size(); ++i) {
        std::optional<MonitorId> monitor;
        watch(monitor, m_flow.outcomes[i].when, Role::Outcome, i);
        m_outcomes[i].monitor = *monitor;
    }
}

void Judge::watch(std::optional<MonitorId>& monitor, const std::optional<PlacedCondition>& condition, Role role,
                  std::size_t index) {
    if (!condition)
        return;
    monitor = m_monitor.add(condition->condition);
    m_watched.insert_or_assign(static_cast<std::uint32_t>(*monitor), Watched{role, index});
}

/// A step of the pilot's whose control this rig has not.
void Judge::leaveOutMissing() {
    for (std::size_t i = 0; i < m_tracks.size(); ++i) {
        const StepTrack& track = m_tracks[i];
        if (track.doer != Doer::Hand)
            continue;
        if (step(i).kind == StepKind::Say && track.controls.empty()) {
            leaveOut(i, "there is no reply button to say it with");
            continue;
        }
        const auto isMissing = [&](SignalId control) {
            return m_aircraft.isControl(control) && !isAvailable(control);
        };
        SignalId missing = kNoSignal;
        if (!track.controls.empty() && std::all_of(track.controls.begin(), track.controls.end(), isMissing))
            missing = track.controls.front();
        if (step(i).done)
            for (const SignalId control : step(i).done->condition.signals())
                if (missing == kNoSignal && isMissing(control))
                    missing = control;
        if (missing != kNoSignal)
            leaveOut(i, "this rig has no " + m_aircraft.signals[missing].label);
    }
}

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

void Judge::resumeNow(Time time) {
    m_clock.resume(time);
    m_real = time;
    m_now = m_clock.toRun(time);
    m_phase = SessionPhase::Running;
    m_holdReason.clear();
    Event& event = tell(EventKind::Resumed, m_lastDone ? static_cast<int>(*m_lastDone) : -1);
    if (m_lastDone)
        event.text = step(*m_lastDone).title;
    for (std::size_t i = 0; i < m_values.size(); ++i) {
        if (m_values[i] == m_heldValues[i])
            continue;
        const SignalId signal{static_cast<std::uint32_t>(i)};
        m_monitor.set(signal, m_values[i]);
        if (m_aircraft.isControl(signal))
            m_movements.restAt(signal, m_values[i]);
    }
    settleConditions();
    if (m_speaker.isSpeaking()) { // broken off by the hold: once more, whole
        m_timers.clear({m_wordsEnd, TimerKind::WordsEnd, 0});
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
        m_timers.clear({track.expires, TimerKind::StepExpires, m_repeated});
    track.state = StepState::Waiting;
    track.isCued = track.wasMoved = false;
    track.fit = kNoSignal;
    track.due = track.seen = track.expires = kForever;
    track.pauses.clear();
    track.why.clear();
    m_clock.resume(time);
    m_real = time;
    m_now = m_clock.toRun(time);
    m_phase = SessionPhase::Running;
    for (std::size_t i = 0; i < m_values.size(); ++i) {
        if (m_values[i] == m_heldValues[i])
            continue;
        const SignalId signal{static_cast<std::uint32_t>(i)};
        m_monitor.set(signal, m_values[i]);
        if (m_aircraft.isControl(signal))
            m_movements.restAt(signal, m_values[i]);
    }
    settleConditions();
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
