#include "session/runloop.h"

#include <algorithm>
#include <deque>
#include <utility>

#include "base/names.h"
#include "base/phrasejson.h"
#include "base/valuewords.h"
#include "session/attention.h"
#include "session/deviceinbox.h"
#include "session/feedlink.h"
#include "session/practicelink.h"
#include "session/replay.h"
#include "session/scenariowatch.h"
#include "session/slowtime.h"
#include "session/startvalue.h"
#include "session/unobserved.h"

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
          link(parts.feed, *parts.aircraft, parts.sources), practice(std::move(parts.practice), *parts.aircraft),
          notices(parts.notices), slow(parts.slowness), inbox(slow) {
        sessionTimer = session.nextTimer();
        beginScenario();
        seatHands();
    }

    void beginScenario() {
        if (parts.scenario != nullptr)
            watch.emplace(*parts.scenario, parts.aircraft->signals, parts.header.setup.seed);
    }

    /// Each script does what its seat does in this flow.
    void seatHands() {
        if (parts.hands)
            parts.hands->leaveToPartner(*parts.flow, parts.header.setup);
        if (parts.partnerHands)
            parts.partnerHands->standInForPartner(*parts.flow, parts.header.setup);
    }

    [[nodiscard]] bool isFlying() const { return session.phase() == SessionPhase::Running; }

    [[nodiscard]] Time nextPractice() const { return isFlying() ? after(practice.nextStep(), stood) : kForever; }

    [[nodiscard]] Time nextTime() const {
        if (session.phase() == SessionPhase::Ended)
            return kForever;
        Time next = nextBesidesReadings();
        if (!early.empty())
            next = std::min(next, earlyTime);
        next = std::min(next, inbox.nextReading());
        if (parts.rig)
            next = std::min(next, nextOfRig());
        return next;
    }

    [[nodiscard]] Time nextOfRig() const { return after(slow.toRunFrom(parts.rig->nextTimer()), -origin); }

    [[nodiscard]] Time nextBesidesReadings() const {
        Time next = std::min(sessionTimer, nextPractice());
        if (!commands.empty() || !screen.empty() || practice.hasToTell())
            next = std::min(next, advanced + kTick);
        next = std::min({next, inbox.nextNotice(), link.next()});
        if (watch && isFlying())
            next = std::min(next, nextEvent());
        if (!partner.empty())
            next = std::min(next, partner.front().time);
        if (parts.hands && isFlying())
            next = std::min(next, after(slow.toRunFrom(parts.hands->nextMove()), stood));
        if (parts.partnerHands && isFlying())
            next = std::min(next, after(parts.partnerHands->nextMove(), stood));
        return next;
    }

    [[nodiscard]] static Time after(Time time, Duration by) { return time == kForever ? kForever : time + by; }

    /// Devices, feed and rig count from the flight's beginning, `origin` before the run's, in real time.
    [[nodiscard]] Time inRun(Time real) const { return slow.toRun(real) - origin; }
    [[nodiscard]] Time inFlight(Time time) const { return slow.toReal(time + origin); }
    /// The pilot's scripted hands are a person's, those of the partner the run's.
    [[nodiscard]] Time ofHand(Time time) const { return slow.toReal(time - stood); }

    /// When a scenario's event may happen by time alone: the first whole tick from then on.
    [[nodiscard]] Time nextEvent() const {
        const Time next = watch->nextTimer();
        return next == kForever ? kForever : wholeTick(next - origin + kTick - Duration(1));
    }

    /// Readings that no control makes anything of, as noise inside its band, are over without an instant of their own:
    /// at thousands a second they are nearly all. Ends with the first one that something is made of.
    void passQuietReadings(Time limit) {
        if (!parts.rig || !inbox.hasReading() || !early.empty() || session.phase() == SessionPhase::Ended)
            return;
        const Time other = nextBesidesReadings();
        while (early.empty() && inbox.nextReading() <= limit && inbox.nextReading() < std::min(other, nextOfRig())) {
            earlyTime = inbox.nextReading();
            takeReading(early);
        }
        noteFaults();
    }

    /// The first of those that wait.
    void takeReading(std::vector<Sample>& samples) {
        Reading reading = inbox.takeReading();
        noteLate(reading);
        reading.time = inFlight(reading.time);
        parts.rig->take(reading, samples);
    }

    // --- one instant ---

    void instant(Time time) {
        const bool wasFlying = isFlying();
        if (!commands.empty() && time > advanced && !practice.hasToTell()) {
            const PendingCommand command = commands.front();
            commands.pop_front();
            apply(time, command);
        } else {
            gather(time);
            if (!batch.empty()) {
                session.take(time, batch);
                seeScenario(time);
                if (parts.recorder != nullptr)
                    check(parts.recorder->samples(batch));
                last = time;
            } else if (sessionTimer <= time) {
                session.advance(time);
                last = time;
            } else if (watch && isFlying() && nextEvent() <= time) {
                seeScenario(time);
                last = time;
            } else {
                passHands(time); // a move that changed nothing is over all the same
                noteWhatIsTold();
                if (!commands.empty())
                    last = time; // what the hands asked for comes after now
                return;
            }
        }
        // Practice aircraft and scripted hands stand while the run does.
        if (!wasFlying && isFlying()) {
            stood += time - standingSince;
            practice.goneOn();
            noteUnheard();
        }
        if (wasFlying && !isFlying())
            standingSince = time;
        noteWhatIsTold();
        publish(time);
    }

    /// The scenario's events that come true by what the session has just taken, or by time alone.
    void seeScenario(Time time) {
        if (!watch)
            return;
        std::vector<std::size_t> happened;
        if (std::exchange(isScenarioNew, false))
            watch->see(time + origin, session.values(), happened);
        else
            watch->see(time + origin, batch, happened);
        for (const std::size_t event : happened)
            commands.push_back({CommandKind::Event, parts.scenario->events[event].id});
    }

    /// What a scenario's event does to the aircraft. That it happened, the session tells.
    void happen(const std::string& id) {
        for (const ScenarioEvent& event : parts.scenario->events) {
            if (event.id != id)
                continue;
            if (event.failure)
                practice.fail(*event.failure);
            practice.follow(event.route);
        }
    }

    /// The feed has just been heard, with all that it says.
    void noteWhatIsTold() {
        if (std::exchange(hasJustHeard, false))
            noteUnobserved(unobservedSignals(*parts.flow, *parts.aircraft, session.values()));
    }

    /// Said before the start, and again when it has become another list.
    void noteUnobserved(const std::vector<SignalId>& missing) {
        if (missing == saidMissing)
            return;
        saidMissing = missing;
        for (Phrase& remark : unobservedRemarks(*parts.flow, *parts.aircraft, missing))
            notices.push_back(std::move(remark));
    }

    void apply(Time time, const PendingCommand& command) {
        const RunCommand told{time, command.kind, command.text};
        const bool mayBegin = command.kind == CommandKind::Start || command.kind == CommandKind::Jump ||
                              command.kind == CommandKind::CarryOn;
        if (mayBegin && !std::exchange(hasLooked, true) && lookFirst(command))
            return apply(time, {CommandKind::Unobserved, namesOf(saidMissing)});
        if (mayBegin && !std::exchange(hasAsked, true))
            declareAsked(time);
        if (command.kind == CommandKind::Event)
            happen(command.text);
        if (command.kind == CommandKind::Place)
            put(command.text);
        flowhand::apply(session, told);
        if (command.kind == CommandKind::Jump)
            putSimulated();
        if (parts.recorder != nullptr)
            check(parts.recorder->command(told));
        last = time;
    }

    void put(const std::string& place) {
        if (const Status found = practice.put(place); !found) {
            notices.emplace_back(describe(found.error()));
            return;
        }
        beginScenario();
        isScenarioNew = true;
    }

    /// Before the run begins with `command`: whether something that its flow reads is told by nobody.
    bool lookFirst(const PendingCommand& command) {
        const std::vector<SignalId> missing = unobservedSignals(*parts.flow, *parts.aircraft, session.values());
        noteUnobserved(missing);
        if (!missing.empty())
            commands.push_front(command);
        return !missing.empty();
    }

    [[nodiscard]] std::string namesOf(const std::vector<SignalId>& ids) const {
        std::vector<std::string> names;
        for (const SignalId id : ids)
            names.push_back(parts.aircraft->signals[id].name);
        return joined(names, " ");
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
            parts.rig->declare(id, value, inFlight(time), screen);
            notices.push_back(
                phrase("{1} is taken to be {2}; put it there now.").with(signal.label, valueWords(signal, value)));
        }
        markPlayed(screen, before);
    }

    void gather(Time time) {
        batch.clear();
        made.clear();
        if (parts.rig)
            gatherDevices(time);
        gatherFeed(time);
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
            parts.hands->move(ofHand(time), made);
            for (const std::size_t step : parts.hands->takeJumps())
                jump(parts.flow->steps[step].id);
        }
        if (parts.partnerHands && isFlying())
            parts.partnerHands->move(time - stood, made);
        practice.fly(time - stood, isFlying(), session, link, made);
        for (Sample& sample : made) {
            sample.time = time;
            addChange(sample);
        }
    }

    /// Readings and news of the devices in the order in which they came, then what happens by time alone.
    void gatherDevices(Time time) {
        const std::size_t before = made.size();
        made.insert(made.end(), early.begin(), early.end());
        early.clear();
        while (std::min(inbox.nextReading(), inbox.nextNotice()) <= time) {
            if (inbox.nextNotice() <= inbox.nextReading())
                note(inbox.takeNotice());
            else
                takeReading(made);
        }
        parts.rig->advance(inFlight(time), made);
        markPlayed(made, before);
        noteFaults();
    }

    void gatherFeed(Time time) {
        while (const std::optional<FeedNews> told = link.take(time, made))
            if (*told == FeedNews::Heard)
                noteHeard();
            else
                noteSilent();
    }

    /// What it said last is not known any more, but only once the run is held: until then nobody could have known
    /// better.
    void noteSilent() {
        ++changes;
        notices.push_back(phrase("{1} has fallen silent.").with(link.title()));
        isFeedLost = true;
        link.forget(session.values(), screen);
        holdForLoss(phrase("{1} is silent. The run goes on by itself when it speaks again").with(link.title()));
    }

    void noteHeard() {
        ++changes;
        notices.push_back((std::exchange(isFeedLost, false) ? phrase("{1} speaks again.") : phrase("{1} is heard."))
                              .with(link.title()));
        hasJustHeard = true;
        for (PendingCommand& command : std::exchange(waiting, {}))
            commands.push_back(std::move(command));
        resumeAfterLoss();
    }

    /// Without what the feed will say the run would leave out steps that it need not.
    [[nodiscard]] bool mustWait(CommandKind kind) const {
        const bool mayBegin = kind == CommandKind::Start || kind == CommandKind::Jump || kind == CommandKind::Waive ||
                              kind == CommandKind::Place;
        return mayBegin && !hasLooked && link.hasFeed() && !link.isHeard();
    }

    void holdForLoss(const Phrase& reason) {
        if (!isFlying() || isHeldByLoss)
            return;
        isHeldByLoss = true;
        commands.push_back({CommandKind::Gap, phraseText(reason)});
    }

    /// Behind its Gap in the queue, should that not have been applied yet.
    void resumeAfterLoss() {
        if (lost.empty() && !isFeedLost && std::exchange(isHeldByLoss, false))
            commands.push_back({CommandKind::Resume, {}});
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
        latest = std::max(latest, slow.toReal(last + kTick - reading.time));
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
        sessionTimer = session.nextTimer();
        std::vector<Event> told = session.takeEvents();
        for (const Event& event : told) {
            if (event.kind == EventKind::OutcomeReached)
                outcome = event.text.text();
            if (event.kind == EventKind::ScenarioEvent)
                happenings.push_back({event.time, event.text.text()});
            isStopped |= event.kind == EventKind::RunEnded && outcome.empty() && event.text.text() != "completed";
        }
        if (parts.recorder != nullptr && !told.empty())
            check(parts.recorder->events(told));
        events.insert(events.end(), std::make_move_iterator(told.begin()), std::make_move_iterator(told.end()));
        if (!told.empty())
            attend(); // another step may be due
        for (const PartnerMove& move : session.takePartnerMoves())
            partner.push_back(move);
        if (parts.recorder != nullptr && slow.toReal(time - flushed) >= kFlushPeriod) {
            flushed = time;
            check(parts.recorder->flush(time));
        }
        if (session.phase() == SessionPhase::Ended)
            finish(time);
        else
            showHands(time);
    }

    void attend() {
        if (parts.devices != nullptr)
            attendToDue(*parts.devices, *parts.rig, *parts.flow, session.results());
    }

    void passHands(Time time) {
        if (!isFlying())
            return;
        if (parts.hands)
            parts.hands->pass(ofHand(time));
        if (parts.partnerHands)
            parts.partnerHands->pass(time - stood);
    }

    void showHands(Time time) {
        if (!isFlying() || !(parts.hands || parts.partnerHands))
            return;
        const std::vector<StepResult>& results = session.results();
        std::vector<StepTurn> steps(results.size());
        for (std::size_t i = 0; i < steps.size(); ++i) {
            const StepState state = results[i].state;
            const bool isOpen = state == StepState::Due || state == StepState::Seen;
            steps[i] = {results[i].due != kForever, state != StepState::Waiting && !isOpen};
        }
        if (parts.hands)
            parts.hands->see(ofHand(time), session.values(), steps);
        if (parts.partnerHands)
            parts.partnerHands->see(time - stood, session.values(), steps);
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
        notices.push_back(phrase("This run is no longer recorded. {1}").with(describe(status.error())));
        parts.recorder = nullptr;
    }

    // --- devices ---

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
        parts.rig->lose(notice.device, inFlight(notice.time), made);
        holdForLoss(phrase("{1} is lost. Plug it in again; the run goes on by itself").with(nameOf(notice)));
    }

    void noteConnected(const DeviceNotice& notice) {
        const Status connected =
            parts.rig->connect(notice.device, parts.playback ? parts.playback->inputs[notice.device]
                                                             : parts.devices->inputs(notice.device));
        if (!connected) {
            notices.emplace_back(describe(connected.error()));
            return;
        }
        if (parts.devices != nullptr)
            parts.devices->listenOnlyTo(notice.device, parts.rig->wiredInputs(notice.device));
        attend();
        if (std::erase(lost, notice.device) > 0)
            notices.push_back(phrase("{1} is back.").with(nameOf(notice)));
        resumeAfterLoss();
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
            notices.push_back(
                phrase("Not heard of yet: {1}. Move each once, so that the program knows where it stands.")
                    .with(joined(labels, ", ")));
    }

    /// What is wrong with a control is said once, and again after it was right.
    void noteFaults() {
        if (!parts.rig->takeFaultChange())
            return;
        std::vector<Phrase> now = parts.rig->faults();
        for (const Phrase& fault : now)
            if (std::find(faults.begin(), faults.end(), fault) == faults.end())
                notices.push_back(fault);
        faults = std::move(now);
    }

    // --- the flight's next flow ---

    void beginRun() {
        if (parts.recorder != nullptr) {
            check(parts.recorder->begin(parts.header));
            runId = parts.recorder != nullptr ? parts.recorder->runId() : 0;
        }
        practice.begin(link, screen);
    }

    /// Everything counts from the present instant; what came after it and waits is kept.
    void rebase() {
        const Duration earlier = last + kTick;
        origin += earlier;
        inbox.rebase(earlier);
        earlyTime -= earlier;
        link.rebase(earlier);
        advanced = last = -kTick;
        flushed = stood = standingSince = Duration{};
    }

    void goOn(NextRun next) {
        const std::vector<Value> values = session.values();
        const std::string before = parts.flow->title;
        rebase();
        parts.flow = next.flow;
        parts.header = std::move(next.header);
        parts.hands = std::move(next.hands);
        parts.partnerHands = std::move(next.partnerHands);
        seatHands();
        parts.recorder = next.recorder.get();
        if (next.recorder)
            recorders.push_back(std::move(next.recorder));
        session = Session(*parts.aircraft, *parts.flow, parts.header.setup);
        sessionTimer = session.nextTimer();
        commands.clear();
        screen.clear();
        partner.clear();
        outcome.clear();
        hasLooked = isFinished = isHeldByLoss = false;
        happenings.clear();
        saidMissing.clear();
        notices.push_back(phrase("The flight goes on: {1}.").with(parts.flow->title));
        for (std::size_t i = 0; i < values.size(); ++i)
            carry(SignalId(static_cast<std::uint32_t>(i)), values[i]);
        practice.restart();
        beginRun();
        instant(Time{});
        commands.push_back({CommandKind::CarryOn, before});
    }

    void carry(SignalId signal, Value value) {
        if (!value.isKnown())
            return;
        if (parts.aircraft->isControl(signal)) {
            const bool isSimulated = parts.header.setup.controls[indexOf(signal)].isSimulated;
            const Origin from = isSimulated || parts.playback ? simulatedOrigin() : Origin::Device;
            screen.push_back({Time{}, signal, value, Actor::Machine, from, kNoControl});
        } else if (link.isFed(signal)) {
            screen.push_back({Time{}, signal, value, Actor::Machine, Origin::Feed, kNoControl});
        }
    }

    void command(CommandKind kind, const std::string& text) {
        if (kind == CommandKind::Hold || kind == CommandKind::Resume || kind == CommandKind::Jump ||
            kind == CommandKind::Stop)
            isHeldByLoss = false; // the pilot has decided
        if (!mustWait(kind)) {
            commands.push_back({kind, text});
            return;
        }
        if (waiting.empty())
            notices.push_back(phrase("The run begins as soon as {1} is heard.").with(link.title()));
        waiting.push_back({kind, text});
        ++changes;
    }

    /// With the aircraft, where the step says where.
    void jump(const std::string& step) {
        if (const std::string place = practice.placeFor(*parts.flow, step); !place.empty())
            command(CommandKind::Place, place);
        command(CommandKind::Jump, step);
    }

    RunParts parts;
    Session session;
    FeedLink link;
    PracticeLink practice;
    std::optional<ScenarioWatch> watch;
    std::vector<std::unique_ptr<Recorder>> recorders; ///< of the runs after the first
    Time origin{};                                    ///< the run's beginning, from the flight's
    std::string outcome;                              ///< that the run came to
    bool isStopped = false;                           ///< by the pilot
    bool isFlightOver = false;                        ///< nothing followed
    std::vector<PendingCommand> waiting;              ///< the start, until the feed is heard
    std::vector<SignalId> saidMissing;
    bool hasJustHeard = false;
    bool hasLooked = false; ///< for what nobody tells
    bool isFeedLost = false;
    Time sessionTimer = kForever; ///< the session's next, as of the last instant: it is asked for at every reading
    Time advanced = -kTick;       ///< told by the caller
    Time last = -kTick;           ///< of the last batch, command or timer
    Time flushed{};
    Duration stood{};     ///< how long the run has stood, in all: practice aircraft and hands know nothing of it
    Time standingSince{}; ///< the run's time when it came to stand
    std::deque<PendingCommand> commands;
    std::vector<Sample> screen; ///< changes that come in just after the time advanced to
    std::vector<Sample> early;  ///< made of a reading by passQuietReadings(), for the instant of its time
    Time earlyTime{};
    std::vector<Phrase> faults;
    std::deque<PartnerMove> partner;
    std::vector<Sample> made; ///< of one instant
    std::vector<Sample> batch;
    std::vector<Event> events;
    std::vector<Happening> happenings; ///< in this run
    std::vector<Phrase> notices;
    std::vector<DeviceIndex> lost;
    bool isHeldByLoss = false; ///< of a device or the feed
    bool hasNotedUnheard = false;
    bool hasAsked = false; ///< declareAsked() was
    bool isFinished = false;
    std::int64_t runId = 0;
    std::uint64_t lateChanges = 0; ///< came in behind the run's time
    Duration latest{};
    std::uint64_t changes = 0;
    SlowTime slow;
    DeviceInbox inbox;
    bool isScenarioNew = false;
};

