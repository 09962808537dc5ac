#pragma once

#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "base/doorbell.h"
#include "base/error.h"
#include "device/hidsystem.h"
#include "device/hub.h"
#include "feed/feed.h"
#include "procedure/library.h"
#include "session/runloop.h"
#include "store/store.h"

namespace flowhand {

/// What a person asks for when a run begins.
struct RunWish {
    const Aircraft* aircraft = nullptr;
    const Flow* flow = nullptr;             ///< with a scenario: the first that it flies
    const AircraftFolder* folder = nullptr; ///< where the flows that follow are; none: the flight ends with this one
    const Scenario* scenario = nullptr;
    std::string feed;                    ///< as FeedSpec::parse reads it; empty: the practice aircraft alone
    std::vector<std::string> sources;    ///< as MotionSources::choose reads them
    std::string rigFile;                 ///< empty: no hardware
    std::vector<std::string> recordings; ///< files, flown in place of the rig's devices; empty: the devices themselves
    std::string handsFile;               ///< scripted hands; empty: none
    bool isDemonstration = false;        ///< every flow is flown by the scripted hands that are shipped for it
    std::string place;                   ///< where the practice aircraft begins; empty: the flow's start place
    int slowness = 1;                    ///< slow time (session/slowtime.h): the run goes so many times slower
    bool hasScreenControls = false;      ///< controls that the rig lacks can be moved on screen
    std::string seat;                    ///< empty: the aircraft's first
    bool isSolo = false;
    std::uint64_t seed = 1;        ///< of the partner's pace
    double partnerErrorRate = 0.0; ///< 0..1
    Duration latency{};            ///< of sound and input, taken off response times
    std::string pilot;
    std::string help; ///< how much the pilot is shown, as RunHeader::help
};

/// A run ready to be flown. Devices, feed and recorder outlive the RunParts made of it.
struct AssembledRun {
    std::unique_ptr<DeviceHub> devices;
    std::unique_ptr<Doorbell> bell = std::make_unique<Doorbell>(); ///< rung by the feed where there are no devices
    std::unique_ptr<Feed> feed;                                    ///< its thread uses the two above
    std::unique_ptr<Recorder> recorder;
    RunParts parts;
    Time origin{};               ///< the clock's time at which the run's time is 0
    std::vector<Phrase> remarks; ///< of the rig: what to know before the start

    /// It is flown all the same, and the pilot is told.
    void noteNotStored(const Error& why);
};

/// Loads rig and hands, opens the devices and the feed, prepares the practice aircraft and the recorder. `store` may be
/// null: not stored. Aircraft, flow, folder, scenario, store, system and clock must outlive the run.
[[nodiscard]] Result<AssembledRun> assembleRun(const RunWish& wish, Store* store, HidSystem& system,
                                               const Clock& clock);

} // namespace flowhand
