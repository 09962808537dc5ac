#include <algorithm>

#include "session/judge.h"

namespace flowhand {

namespace {

/// An open step that nothing else ends is given up this many times `late` after it was due.
constexpr int kGiveUpFactor = 3;

} // namespace

Duration pausedIn(const StepTrack& track, Time from, Time to) {
    Duration paused{};
    for (const Pause& pause : track.pauses)
        paused += std::max(std::min(pause.to, to) - std::max(pause.from, from), Duration{});
    return paused;
}

void Judge::satisfy(std::size_t i, Time time) {
    m_tracks[i].isSatisfied = true;
    m_tracks[i].satisfiedAt = time;
    m_toConsider.insert(m_toConsider.end(), m_followers[i].begin(), m_followers[i].end());
}

bool Judge::areBeforeSatisfied(std::size_t i) const {
    return std::all_of(step(i).after.begin(), step(i).after.end(), [&](std::size_t before) {
        return m_tracks[before].isSatisfied;
    });
}

void Judge::serveCues() {
    while (!m_toConsider.empty()) {
        std::vector<std::size_t> steps = std::exchange(m_toConsider, {});
        std::sort(steps.begin(), steps.end());
        steps.erase(std::unique(steps.begin(), steps.end()), steps.end());
        for (const std::size_t i : steps)
            considerCue(i);
    }
}

void Judge::considerCue(std::size_t i) {
    StepTrack& track = m_tracks[i];
    if (track.state == StepState::LeftOut && !track.isSatisfied && areBeforeSatisfied(i))
        satisfy(i, turnOf(i));
    if (!track.isComing() || track.isCued || !areBeforeSatisfied(i) ||
        (track.whenMonitor && !isTrue(track.whenMonitor)))
        return;
    cue(i, turnOf(i));
}

void Judge::cue(std::size_t i, Time turn) {
    m_tracks[i].isCued = true;
    const Step& next = step(i);
    std::optional<Words> words = next.cue;
    if (!words && !next.orderedBy.empty() && next.orderedBy != next.movedBy)
        words = Words{next.title, next.orderedBy};
    if (words && !isSpokenByPilot(words->by))
        say(WordsPurpose::Cue, i, words->by, words->text);
    else
        makeDue(i, turn);
}

/// When the steps before it were done and its `when` was true. The steps' own times count, which are known only once
/// their movements have settled.
Time Judge::turnOf(std::size_t i) const {
    Time turn = step(i).after.empty() ? m_begun : Time::min();
    for (const std::size_t before : step(i).after)
        turn = std::max(turn, m_tracks[before].satisfiedAt);
    return m_tracks[i].whenMonitor ? std::max(turn, m_tracks[i].whenSince) : turn;
}

void Judge::makeDue(std::size_t i, Time due) {
    StepTrack& track = m_tracks[i];
    for (const SignalId need : step(i).needs)
        if (!value(need).isKnown()) {
            leaveOut(i, phrase("{1} is not known here").with(m_aircraft.signals[need].label));
            return;
        }
    track.state = StepState::Due;
    track.due = due;
    track.atDue.clear();
    for (const SignalId control : track.controls)
        track.atDue.push_back(value(control));
    tell(EventKind::StepDue, static_cast<int>(i));
    m_hasChanged = true;
    if (track.doer == Doer::Words) {
        finish(i, m_now);
        return;
    }
    if (isFoundSet(i)) {
        foundSet(i);
        return;
    }
    if (track.doneMonitor && step(i).done->condition.usesReference()) {
        m_monitor.setReference(*track.doneMonitor, m_now);
        m_mustSettle = true;
    }
    takeOverHold(i);
    setExpiry(i);
    suspendChanged(i, isTrue(track.suspendMonitor));
    m_justDue.push_back(i);
    m_toExpire.push_back(i);
    m_mustSettle = true;
    if (track.doer == Doer::Partner)
        schedulePartner(i);
}

bool Judge::isFoundSet(std::size_t i) const {
    const Step& next = step(i);
    return next.done && next.kind != StepKind::Reply && !next.done->condition.isInstant() && !isHandAt(i) &&
           next.done->condition.holdsNow(m_values) == Truth::True;
}

void Judge::foundSet(std::size_t i) {
    m_tracks[i].done = m_now;
    tell(EventKind::StepFoundSet, static_cast<int>(i));
    resolved(i, StepState::FoundSet);
}

/// One of its controls is on the move, by its doer and for no other step.
bool Judge::isHandAt(std::size_t i) const {
    return std::any_of(m_tracks[i].controls.begin(), m_tracks[i].controls.end(), [&](SignalId control) {
        const ControlMovement* movement = m_movements.moving(control);
        return movement != nullptr && isBy(i, movement->actor) && m_credited[indexOf(control)] == 0;
    });
}

/// A continuous control that the pilot holds where this step wants it needs no new movement.
void Judge::takeOverHold(std::size_t i) {
    StepTrack& track = m_tracks[i];
    if (track.doer != Doer::Hand || !step(i).done || step(i).done->condition.isInstant())
        return;
    for (const SignalId control : track.controls)
        if (track.fit == kNoSignal && isContinuous(control) && m_handMoved[indexOf(control)] && fits(i, control)) {
            track.fit = control;
            track.fitBegan = m_now;
        }
}

void Judge::setExpiry(std::size_t i) {
    StepTrack& track = m_tracks[i];
    if (step(i).expiresAfter)
        track.expires = track.due + *step(i).expiresAfter;
    else if (!step(i).expires || unobservedIn(step(i).expires) != kNoSignal)
        track.expires = track.due + kGiveUpFactor * step(i).late;
    if (track.expires == kForever)
        return;
    track.expires = std::max(track.expires, m_now);
    m_timers.set({track.expires, RunTimerKind::StepExpires, i});
}

void Judge::suspendChanged(std::size_t i, bool isSuspended) {
    StepTrack& track = m_tracks[i];
    const bool wasSuspended = !track.pauses.empty() && track.pauses.back().to == kForever;
    if (!track.isOpen() || isSuspended == wasSuspended)
        return;
    if (track.expires != kForever)
        m_timers.clear({track.expires, RunTimerKind::StepExpires, i});
    if (isSuspended) {
        track.pauses.push_back({m_now});
        return;
    }
    track.pauses.back().to = m_now;
    if (track.expires == kForever)
        return;
    track.expires += m_now - track.pauses.back().from;
    m_timers.set({track.expires, RunTimerKind::StepExpires, i});
}

} // namespace flowhand
