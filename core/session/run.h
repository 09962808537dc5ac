#pragma once

#include <cstdint>
#include <functional>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "aircraft/practice.h"
#include "base/sample.h"
#include "device/device.h"
#include "procedure/flow.h"
#include "rig/rig.h"
#include "session/hands.h"
#include "session/record.h"
#include "session/session.h"

namespace flowhand {

class DeviceHub; // device/hub.h: the readers' queues

/// What a run is made of. Aircraft and flow must outlive the run; so must recorder, devices and clock.
struct RunParts {
    const Aircraft* aircraft = nullptr;
    const Flow* flow = nullptr;
    SessionSetup setup;
    RunHeader header;
    std::optional<PracticeAircraft> practice;
    std::optional<Rig> rig;       ///< none: on-screen controls and scripted hands alone
    DeviceHub* devices = nullptr; ///< none: without hardware
    std::optional<Hands> hands;   ///< scripted hands
    Recorder* recorder = nullptr; ///< none: not stored
};

/// What a view shows of a run, by value.
struct RunSnapshot {
    SessionView session;
    std::vector<Value> values; ///< by SignalId
    Score score;               ///< of the run so far; final when session.phase is Ended
    std::vector<StepResult> results;
    std::vector<std::string> notices;   ///< device lost, recording failed: what the pilot should know, newest last
    std::vector<std::string> handNames; ///< by ControlId
    std::uint64_t lateSamples = 0;      ///< arrived behind session time and were moved to it
    std::int64_t runId = 0;             ///< in the store; 0: not stored
};

/// Advances a run: merges devices, scripted hands, on-screen controls, the practice aircraft and the partner into one
/// stream of samples for the session and the recorder. No thread and no clock of its own: the caller says up to when.
/// Deterministic.
class RunLoop {
public:
    explicit RunLoop(RunParts parts);
    ~RunLoop();

    /// Everything up to `time`, which must not go back. Call at least every 50 ms in a live run.
    void advance(Time time);
    /// Applied at the next tick.
    void command(CommandKind kind, const std::string& text = {});
    /// A hand on an on-screen control, at the next tick.
    void moveOnScreen(SignalId signal, Value value);

    [[nodiscard]] Time time() const;
    [[nodiscard]] bool isEnded() const;
    [[nodiscard]] RunSnapshot snapshot() const;
    /// Events and words since the last call.
    [[nodiscard]] std::vector<Event> takeEvents();
    [[nodiscard]] std::vector<Speech> takeSpeech();

private:
    struct State;
    std::unique_ptr<State> m_state;
};

/// A run on a thread of its own, the session thread, in real time. All functions from any thread.
class Run {
public:
    /// `onChange` is called on the session thread after something a view shows has changed, at most 60 times a second.
    Run(RunParts parts, const Clock& clock, std::function<void()> onChange);
    /// Stops the run, if it is not over, and joins the thread.
    ~Run();

    void command(CommandKind kind, const std::string& text = {});
    void moveOnScreen(SignalId signal, Value value);
    [[nodiscard]] RunSnapshot snapshot() const;
    [[nodiscard]] std::vector<Event> takeEvents();
    [[nodiscard]] std::vector<Speech> takeSpeech();

private:
    struct State;
    std::unique_ptr<State> m_state;
};

} // namespace flowhand
