#include "condition/engine.h"

#include <algorithm>
#include <utility>

namespace flowhand {

std::uint32_t Monitor::Engine::add(const Condition& condition, MarginUse margin) {
    std::uint32_t id = static_cast<std::uint32_t>(watched.size());
    if (freePlaces.empty()) {
        watched.emplace_back();
    } else {
        id = freePlaces.back();
        freePlaces.pop_back();
        watched[id] = {};
    }
    Watched& place = watched[id];
    place.condition = condition;
    const ConditionProgram& program = condition.program();
    if (margin == MarginUse::Wanted && program.hasFiniteMargin && program.stateCount > 0)
        place.margins.emplace(condition, now);
    renewed.push_back(id);
    if (hasBegun)
        begin(id);
    return id;
}

/// From now on, with the values of now.
void Monitor::Engine::startWatch(Watched& place) {
    place.watch.emplace(*place.condition, now);
    place.watch->refreshAll(values);
    if (place.margins) {
        place.margins.emplace(*place.condition, now);
        place.margins->step(keyAt(now), values);
    }
}

void Monitor::Engine::begin(std::uint32_t id) {
    Watched& place = watched[id];
    const ConditionProgram& program = place.condition->program();
    startWatch(place);
    if (place.margins)
        for (const SignalId signal : program.signals)
            signals[indexOf(signal)].margins.push_back(id);
    for (std::uint32_t i = 0; i < program.comparisons.size(); ++i) {
        const Comparison& comparison = program.comparisons[i];
        if (comparison.isThreshold && !comparison.isDiscrete) {
            signals[indexOf(comparison.signal)].thresholds.add(comparison.constant, {id, i});
            continue;
        }
        for (const SignalId signal : comparison.signals)
            signals[indexOf(signal)].always.push_back({id, i});
    }
    for (std::uint32_t i = 0; i < program.movements.size(); ++i)
        for (const SignalId signal : program.movements[i].signals)
            signals[indexOf(signal)].always.push_back({id, static_cast<std::uint32_t>(program.comparisons.size()) + i});
}

void Monitor::Engine::remove(std::uint32_t id) {
    Watched& place = watched[id];
    for (const SignalId id2 : place.condition->signals()) {
        WatchedSignal& signal = signals[indexOf(id2)];
        signal.thresholds.remove(id);
        signal.always.erase(std::remove_if(signal.always.begin(), signal.always.end(),
                                           [&](const Subscription& one) {
                                               return one.watch == id;
                                           }),
                            signal.always.end());
        signal.margins.erase(std::remove(signal.margins.begin(), signal.margins.end(), id), signal.margins.end());
    }
    timers.set(id, kNever);
    renewed.erase(std::remove(renewed.begin(), renewed.end(), id), renewed.end());
    place = {};
    freePlaces.push_back(id);
}

void Monitor::Engine::setReference(std::uint32_t id, Time reference) {
    watched[id].reference = hasBegun ? std::max(reference, asked) : reference;
    if (watched[id].reference > now)
        setTimer(id);
    else if (std::find(renewed.begin(), renewed.end(), id) == renewed.end())
        renewed.push_back(id);
}

void Monitor::Engine::setTimer(std::uint32_t id) {
    const Watched& place = watched[id];
    const Key reference = place.reference == kForever ? kNever : keyAt(place.reference);
    timers.set(id, std::min(reference, place.watch ? place.watch->next() : kNever));
}

void Monitor::Engine::useReference(Watched& place, Key key) {
    if (place.reference > timeOf(key))
        return;
    place.watch->setReference(place.reference);
    if (place.margins)
        place.margins->setReference(place.reference, key);
    place.reference = kForever;
}

void Monitor::Engine::judgeMoment(std::uint32_t id, Key key) {
    Watched& place = watched[id];
    useReference(place, key);
    place.moment = place.after = place.watch->step(key);
    place.momentKey = key;
    setTimer(id);
}

void Monitor::Engine::judgeAfter(std::uint32_t id, Key key) {
    Watched& place = watched[id];
    if (place.momentKey != key - 1) {
        place.moment = place.after;
        place.momentKey = key - 1;
    }
    place.after = place.watch->step(key);
    setTimer(id);
}

void Monitor::Engine::report(std::uint32_t id, Time time, std::vector<TruthChange>& changes) {
    Watched& place = watched[id];
    place.isMarked = false;
    const bool isPoint = place.moment != place.reported && place.after == place.reported;
    if (place.moment != place.reported)
        changes.push_back({MonitorId{id}, time, truthOf(place.moment), isPoint, false});
    if (place.after != place.moment && !isPoint)
        changes.push_back({MonitorId{id}, time, truthOf(place.after), false, true});
    place.reported = place.after;
}

/// Judges new conditions and new reference times at the time settled last, with the values it had.
void Monitor::Engine::renew(std::vector<TruthChange>& changes) {
    for (const std::uint32_t id : renewed) {
        Watched& place = watched[id];
        if (place.isNew) {
            place.isNew = false;
            judgeMoment(id, keyAt(now));
            if (place.watch->next() == keyAt(now) + 1)
                judgeAfter(id, keyAt(now) + 1);
        } else {
            // The moment itself is judged already: the new reference time counts from just after it.
            useReference(place, keyAt(now) + 1);
            place.moment = place.after = place.watch->step(keyAt(now) + 1);
            place.momentKey = kNever;
            setTimer(id);
        }
        report(id, asked, changes);
    }
    renewed.clear();
}

void Monitor::Engine::serve(Time time, Time reported, std::vector<TruthChange>& changes) {
    const Key key = keyAt(time);
    while (timers.soonest() <= key)
        mark(timers.take());
    for (const std::uint32_t id : marked)
        judgeMoment(id, key);
    while (timers.soonest() == key + 1) {
        const std::uint32_t id = timers.take();
        mark(id);
        judgeAfter(id, key + 1);
    }
    for (const std::uint32_t id : marked)
        report(id, reported, changes);
    marked.clear();
    now = time;
}

void Monitor::Engine::read(std::size_t index) {
    WatchedSignal& signal = signals[index];
    const auto touch = [&](const Subscription& one) {
        if (watched[one.watch].watch->refresh(one.comparison, values))
            mark(one.watch);
    };
    if (signal.isNumber)
        signal.thresholds.moveTo(values[index].number(), touch);
    for (const Subscription& one : signal.always)
        touch(one);
}

void Monitor::Engine::takePending() {
    std::size_t changed = 0;
    for (const std::uint32_t index : pending) {
        WatchedSignal& signal = signals[index];
        signal.isPending = false;
        if (signal.pending == values[index])
            continue;
        values[index] = signal.pending;
        pending[changed++] = index;
    }
    pending.resize(changed);
}

/// Takes what was set, as of `time`, or 1 ns later where that is settled already. Gives as of when.
Time Monitor::Engine::readPending(Time time) {
    if (pending.empty())
        return std::max(time, now);
    takePending();
    const Time at = time > now ? time : pending.empty() ? now : now + Duration(1);
    for (const std::uint32_t index : pending)
        read(index);
    for (const std::uint32_t index : pending)
        for (const std::uint32_t id : signals[index].margins)
            watched[id].margins->step(keyAt(at), values);
    pending.clear();
    return at;
}

/// What was set, without anything that is watched seeing it change.
void Monitor::Engine::takeWhereItStands() {
    takePending();
    for (const std::uint32_t index : pending)
        if (signals[index].isNumber)
            signals[index].thresholds.moveTo(values[index].number(), [](const Subscription&) {});
    pending.clear();
}

void Monitor::Engine::beginAnew() {
    renewed.clear();
    for (std::uint32_t id = 0; id < watched.size(); ++id) {
        if (!watched[id].watch)
            continue;
        startWatch(watched[id]);
        watched[id].isNew = true;
        renewed.push_back(id);
    }
}

void Monitor::Engine::settle(Time time, std::vector<TruthChange>& changes) {
    const bool isQuiet = hasBegun && !isAnew && renewed.empty() && time > now && timers.soonest() > keyAt(time) + 1;
    if (isQuiet) { // the usual case: no timer is due on the way
        readPending(time);
        asked = time;
        if (marked.empty())
            now = time;
        else
            serve(time, time, changes);
        return;
    }
    if (!hasBegun) {
        hasBegun = true;
        now = asked = time;
        takeWhereItStands();
        for (const std::uint32_t id : renewed)
            begin(id);
    } else if (std::exchange(isAnew, false)) {
        now = std::max(time, now + Duration(1));
        asked = std::max(asked, time);
        takeWhereItStands();
        beginAnew();
    }
    renew(changes);
    while (timers.soonest() < keyAt(time))
        serve(timeOf(timers.soonest()), timeOf(timers.soonest()), changes);
    asked = std::max(asked, time);
    serve(readPending(time), asked, changes);
}

} // namespace flowhand
