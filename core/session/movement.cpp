#include "session/movement.h"

#include <algorithm>
#include <cmath>

#include "session/slowtime.h"

namespace flowhand {

namespace {

using namespace std::chrono_literals;

/// A hand that has not gone on for this long has stopped.
constexpr Duration kSettleTime = 300ms;
/// Long enough that a lever on its way through a gate has not chosen it.
constexpr Duration kGateDwell = 500ms;
constexpr double kThresholdSigmas = 6.0;
constexpr double kThresholdShare = 0.01; // of the range

} // namespace

MovementDetector::MovementDetector(const Aircraft& aircraft, const std::vector<ControlFacts>& facts, double timeScale)
    : m_tracks(aircraft.controls.size()) {
    for (std::size_t i = 0; i < m_tracks.size(); ++i) {
        const CockpitControl& control = aircraft.controls[i];
        const Signal& signal = aircraft.signals[control.signal];
        const ControlFacts fact = i < facts.size() ? facts[i] : ControlFacts{};
        Track& track = m_tracks[i];
        track.movement.control = control.signal;
        track.isNumber = signal.kind == SignalKind::Number;
        track.isPosition = signal.kind == SignalKind::Position;
        track.isButton = control.kind == ControlKind::Button;
        const Duration stay = track.isPosition ? kGateDwell : kSettleTime;
        track.stay = track.isButton ? Duration{} : ofHands(stay, timeScale);
        if (track.isNumber) {
            const double range = fact.range > 0.0 ? fact.range : signal.highest - signal.lowest;
            track.threshold = std::max(kThresholdSigmas * fact.sigma, kThresholdShare * range);
        }
    }
}

void MovementDetector::rest(const std::vector<Value>& values) {
    m_moving.clear();
    m_next = kForever;
    for (std::size_t i = 0; i < m_tracks.size(); ++i) {
        m_tracks[i].rest = values[i];
        m_tracks[i].isMoving = false;
    }
}

void MovementDetector::restAt(SignalId control, Value value) {
    m_tracks[indexOf(control)].rest = value;
    stop(control);
}

bool MovementDetector::isSamePlace(SignalId control, Value a, Value b) const {
    return isSamePlace(m_tracks[indexOf(control)], a, b);
}

bool MovementDetector::isSamePlace(const Track& track, Value a, Value b) {
    if (!track.isNumber || !a.isKnown() || !b.isKnown())
        return a == b;
    return std::fabs(a.number() - b.number()) <= track.threshold;
}

bool MovementDetector::take(Time time, SignalId control, Value value, Actor actor, ControlId by) {
    Track& track = m_tracks[indexOf(control)];
    if (actor == Actor::Machine) {
        restAt(control, value);
        return false;
    }
    if (track.isButton && !(value.isKnown() && value.isOn())) {
        restAt(control, value);
        return false;
    }
    const bool isOther = track.isMoving && track.movement.actor != actor;
    if (!track.isMoving || isOther) {
        if (!isOther && isSamePlace(track, track.rest, value))
            return false;
        begin(track, time, value, actor);
        track.movement.by = by;
        return true;
    }
    const Time settled = settlesAt(track);
    if (!isSamePlace(track, track.stayed, value)) {
        track.movement.arrived = time;
        track.stayed = value;
    }
    track.movement.to = value;
    const Time settles = settlesAt(track);
    m_next = settled == m_next ? soonest() : std::min(m_next, settles);
    return false;
}

void MovementDetector::begin(Track& track, Time time, Value value, Actor actor) {
    track.movement.actor = actor;
    track.movement.from = track.rest;
    track.movement.to = value;
    track.stayed = value;
    track.movement.began = time;
    track.movement.arrived = time;
    if (!track.isMoving) {
        const SignalId id = track.movement.control;
        m_moving.insert(std::lower_bound(m_moving.begin(), m_moving.end(), id), id);
    }
    track.isMoving = true;
    m_next = soonest();
}

void MovementDetector::stop(SignalId control) {
    Track& track = m_tracks[indexOf(control)];
    if (!track.isMoving)
        return;
    m_moving.erase(std::lower_bound(m_moving.begin(), m_moving.end(), control));
    track.isMoving = false;
    m_next = soonest();
}

Time MovementDetector::settlesAt(const Track& track) {
    const bool isBetween = track.isPosition && track.movement.to == Value::between();
    return isBetween ? kForever : track.movement.arrived + track.stay;
}

void MovementDetector::settle(Time time, std::vector<ControlMovement>& settled) {
    if (m_next > time)
        return;
    std::erase_if(m_moving, [&](SignalId control) {
        Track& track = m_tracks[indexOf(control)];
        if (settlesAt(track) > time)
            return false;
        settled.push_back(track.movement);
        track.rest = track.movement.to;
        track.isMoving = false;
        return true;
    });
    m_next = soonest();
}

Time MovementDetector::soonest() const {
    Time next = kForever;
    for (const SignalId control : m_moving)
        next = std::min(next, settlesAt(m_tracks[indexOf(control)]));
    return next;
}

const ControlMovement* MovementDetector::moving(SignalId control) const {
    const Track& track = m_tracks[indexOf(control)];
    return track.isMoving ? &track.movement : nullptr;
}

} // namespace flowhand
