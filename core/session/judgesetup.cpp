#include <algorithm>

#include "session/judge.h"

namespace flowhand {

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
    if (isOfLever(sample)) {
        m_ownership.leverStands(sample.signal, sample.value);
        return;
    }
    if (!m_aircraft.isControl(sample.signal)) {
        setMotion(sample.signal, sample.value);
        return;
    }
    m_values[indexOf(sample.signal)] = sample.value;
    m_by[indexOf(sample.signal)] = sample.control;
}

/// No hand moved it. It is the hand's again only when it stands where the partner put it: nothing is left to match.
void Judge::leverFound(SignalId control, Value value) {
    m_ownership.leverStands(control, value);
    if (m_ownership.isMatched(control))
        matched(control, value);
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
    switch (purpose) {
    case GatePurpose::None:
        break;
    case GatePurpose::Start:
        begin(time);
        break;
    case GatePurpose::Resume:
        resumeNow(time);
        break;
    case GatePurpose::Repeat:
        repeatNow(time);
        break;
    case GatePurpose::Jump:
        jumpNow(time);
        break;
    }
}

void Judge::begin(Time time) {
    beginWatching(time);
    endInstant();
}

void Judge::beginWatching(Time time) {
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
    leaveOutUnobserved();
    for (std::size_t i = 0; i < m_tracks.size(); ++i)
        m_toConsider.push_back(i);
    beginGuards();
    m_mayEnd = true;
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
    monitor = m_monitor.add(condition->condition, role == Role::Done ? MarginUse::Wanted : MarginUse::NotWanted);
    m_watched.insert_or_assign(static_cast<std::uint32_t>(*monitor), Watched{role, index});
}

/// A step of the pilot's whose control this rig has not.
void Judge::leaveOutMissing() {
    for (std::size_t i = 0; i < m_tracks.size(); ++i) {
        const StepTrack& track = m_tracks[i];
        if (track.doer != Doer::Hand)
            continue;
        if (step(i).kind == StepKind::Say && track.controls.empty()) {
            leaveOut(i, phrase("there is no reply button to say it with"));
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
            leaveOut(i, phrase("this rig has no {1}").with(m_aircraft.signals[missing].label));
    }
}

} // namespace flowhand
