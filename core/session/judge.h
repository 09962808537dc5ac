#pragma once

#include <functional>
#include <optional>
#include <string>
#include <unordered_map>
#include <vector>

#include "condition/monitor.h"
#include "session/extras.h"
#include "session/holdclock.h"
#include "session/movement.h"
#include "session/ownership.h"
#include "session/partnerpace.h"
#include "session/runtimers.h"
#include "session/session.h"
#include "session/setupgate.h"
#include "session/speaker.h"
#include "session/steptrack.h"

namespace flowhand {

/// The judge of one run, behind Session. One class in several files, by topic: judge.cpp drives it instant by instant,
/// judgecue.cpp says when steps become due, judgecredit.cpp what a movement was for, judgefinish.cpp when it is done,
/// judgeend.cpp how else a step or the run ends, judgewatch.cpp guards and outcomes, judgepartner.cpp the other seat
/// and the voice, judgesetup.cpp the start, judgehold.cpp hold, resume, repeat and stop, judgejump.cpp jumps,
/// judgeobserve.cpp what no source tells and what a scenario does, judgeview.cpp what is shown and scored.
///
/// One instant goes: changes and movements, conditions, steps finished by them, steps expired, cues, guards, outcomes,
/// the end. All times inside are of the run's clock.
class Judge {
public:
    Judge(const Aircraft& aircraft, const Flow& flow, SessionSetup setup);

    void take(Time time, std::span<const Sample> batch);
    void advance(Time time);
    [[nodiscard]] Time nextTimer() const;
    [[nodiscard]] bool isOfLever(const Sample& sample) const;
    [[nodiscard]] bool isNews(const Sample& sample) const;

    void start(Time time);
    void waive(Time time);
    void hold(Time time, const Phrase& reason);
    void gap(Time time, const Phrase& reason);
    void resume(Time time);
    void repeat(Time time);
    void jump(Time time, const std::string& step);
    void place(Time time, const std::string& where);
    void stop(Time time);
    void unobserved(Time time, const std::string& names);
    void carryOn(Time time);
    void happen(Time time, const std::string& id);

    std::vector<Event> takeEvents() { return std::exchange(m_events, {}); }
    std::vector<PartnerMove> takePartnerMoves() { return std::exchange(m_partnerMoves, {}); }

    [[nodiscard]] SessionPhase phase() const { return m_phase; }
    [[nodiscard]] SessionView view() const;
    [[nodiscard]] Score score() const;
    [[nodiscard]] const std::vector<StepResult>& results() const;
    [[nodiscard]] const std::vector<Value>& values() const { return m_values; }

private:
    enum class Role : std::uint8_t { Done, When, Expires, Suspend, Guard, Outcome };
    struct Watched {
        Role role;
        std::size_t index;
    };
    struct GuardTrack {
        std::optional<MonitorId> monitor; ///< while its stretch goes on
        bool hasBegun = false;
        bool isBroken = false;
        bool isBrokenNow = false;
    };
    struct OutcomeTrack {
        MonitorId monitor{};
        bool wasTrue = true; ///< what is so at the start is no outcome
        bool isReached = false;
    };

    // judge.cpp
    void serve(Time limit, bool isInclusive);
    [[nodiscard]] Time nextRunTimer() const;
    void instant(Time now, std::span<const Sample> batch);
    void takeSample(const Sample& sample);
    void setControl(const Sample& sample);
    void movementBegins(const Sample& sample);
    void settleMovements();
    void settleConditions();
    void apply(const TruthChange& change);
    void serveTimers();
    void serveTimer(const RunTimer& timer);
    void endInstant();
    Event& tell(EventKind kind, int step = -1);
    [[nodiscard]] const Step& step(std::size_t i) const { return m_flow.steps[i]; }
    [[nodiscard]] bool isTrue(const std::optional<MonitorId>& monitor) const;
    [[nodiscard]] Value value(SignalId signal) const { return m_values[indexOf(signal)]; }

    // judgecue.cpp
    void satisfy(std::size_t i, Time time);
    [[nodiscard]] bool areBeforeSatisfied(std::size_t i) const;
    void serveCues();
    [[nodiscard]] bool isFoundSet(std::size_t i) const;
    void takeOverHold(std::size_t i);
    void considerCue(std::size_t i);
    void cue(std::size_t i, Time turn);
    [[nodiscard]] Time turnOf(std::size_t i) const;
    void makeDue(std::size_t i, Time due);
    void foundSet(std::size_t i);
    [[nodiscard]] bool isHandAt(std::size_t i) const;
    void setExpiry(std::size_t i);
    void suspendChanged(std::size_t i, bool isSuspended);

