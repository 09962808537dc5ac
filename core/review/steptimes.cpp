#include "review/steptimes.h"

#include <algorithm>
#include <cmath>

#include "base/figuretext.h"
#include "base/names.h"
#include "session/movement.h"

namespace flowhand {

namespace {

using namespace std::chrono_literals;

/// Half the standard rate of turn, 3 deg/s; our own choice.
constexpr double kTurning = 1.5;
/// The judge's settle time (session/movement.h): a shorter stop is no stop.
constexpr Duration kStandstill = 300ms;
/// Of the range; the judge's threshold of a movement, as far as the range is known.
constexpr double kNoticed = 0.01;

/// Finds the times of one step.
class StepFinder {
public:
    StepFinder(const ReviewedRun& run, const std::vector<ControlMovement>& movements, std::size_t step)
        : m_run(run), m_movements(movements), m_index(static_cast<int>(step)), m_step(run.flow.steps[step]),
          m_result(run.results[step]) {}

    StepTimes find() {
        findEvents();
        if (m_result.due != kForever)
            m_times.due = m_result.due;
        if (m_result.done != kForever)
            m_times.done = m_result.done;
        findFirstMovement();
        findWrongReach();
        findHesitation();
        findOvershoot();
        return std::move(m_times);
    }

    [[nodiscard]] bool isSubstitute() const { return m_isSubstitute; }

private:
    void findEvents() {
        std::optional<Time> words;
        for (const Event& event : m_run.events) {
            if (event.step != m_index)
                continue;
            switch (event.kind) {
            case EventKind::WordsBegan:
                if (event.text != cueText())
                    break; // a reply or a remark
                words = event.time;
                if (!m_times.due)
                    m_times.cueBegan = words;
                break;
            case EventKind::StepDue: // again after a repeat or a jump: the last time counts
                m_times = {};
                m_moved.reset();
                m_fate = nullptr;
                m_times.due = event.time;
                m_times.cueBegan = words;
                if (words)
                    m_times.cueEnded = event.time;
                words.reset();
                break;
            case EventKind::StepMoved:
                m_moved = event.time;
                break;
            case EventKind::StepSeen:
                if (!m_times.seen)
                    m_times.seen = event.time;
                break;
            case EventKind::StepDone:
            case EventKind::StepTooEarly:
            case EventKind::StepUncertain:
            case EventKind::StepFoundSet:
                m_fate = &event;
                m_times.settled = event.time;
                break;
            case EventKind::StepOmitted:
            case EventKind::StepVoid:
            case EventKind::StepLeftOut:
                m_times.ended = event.time;
                break;
            default:
                break;
            }
        }
    }

    /// What the judge has spoken before the step is due (session/judgecue.cpp).
    [[nodiscard]] const std::string& cueText() const { return m_step.cue ? m_step.cue->text : m_step.title; }

    [[nodiscard]] bool isOwnControl(SignalId signal) const {
        return std::find(m_step.controls.begin(), m_step.controls.end(), signal) != m_step.controls.end() ||
               (m_fate != nullptr && m_fate->signal == signal);
    }

    [[nodiscard]] bool isByDoer(const ControlMovement& movement) const {
        return movement.actor == (m_result.isOwn ? Actor::Hand : Actor::Partner);
    }

    /// The movement that did it, or nullptr.
    [[nodiscard]] const ControlMovement* doing() const {
        const ControlMovement* found = nullptr;
        if (m_fate == nullptr || m_fate->signal == kNoSignal)
            return found;
        for (const ControlMovement& movement : m_movements)
            if (movement.control == m_fate->signal && isByDoer(movement) && movement.began <= m_fate->time)
                found = &movement;
        return found;
    }

    void findFirstMovement() {
        m_times.firstMovement = m_moved;
        const ControlMovement* const movement = doing();
        if (movement != nullptr && m_times.done && (!m_moved || *m_moved > *m_times.done))
            m_times.firstMovement = movement->began;
        // Set long before it was due, and judged by words or by comparing: no movement of this step.
        if (m_fate != nullptr && m_fate->kind == EventKind::StepFoundSet)
            m_times.firstMovement.reset();
        if (m_times.firstMovement && movement != nullptr)
            m_isSubstitute = isSimulated(*movement);
    }

