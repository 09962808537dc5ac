#include "bench/reach.h"

#include <algorithm>
#include <limits>
#include <optional>

#include "base/valuewords.h"

namespace flowhand {

namespace {

/// Longer than any time that a control waits by itself (debounce, transit, settle): what it says then is final.
constexpr Duration kPatience = std::chrono::hours(1);
/// Contacts of one control whose combinations are tried: 2^12; no shipped wiring that makes numbers has more.
constexpr std::size_t kMostContacts = 12;
/// Where in its range a number is asked for that no contact was given by chance.
constexpr double kOddShare = 0.3719;

/// Moves one control in thought.
class Mover {
public:
    Mover(Control& control, std::size_t output) : m_control(control), m_output(output) {}

    /// What the signal becomes when the inputs say what `value` wishes; nothing when they cannot.
    std::optional<Value> ask(Value value) {
        std::vector<InputWish> wishes;
        m_control.wish(m_output, value, wishes);
        if (wishes.empty())
            return std::nullopt;
        const Time begin = m_time;
        for (const InputWish& wish : wishes)
            say(wish.slot, wish.meaning, begin + wish.after);
        return settle();
    }

    void say(std::size_t slot, std::int64_t meaning, Time time) {
        serve(time);
        m_control.take(slot, meaning, time, m_outputs);
        m_time = std::max(m_time, time);
        note();
    }

    std::optional<Value> settle() {
        m_time += kPatience;
        serve(m_time);
        return m_value;
    }

    [[nodiscard]] Time now() const { return m_time; }

private:
    void serve(Time time) {
        while (m_control.nextTimer() <= time) {
            m_control.advance(m_control.nextTimer(), m_outputs);
            note();
        }
    }

    void note() {
        for (const Output& output : m_outputs)
            if (output.signal == m_output)
                m_value = output.value;
        m_outputs.clear();
    }

    Control& m_control;
    std::size_t m_output;
    Time m_time{};
    std::optional<Value> m_value;
    Outputs m_outputs;
};

bool uses(const Control& control, InputUse use) {
    return std::any_of(control.inputs().begin(), control.inputs().end(), [&](const InputRef& input) {
        return input.use == use;
    });
}

void addOnce(std::vector<Value>& values, std::optional<Value> value) {
    if (value && value->isKnown() && std::find(values.begin(), values.end(), *value) == values.end())
        values.push_back(*value);
}

/// From end to end and back: a card that wants a sweep has had it then.
void sweep(Control& control, std::size_t output, const Signal& signal, Reach& reach) {
    constexpr double kFar = 1e6; // a signal without a range of its own
    const bool hasRange = signal.lowest < signal.highest;
    Mover mover(control, output);
    (void)mover.ask(Value::number(hasRange ? signal.lowest : -kFar));
    const std::optional<Value> high = mover.ask(Value::number(hasRange ? signal.highest : kFar));
    const std::optional<Value> low = mover.ask(Value::number(hasRange ? signal.lowest : -kFar));
    if (!low || !high || !low->isKnown() || !high->isKnown())
        return;
    reach.isContinuous = true;
    reach.lowest = std::min(low->number(), high->number());
    reach.highest = std::max(low->number(), high->number());
}

/// What the contacts of a control come to, in every combination.
void combine(Control& control, std::size_t output, Reach& reach) {
    const std::size_t count = control.inputs().size();
    if (count > kMostContacts)
        return;
    Mover mover(control, output);
    for (unsigned code = 0; code < 1u << count; ++code) {
        for (std::size_t slot = 0; slot < count; ++slot)
            mover.say(slot, code >> slot & 1u, mover.now());
        addOnce(reach.values, mover.settle());
    }
}

void reachNumber(Control& control, std::size_t output, const Signal& signal, Reach& reach) {
    if (reach.hasAxis)
        return sweep(control, output, signal, reach);
    std::vector<InputWish> odd;
    if (!uses(control, InputUse::Turns))
        control.wish(output, Value::number(signal.lowest + kOddShare * (signal.highest - signal.lowest)), odd);
    if (odd.empty() && !uses(control, InputUse::Turns))
        return combine(control, output, reach);
    reach.isContinuous = true; // counts steps, over all of the signal's range
    reach.lowest = signal.lowest;
    reach.highest = signal.highest;
}

/// Values that the inputs have an answer to. One that keeps its state by itself answers once it is known.
void reachStates(Control& control, std::size_t output, const Signal& signal, Reach& reach) {
    const int count = signal.kind == SignalKind::OnOff ? 2 : static_cast<int>(signal.positions.size());
    for (int i = 0; i < count; ++i) {
        const Value value = signal.kind == SignalKind::OnOff ? Value::onOff(i == 1) : Value::position(i);
        Outputs ignored;
        if (control.asksForState())
            control.declare(value, Time{}, ignored);
        std::vector<InputWish> wishes;
        control.wish(output, value, wishes);
        if (!wishes.empty())
            reach.values.push_back(value);
    }
}

} // namespace

std::vector<Reach> reachesOf(RigFile& rig, const SignalTable& signals, std::size_t controlCount) {
    std::vector<Reach> reaches(controlCount);
    for (std::size_t i = 0; i < rig.controls.size(); ++i) {
        Control& control = *rig.controls[i];
        for (std::size_t output = 0; output < control.signals().size(); ++output) {
            const SignalId id = control.signals()[output];
            Reach& reach = reaches[indexOf(id)];
            const ControlFacts facts = control.facts(output);
            reach.isWired = true;
            reach.control = i;
            reach.hasAxis = uses(control, InputUse::Axis);
            reach.isMomentary = facts.isMomentary;
            control.forget();
            if (signals[id].kind == SignalKind::Number)
                reachNumber(control, output, signals[id], reach);
            else
                reachStates(control, output, signals[id], reach);
            reach.sigma = reach.isContinuous ? facts.sigma : 0.0;
            reach.perCount = reach.isContinuous ? facts.perCount : 0.0;
        }
    }
    return reaches;
}

Phrase reachText(const Reach& reach, const Signal& signal) {
    if (reach.isContinuous)
        return phrase("{1} to {2}")
            .with(valueText(signal, Value::number(reach.lowest)), valueText(signal, Value::number(reach.highest)));
    std::vector<Phrase> words;
    for (const Value& value : reach.values)
        words.push_back(valueWords(signal, value));
    return words.empty() ? phrase("nothing") : joined(words, ", ");
}

} // namespace flowhand
