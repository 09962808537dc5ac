#pragma once

#include <cstdint>
#include <functional>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "aircraft/practice.h"
#include "base/sample.h"
#include "device/playback.h"
#include "feed/feed.h"
#include "procedure/flow.h"
#include "procedure/scenario.h"
#include "rig/rig.h"
#include "session/hands.h"
#include "session/motionsources.h"
#include "session/record.h"
#include "session/session.h"

namespace flowhand {

class DeviceHub; // device/hub.h: the readers' queues

/// The flow that a flight goes on with. The flow must outlive the run.
struct NextRun {
    const Flow* flow = nullptr;
    RunHeader header;
    std::unique_ptr<Recorder> recorder; ///< null: not stored
    std::optional<Hands> hands;
    std::optional<Hands> partnerHands;
};

/// What comes after the flow `ended`, by the id of the outcome that it came to; empty: it was completed. Nothing: the
/// flight is over.
using Successor = std::function<std::optional<NextRun>(const Flow& ended, const std::string& outcome)>;

/// What a run is made of. Aircraft, flow, scenario, devices, feed and recorder must outlive the run.
struct RunParts {
    const Aircraft* aircraft = nullptr;
    const Flow* flow = nullptr;
    RunHeader header; ///< with the session's set-up
    std::optional<PracticeAircraft> practice;
    std::optional<Rig> rig;            ///< none: on-screen controls and scripted hands alone
    DeviceHub* devices = nullptr;      ///< none: without hardware
    std::optional<Playback> playback;  ///< recordings in place of `devices`
    std::optional<Hands> hands;        ///< scripted hands
    std::optional<Hands> partnerHands; ///< of the partner, for continuous controls; with setup.hasPartnerHands
    Feed* feed = nullptr;              ///< motion from outside; none: by the practice aircraft alone
    MotionSources sources;
    const Scenario* scenario = nullptr; ///< whose events happen; none: nothing does
    int slowness = 1;                   ///< of slow time (slowtime.h), as setup.timeScale has it; 1 with a feed
    Successor successor;                ///< none: the flight ends with this flow
    Recorder* recorder = nullptr;       ///< none: not stored
    std::vector<Phrase> notices;        ///< what the pilot should know from the start
};

/// Something that a scenario planned, and that happened.
struct Happening {
    Time time{}; ///< of the run
    std::string title;
};

/// What a view shows of a run, by value.
struct RunSnapshot {
    SessionView session;
    std::vector<Value> values; ///< by SignalId
    Score score;               ///< of the run so far; final when session.phase is Ended
    std::vector<StepResult> results;
    std::vector<Phrase> notices;          ///< what the pilot should know (device lost, recording failed), newest last
    RunLosses losses;                     ///< so far
    std::int64_t runId = 0;               ///< in the store; 0: not stored
    const Flow* flow = nullptr;           ///< that is flown now
    std::string feed;                     ///< its title; empty: there is none
    FeedStatus feedStatus;                ///< of that feed
    std::optional<GroundPosition> ground; ///< none: something else than the practice aircraft moves on the ground
    std::vector<Happening> happened;      ///< in this run
    std::vector<std::shared_ptr<const RunSnapshot>> before; ///< how the flight's earlier runs ended, in their order
};

/// Advances a run: merges devices, scripted hands, on-screen controls, the practice aircraft and the partner into one
/// stream of changes for the session and the recorder; so too a feed. No thread and no clock of its own: the caller
/// says up to when, in real time: in slow time the run's own is another (slowtime.h). Deterministic.
class RunLoop {
public:
    /// Puts the simulated controls where the flow starts from.
    explicit RunLoop(RunParts parts);
    ~RunLoop();

    /// Everything up to `time`, which must not go back. Call at least every 20 ms in a live run.
    void advance(Time time);
    /// Applied just after the time advanced to. After a jump, simulated controls are put where its step wants them; the
    /// aircraft stays where it is.
    void command(CommandKind kind, const std::string& text = {});
    /// A jump with the practice aircraft: to the place that the step names, to the flow's start for the first step. It
    /// is whole again there, and what the scenario has in store for it may happen again. A step that names none, as
    /// any where no practice aircraft flies: command(CommandKind::Jump, step).
    void jump(const std::string& step);
    /// A hand on an on-screen control, just after the time advanced to.
    void moveOnScreen(SignalId signal, Value value);
    /// Once the run has ended: the flight goes on with the flow that follows, in a run of its own whose time begins at
    /// 0. Events, score and results are the new one's from now on; take those of the old one before. False when
    /// nothing follows.
    [[nodiscard]] bool goOn();

    /// When something happens next of itself; kForever: nothing will.
    [[nodiscard]] Time nextTime() const;
    [[nodiscard]] bool isEnded() const;
    /// The scripted or recorded hands, if any, have nothing left to do.
    [[nodiscard]] bool areHandsDone() const;
    [[nodiscard]] SessionPhase phase() const;
    [[nodiscard]] RunSnapshot snapshot() const;
    /// Of the run that goes on or has ended.
    [[nodiscard]] const RunHeader& header() const;
    /// As in the snapshot, which takes time to make.
    [[nodiscard]] const std::vector<Phrase>& notices() const;
    /// Those since the last call.
    [[nodiscard]] std::vector<Event> takeEvents();
    /// Counts every change a view might show.
    [[nodiscard]] std::uint64_t changeCount() const;

private:
    struct State;
    std::unique_ptr<State> m_state;
};

} // namespace flowhand
