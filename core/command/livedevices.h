#pragma once

#include <optional>
#include <string>
#include <vector>

#include "base/time.h"
#include "command/command.h"
#include "device/device.h"
#include "device/hidsystem.h"
#include "device/hub.h"

namespace flowhand {

/// How long to look on. Without `length`: until Ctrl-C.
struct LookOptions {
    std::optional<Duration> length;
    bool asJson = false;
};

/// Of those found, what may be opened: what people type is nobody's business unless their own rig names it. `areNamed`:
/// by ids. Errors `no-device`, `private-device`.
[[nodiscard]] Result<std::vector<DeviceInfo>> devicesToOpen(std::vector<DeviceInfo> devices, bool areNamed,
                                                            bool areNamedByRig);

/// Just these units, each where it is plugged in now.
[[nodiscard]] std::vector<DeviceWish> wishesFor(const std::vector<DeviceInfo>& devices);

/// "quadrant  3000 reports, 1000 a second, 12 may have been lost": what a device has sent so far.
[[nodiscard]] std::string countersText(const std::string& device, const DeviceCounters& counters);

/// Prints the values of these devices' controls as they change, and what comes and goes; at the end what
/// each device has sent.
int watchDevices(CommandLine& line, HidSystem& system, const std::vector<DeviceInfo>& devices,
                 const LookOptions& options);

/// Writes one device's descriptor and its reports with their times to a file (device/recording.h).
int recordDevice(CommandLine& line, HidSystem& system, const DeviceInfo& device, const std::string& file,
                 const LookOptions& options);

} // namespace flowhand
