#include "session/runloop.h"

#include <algorithm>
#include <deque>
#include <utility>

#include "base/names.h"
#include "device/hub.h"
#include "session/replay.h"

namespace flowhand {

namespace {

/// What the store promises to lose at most.
constexpr Duration kFlushPeriod = std::chrono::milliseconds(500);

} // namespace

struct RunLoop::State {
    struct PendingCommand {
        CommandKind kind;
        std::string text;
    };

    explicit State(RunParts runParts)
        : parts(std::move(runParts)), session(*parts.aircraft, *parts.flow, parts.header.setup),
          notices(parts.notices) {}

    // --- sources, by when they have something ---

    [[nodiscard]] bool isFlying() const { return session.phase() == SessionPhase::Running; }

    [[nodiscard]] Time nextPractice() const {
        return parts.practice && isFlying() ? parts.practice->nextStep() + stood : kForever;
    }

    [[nodiscard]] Time nextTime() const {
        if (session.phase() == SessionPhase::Ended)
            return kForever;
        Time next = std::min(session.nextTimer(), nextPractice());
        if (!commands.empty() || !screen.empty())
            next = std::min(next, advanced + kTick);
        if (!readings.empty())
            next = std::min(next, readings.front().time);
        if (!news.empty())
            next = std::min(next, news.front().time);
        if (!partner.empty())
            next = std::min(next, partner.front().time);
        if (parts.rig)
            next = std::min(next, parts.rig->nextTimer());
        if (parts.hands && isFlying() && parts.hands->nextMove() != kForever)
            next = std::min(next, parts.hands->nextMove() + stood);
        return next;
    }

    // --- one instant ---

    void instant(Time time) {
        const bool wasFlying = isFlying();
        if (!commands.empty() && time > advanced) {
            const PendingCommand command = commands.front();
            commands.pop_front();
            apply(time, command);
        } else {
            gather(time);
            if (!batch.empty()) {
                session.take(time, batch);
                if (parts.recorder != nullptr)
                    check(parts.recorder->samples(batch));
                last = time;
            } else if (session.nextTimer() <= time) {
                session.advance(time);
                last = time;
            } else {
                showHands(time); // a move that changed nothing is over all the same
                if (!commands.empty())
                    last = time; // what the hands asked for comes after now
                return;
            }
        }
        // Practice aircraft and scripted hands stand while the run does.
        if (!wasFlying && isFlying()) {
            stood += time - standingSince;
            noteUnheard();
        }
        if (wasFlying && !isFlying())
            standingSince = time;
        publish(time);
    }

    void apply(Time time, const PendingCommand& command) {
        const RunCommand told{time, command.kind, command.text};
        const bool mayBegin = command.kind == CommandKind::Start || command.kind == CommandKind::Jump;
        if (mayBegin && !std::exchange(hasAsked, true))
            declareAsked(time);
        flowhand::apply(session, told);
        if (command.kind == CommandKind::Jump)
            putSimulated();
        if (parts.recorder != nullptr)
            check(parts.recorder->command(told));
        last = time;
    }

    /// Controls on screen or of a script stand where the step jumped to wants them; real ones have to be put there.
    void putSimulated() {
        for (const SetUpItem& item : session.view().setUp)
            if (parts.header.setup.controls[indexOf(item.signal)].isSimulated)
                screen.push_back({Time{}, item.signal, item.wanted, Actor::Machine, simulatedOrigin(), kNoControl});
    }

    [[nodiscard]] Origin simulatedOrigin() const { return parts.hands ? Origin::Script : Origin::Screen; }

    /// Contacts that only tell that something was switched, not where it stands, are taken to stand where the start
    /// wants them; the pilot is told, and puts them there.
    void declareAsked(Time time) {
        if (!parts.rig)
            return;
        const std::size_t before = screen.size();
        for (const SignalId id : parts.rig->asked()) {
            const Signal& signal = parts.aircraft->signals[id];
            const Value value = startOf(*parts.flow, *parts.aircraft, id);
            parts.rig->declare(id, value, time, screen);
            notices.push_back(signal.label + " is taken to be " + valueText(signal, value) + "; put it there now.");
        }
        markPlayed(screen, before);
    }

