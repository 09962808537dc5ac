#include <algorithm>

#include "session/judge.h"

namespace flowhand {

namespace {

/// The room beside a lever's place is looked for so far, in quarters of the usual tolerance: a whole range.
constexpr int kMostGrains = 80;

} // namespace

void Judge::jump(Time time, const std::string& id) {
    advance(time);
    const auto found = std::find_if(m_flow.steps.begin(), m_flow.steps.end(), [&](const Step& step) {
        return step.id == id;
    });
    if (m_phase == SessionPhase::Ended)
        return;
    if (found == m_flow.steps.end()) {
        if (m_phase == SessionPhase::SetUp && m_hasBegun && !m_gate.isClosed())
            resumeNow(time); // what the aircraft was put elsewhere for is not there
        return;
    }
    standForSetUp(time);
    m_goingTo = static_cast<std::size_t>(found - m_flow.steps.begin());
    closeGate(GatePurpose::Jump, stateBefore(m_goingTo));
    passGate(time);
}

void Judge::place(Time time, const std::string& where) {
    advance(time);
    if (m_phase == SessionPhase::Ended)
        return;
    standForSetUp(time);
    m_gate.open();
    tell(EventKind::Placed).text = where;
}

void Judge::standForSetUp(Time time) {
    m_real = time;
    if (m_phase == SessionPhase::Running) {
        m_now = m_clock.toRun(time);
        m_clock.hold(time);
        m_heldValues = m_values;
    }
    m_phase = SessionPhase::SetUp;
}

void Judge::jumpNow(Time time) {
    if (m_hasBegun)
        letGoOn(time);
    else
        beginWatching(time);
    m_hasJumped = true;
    tell(EventKind::Jumped, static_cast<int>(m_goingTo));
    const std::vector<bool> isBefore = stepsBefore(m_goingTo);
    const std::vector<bool> isAnew = stepsFrom(m_goingTo);
    for (std::size_t i = 0; i < m_tracks.size(); ++i) {
        if (isBefore[i] || isAnew[i])
            m_speaker.forget(i);
        if (isBefore[i])
            passOver(i);
        else if (isAnew[i])
            reopen(i);
        m_toConsider.push_back(i);
    }
    if (m_lastDone && !m_tracks[*m_lastDone].isResolved())
        m_lastDone.reset();
    for (std::size_t guard = 0; guard < m_guards.size(); ++guard)
        rewindGuard(guard);
    if (m_heldValues.size() == m_values.size()) {
        m_monitor.beginAnew();
        takeInStanding();
        for (OutcomeTrack& track : m_outcomes)
            track.isReached = false; // what is so where it arrives is no outcome
    }
    speakAgain();
    m_mayEnd = true;
    endInstant();
}

/// All that have to be done before step `i`, by the flow's order.
std::vector<bool> Judge::stepsBefore(std::size_t i) const {
    std::vector<bool> isBefore(m_tracks.size());
    std::vector<std::size_t> open{i};
    while (!open.empty()) {
        const std::size_t next = open.back();
        open.pop_back();
        for (const std::size_t before : step(next).after)
            if (!isBefore[before]) {
                isBefore[before] = true;
                open.push_back(before);
            }
    }
    return isBefore;
}

/// Step `i` and all that come after it, by the flow's order.
std::vector<bool> Judge::stepsFrom(std::size_t i) const {
    std::vector<bool> isFrom(m_tracks.size());
    isFrom[i] = true;
    for (std::size_t next = i + 1; next < m_tracks.size(); ++next) // steps stand behind those they come after
        isFrom[next] = std::any_of(step(next).after.begin(), step(next).after.end(), [&](std::size_t before) {
            return isFrom[before];
        });
    return isFrom;
}

/// Where the controls stand when step `i` becomes due: as at the start, but for what the steps before it have moved. A
/// control that already is where the last of these wants it may stay, and so may one that is worked all the time and
/// does no step to come.
std::vector<StartValue> Judge::stateBefore(std::size_t i) const {
    std::vector<Value> values = m_values;
    std::vector<std::optional<StartValue>> wanted(m_aircraft.controls.size());
    const std::vector<bool> isBefore = stepsBefore(i);
    const std::vector<bool> isAnew = stepsFrom(i);
    const auto isToCome = [&](SignalId control) {
        const std::vector<std::size_t>& steps = m_byControl[indexOf(control)];
        return std::any_of(steps.begin(), steps.end(), [&](std::size_t other) {
            return isAnew[other];
        });
    };
    for (const StartValue& start : m_flow.start)
        if (m_aircraft.isControl(start.signal) && (!isContinuous(start.signal) || isToCome(start.signal)))
            wanted[indexOf(start.signal)] = start;
    for (std::size_t before = 0; before < i; ++before) {
        if (!isBefore[before] || !step(before).done)
            continue;
        for (const SignalId control : m_tracks[before].controls) {
            values[indexOf(control)] = value(control);
            values[indexOf(control)] = target(before, control, values);
            wanted[indexOf(control)] = StartValue{control, values[indexOf(control)],
                                                  std::max(tolerance(control), room(before, control, values))};
        }
    }
    std::vector<StartValue> state;
    for (const std::optional<StartValue>& one : wanted)
        if (one && one->value.isKnown() && isAskedFor(one->signal))
            state.push_back(*one);
    return state;
}

/// How far a number may be from where it is in `values`, either way, and still do step `i`.
double Judge::room(std::size_t i, SignalId control, std::vector<Value> values) const {
    const Value middle = values[indexOf(control)];
    if (m_aircraft.signals[control].kind != SignalKind::Number || !middle.isKnown())
        return 0.0;
    const double grain = tolerance(control) / 4.0;
    const auto fitsAt = [&](double place) {
        return step(i).done->condition.fits(control, Value::number(place), values);
    };
    int steps = 0;
    while (steps < kMostGrains && fitsAt(middle.number() - (steps + 1) * grain) &&
           fitsAt(middle.number() + (steps + 1) * grain))
        ++steps;
    return steps * grain;
}

/// Not done and never asked for: it leaves the score, and says so.
void Judge::passOver(std::size_t i) {
    if (m_tracks[i].isResolved())
        return;
    m_tracks[i].why = phrase("jumped over");
    tell(EventKind::StepVoid, static_cast<int>(i)).text = m_tracks[i].why;
    resolved(i, StepState::Void);
}

} // namespace flowhand