    [[nodiscard]] bool isSimulated(const ControlMovement& movement) const {
        const SignalSamples& samples = m_run.samples[movement.control];
        const std::size_t first = samples.countBefore(movement.began);
        if (first == samples.size() || samples.times[first] > movement.arrived)
            return false;
        const Origin origin = samples.makerOf(first).origin;
        return movement.actor == Actor::Hand && (origin == Origin::Screen || origin == Origin::Script);
    }

    void findWrongReach() {
        for (const Event& event : m_run.events) {
            if (event.step != m_index || event.kind != EventKind::WrongControl)
                continue;
            const ControlMovement* found = nullptr;
            for (const ControlMovement& movement : m_movements)
                if (movement.control == event.signal && movement.actor == Actor::Hand && movement.began <= event.time)
                    found = &movement;
            if (found == nullptr || (m_times.firstMovement && *m_times.firstMovement < found->began))
                continue;
            m_times.wrongReach = WrongReach{found->began, event.signal};
            return;
        }
    }

    void findHesitation() {
        if (!m_times.firstMovement || !m_times.done)
            return;
        Time still = *m_times.firstMovement; // its controls have stood since
        for (const ControlMovement& movement : m_movements) {
            if (movement.began > *m_times.done || !isOwnControl(movement.control) || !isByDoer(movement) ||
                movement.arrived < *m_times.firstMovement)
                continue;
            noteStandstill(still, movement.began);
            still = std::max(still, movement.arrived);
        }
        noteStandstill(still, *m_times.done);
    }

    void noteStandstill(Time from, Time to) {
        const Duration length = to - from;
        if (length >= kStandstill && (!m_times.hesitation || length > m_times.hesitation->length))
            m_times.hesitation = Hesitation{from, length};
    }

    void findOvershoot() {
        const ControlMovement* const movement = doing();
        if (!m_times.firstMovement || !m_times.settled || movement == nullptr || m_step.done == std::nullopt ||
            m_step.done->condition.usesReference())
            return;
        const Signal& signal = m_run.aircraft.signals[movement->control];
        if (signal.kind == SignalKind::OnOff || !movement->from.isKnown() || !m_fate->value.isKnown())
            return;
        const double settled = m_fate->value.number();
        const double least = signal.kind == SignalKind::Position ? 0.5 : threshold(signal, movement->control);
        const double way = settled - movement->from.number();
        if (std::fabs(way) < least)
            return;
        Overshoot farthest;
        const SignalSamples& samples = m_run.samples[movement->control];
        for (std::size_t i = samples.countBefore(movement->began);
             i < samples.size() && samples.times[i] <= *m_times.settled; ++i) {
            const Value value = Value::number(samples.values[i]);
            if (!value.isKnown() || value == Value::between())
                continue;
            const double beyond = (value.number() - settled) * (way > 0.0 ? 1.0 : -1.0);
            if (beyond > std::max(farthest.amount, least))
                farthest = {samples.times[i], movement->control, beyond};
        }
        if (farthest.signal != kNoSignal)
            m_times.overshoot = farthest;
    }

    [[nodiscard]] double threshold(const Signal& signal, SignalId control) const {
        const std::vector<ControlFacts>& facts = m_run.header.setup.controls;
        const double sigma = indexOf(control) < facts.size() ? facts[indexOf(control)].sigma : 0.0;
        return std::max(6.0 * sigma, kNoticed * (signal.highest - signal.lowest));
    }

    const ReviewedRun& m_run;
    const std::vector<ControlMovement>& m_movements;
    int m_index;
    const Step& m_step;
    const StepResult& m_result;
    std::optional<Time> m_moved;
    const Event* m_fate = nullptr;
    bool m_isSubstitute = false;
    StepTimes m_times;
};

/// Reads the motion at any time.
class Motion {
public:
    explicit Motion(const ReviewedRun& run)
        : m_run(run), m_ground(run.aircraft.signals.find("ground_speed")), m_air(run.aircraft.signals.find("airspeed")),
          m_turn(run.aircraft.signals.find("turn_rate")) {}