    // judgecredit.cpp
    void settled(const ControlMovement& movement);
    [[nodiscard]] bool fits(std::size_t i, SignalId control) const;
    [[nodiscard]] std::optional<std::size_t> creditOpen(const ControlMovement& movement) const;
    [[nodiscard]] std::optional<std::size_t> creditComing(const ControlMovement& movement) const;
    [[nodiscard]] bool mayComeAhead(std::size_t i, SignalId control) const;
    void matched(SignalId control, Value value);
    void credit(std::size_t i, const ControlMovement& movement);
    void losesFit(const ControlMovement& movement);
    void extra(const ControlMovement& movement);
    void tellExtra(const ControlMovement& movement, ExtraResult& found);
    [[nodiscard]] std::optional<std::size_t> undoneBy(const ControlMovement& movement) const;
    [[nodiscard]] bool isPartnersWork(const ControlMovement& movement);
    [[nodiscard]] bool isStillInPlace(const ControlMovement& movement) const;
    [[nodiscard]] bool isContinuous(SignalId control) const { return m_aircraft.control(control).isContinuous; }
    [[nodiscard]] bool isBy(std::size_t i, Actor actor) const;

    // judgefinish.cpp
    void doneChanged(std::size_t i, const TruthChange& change);
    void serveInstants();
    void instantDone(std::size_t i);
    void see(std::size_t i);
    void tryFinish(std::size_t i);
    void finish(std::size_t i, Time done);
    [[nodiscard]] bool isMoving(std::size_t i) const;
    [[nodiscard]] bool needsMovement(std::size_t i) const;
    [[nodiscard]] bool isUncertain(std::size_t i) const;
    [[nodiscard]] bool mayBeNoise(std::size_t i) const;
    void tellFinish(std::size_t i, StepState state);
    void measure(std::size_t i);
    void reconsiderUncertain(std::size_t i);
    void reconsiderInstants(SignalId control);
    void makeCertain(std::size_t i);

    // judgeend.cpp
    void omit(std::size_t i);
    void leaveOut(std::size_t i, const Phrase& why);
    void expireIfSo(std::size_t i);
    void resolved(std::size_t i, StepState state);
    void end(const std::string& why);
    void endIfDone();
    [[nodiscard]] bool isFlowDone() const;

    // judgewatch.cpp
    void beginGuards();
    void serveGuards();
    void beginGuard(std::size_t guard);
    void endGuard(std::size_t guard);
    void rewindGuard(std::size_t guard);
    void guardChanged(std::size_t guard, const TruthChange& change);
    void setGuardBroken(std::size_t guard, bool isBroken);
    void serveOutcomes();

    // judgepartner.cpp
    void assignDoers();
    void say(WordsPurpose purpose, std::size_t i, const std::string& by, const std::string& text);
    void beginWords();
    void wordsEnded();
    [[nodiscard]] bool isSpokenByPilot(const std::string& by) const;
    void schedulePartner(std::size_t i);
    void partnerActs(std::size_t i);
    [[nodiscard]] bool isTooSoon(std::size_t i) const;
    void partnerLetsGo(std::size_t i);
    [[nodiscard]] Value target(std::size_t i, SignalId control, const std::vector<Value>& values) const;
    [[nodiscard]] Value numberTarget(std::size_t i, SignalId control, const std::vector<Value>& values) const;
    [[nodiscard]] Value wrongTarget(SignalId control, Value right) const;

    // judgesetup.cpp
    void begin(Time time);
    void beginWatching(Time time);
    void leaveOutMissing();
    void addMonitors();
    void watch(std::optional<MonitorId>& monitor, const std::optional<PlacedCondition>& condition, Role role,
               std::size_t index);
    void closeGate(GatePurpose purpose, std::vector<StartValue> wanted);
    void passGate(Time time);
    void go(Time time);
    void stand(const Sample& sample);
    void leverFound(SignalId control, Value value);
    [[nodiscard]] bool isAvailable(SignalId control) const;
    [[nodiscard]] double sigma(SignalId control) const;

