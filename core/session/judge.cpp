#include "session/judge.h"

#include <algorithm>

namespace flowhand {

Judge::Judge(const Aircraft& aircraft, const Flow& flow, SessionSetup setup)
    : m_aircraft(aircraft), m_flow(flow), m_setup(std::move(setup)), m_values(aircraft.signals.size()),
      m_by(aircraft.controls.size()), m_movements(aircraft, m_setup.controls, m_setup.timeScale),
      m_ownership(aircraft, m_setup.controls, m_setup.timeScale), m_extras(m_movements, m_setup.timeScale),
      m_gate(aircraft, m_movements), m_pace(m_setup.seed, m_setup.partnerErrorRate), m_monitor(aircraft.signals),
      m_tracks(flow.steps.size()), m_followers(flow.steps.size()), m_byControl(aircraft.controls.size()),
      m_credited(aircraft.controls.size()), m_handMoved(aircraft.controls.size()),
      m_unobserved(aircraft.signals.size()), m_outOfSight(aircraft.signals.size()), m_guards(flow.guards.size()),
      m_outcomes(flow.outcomes.size()), m_knownValues(aircraft.controls.size()), m_unresolved(flow.steps.size()) {
    assignDoers();
    for (std::size_t i = 0; i < flow.steps.size(); ++i) {
        for (const std::size_t before : step(i).after)
            m_followers[before].push_back(i);
        for (const SignalId control : m_tracks[i].controls)
            m_byControl[indexOf(control)].push_back(i);
    }
}

void Judge::take(Time time, std::span<const Sample> batch) {
    if (m_phase == SessionPhase::Running)
        serve(m_clock.toRun(time), false);
    m_real = time;
    if (m_phase == SessionPhase::Running) {
        instant(m_clock.toRun(time), batch);
        return;
    }
    for (const Sample& sample : batch)
        stand(sample);
    if (m_gate.isClosed())
        passGate(time);
}

void Judge::advance(Time time) {
    if (m_phase == SessionPhase::Running)
        serve(m_clock.toRun(time), true);
}

Time Judge::nextTimer() const {
    return m_phase == SessionPhase::Running ? m_clock.fromRun(nextRunTimer()) : kForever;
}

Time Judge::nextRunTimer() const {
    const Time movements = std::min(m_movements.nextTimer(), m_ownership.nextTimer());
    return std::min({m_timers.next(), movements, m_monitor.nextTimer()});
}

bool Judge::isOfLever(const Sample& sample) const {
    return sample.actor != Actor::Partner && m_aircraft.isControl(sample.signal) &&
           m_ownership.isPartners(sample.signal);
}

bool Judge::isNews(const Sample& sample) const {
    return !((isOfLever(sample) ? m_ownership.lever(sample.signal) : value(sample.signal)) == sample.value);
}

void Judge::serve(Time limit, bool isInclusive) {
    while (m_phase == SessionPhase::Running) {
        const Time next = nextRunTimer();
        if (next == kForever || next > limit || (next == limit && !isInclusive))
            return;
        m_real = m_clock.fromRun(next);
        instant(next, {});
    }
}

void Judge::instant(Time now, std::span<const Sample> batch) {
    m_now = now;
    for (const Sample& sample : batch)
        takeSample(sample);
    settleConditions();
    for (const Sample& sample : batch)
        reconsiderInstants(sample.signal);
    settleMovements();
    serveTimers();
    endInstant();
}

void Judge::takeSample(const Sample& sample) {
    if (indexOf(sample.signal) >= m_values.size())
        return;
    if (m_aircraft.isControl(sample.signal))
        setControl(sample);
    else {
        setMotion(sample.signal, sample.value);
        m_monitor.set(sample.signal, sample.value);
    }
}

void Judge::setControl(const Sample& sample) {
    const SignalId control = sample.signal;
    m_by[indexOf(control)] = sample.control;
    if (isOfLever(sample)) {
        if (sample.actor == Actor::Hand)
            m_ownership.handMoved(m_now, control, sample.value, sample.control);
        else
            leverFound(control, sample.value);
        return;
    }
    const Value before = value(control);
    if (!sample.value.isKnown() && before.isKnown())
        m_knownValues[indexOf(control)] = before;
    m_values[indexOf(control)] = sample.value;
    if (sample.actor == Actor::Partner) {
        Event& moved = tell(EventKind::PartnerMoved);
        moved.signal = control;
        moved.value = sample.value;
        // What a script of hands works all the time is never matched: the partner flies.
        const bool isByScript = m_setup.hasPartnerHands && isContinuous(control);
        if (m_ownership.partnerMoved(control, before, sample.value) && !isByScript) {
            Event& match = tell(EventKind::MatchWanted);
            match.signal = control;
            match.value = sample.value;
        }
    }
    if (m_movements.take(m_now, control, sample.value, sample.actor, sample.control))
        movementBegins(sample);
    m_monitor.set(control, sample.value);
}

void Judge::movementBegins(const Sample& sample) {
    m_credited[indexOf(sample.signal)] = 0;
    for (const std::size_t i : m_byControl[indexOf(sample.signal)]) {
        StepTrack& track = m_tracks[i];
        if (!isBy(i, sample.actor))
            continue;
        // The movement's change itself counts for `moved`, so its beginning is just before.
        if (track.isComing() && track.doneMonitor && step(i).done->condition.usesReference())
            m_monitor.setReference(*track.doneMonitor, std::max(m_now - kTick, m_settledAt));
        if (track.isOpen() && !track.wasMoved) {
            track.wasMoved = true;
            Event& event = tell(EventKind::StepMoved, static_cast<int>(i));
            event.signal = sample.signal;
            event.control = sample.control;
        }
    }
}

void Judge::settleConditions() {
    std::vector<TruthChange> changes;
    m_monitor.settle(m_now, changes);
    m_settledAt = m_now;
    for (const TruthChange& change : changes)
        apply(change);
    serveInstants();
    for (const std::size_t i : std::exchange(m_toExpire, {}))
        expireIfSo(i);
}

void Judge::apply(const TruthChange& change) {
    const auto found = m_watched.find(static_cast<std::uint32_t>(change.which));
    if (found == m_watched.end())
        return;
    const auto [role, index] = found->second;
    switch (role) {
    case Role::Done:
        doneChanged(index, change);
        break;
    case Role::When:
        m_tracks[index].whenSince = change.truth == Truth::True ? change.time : kForever;
        m_toConsider.push_back(index);
        break;
    case Role::Expires:
        m_toExpire.push_back(index);
        break;
    case Role::Suspend:
        if (!change.isPoint)
            suspendChanged(index, change.truth == Truth::True);
        break;
    case Role::Guard:
        guardChanged(index, change);
        break;
    case Role::Outcome:
        m_outcomes[index].isReached |= change.truth == Truth::True && !m_outcomes[index].wasTrue;
        m_outcomes[index].wasTrue = change.truth == Truth::True && !change.isPoint;
        break;
    }
}

void Judge::settleMovements() {
    std::vector<ControlMovement> regained;
    m_ownership.settle(m_now, regained);
    for (const ControlMovement& movement : regained) {
        m_values[indexOf(movement.control)] = movement.to;
        m_credited[indexOf(movement.control)] = 0;
        m_movements.restAt(movement.control, movement.to);
        m_monitor.set(movement.control, movement.to);
    }
    if (!regained.empty())
        settleConditions();
    for (const ControlMovement& movement : regained)
        settled(movement);
    std::vector<ControlMovement> movements;
    m_movements.settle(m_now, movements);
    for (const ControlMovement& movement : movements)
        settled(movement);
}

void Judge::serveTimers() {
    while (m_timers.next() <= m_now)
        serveTimer(m_timers.take());
}

void Judge::serveTimer(const RunTimer& timer) {
    switch (timer.kind) {
    case RunTimerKind::WordsEnd:
        wordsEnded();
        break;
    case RunTimerKind::PartnerActs:
        partnerActs(timer.step);
        break;
    case RunTimerKind::PartnerLetsGo:
        partnerLetsGo(timer.step);
        break;
    case RunTimerKind::StepExpires:
        omit(timer.step);
        break;
    }
}

void Judge::endInstant() {
    do {
        serveCues();
        serveGuards();
        if (std::exchange(m_mustSettle, false))
            settleConditions();
        for (const std::size_t i : std::exchange(m_justDue, {})) {
            if (m_tracks[i].trueSince != kForever)
                see(i);
            tryFinish(i);
        }
    } while (m_mustSettle || m_hasChanged || !m_toConsider.empty());
    serveOutcomes();
    endIfDone();
}

Event& Judge::tell(EventKind kind, int step) {
    m_isStale = true;
    Event event;
    event.time = m_real;
    event.kind = kind;
    event.step = step;
    m_events.push_back(std::move(event));
    return m_events.back();
}

bool Judge::isTrue(const std::optional<MonitorId>& monitor) const {
    return monitor && m_monitor.truth(*monitor) == Truth::True;
}

} // namespace flowhand