    [[nodiscard]] StepContext at(Time time) const {
        StepContext context;
        context.groundSpeed = number(m_ground, time);
        context.airspeed = number(m_air, time);
        context.isTurning = std::fabs(number(m_turn, time).value_or(0.0)) > kTurning;
        return context;
    }

private:
    [[nodiscard]] std::optional<double> number(const std::optional<SignalId>& signal, Time time) const {
        const Value value = signal ? m_run.samples[*signal].at(time) : Value::unknown();
        return value.isKnown() ? std::optional(value.number()) : std::nullopt;
    }

    const ReviewedRun& m_run;
    std::optional<SignalId> m_ground;
    std::optional<SignalId> m_air;
    std::optional<SignalId> m_turn;
};

} // namespace

std::vector<StepTimes> stepTimes(const ReviewedRun& run, const std::vector<ControlMovement>& movements) {
    const std::size_t count = std::min(run.flow.steps.size(), run.results.size());
    std::vector<StepTimes> all;
    const Motion motion(run);
    for (std::size_t i = 0; i < count; ++i) {
        StepFinder finder(run, movements, i);
        StepTimes times = finder.find();
        if (const std::optional<Time> when = times.done ? times.done : times.due)
            times.context = motion.at(*when);
        times.context.isSubstitute = finder.isSubstitute();
        all.push_back(std::move(times));
    }
    return all;
}

namespace {

Phrase amountOf(const Overshoot& overshoot, const Aircraft& aircraft) {
    const Signal& signal = aircraft.signals[overshoot.signal];
    const std::string number = numberText(overshoot.amount);
    if (signal.kind == SignalKind::Position)
        return (overshoot.amount > 1.5 ? phrase("{1} gates") : phrase("{1} gate")).with(number);
    return signal.unit.symbol.empty() ? number : number + " " + signal.unit.symbol;
}

} // namespace

Phrase timesText(const StepTimes& times, const Aircraft& aircraft) {
    std::vector<Phrase> parts;
    if (times.cueBegan)
        parts.push_back(phrase("cue sounded {1}").with(clockText(*times.cueBegan)));
    if (times.cueEnded)
        parts.push_back(phrase("cue ended {1}").with(clockText(*times.cueEnded)));
    if (times.due)
        parts.push_back(phrase("due {1}").with(clockText(*times.due)));
    if (times.wrongReach)
        parts.push_back(phrase("reached for {1} first, {2}")
                            .with(aircraft.signals[times.wrongReach->signal].label, clockText(times.wrongReach->time)));
    if (times.firstMovement) {
        const std::string when = clockText(*times.firstMovement);
        parts.push_back(times.due && *times.firstMovement >= *times.due
                            ? phrase("first movement {1} ({2} after due)")
                                  .with(when, secondsToTenths(*times.firstMovement - *times.due))
                            : phrase("first movement {1}").with(when));
    }
    if (times.hesitation)
        parts.push_back(phrase("hesitated {1} from {2}")
                            .with(secondsToTenths(times.hesitation->length), clockText(times.hesitation->from)));
    if (times.overshoot) {
        parts.push_back(phrase("went {1} too far, {2}")
                            .with(amountOf(*times.overshoot, aircraft), clockText(times.overshoot->time)));
    }
    if (times.done)
        parts.push_back(phrase("done {1}").with(clockText(*times.done)));
    if (times.ended && !times.done)
        parts.push_back(phrase("given up {1}").with(clockText(*times.ended)));
    return joined(parts, ", ");
}

Phrase contextText(const StepContext& context) {
    std::vector<Phrase> parts;
    // At rest the airspeed is the wind's.
    constexpr double kMoving = 1.0;
    if (context.groundSpeed)
        parts.push_back(phrase("at {1} kt")
                            .with(numberText(*context.groundSpeed < kMoving ? 0.0 : std::round(*context.groundSpeed))));
    if (context.isTurning)
        parts.push_back(phrase("turning"));
    if (context.isSubstitute)
        parts.push_back(phrase("simulated"));
    return joined(parts, ", ");
}

} // namespace flowhand