    void gather(Time time) {
        batch.clear();
        made.clear();
        if (parts.rig)
            gatherDevices(time);
        if (time > advanced) {
            made.insert(made.end(), screen.begin(), screen.end());
            screen.clear();
        }
        while (!partner.empty() && partner.front().time <= time) {
            made.push_back(
                {time, partner.front().signal, partner.front().value, Actor::Partner, Origin::Script, kNoControl});
            partner.pop_front();
        }
        if (parts.hands && isFlying()) {
            parts.hands->move(time - stood, made);
            for (const std::size_t step : parts.hands->takeJumps())
                commands.push_back({CommandKind::Jump, parts.flow->steps[step].id});
        }
        fly(time);
        for (Sample& sample : made) {
            sample.time = time;
            addChange(sample);
        }
    }

    /// Readings and news of the devices in the order in which they came, then what happens by time alone.
    void gatherDevices(Time time) {
        const auto isDue = [&](const auto& queue) {
            return !queue.empty() && queue.front().time <= time;
        };
        const std::size_t before = made.size();
        while (isDue(readings) || isDue(news)) {
            if (isDue(news) && (!isDue(readings) || news.front().time <= readings.front().time)) {
                note(news.front());
                news.pop_front();
                continue;
            }
            noteLate(readings.front());
            parts.rig->take(readings.front(), made);
            readings.pop_front();
        }
        parts.rig->advance(time, made);
        markPlayed(made, before);
        noteFaults();
    }

    /// Of the rig's samples from `first` on: with recordings nobody is at the controls now.
    void markPlayed(std::vector<Sample>& samples, std::size_t first) const {
        if (parts.playback)
            for (std::size_t i = first; i < samples.size(); ++i)
                samples[i].origin = Origin::Script;
    }

    void noteLate(const Reading& reading) {
        if (reading.time > last)
            return;
        ++lateChanges;
        latest = std::max(latest, last + kTick - reading.time);
    }

    [[nodiscard]] RunLosses losses() const {
        RunLosses all{lateChanges, latest, {}};
        if (parts.devices == nullptr)
            return all;
        for (std::size_t i = 0; i < parts.rig->devices().size(); ++i) {
            const DeviceCounters counters = parts.devices->counters(static_cast<DeviceIndex>(i));
            if (counters.suspected > 0 || counters.drops > 0)
                all.devices.push_back({parts.rig->devices()[i].name, counters.suspected, counters.drops});
        }
        return all;
    }

    void fly(Time time) {
        if (!parts.practice)
            return;
        // Nothing tells of it when a hand regains a lever: the signal is where the lever stood already.
        const std::vector<Value>& values = session.values();
        for (const CockpitControl& control : parts.aircraft->controls)
            parts.practice->take({time - stood, control.signal, values[indexOf(control.signal)]});
        for (Sample sample : made) {
            if (session.isOfLever(sample))
                continue;
            sample.time = time - stood;
            parts.practice->take(sample);
        }
        if (isFlying() && parts.practice->nextStep() + stood <= time)
            parts.practice->step(made);
    }

    /// Only news travels; of simultaneous changes of one signal the last one counts.
    void addChange(const Sample& sample) {
        const auto before = std::find_if(batch.begin(), batch.end(), [&](const Sample& other) {
            return other.signal == sample.signal;
        });
        if (before != batch.end())
            batch.erase(before);
        if (session.isNews(sample))
            batch.push_back(sample);
    }

    /// Hands on what the session made of it: to the record, to the partner's hands, to the scripted hands.
    void publish(Time time) {
        ++changes;
        std::vector<Event> told = session.takeEvents();
        if (parts.recorder != nullptr && !told.empty())
            check(parts.recorder->events(told));
        events.insert(events.end(), std::make_move_iterator(told.begin()), std::make_move_iterator(told.end()));
        for (const PartnerMove& move : session.takePartnerMoves())
            partner.push_back(move);
        if (parts.recorder != nullptr && time - flushed >= kFlushPeriod) {
            flushed = time;
            check(parts.recorder->flush(time));
        }
        if (session.phase() == SessionPhase::Ended)
            finish(time);
        else
            showHands(time);
    }

    void showHands(Time time) {
        if (!parts.hands || !isFlying())
            return;
        const std::vector<StepResult>& results = session.results();
        std::vector<bool> due(results.size());
        for (std::size_t i = 0; i < due.size(); ++i)
            due[i] = results[i].due != kForever;
        parts.hands->see(time - stood, session.values(), due);
    }

