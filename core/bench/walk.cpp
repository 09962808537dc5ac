// The check walk. One control is asked for at a time:
//
//   #  what is seen of the control that is asked for             then
//   1  nothing                                                   wait
//   2  another control moves                                     it is named; wait
//   3  an axis passes a part of its range                        that part is seen
//   4  an axis stands still near one of its ends                 that end is seen, with how near it came
//   5  an axis with a centre stands still there after both ends  the return is seen, with how near it came
//   6  a position or state lasts 0.5 s                           it is seen
//   7  a button is pressed, however shortly                      pressed and released are seen
//   8  a control that only counts goes over a tenth              its range is seen: nobody turns a trim from end to end
//   9  everything is seen of all its signals                     confirmed; the next
//  10  the builder skips it, or patience ends                    not confirmed, with what is missing; the next
//  11  there is no next                                          done
#include "bench/walk.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include "base/valuewords.h"
#include "bench/wiringwish.h"

namespace flowhand {

namespace {

/// As for a movement: this share of the range, or six sigma.
constexpr double kStillShare = 0.01;
constexpr double kStillSigmas = 6.0;
/// How far a control that only counts must go either way, of its range.
constexpr double kCountedShare = 0.1;
/// Points of a trace; when there are more, every second one goes.
constexpr std::size_t kMostPoints = 400;

} // namespace

Walk::Walk(const Aircraft& aircraft, const RigFile& rig, const std::vector<Reach>& reaches, Setup setup, Time begin)
    : m_aircraft(aircraft), m_reaches(reaches), m_setup(std::move(setup)), m_standing(aircraft.signals.size()) {
    for (std::size_t i = 0; i < rig.controls.size(); ++i) {
        const std::vector<SignalId>& signals = rig.controls[i]->signals();
        const bool isWanted = m_setup.only.empty() || std::any_of(signals.begin(), signals.end(), [&](SignalId id) {
                                  return std::find(m_setup.only.begin(), m_setup.only.end(), id) != m_setup.only.end();
                              });
        if (!isWanted)
            continue;
        WalkedControl control;
        control.control = i;
        control.name = rig.controls[i]->name();
        control.begin = begin;
        for (const SignalId id : signals) {
            WalkedSignal signal;
            signal.signal = id;
            signal.tolerance = toleranceOf(id);
            signal.seen.assign(reach(id).isContinuous ? 0 : reach(id).values.size(), false);
            judge(signal);
            control.signals.push_back(std::move(signal));
        }
        m_controls.push_back(std::move(control));
    }
}

double Walk::toleranceOf(SignalId id) const {
    const Reach& of = reach(id);
    if (m_aircraft.signals[id].unit.symbol != "deg")
        return m_setup.tolerances.leverShare * (of.highest - of.lowest);
    const ControlKind kind = m_aircraft.control(id).kind;
    return kind == ControlKind::Wheel || kind == ControlKind::Pedal ? m_setup.tolerances.steeringDegrees
                                                                    : m_setup.tolerances.leverDegrees;
}

bool Walk::isNear(SignalId id, Value a, Value b) const {
    if (!a.isKnown() || !b.isKnown() || m_aircraft.signals[id].kind != SignalKind::Number)
        return a == b;
    const Reach& of = reach(id);
    return std::fabs(a.number() - b.number()) <=
           std::max(kStillShare * (of.highest - of.lowest), kStillSigmas * of.sigma);
}

// --- what comes ---

void Walk::take(const Sample& sample) {
    if (indexOf(sample.signal) >= m_reaches.size())
        return;
    Standing& standing = m_standing[indexOf(sample.signal)];
    const Value before = standing.value;
    if (!isDone())
        for (WalkedSignal& signal : m_controls[m_at].signals)
            if (signal.signal == sample.signal)
                settle(signal, standing, sample.time);
    standing.value = sample.value;
    if (!isNear(sample.signal, standing.anchor, sample.value)) {
        standing.anchor = sample.value;
        standing.since = sample.time;
    }
    if (isDone())
        return;
    WalkedControl& control = m_controls[m_at];
    for (WalkedSignal& signal : control.signals) {
        if (signal.signal != sample.signal)
            continue;
        note(signal, sample.value, sample.time);
        return;
    }
    const std::string& label = m_aircraft.signals[sample.signal].label;
    const bool isMoved = before.isKnown() && sample.value.isKnown() && standing.since == sample.time;
    if (isMoved &&
        std::find(control.movedInstead.begin(), control.movedInstead.end(), label) == control.movedInstead.end())
        control.movedInstead.push_back(label);
}

void Walk::note(WalkedSignal& signal, Value value, Time time) {
    if (!value.isKnown())
        return;
    signal.trace.push_back({time - m_controls[m_at].begin, value.number()});
    if (signal.trace.size() > kMostPoints) {
        std::size_t kept = 0;
        for (std::size_t i = 0; i < signal.trace.size(); i += 2)
            signal.trace[kept++] = signal.trace[i];
        signal.trace.resize(kept);
    }
    mark(signal, value);
}

/// Which part of its range, or which state of a button, a value shows.
void Walk::mark(WalkedSignal& signal, Value value) const {
    const Reach& of = reach(signal.signal);
    if (of.isContinuous && of.highest > of.lowest) {
        const double share = (value.number() - of.lowest) / (of.highest - of.lowest);
        const auto part = static_cast<std::ptrdiff_t>(std::floor(share * WalkedSignal::kParts));
        signal.passed[static_cast<std::size_t>(
            std::clamp<std::ptrdiff_t>(part, 0, static_cast<std::ptrdiff_t>(WalkedSignal::kParts) - 1))] = true;
        return;
    }
    if (of.isMomentary || m_aircraft.control(signal.signal).kind == ControlKind::Button)
        for (std::size_t i = 0; i < of.values.size(); ++i)
            signal.seen[i] = signal.seen[i] || of.values[i] == value;
}

/// What stood until `now`.
void Walk::settle(WalkedSignal& signal, const Standing& standing, Time now) {
    const Reach& of = reach(signal.signal);
    if (!standing.value.isKnown())
        return;
    const Time since = std::max(standing.since, m_controls[m_at].begin);
    if (signal.trace.empty()) // where it was found
        signal.trace.push_back({Time{}, standing.value.number()});
    if (!of.isContinuous) {
        for (std::size_t i = 0; i < of.values.size() && now - since >= kDwell; ++i)
            signal.seen[i] = signal.seen[i] || of.values[i] == standing.value;
        return;
    }
    if (now - since < kSettle)
        return;
    const double value = standing.value.number();
    const bool hadBoth = signal.lowest && signal.highest && *signal.lowest <= of.lowest + signal.tolerance &&
                         *signal.highest >= of.highest - signal.tolerance;
    if (hadBoth && hasCentre(m_aircraft.signals[signal.signal]) &&
        (!signal.centre || std::fabs(value) < std::fabs(*signal.centre)))
        signal.centre = value;
    signal.lowest = std::min(signal.lowest.value_or(value), value);
    signal.highest = std::max(signal.highest.value_or(value), value);
    mark(signal, standing.value);
}

// --- verdicts ---

void Walk::judge(WalkedSignal& signal) const {
    const Reach& of = reach(signal.signal);
    signal.missing = {};
    signal.open = {};
    if (of.isContinuous)
        judgeAxis(signal);
    else
        judgeStates(signal);
    signal.isConfirmed = signal.missing.isEmpty();
}

void Walk::judgeAxis(WalkedSignal& signal) const {
    const Reach& of = reach(signal.signal);
    const Signal& about = m_aircraft.signals[signal.signal];
    const auto text = [&](double value) {
        return valueText(about, Value::number(value));
    };
    const auto miss = [&](const Phrase& what, const Phrase& withFigures) {
        signal.open = joined({signal.open, what}, ", ");
        signal.missing = joined({signal.missing, withFigures}, ", ");
    };
    const auto missPlace = [&](const Phrase& what, const std::optional<double>& value) {
        miss(what, value ? phrase("{1} (came to {2})").with(what, text(*value)) : what);
    };
    if (!of.hasAxis) {
        const double asked = kCountedShare * (of.highest - of.lowest);
        if (!signal.lowest || *signal.highest - *signal.lowest < asked)
            missPlace(phrase("a movement over {1}").with(text(asked)), std::nullopt);
        return;
    }
    if (!signal.lowest || *signal.lowest > of.lowest + signal.tolerance)
        missPlace(phrase("its low end"), signal.lowest);
    if (!signal.highest || *signal.highest < of.highest - signal.tolerance)
        missPlace(phrase("its high end"), signal.highest);
    if (hasCentre(about) && of.lowest < 0 && of.highest > 0 &&
        (!signal.centre || std::fabs(*signal.centre) > signal.tolerance))
        missPlace(phrase("a return to its centre"), signal.centre);
    // A part that lies wholly within the tolerance of an end need not be passed.
    const double width = (of.highest - of.lowest) / WalkedSignal::kParts;
    for (std::size_t i = 0; i < WalkedSignal::kParts && signal.missing.isEmpty(); ++i) {
        const double from = of.lowest + static_cast<double>(i) * width;
        const bool isAsked = from + width > of.lowest + signal.tolerance && from < of.highest - signal.tolerance;
        if (isAsked && !signal.passed[i])
            miss(phrase("the way between its ends, slowly"),
                 phrase("the way between its ends, slowly (nothing was seen from {1} to {2})")
                     .with(text(from), text(from + width)));
    }
}

void Walk::judgeStates(WalkedSignal& signal) const {
    const Reach& of = reach(signal.signal);
    std::vector<Phrase> missing;
    for (std::size_t i = 0; i < of.values.size(); ++i)
        if (!signal.seen[i])
            missing.push_back(valueWords(m_aircraft.signals[signal.signal], of.values[i]));
    if (of.values.empty())
        missing.push_back(phrase("anything: as it is wired it can be nothing"));
    signal.missing = signal.open = joined(missing, ", ");
}

bool Walk::advance(Time now) {
    if (isDone())
        return false;
    WalkedControl& control = m_controls[m_at];
    bool isConfirmed = true;
    for (WalkedSignal& signal : control.signals) {
        settle(signal, m_standing[indexOf(signal.signal)], now);
        judge(signal);
        isConfirmed = isConfirmed && signal.isConfirmed;
    }
    if (!isConfirmed && now - control.begin < m_setup.patience)
        return false;
    finish(isConfirmed ? WalkOutcome::Confirmed : WalkOutcome::NotConfirmed, now);
    return true;
}

void Walk::skip(Time now) {
    if (!isDone())
        finish(WalkOutcome::NotConfirmed, now);
}

void Walk::finish(WalkOutcome outcome, Time now) {
    m_controls[m_at].outcome = outcome;
    m_controls[m_at].end = now;
    if (++m_at < m_controls.size())
        m_controls[m_at].begin = now;
}

bool Walk::isAllConfirmed() const {
    return std::all_of(m_controls.begin(), m_controls.end(), [](const WalkedControl& control) {
        return control.outcome == WalkOutcome::Confirmed;
    });
}

Phrase Walk::ask() const {
    if (isDone())
        return {};
    const WalkedControl& control = m_controls[m_at];
    std::vector<Phrase> open;
    for (const WalkedSignal& signal : control.signals)
        if (!signal.isConfirmed)
            open.push_back(control.signals.size() > 1
                               ? phrase("{1}: {2}").with(m_aircraft.signals[signal.signal].label, signal.open)
                               : signal.open);
    return phrase("{1}: still to be seen: {2}.").with(control.name, joined(open, "; "));
}

} // namespace flowhand
