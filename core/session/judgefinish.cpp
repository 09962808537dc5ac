#include <algorithm>
#include <cmath>

#include "session/judge.h"

namespace flowhand {

namespace {

/// Below this many sigmas of margin, noise could have made the verdict.
constexpr double kSureSigmas = 3.0;
/// Keeps a margin of exactly 3 sigmas on the sure side.
constexpr double kJustBelow = 1.0 - 1e-9;

} // namespace

void Judge::doneChanged(std::size_t i, const TruthChange& change) {
    StepTrack& track = m_tracks[i];
    if (change.isPoint) {
        if (change.truth == Truth::True)
            m_instants.push_back(i);
        else if (track.trueSince != kForever)
            track.trueSince = change.time; // a new stretch begins just after
        return;
    }
    if (change.truth != Truth::True) {
        track.trueSince = kForever;
        if (track.state == StepState::Seen) {
            track.state = StepState::Due;
            m_isStale = true;
        }
        return;
    }
    track.trueSince = change.time;
    see(i);
    tryFinish(i);
}

void Judge::see(std::size_t i) {
    StepTrack& track = m_tracks[i];
    const bool isAhead = track.isComing() && track.seen == kForever && isHandAt(i) &&
                         std::any_of(track.controls.begin(), track.controls.end(), [&](SignalId control) {
                             return mayComeAhead(i, control);
                         });
    if (track.state != StepState::Due && !isAhead)
        return;
    if (track.state == StepState::Due)
        track.state = StepState::Seen;
    if (track.seen == kForever || !isAhead)
        tell(EventKind::StepSeen, static_cast<int>(i));
    track.seen = std::min(track.seen, m_now);
}

/// Open steps first, then in the flow's order, so that each movement goes to the step it is credited to.
void Judge::serveInstants() {
    std::vector<std::size_t> steps = std::exchange(m_instants, {});
    std::sort(steps.begin(), steps.end(), [&](std::size_t a, std::size_t b) {
        return std::pair(!m_tracks[a].isOpen(), a) < std::pair(!m_tracks[b].isOpen(), b);
    });
    for (const std::size_t i : steps)
        instantDone(i);
}

void Judge::instantDone(std::size_t i) {
    StepTrack& track = m_tracks[i];
    if (track.isResolved() || !step(i).done->condition.isInstant())
        return;
    if (!needsMovement(i)) {
        if (track.isOpen())
            finish(i, m_now);
        return;
    }
    for (const SignalId control : track.controls) {
        const ControlMovement* movement = m_movements.moving(control);
        const std::size_t at = indexOf(control);
        const bool isMovedNow = movement != nullptr && isBy(i, movement->actor) && fits(i, control) &&
                                (m_credited[at] == 0 || m_credited[at] == i + 1 || isContinuous(control));
        const bool mayBe = track.isOpen() || mayComeAhead(i, control);
        if (!mayBe || (!isMovedNow && track.fit != control))
            continue;
        if (isMovedNow)
            credit(i, *movement);
        see(i);
        if (track.isComing() && isTrue(track.expiresMonitor))
            omit(i);
        else
            finish(i, m_now);
        return;
    }
}

/// A step that only compares is done when it is so, by whatever.
bool Judge::needsMovement(std::size_t i) const {
    return !m_tracks[i].controls.empty() && !step(i).compareOnly;
}

bool Judge::isMoving(std::size_t i) const {
    return std::any_of(m_tracks[i].controls.begin(), m_tracks[i].controls.end(), [&](SignalId control) {
        const ControlMovement* movement = m_movements.moving(control);
        return movement != nullptr && isBy(i, movement->actor);
    });
}

void Judge::tryFinish(std::size_t i) {
    StepTrack& track = m_tracks[i];
    if (track.isResolved() || track.trueSince == kForever || !step(i).done || step(i).done->condition.isInstant())
        return;
    if (isMoving(i) || (needsMovement(i) ? track.fit == kNoSignal : track.isComing()))
        return;
    if (track.isComing() && !mayComeAhead(i, track.fit))
        return;
    if (track.isComing() && isTrue(track.expiresMonitor)) {
        omit(i);
        return;
    }
    // Ahead of its turn the condition may have been true long before the hand came.
    finish(i, track.isComing() ? std::max(track.trueSince, track.fitBegan) : track.trueSince);
}

void Judge::finish(std::size_t i, Time done) {
    StepTrack& track = m_tracks[i];
    track.done = done;
    track.seen = std::min(track.seen, m_now);
    track.isTooEarly = track.isComing() && !track.isCued && track.whenMonitor && !isTrue(track.whenMonitor);
    track.isUncertain = track.doer == Doer::Hand && isUncertain(i);
    measure(i);
    const StepState state = track.isTooEarly    ? StepState::TooEarly
                            : track.isUncertain ? StepState::Uncertain
                                                : StepState::Done;
    tellFinish(i, state);
    m_lastDone = i;
    if (track.doer == Doer::Partner && step(i).kind != StepKind::Reply && !step(i).reply.empty())
        say(WordsPurpose::Remark, i, step(i).movedBy, step(i).reply);
    resolved(i, state);
}

void Judge::tellFinish(std::size_t i, StepState state) {
    const StepTrack& track = m_tracks[i];
    Event& event = tell(state == StepState::TooEarly    ? EventKind::StepTooEarly
                        : state == StepState::Uncertain ? EventKind::StepUncertain
                                                        : EventKind::StepDone,
                        static_cast<int>(i));
    event.margin = track.margin;
    event.marginSignal = track.marginSignal;
    event.signal = track.fit;
    if (track.fit != kNoSignal) {
        event.value = value(track.fit);
        event.control = m_by[indexOf(track.fit)];
    }
}

bool Judge::isUncertain(std::size_t i) const {
    if (!step(i).done)
        return false;
    if (mayBeNoise(i))
        return true;
    const Margin margin = m_monitor.margin(*m_tracks[i].doneMonitor);
    return margin.signal != kNoSignal && m_aircraft.isControl(margin.signal) &&
           std::fabs(margin.value) < kSureSigmas * kJustBelow * sigma(margin.signal);
}

/// Whether the noise of one of its controls, at 3 sigmas, could make its condition false.
bool Judge::mayBeNoise(std::size_t i) const {
    const Condition& done = step(i).done->condition;
    for (const SignalId control : m_tracks[i].controls) {
        const double noise = kSureSigmas * kJustBelow * sigma(control);
        if (noise <= 0.0 || m_aircraft.signals[control].kind != SignalKind::Number || !value(control).isKnown())
            continue;
        const double now = value(control).number();
        if (!done.fits(control, Value::number(now - noise), m_values) ||
            !done.fits(control, Value::number(now + noise), m_values))
            return true;
    }
    return false;
}

/// Margin and mu, as they are now.
void Judge::measure(std::size_t i) {
    StepTrack& track = m_tracks[i];
    if (track.doneMonitor) {
        const Margin margin = m_monitor.margin(*track.doneMonitor);
        const bool isFinite = std::isfinite(margin.value) && margin.signal != kNoSignal;
        track.margin = isFinite ? std::optional(margin.value) : std::nullopt;
        track.marginSignal = isFinite ? margin.signal : kNoSignal;
    }
    const std::optional<Band>& band = step(i).band;
    if (!band || !value(band->signal).isKnown())
        return;
    const double now = value(band->signal).number();
    const double room = std::min(now - band->lowest, band->highest - now);
    track.mu = std::clamp(room / ((band->highest - band->lowest) / 2.0), 0.0, 1.0);
}

void Judge::reconsiderUncertain(std::size_t i) {
    if (m_tracks[i].trueSince == kForever || isMoving(i) || isUncertain(i))
        return;
    measure(i);
    makeCertain(i);
}

/// At its crossing every instant is within the noise. It is certain once the same movement has gone clearly beyond.
void Judge::reconsiderInstants(SignalId control) {
    if (indexOf(control) >= m_byControl.size())
        return;
    for (const std::size_t i : m_byControl[indexOf(control)])
        if (m_tracks[i].state == StepState::Uncertain && m_credited[indexOf(control)] == i + 1 &&
            step(i).done->condition.isInstant() && !mayBeNoise(i))
            makeCertain(i);
}

void Judge::makeCertain(std::size_t i) {
    m_tracks[i].isUncertain = false;
    m_tracks[i].state = StepState::Done;
    tellFinish(i, StepState::Done);
}

} // namespace flowhand
