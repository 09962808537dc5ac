#include <algorithm>

#include "base/valuewords.h"
#include "session/judge.h"

namespace flowhand {

bool Judge::isBy(std::size_t i, Actor actor) const {
    const Doer doer = m_tracks[i].doer;
    return (doer == Doer::Hand && actor == Actor::Hand) || (doer == Doer::Partner && actor == Actor::Partner);
}

/// Where the control stands now is where this step wants it.
bool Judge::fits(std::size_t i, SignalId control) const {
    if (!step(i).done)
        return value(control).isKnown() && value(control).isOn();
    return step(i).done->condition.fits(control, value(control), m_values);
}

void Judge::settled(const ControlMovement& movement) {
    const SignalId control = movement.control;
    const std::size_t at = indexOf(control);
    if (movement.actor == Actor::Hand) {
        m_handMoved[at] = true;
        if (m_ownership.wantsMatch(control) &&
            m_movements.isSamePlace(control, m_ownership.wanted(control), movement.to)) {
            matched(control, movement.to);
            return;
        }
    }
    losesFit(movement);
    if (m_credited[at] != 0 && !fits(m_credited[at] - 1, control))
        m_credited[at] = 0; // it did an instant on its way, and went on
    if (m_credited[at] == 0) {
        std::optional<std::size_t> creditor = creditOpen(movement);
        if (!creditor)
            creditor = creditComing(movement);
        if (creditor)
            credit(*creditor, movement);
        else if (movement.actor == Actor::Hand)
            extra(movement);
    }
    for (const std::size_t i : m_byControl[at]) {
        if (m_tracks[i].state == StepState::Uncertain)
            reconsiderUncertain(i);
        else
            tryFinish(i); // it may have waited for this control to come to rest
    }
}

void Judge::losesFit(const ControlMovement& movement) {
    for (const std::size_t i : m_byControl[indexOf(movement.control)])
        if (m_tracks[i].fit == movement.control && !fits(i, movement.control))
            m_tracks[i].fit = kNoSignal;
}

/// The first listed open step that the movement fits. A control that is always at work also serves a later one when
/// that is the one whose condition is true.
std::optional<std::size_t> Judge::creditOpen(const ControlMovement& movement) const {
    std::optional<std::size_t> first;
    for (const std::size_t i : m_byControl[indexOf(movement.control)]) {
        const StepTrack& track = m_tracks[i];
        if (!track.isOpen() || !isBy(i, movement.actor) || !fits(i, movement.control))
            continue;
        if (!isContinuous(movement.control) || track.trueSince != kForever)
            return i;
        if (!first)
            first = i;
    }
    return first;
}

std::optional<std::size_t> Judge::creditComing(const ControlMovement& movement) const {
    for (const std::size_t i : m_byControl[indexOf(movement.control)])
        if (m_tracks[i].isComing() && isBy(i, movement.actor) && mayComeAhead(i, movement.control) &&
            fits(i, movement.control))
            return i;
    return std::nullopt;
}

/// Whether a movement of this control can be meant for a step whose turn has not come.
///
/// No answer comes before its question. With a control that is always at work, returning to where the step's condition
/// held at the start is no attempt at it, nor is anything as long as neither the steps before it are done nor its
/// `when` is true.
bool Judge::mayComeAhead(std::size_t i, SignalId control) const {
    const StepTrack& track = m_tracks[i];
    const bool isAnswer = step(i).kind == StepKind::Reply || step(i).kind == StepKind::Say;
    if (isAnswer && !track.isCued)
        return false;
    if (!isContinuous(control))
        return true;
    if (track.heldAtStart)
        return false;
    return areBeforeSatisfied(i) || !track.whenMonitor || isTrue(track.whenMonitor);
}

void Judge::matched(SignalId control, Value value) {
    m_ownership.matched(control);
    Event& event = tell(EventKind::Matched);
    event.signal = control;
    event.value = value;
}

void Judge::credit(std::size_t i, const ControlMovement& movement) {
    StepTrack& track = m_tracks[i];
    track.fit = movement.control;
    track.fitBegan = movement.began;
    track.why = {};
    m_credited[indexOf(movement.control)] = i + 1;
    m_extras.forget(movement.control);
    if (movement.actor == Actor::Hand && m_ownership.wantsMatch(movement.control))
        matched(movement.control, movement.to);
    if (!step(i).done)
        finish(i, movement.arrived);
}

void Judge::extra(const ControlMovement& movement) {
    const SignalId control = movement.control;
    if (isContinuous(control) || m_movements.isSamePlace(control, movement.from, movement.to))
        return;
    if (m_extras.isReturn(movement)) {
        if (const std::optional<ExtraResult> cancelled = m_extras.putBack(movement)) {
            Event& event = tell(EventKind::ExtraCancelled, cancelled->step);
            event.signal = control;
            event.value = movement.to;
            event.control = movement.by;
        }
        return;
    }
    if (m_ownership.wantsMatch(control) || isPartnersWork(movement) || isStillInPlace(movement))
        return;
    const std::vector<std::size_t>& steps = m_byControl[indexOf(control)];
    const auto isOpenHere = [&](std::size_t i) {
        return m_tracks[i].isOpen() && m_tracks[i].doer == Doer::Hand;
    };
    const auto own = std::find_if(steps.begin(), steps.end(), isOpenHere);
    const std::optional<std::size_t> undone = own == steps.end() ? undoneBy(movement) : std::nullopt;
    ExtraResult found;
    found.time = m_real;
    found.signal = control;
    found.isWrongValue = own != steps.end();
    found.isUndone = undone.has_value();
    if (own != steps.end())
        found.step = static_cast<int>(*own);
    else if (undone)
        found.step = static_cast<int>(*undone);
    else
        for (std::size_t i = 0; i < m_tracks.size() && found.step < 0; ++i)
            if (isOpenHere(i))
                found.step = static_cast<int>(i);
    tellExtra(movement, found);
    m_extras.add(movement, std::move(found));
}

void Judge::tellExtra(const ControlMovement& movement, ExtraResult& found) {
    const Signal& signal = m_aircraft.signals[movement.control];
    const Phrase at = valueWords(signal, movement.to);
    StepTrack* track = found.step >= 0 ? &m_tracks[static_cast<std::size_t>(found.step)] : nullptr;
    EventKind kind = EventKind::WrongControl;
    if (found.isWrongValue) {
        kind = EventKind::WrongValue;
        const Value wanted = target(static_cast<std::size_t>(found.step), movement.control, m_values);
        found.text = phrase("{1} at {2}, wanted {3}").with(signal.label, at, valueWords(signal, wanted));
        track->why = found.text;
    } else if (found.isUndone) {
        kind = EventKind::StepUndone;
        found.text = phrase("{1}: undone again, {2} at {3}")
                         .with(step(static_cast<std::size_t>(found.step)).title, signal.label, at);
        track->isUndone = true;
    } else if (track != nullptr) {
        found.text = phrase("{1} at {2} instead of: {3}")
                         .with(signal.label, at, step(static_cast<std::size_t>(found.step)).title);
    } else {
        found.text = phrase("{1} at {2}, which no step asked for").with(signal.label, at);
    }
    Event& event = tell(kind, found.step);
    event.signal = movement.control;
    event.value = movement.to;
    event.control = movement.by;
    event.text = found.text;
}

/// The pilot does what is the partner's: no extra. The partner finds it set.
bool Judge::isPartnersWork(const ControlMovement& movement) {
    for (const std::size_t i : m_byControl[indexOf(movement.control)]) {
        if (m_tracks[i].doer != Doer::Partner || m_tracks[i].isResolved() || !fits(i, movement.control))
            continue;
        if (m_tracks[i].isOpen() && m_tracks[i].trueSince != kForever)
            foundSet(i);
        return true;
    }
    return false;
}

/// No step is made or unmade by it: an answer given without a question while one is still to come, or a number moved
/// within what its last done step allows.
bool Judge::isStillInPlace(const ControlMovement& movement) const {
    bool isInPlace = false;
    Time last = Time::min();
    for (const std::size_t i : m_byControl[indexOf(movement.control)]) {
        const StepTrack& track = m_tracks[i];
        const bool isAnswer = step(i).kind == StepKind::Reply || step(i).kind == StepKind::Say;
        if (isAnswer && track.isComing())
            return true;
        const bool isNumber = m_aircraft.signals[movement.control].kind == SignalKind::Number;
        if (isNumber && track.isResolved() && track.done != kForever && track.done >= last) {
            last = track.done;
            isInPlace = fits(i, movement.control);
        }
    }
    return isInPlace;
}

/// The done step that this movement undoes.
std::optional<std::size_t> Judge::undoneBy(const ControlMovement& movement) const {
    std::optional<std::size_t> undone;
    for (const std::size_t i : m_byControl[indexOf(movement.control)]) {
        const StepTrack& track = m_tracks[i];
        if (!track.isResolved() || track.done == kForever || !step(i).done || step(i).done->condition.isInstant())
            continue;
        if (step(i).done->condition.fits(movement.control, movement.from, m_values) && !fits(i, movement.control))
            undone = i;
    }
    return undone;
}

} // namespace flowhand
