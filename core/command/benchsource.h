#pragma once

#include <functional>
#include <string>
#include <vector>

#include "base/error.h"
#include "bench/series.h"
#include "command/command.h"
#include "device/device.h"

namespace flowhand {

/// What the measuring subcommands share.
struct BenchOptions {
    std::string rig;
    std::string aircraft;
    std::vector<std::string> controls;
    std::vector<std::string> recordings; ///< files; none: live
    double seconds = 180.0;              ///< longest live measurement of one control or device
    bool asJson = false;
};

/// Adds the options and CONTROL... of `options` to a subcommand.
void addBenchOptions(CLI::App& command, BenchOptions& options);

/// Looks at what came so far, tells the person what to do now, and says whether that is enough.
using BenchLook = std::function<bool(const DeviceSeries&)>;

/// All that one device of the rig sent: of the recording that is of this device, else live until `look` has enough, the
/// time is over or Ctrl-C ends it. Errors: `no-recording`, those of seriesOf(), of finding and of opening the device.
[[nodiscard]] Result<DeviceSeries> measuredSeries(const BenchOptions& options, const DeviceWish& wish,
                                                  const std::vector<std::string>& inputs, const BenchLook& look);

} // namespace flowhand