    void finish(Time time) {
        if (parts.recorder == nullptr || isFinished)
            return;
        isFinished = true;
        check(parts.recorder->losses(losses()));
        if (parts.recorder != nullptr)
            check(parts.recorder->finish(time, session.score(), session.results()));
    }

    /// A recording that fails is said once; the run goes on without it.
    void check(const Status& status) {
        if (status)
            return;
        notices.push_back("This run is no longer recorded. " + describe(status.error()));
        parts.recorder = nullptr;
    }

    // --- devices ---

    void drainDevices() {
        if (parts.devices == nullptr)
            return;
        fresh.clear();
        freshNews.clear();
        parts.devices->drain(fresh, freshNews);
        merge(fresh, readings);
        merge(freshNews, news);
    }

    /// Both are in order; so is the queue afterwards.
    template <class Thing>
    static void merge(const std::vector<Thing>& from, std::deque<Thing>& queue) {
        const bool isBehind = queue.empty() || from.empty() || queue.back().time <= from.front().time;
        queue.insert(queue.end(), from.begin(), from.end());
        if (!isBehind)
            std::stable_sort(queue.begin(), queue.end(), [](const Thing& a, const Thing& b) {
                return a.time < b.time;
            });
    }

    void note(const DeviceNotice& notice) {
        ++changes;
        switch (notice.change) {
        case DeviceChange::Remark:
            notices.push_back(notice.message);
            break;
        case DeviceChange::Lost:
            noteLost(notice);
            break;
        case DeviceChange::Connected:
            noteConnected(notice);
            break;
        }
    }

    [[nodiscard]] const std::string& nameOf(const DeviceNotice& notice) const {
        return parts.rig->devices()[notice.device].name;
    }

    void noteLost(const DeviceNotice& notice) {
        lost.push_back(notice.device);
        notices.push_back(notice.message);
        // What its controls say now nobody knows.
        parts.rig->lose(notice.device, notice.time, made);
        if (!isFlying() || isHeldByDevice)
            return;
        isHeldByDevice = true;
        commands.push_back(
            {CommandKind::Gap, nameOf(notice) + " is lost. Plug it in again; the run goes on by itself."});
    }

    void noteConnected(const DeviceNotice& notice) {
        const Status connected =
            parts.rig->connect(notice.device, parts.playback ? parts.playback->inputs[notice.device]
                                                             : parts.devices->inputs(notice.device));
        if (!connected) {
            notices.push_back(describe(connected.error()));
            return;
        }
        if (parts.devices != nullptr)
            parts.devices->listenOnlyTo(notice.device, parts.rig->wiredInputs(notice.device));
        if (std::erase(lost, notice.device) > 0)
            notices.push_back(nameOf(notice) + " is back.");
        // Behind its Gap in the queue, should that not have been applied yet.
        if (lost.empty() && std::exchange(isHeldByDevice, false))
            commands.push_back({CommandKind::Resume, {}});
    }

    /// Most devices say nothing until something moves. What the start does not ask for may be unknown when the run
    /// begins; said once.
    void noteUnheard() {
        if (!parts.rig || std::exchange(hasNotedUnheard, true))
            return;
        std::vector<std::string> labels;
        for (const SignalId id : parts.rig->unheard())
            labels.push_back(parts.aircraft->signals[id].label);
        if (!labels.empty())
            notices.push_back("Not heard of yet: " + joined(labels, ", ") +
                              ". Move each once, so that the program knows where it stands.");
    }

    /// What is wrong with a control is said once, and again after it was right.
    void noteFaults() {
        std::vector<std::string> now = parts.rig->faults();
        for (const std::string& fault : now)
            if (std::find(faults.begin(), faults.end(), fault) == faults.end())
                notices.push_back(fault);
        faults = std::move(now);
    }

