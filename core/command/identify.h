#pragma once

#include <vector>

#include "command/livedevices.h"

namespace flowhand {

/// How long all controls are left alone, to learn their noise, before one is to be moved.
inline constexpr Duration kRestTime = std::chrono::seconds(2);

/// Tells which of these devices a person moves, once, with what a rig file writes to tell it from its equals.
int identifyDevice(CommandLine& line, HidSystem& system, const std::vector<DeviceInfo>& devices,
                   const LookOptions& options, Duration restTime = kRestTime);

} // namespace flowhand
