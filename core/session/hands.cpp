#include "session/hands.h"

#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <utility>

#include "aircraft/steering.h"
#include "base/textfile.h"
#include "session/doer.h"

namespace flowhand {

namespace {

using namespace std::chrono_literals;

/// How often a moving hand is seen: 50 times a second is finer than any hand jerks.
constexpr Duration kMoveGrain = 20ms;
/// A hand that steers looks and corrects about this often; one that holds a speed less often.
constexpr Duration kFollowPeriod = 100ms;
constexpr Duration kKeepPeriod = 500ms;
/// A gated lever takes this long from gate to gate.
constexpr Duration kGateTime = 350ms;
/// Steering corrections smaller than this are not made.
constexpr double kSmallestSteer = 0.5;

double roundedTo(double value, double grain) {
    return std::round(value / grain) * grain;
}

} // namespace

struct Hands::Script {
    struct Later {
        Time time;
        SignalId signal;
        Value value;
    };

    Script(const Aircraft& craft, std::vector<HandLine> script) : aircraft(craft), lines(std::move(script)) {
        const auto signal = [&](std::string_view name) {
            return aircraft.signals.find(name).value_or(kNoSignal);
        };
        offset = signal("centreline_offset");
        angle = signal("centreline_angle");
        curvature = signal("line_curvature");
        groundSpeed = signal("ground_speed");
        values.resize(aircraft.signals.size());
        if (const auto at = aircraft.values.find("ground_idle"); at != aircraft.values.end())
            closedLever = at->second.number;
    }

    /// Of a control that steers by so many degrees of the nosewheel at its end, as pedals do, and not by its own angle.
    void steerWith(SignalId control) {
        followed = control;
        const auto at = aircraft.values.find("pedal_steering");
        const bool isPedal = aircraft.control(control).kind == ControlKind::Pedal;
        steerShare =
            isPedal && at != aircraft.values.end() ? aircraft.signals[control].highest / at->second.number : 1.0;
    }

    [[nodiscard]] double number(SignalId id) const {
        return id != kNoSignal && values[indexOf(id)].isKnown() ? values[indexOf(id)].number() : 0.0;
    }

    /// When the current line begins, as far as it is known.
    [[nodiscard]] Time lineStart() const {
        const HandLine& line = lines[next];
        switch (line.trigger) {
        case HandTrigger::After:
            return anchor + line.delay;
        case HandTrigger::With:
            return begun;
        case HandTrigger::At:
            return std::max(anchor, line.delay);
        case HandTrigger::Due:
        case HandTrigger::When:
            return armed == kForever ? kForever : armed + line.delay;
        }
        return kForever;
    }

    void arm(Time time) {
        const auto isWaiting = [&] {
            return next < lines.size() && lines[next].trigger == HandTrigger::Due;
        };
        while (isWaiting() && turns[lines[next].step].isOver && !turns[lines[next].step].isDue)
            do
                ++next;
            while (next < lines.size() && !isWaiting());
        if (next >= lines.size() || armed != kForever || time < anchor)
            return;
        const HandLine& line = lines[next];
        if (line.trigger == HandTrigger::Due && turns[line.step].isDue)
            armed = time;
        if (line.trigger == HandTrigger::When && line.condition->holdsNow(values) == Truth::True)
            armed = time;
    }

    /// The line itself when it works continuous controls alone, else the wait that it is for those after it.
    [[nodiscard]] HandLine continuousPartOf(const HandLine& line) const {
        HandLine part = line;
        const bool isWhole = std::all_of(line.controls.begin(), line.controls.end(), [&](SignalId id) {
            return aircraft.control(id).isContinuous;
        });
        if (line.act == HandAct::Jump || !isWhole)
            part.act = HandAct::Wait;
        return part;
    }