RunLoop::RunLoop(RunParts parts) : m_state(std::make_unique<State>(std::move(parts))) {
    State& state = *m_state;
    const Aircraft& aircraft = *state.parts.aircraft;
    for (const CockpitControl& control : aircraft.controls) {
        if (!state.parts.header.setup.controls[indexOf(control.signal)].isSimulated)
            continue;
        const Value value = startOf(*state.parts.flow, aircraft, control.signal);
        state.screen.push_back({Time{}, control.signal, value, Actor::Machine, state.simulatedOrigin(), kNoControl});
    }
    if (state.parts.playback)
        state.inbox.fill(*state.parts.playback, state.origin);
    state.beginRun();
    state.instant(Time{});
}

RunLoop::~RunLoop() = default;

void RunLoop::advance(Time flightTime) {
    State& state = *m_state;
    const Time time = state.inRun(flightTime);
    if (state.parts.devices != nullptr)
        state.inbox.drain(*state.parts.devices, state.origin);
    state.link.drain(state.origin);
    for (;;) {
        state.passQuietReadings(time);
        const Time at = std::max(state.nextTime(), state.last + kTick);
        if (at > time)
            break;
        state.instant(at);
    }
    state.advanced = std::max(state.advanced, wholeTick(time));
}

void RunLoop::jump(const std::string& step) {
    m_state->jump(step);
}

