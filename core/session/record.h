#pragma once

#include <cstdint>
#include <span>
#include <string>
#include <vector>

#include "base/error.h"
#include "base/sample.h"
#include "session/event.h"
#include "session/losses.h"
#include "session/score.h"
#include "session/session.h"

namespace flowhand {

/// What the pilot (or the run itself, losing a device) did to the run besides moving controls. Recorded, so that a run
/// judged again is the same.
enum class CommandKind : std::uint8_t {
    Start,
    Waive,
    Hold, ///< text: the reason
    Gap,  ///< held because a device or feed was lost; text: which, in words (phrasejson.h, phraseText)
    Resume,
    Repeat,
    Jump, ///< text: the id of the step to go on with
    Stop,
    Unobserved, ///< before the start; text: motion signals that nothing says, by name, spaces between them
    CarryOn,    ///< begins without a set-up check, because the flight goes on; text: the flow before
    Event,      ///< of the scenario; text: its id
    Place       ///< the practice aircraft is put elsewhere, for the jump that follows; text: the place
};

struct RunCommand {
    Time time{};
    CommandKind kind = CommandKind::Start;
    std::string text;

    bool operator==(const RunCommand&) const = default;
};

/// Kept once a run. Wall time stands here only.
struct RunHeader {
    std::int64_t startedUnixMillis = 0;
    std::string pilot;
    std::string programVersion;
    std::string aircraftFolder;
    std::string aircraftSource; ///< the whole file, as it was
    std::string flowId;
    std::string flowTitle;
    std::string flowFile;
    std::string flowSource;
    std::string rigTitle;
    std::string rigSource;                 ///< with its calibration; empty: on-screen controls alone
    std::string motionSource;              ///< "practice aircraft" ...
    std::string scenario;                  ///< its title, and which part of it this is; empty: none
    std::vector<std::string> controlNames; ///< by ControlId
    std::string help; ///< how much the pilot was shown: "guided", "prompted", "from memory"; empty: not said
    SessionSetup setup;
};

/// Where a run is written while it goes on. Session thread. An error is reported once; the run goes on unrecorded after
/// it, and says so.
class Recorder {
public:
    virtual ~Recorder() = default;
    [[nodiscard]] virtual Status begin(const RunHeader& header) = 0;
    [[nodiscard]] virtual Status samples(std::span<const Sample> batch) = 0;
    [[nodiscard]] virtual Status command(const RunCommand& command) = 0;
    [[nodiscard]] virtual Status events(std::span<const Event> events) = 0;
    /// May be called at any time; what came before it and is at most 0.5 s old may still be in memory until then.
    [[nodiscard]] virtual Status flush(Time now) = 0;
    /// Just before finish(). Recorders that keep none need not heed it.
    [[nodiscard]] virtual Status losses(const RunLosses& /*losses*/) { return {}; }
    [[nodiscard]] virtual Status finish(Time end, const Score& score, const std::vector<StepResult>& results) = 0;
    /// Of the run begun; 0 before.
    [[nodiscard]] virtual std::int64_t runId() const = 0;
};

} // namespace flowhand
