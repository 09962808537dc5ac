#pragma once

#include <cstdint>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "aircraft/practice.h"
#include "base/sample.h"
#include "device/playback.h"
#include "procedure/flow.h"
#include "rig/rig.h"
#include "session/hands.h"
#include "session/record.h"
#include "session/session.h"

namespace flowhand {

class DeviceHub; // device/hub.h: the readers' queues

/// What a run is made of. Aircraft, flow, devices and recorder must outlive the run.
struct RunParts {
    const Aircraft* aircraft = nullptr;
    const Flow* flow = nullptr;
    RunHeader header; ///< with the session's set-up
    std::optional<PracticeAircraft> practice;
    std::optional<Rig> rig;           ///< none: on-screen controls and scripted hands alone
    DeviceHub* devices = nullptr;     ///< none: without hardware
    std::optional<Playback> playback; ///< recordings in place of `devices`
    std::optional<Hands> hands;       ///< scripted hands
    Recorder* recorder = nullptr;     ///< none: not stored
    std::vector<std::string> notices; ///< what the pilot should know from the start
};

/// Where a simulated control stands at the start of a flow; where the flow says nothing: off, first position, in the
/// middle or at rest.
[[nodiscard]] Value startOf(const Flow& flow, const Aircraft& aircraft, SignalId control);

/// What a view shows of a run, by value.
struct RunSnapshot {
    SessionView session;
    std::vector<Value> values; ///< by SignalId
    Score score;               ///< of the run so far; final when session.phase is Ended
    std::vector<StepResult> results;
    std::vector<std::string> notices; ///< what the pilot should know (device lost, recording failed), newest last
    RunLosses losses;                 ///< so far
    std::int64_t runId = 0;           ///< in the store; 0: not stored
};

/// Advances a run: merges devices, scripted hands, on-screen controls, the practice aircraft and the partner into one
/// stream of changes for the session and the recorder. No thread and no clock of its own: the caller says up to when.
/// Deterministic.
class RunLoop {
public:
    /// Puts the simulated controls where the flow starts from.
    explicit RunLoop(RunParts parts);
    ~RunLoop();

    /// Everything up to `time`, which must not go back. Call at least every 20 ms in a live run.
    void advance(Time time);
    /// Applied just after the time advanced to. After a jump, simulated controls are put where its step wants them.
    void command(CommandKind kind, const std::string& text = {});
    /// A hand on an on-screen control, just after the time advanced to.
    void moveOnScreen(SignalId signal, Value value);

    /// When something happens next of itself; kForever: nothing will.
    [[nodiscard]] Time nextTime() const;
    [[nodiscard]] bool isEnded() const;
    /// The scripted or recorded hands, if any, have nothing left to do.
    [[nodiscard]] bool areHandsDone() const;
    [[nodiscard]] SessionPhase phase() const;
    [[nodiscard]] RunSnapshot snapshot() const;
    /// As in the snapshot, which takes time to make.
    [[nodiscard]] const std::vector<std::string>& notices() const;
    /// Those since the last call.
    [[nodiscard]] std::vector<Event> takeEvents();
    /// Counts every change a view might show.
    [[nodiscard]] std::uint64_t changeCount() const;

private:
    struct State;
    std::unique_ptr<State> m_state;
};

} // namespace flowhand
