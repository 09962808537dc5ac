#pragma once

#include <cstdint>
#include <memory>
#include <optional>
#include <span>
#include <string>
#include <vector>

#include "base/sample.h"
#include "procedure/flow.h"
#include "rig/controlfacts.h"
#include "session/event.h"
#include "session/score.h"

namespace flowhand {

/// What may happen in a run by its scenario, as far as it is told.
struct SetupEvent {
    std::string id;
    std::string title;
    std::string by;    ///< who says the words
    std::string words; ///< empty: nothing is said

    bool operator==(const SetupEvent&) const = default;
};

/// Everything besides the samples that a verdict depends on. Stored in the run's header.
struct SessionSetup {
    std::string ownSeat = "captain";
    bool isSolo = false;                ///< no partner: the pilot does both seats' steps
    std::uint64_t seed = 1;             ///< of the partner's pace
    double partnerErrorRate = 0.0;      ///< 0..1, to train monitoring
    bool hasPartnerHands = false;       ///< the partner's continuous controls are worked by a script of hands
    Duration latency{};                 ///< calibrated sound and input delay, taken off response times
    double timeScale = 1.0;             ///< seconds of the run in a second of the hands; below 1: slow time
    std::vector<ControlFacts> controls; ///< by SignalId of the aircraft's controls
    std::vector<SetupEvent> events;     ///< of the scenario
};

/// A movement of a control that the partner makes now; whoever runs the session feeds it back as a sample of
/// Actor::Partner.
struct PartnerMove {
    Time time{};
    SignalId signal = kNoSignal;
    Value value;
};

/// One step as a view shows it.
struct StepView {
    StepState state = StepState::Waiting;
    Time due = kForever;
    Time seen = kForever;
    Time done = kForever;
    bool isLate = false;
    bool isOutOfOrder = false;
    std::optional<double> margin;
    Phrase verdict; ///< in words, with units: "done, 0.3 s late"
};

struct SetUpItem {
    SignalId signal = kNoSignal;
    Value wanted;
    Value found;
};

enum class SessionPhase : std::uint8_t { SetUp, Running, Held, Ended };

/// What a view needs, by value; consistent at `time`.
struct SessionView {
    SessionPhase phase = SessionPhase::SetUp;
    Time time{};
    std::vector<StepView> steps;
    std::vector<int> due;         ///< step indexes, the first is the one to show large
    std::vector<SetUpItem> setUp; ///< what is not where the start wants it
    std::vector<SetUpItem> toMatch;
    std::vector<int> openGuards;   ///< broken now
    std::vector<int> brokenGuards; ///< so far
    std::string saying;            ///< the words that are being spoken now; empty: none
    std::string sayingBy;
    std::uint64_t wordsBegun = 0; ///< how often words began so far: the same words spoken anew are other ones
    Phrase holdReason;
    std::int64_t scoreFloor = 0;   ///< milli-points if all that is open were left out
    std::int64_t scoreCeiling = 0; ///< if all that is open were done well
};

/// Judges one run. Told the time, never asks for it. Not thread-safe; the session thread owns it. Flow and aircraft
/// must outlive it. Every batch and every command (start, hold, ...) has a time of its own, a whole tick later than the
/// one before; that makes a recorded run judged again the same to the byte.
class Session {
public:
    Session(const Aircraft& aircraft, const Flow& flow, SessionSetup setup);
    ~Session();
    Session(Session&&) noexcept;
    Session& operator=(Session&&) noexcept;

    /// Simultaneous changes, all of time `time`, later than every time before; a whole tick. Timers due before are
    /// served first.
    void take(Time time, std::span<const Sample> batch);
    /// Serves the timers up to and at `time`.
    void advance(Time time);
    [[nodiscard]] Time nextTimer() const;
    /// The sample says where a lever stands whose signal the partner owns (ownership.h): the signal stays as it is.
    [[nodiscard]] bool isOfLever(const Sample& sample) const;
    /// Whether the sample says anything new, of the signal or of the lever. Only news may be handed on.
    [[nodiscard]] bool isNews(const Sample& sample) const;

    /// Begins the run at `time`, when the set-up is right or what is not is waived (recorded).
    void start(Time time);
    void waive(Time time);
    void hold(Time time, const Phrase& reason);
    /// Held because a device or feed was lost, `reason` says which.
    void gap(Time time, const Phrase& reason);
    void resume(Time time);
    /// The due step again from the start: its words are spoken anew.
    void repeat(Time time);
    /// Goes on with the step called `step`, or begins with it, once the controls stand as the steps before it leave
    /// them (or that is waived). Open steps it comes after are void; it and all that come after it begin anew. A run
    /// that jumped does not pass.
    void jump(Time time, const std::string& step);
    /// The practice aircraft is put at `where`: the run stands until the jump that follows, so that the motion from
    /// there is taken as found, not as moved.
    void place(Time time, const std::string& where);
    void stop(Time time);
    /// Before the run begins: nothing will say these motion signals (names, spaces between them). Steps that need one
    /// are left out.
    void unobserved(Time time, const std::string& names);
    /// Begins the run at `time` without a set-up check, because the flight goes on from another flow.
    void carryOn(Time time);
    /// The event `id` of the set-up happens now: told, and its words are spoken.
    void happen(Time time, const std::string& id);

    /// Those since the last call, in order.
    [[nodiscard]] std::vector<Event> takeEvents();
    [[nodiscard]] std::vector<PartnerMove> takePartnerMoves();

    [[nodiscard]] SessionPhase phase() const;
    [[nodiscard]] SessionView view() const;
    [[nodiscard]] Score score() const;
    [[nodiscard]] const std::vector<StepResult>& results() const;
    [[nodiscard]] const std::vector<Value>& values() const;

private:
    struct Engine;
    std::unique_ptr<Engine> m_engine;
};

} // namespace flowhand