void RunLoop::command(CommandKind kind, const std::string& text) {
    m_state->command(kind, text);
}

bool RunLoop::goOn() {
    if (!isEnded() || m_state->isStopped || m_state->isFlightOver || !m_state->parts.successor)
        return false;
    std::optional<NextRun> next = m_state->parts.successor(*m_state->parts.flow, m_state->outcome);
    m_state->isFlightOver = !next;
    if (!next)
        return false;
    m_state->goOn(std::move(*next));
    return true;
}

void RunLoop::moveOnScreen(SignalId signal, Value value) {
    m_state->screen.push_back({Time{}, signal, value, Actor::Hand, Origin::Screen, kNoControl});
}

Time RunLoop::nextTime() const {
    const Time next = m_state->nextTime();
    return next == kForever ? kForever : m_state->inFlight(next);
}

const RunHeader& RunLoop::header() const {
    return m_state->parts.header;
}

bool RunLoop::isEnded() const {
    return m_state->session.phase() == SessionPhase::Ended;
}

bool RunLoop::areHandsDone() const {
    const State& state = *m_state;
    return state.inbox.isEmpty() && state.early.empty() && (!state.parts.hands || state.parts.hands->isDone());
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
            state.runId,
            state.parts.flow,
            state.link.title(),
            state.link.hasFeed() ? state.link.status() : FeedStatus{},
            state.practice.ground(state.link),
            state.happenings,
            {}};
}

const std::vector<Phrase>& RunLoop::notices() const {
    return m_state->notices;
}

std::vector<Event> RunLoop::takeEvents() {
    return std::exchange(m_state->events, {});
}

std::uint64_t RunLoop::changeCount() const {
    return m_state->changes;
}

} // namespace flowhand
