#pragma once

#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "base/error.h"
#include "device/hidsystem.h"
#include "device/hub.h"
#include "procedure/library.h"
#include "session/runloop.h"
#include "store/store.h"

namespace flowhand {

/// What a person asks for when a run begins.
struct RunWish {
    const Aircraft* aircraft = nullptr;
    const Flow* flow = nullptr;
    std::string rigFile;                 ///< empty: no hardware
    std::vector<std::string> recordings; ///< files, flown in place of the rig's devices; empty: the devices themselves
    std::string handsFile;               ///< scripted hands; empty: none
    bool hasScreenControls = false;      ///< controls that the rig lacks can be moved on screen
    std::string seat = "captain";
    bool isSolo = false;
    std::uint64_t seed = 1;        ///< of the partner's pace
    double partnerErrorRate = 0.0; ///< 0..1
    Duration latency{};            ///< of sound and input, taken off response times
    std::string pilot;
    std::string help; ///< how much the pilot is shown, as RunHeader::help
};

/// A run ready to be flown. Devices and recorder outlive the RunParts made of it.
struct AssembledRun {
    std::unique_ptr<DeviceHub> devices;
    std::unique_ptr<Recorder> recorder;
    RunParts parts;
    Time origin{};                    ///< the clock's time at which the run's time is 0
    std::vector<std::string> remarks; ///< of the rig: what to know before the start
};

/// Loads rig and hands, opens the devices, prepares the practice aircraft and the recorder. `store` may be null: not
/// stored. Aircraft, flow, store, system and clock must outlive the run.
[[nodiscard]] Result<AssembledRun> assembleRun(const RunWish& wish, Store* store, HidSystem& system,
                                               const Clock& clock);

/// The flow that `name` means: "taxi_out", "twin_jet/taxi_out", or a path to a flow file below a folder of `library`.
struct FoundFlow {
    const Aircraft* aircraft = nullptr;
    const Flow* flow = nullptr;
};
[[nodiscard]] Result<FoundFlow> findFlow(const std::vector<AircraftFolder>& library, const std::string& name);

/// The script of hands that is shipped as the flow's demonstration; empty when there is none.
[[nodiscard]] std::string demonstrationOf(const Flow& flow);

} // namespace flowhand
