#pragma once

#include <string>
#include <vector>

#include "base/error.h"
#include "device/device.h"
#include "device/recording.h"

namespace flowhand {

/// What a rig's devices said when they were recorded, decoded: flown in their place.
struct Playback {
    std::vector<std::vector<InputInfo>> inputs; ///< by DeviceIndex; empty: there is no recording of it
    std::vector<Reading> readings;              ///< in the order of their times
    std::vector<DeviceNotice> notices;          ///< the same; what live devices would have told too
};

struct NamedRecording {
    std::string file;
    Recording recording;
};

/// Matches recordings to the devices that a rig wishes for, as plugged in devices are, and decodes them. Recordings
/// that all say when they started are put side by side by that. Errors at the recording: `bad-recording` (no device, no
/// descriptor, a report without time or behind an earlier one), `unused-recording`, those of matching,
/// `bad-descriptor`, `keyboard-card`, `no-controls`.
[[nodiscard]] Result<Playback> playBack(const std::vector<DeviceWish>& wishes,
                                        const std::vector<NamedRecording>& recordings);

} // namespace flowhand