    void begin(Time start) {
        const HandLine& line = lines[next];
        Time end = start;
        switch (line.act) {
        case HandAct::Move:
            end = beginMove(start, line);
            break;
        case HandAct::Press:
            end = start + line.lasts;
            later.push_back({start, line.controls.front(), Value::onOff(true)});
            later.push_back({end, line.controls.front(), Value::onOff(false)});
            break;
        case HandAct::Follow:
            steerWith(line.controls.front());
            nextFollow = start;
            break;
        case HandAct::Keep:
            keeping = &line;
            nextKeep = start;
            break;
        case HandAct::Wait:
            end = start + line.lasts;
            break;
        case HandAct::Jump:
            jumps.push_back(line.jump);
            break;
        case HandAct::Stop:
            followed = kNoSignal;
            keeping = nullptr;
            nextFollow = nextKeep = kForever;
            break;
        }
        std::stable_sort(later.begin(), later.end(), [](const Later& a, const Later& b) {
            return a.time < b.time;
        });
        begun = start;
        anchor = std::max(line.trigger == HandTrigger::With ? anchor : start, end);
        armed = kForever;
        ++next;
    }

    Time beginMove(Time start, const HandLine& line) {
        const SignalId id = line.controls.front();
        const Value from = values[indexOf(id)];
        const SignalKind kind = aircraft.signals[id].kind;
        if (kind == SignalKind::Position && aircraft.control(id).kind == ControlKind::GatedLever && from.isKnown())
            return beginGates(start, line, from);
        const int steps = static_cast<int>(line.lasts / kMoveGrain);
        if (kind != SignalKind::Number || !from.isKnown() || steps < 1) {
            later.push_back({start, id, line.target});
            return start;
        }
        for (int i = 1; i <= steps; ++i) {
            const double share = static_cast<double>(i) / steps;
            const double number = from.number() + (line.target.number() - from.number()) * share;
            later.push_back(
                {start + i * kMoveGrain, id, i == steps ? line.target : Value::number(roundedTo(number, 0.1))});
        }
        return start + steps * kMoveGrain;
    }

    /// Through every gate on the way, each left and reached as a lever does.
    Time beginGates(Time start, const HandLine& line, Value from) {
        const SignalId id = line.controls.front();
        const int target = line.target.position();
        int at = std::max(0, from.position());
        const int count = std::abs(target - at);
        const Duration each = line.lasts > Duration{} && count > 0 ? wholeTick(line.lasts / count) : kGateTime;
        Time time = start;
        while (at != target) {
            later.push_back({time, id, Value::between()});
            at += target > at ? 1 : -1;
            later.push_back({time + each / 2, id, Value::position(at)});
            time += each;
        }
        return time;
    }

    void follow(Time time, std::vector<Sample>& samples) {
        nextFollow = time + kFollowPeriod;
        const Signal& signal = aircraft.signals[followed];
        double wanted = steerShare * tillerFor(number(offset), number(angle), number(groundSpeed), number(curvature));
        wanted = std::clamp(roundedTo(wanted, 0.1), signal.lowest, signal.highest);
        if (std::fabs(wanted - number(followed)) >= kSmallestSteer || (wanted == 0.0 && number(followed) != 0.0))
            put(time, followed, Value::number(wanted), samples);
    }

    void keep(Time time, std::vector<Sample>& samples) {
        nextKeep = time + kKeepPeriod;
        const double tooSlow = keeping->target.number() - number(groundSpeed);
        for (const SignalId id : keeping->controls) {
            const bool isBrake = aircraft.control(id).kind == ControlKind::Pedal;
            // Proportional, in % of travel a knot: common practice is small pushes, and brakes only when clearly fast.
            const double wanted = isBrake ? std::clamp(-8.0 * (tooSlow + 1.5), 0.0, 60.0)
                                          : std::clamp(closedLever + 12.0 * tooSlow, closedLever, closedLever + 35.0);
            put(time, id, Value::number(roundedTo(wanted, 1.0)), samples);
        }
    }

    void put(Time time, SignalId id, Value value, std::vector<Sample>& samples) {
        if (values[indexOf(id)] == value)
            return;
        values[indexOf(id)] = value;
        samples.push_back({time, id, value, actor, Origin::Script, kNoControl});
    }