    RunParts parts;
    Session session;
    Time advanced = -kTick; ///< told by the caller
    Time last = -kTick;     ///< of the last batch, command or timer
    Time flushed{};
    Duration stood{};     ///< how long the run has stood, in all: practice aircraft and hands know nothing of it
    Time standingSince{}; ///< the run's time when it came to stand
    std::deque<PendingCommand> commands;
    std::vector<Sample> screen; ///< changes that come in just after the time advanced to
    std::vector<Reading> fresh; ///< as drained
    std::vector<DeviceNotice> freshNews;
    std::deque<Reading> readings;
    std::deque<DeviceNotice> news;
    std::vector<std::string> faults;
    std::deque<PartnerMove> partner;
    std::vector<Sample> made; ///< of one instant
    std::vector<Sample> batch;
    std::vector<Event> events;
    std::vector<std::string> notices;
    std::vector<DeviceIndex> lost;
    bool isHeldByDevice = false;
    bool hasNotedUnheard = false;
    bool hasAsked = false; ///< declareAsked() was
    bool isFinished = false;
    std::int64_t runId = 0;
    std::uint64_t lateChanges = 0; ///< came in behind the run's time
    Duration latest{};
    std::uint64_t changes = 0;
};

Value startOf(const Flow& flow, const Aircraft& aircraft, SignalId control) {
    for (const StartValue& start : flow.start)
        if (start.signal == control)
            return start.value;
    const Signal& signal = aircraft.signals[control];
    switch (signal.kind) {
    case SignalKind::OnOff:
        return Value::onOff(false);
    case SignalKind::Position:
        return Value::position(0);
    case SignalKind::Number:
        break;
    }
    return Value::number(std::clamp(0.0, signal.lowest, std::max(signal.lowest, signal.highest)));
}

RunLoop::RunLoop(RunParts parts) : m_state(std::make_unique<State>(std::move(parts))) {
    State& state = *m_state;
    if (state.parts.recorder != nullptr) {
        state.check(state.parts.recorder->begin(state.parts.header));
        state.runId = state.parts.recorder != nullptr ? state.parts.recorder->runId() : 0;
    }
    const Aircraft& aircraft = *state.parts.aircraft;
    for (const CockpitControl& control : aircraft.controls) {
        if (!state.parts.header.setup.controls[indexOf(control.signal)].isSimulated)
            continue;
        const Value value = startOf(*state.parts.flow, aircraft, control.signal);
        state.screen.push_back({Time{}, control.signal, value, Actor::Machine, state.simulatedOrigin(), kNoControl});
    }
    if (state.parts.playback) {
        state.readings.assign(state.parts.playback->readings.begin(), state.parts.playback->readings.end());
        state.news.assign(state.parts.playback->notices.begin(), state.parts.playback->notices.end());
    }
    if (state.parts.practice)
        state.parts.practice->begin(state.screen);
    state.instant(Time{});
}

RunLoop::~RunLoop() = default;

void RunLoop::advance(Time time) {
    State& state = *m_state;
    state.drainDevices();
    for (;;) {
        const Time at = std::max(state.nextTime(), state.last + kTick);
        if (at > time)
            break;
        state.instant(at);
    }
    state.advanced = std::max(state.advanced, wholeTick(time));
}

void RunLoop::command(CommandKind kind, const std::string& text) {
    if (kind == CommandKind::Hold || kind == CommandKind::Resume || kind == CommandKind::Jump ||
        kind == CommandKind::Stop)
        m_state->isHeldByDevice = false; // the pilot has decided
    m_state->commands.push_back({kind, text});
}

void RunLoop::moveOnScreen(SignalId signal, Value value) {
    m_state->screen.push_back({Time{}, signal, value, Actor::Hand, Origin::Screen, kNoControl});
}

Time RunLoop::nextTime() const {
    return m_state->nextTime();
}

bool RunLoop::isEnded() const {
    return m_state->session.phase() == SessionPhase::Ended;
}

bool RunLoop::areHandsDone() const {
    const State& state = *m_state;
    return state.readings.empty() && state.news.empty() && (!state.parts.hands || state.parts.hands->isDone());
}

SessionPhase RunLoop::phase() const {
    return m_state->session.phase();
}

RunSnapshot RunLoop::snapshot() const {
    const State& state = *m_state;
    return {state.session.view(),
            state.session.values(),
            state.session.score(),
            state.session.results(),
            state.notices,
            state.losses(),
            state.runId};
}

const std::vector<std::string>& RunLoop::notices() const {
    return m_state->notices;
}

std::vector<Event> RunLoop::takeEvents() {
    return std::exchange(m_state->events, {});
}

std::uint64_t RunLoop::changeCount() const {
    return m_state->changes;
}

} // namespace flowhand