    // judgehold.cpp
    void holdFor(Time time, EventKind kind, const Phrase& reason);
    void resumeNow(Time time);
    void repeatNow(Time time);
    [[nodiscard]] bool isAskedFor(SignalId control) const;
    [[nodiscard]] double tolerance(SignalId control) const;
    [[nodiscard]] std::vector<StartValue> heldState(const std::vector<Value>& values) const;
    void letGoOn(Time time);
    void takeInStanding();
    void speakAgain();
    void reopen(std::size_t i);

    // judgejump.cpp
    void standForSetUp(Time time);
    void jumpNow(Time time);
    [[nodiscard]] std::vector<bool> stepsBefore(std::size_t i) const;
    [[nodiscard]] std::vector<bool> stepsFrom(std::size_t i) const;
    [[nodiscard]] std::vector<StartValue> stateBefore(std::size_t i) const;
    [[nodiscard]] double room(std::size_t i, SignalId control, std::vector<Value> values) const;
    void passOver(std::size_t i);

    // judgeobserve.cpp
    void setMotion(SignalId signal, Value value);
    [[nodiscard]] bool isUnobserved(SignalId signal) const;
    [[nodiscard]] SignalId unobservedIn(const std::optional<PlacedCondition>& condition) const;
    void leaveOutUnobserved();
    [[nodiscard]] bool isOutOfSight(std::size_t i) const;

    // judgeview.cpp
    [[nodiscard]] std::vector<StepResult> judgedResults() const;
    [[nodiscard]] std::vector<GuardResult> guardResults() const;
    [[nodiscard]] Duration latency() const;
    [[nodiscard]] std::int64_t ceiling() const;
    [[nodiscard]] Phrase verdict(std::size_t i, const Score& score) const;

    const Aircraft& m_aircraft;
    const Flow& m_flow;
    SessionSetup m_setup;

    SessionPhase m_phase = SessionPhase::SetUp;
    HoldClock m_clock;
    Time m_now{};  ///< of the run's clock
    Time m_real{}; ///< the same instant as the caller counts it
    std::vector<Value> m_values;
    std::vector<ControlId> m_by; ///< by SignalId of the controls: which physical control moved it last
    MovementDetector m_movements;
    Ownership m_ownership;
    Extras m_extras;
    SetUpGate m_gate;
    Speaker m_speaker;
    Time m_wordsEnd = kForever;
    std::uint64_t m_wordsBegun = 0;
    PartnerPace m_pace;
    RunTimers m_timers;
    Monitor m_monitor;
    std::unordered_map<std::uint32_t, Watched> m_watched;
    std::vector<StepTrack> m_tracks;
    std::vector<std::vector<std::size_t>> m_followers; ///< by step
    std::vector<std::vector<std::size_t>> m_byControl; ///< steps whose own control it is, in order
    std::vector<std::size_t> m_toConsider;             ///< steps whose turn may have come
    std::vector<std::size_t> m_toExpire;               ///< steps whose `expires` has changed
    std::vector<std::size_t> m_instants;               ///< steps whose condition is true at this instant alone
    std::vector<std::size_t> m_justDue;                ///< steps that became due in this instant
    std::vector<std::size_t> m_credited;               ///< by control: step + 1 that its movement has done, or 0
    std::vector<bool> m_handMoved;                     ///< by control: moved by the pilot in this run
    std::vector<bool> m_unobserved;                    ///< by SignalId: nothing says it in this run
    std::vector<bool> m_outOfSight;                    ///< by SignalId: was known in this run and is not now
    std::vector<GuardTrack> m_guards;
    std::vector<OutcomeTrack> m_outcomes;
    std::optional<std::size_t> m_outcome;
    std::optional<std::size_t> m_lastDone;
    std::size_t m_goingTo = 0;        ///< the step that is repeated or jumped to
    std::vector<Value> m_heldValues;  ///< what the conditions saw last before the run stood
    std::vector<Value> m_knownValues; ///< of controls: the last that were known
    bool m_hasJumped = false;
    bool m_hasBegun = false;
    bool m_mustSettle = false; ///< a condition was added or got a new reference time
    bool m_hasChanged = false; ///< a step's state, since the guards were last looked at
    bool m_mayEnd = false;     ///< a step was resolved or the voice fell silent
    Time m_begun{};
    Time m_settledAt{}; ///< conditions
    std::size_t m_unresolved = 0;
    Phrase m_holdReason;

    std::vector<Event> m_events;
    std::vector<PartnerMove> m_partnerMoves;
    mutable std::vector<StepResult> m_results;
    mutable bool m_isStale = true; ///< m_results
};

} // namespace flowhand