    const Aircraft& aircraft;
    std::vector<HandLine> lines;
    Actor actor = Actor::Hand; ///< whose movements they are
    std::size_t next = 0;
    Time anchor{};         ///< end of the line before
    Time begun{};          ///< beginning of the line before
    Time armed = kForever; ///< when what the current line waits for came true
    Time seen{};
    std::vector<Later> later; ///< movements begun, by time
    std::vector<Value> values;
    std::vector<StepTurn> turns; ///< of the steps, as seen last

    SignalId followed = kNoSignal;
    double steerShare = 1.0;  ///< of the followed control for a degree of the nosewheel
    double closedLever = 0.0; ///< where levers go back to in keeping a speed
    Time nextFollow = kForever;
    const HandLine* keeping = nullptr;
    Time nextKeep = kForever;
    std::vector<std::size_t> jumps; ///< asked for and not yet taken
    SignalId offset, angle, curvature, groundSpeed;
};

Hands::Hands(const Aircraft& aircraft, std::vector<HandLine> lines)
    : m_script(std::make_unique<Script>(aircraft, std::move(lines))) {}
Hands::~Hands() = default;
Hands::Hands(Hands&&) noexcept = default;
Hands& Hands::operator=(Hands&&) noexcept = default;

std::optional<Hands> Hands::load(const std::string& file, const Aircraft& aircraft, const Flow& flow,
                                 Problems& problems) {
    const Result<std::string> source = readFile(file);
    if (!source) {
        problems.add(Severity::Error, source.error());
        return std::nullopt;
    }
    return parse(*source, file, aircraft, flow, problems);
}

std::optional<Hands> Hands::parse(const std::string& source, const std::string& name, const Aircraft& aircraft,
                                  const Flow& flow, Problems& problems) {
    Problems found;
    std::vector<HandLine> lines = parseHandScript(source, name, aircraft, flow, found);
    for (const Problem& problem : found.all())
        problems.add(problem.severity, problem.error);
    if (found.hasErrors())
        return std::nullopt;
    return Hands(aircraft, std::move(lines));
}

void Hands::leaveToPartner(const Flow& flow, const SessionSetup& setup) {
    std::erase_if(m_script->lines, [&](const HandLine& line) {
        return line.of && doerOf(flow.steps[*line.of], setup) != Doer::Hand;
    });
}

void Hands::standInForPartner(const Flow& flow, const SessionSetup& setup) {
    std::erase_if(m_script->lines, [&](const HandLine& line) {
        return !line.of || doerOf(flow.steps[*line.of], setup) == Doer::Hand;
    });
    for (HandLine& line : m_script->lines)
        line = m_script->continuousPartOf(line);
    m_script->actor = Actor::Partner;
}

void Hands::see(Time time, const std::vector<Value>& values, const std::vector<StepTurn>& steps) {
    m_script->values = values;
    m_script->turns = steps;
    pass(time);
}

void Hands::pass(Time time) {
    m_script->seen = time;
    if (!m_script->turns.empty())
        m_script->arm(time);
}

Time Hands::nextMove() const {
    const Script& script = *m_script;
    Time at = std::min(script.nextFollow, script.nextKeep);
    if (!script.later.empty())
        at = std::min(at, script.later.front().time);
    if (script.next < script.lines.size())
        at = std::min(at, script.lineStart());
    return at == kForever ? at : std::max(at, script.seen);
}

void Hands::move(Time time, std::vector<Sample>& samples) {
    Script& script = *m_script;
    while (script.next < script.lines.size() && script.lineStart() <= time)
        script.begin(time);
    while (!script.later.empty() && script.later.front().time <= time) {
        const Script::Later move = script.later.front();
        script.later.erase(script.later.begin());
        script.put(time, move.signal, move.value, samples);
    }
    if (script.nextFollow <= time)
        script.follow(time, samples);
    if (script.nextKeep <= time)
        script.keep(time, samples);
}

std::vector<std::size_t> Hands::takeJumps() {
    return std::exchange(m_script->jumps, {});
}

bool Hands::isDone() const {
    return m_script->next >= m_script->lines.size() && m_script->later.empty();
}

} // namespace flowhand
