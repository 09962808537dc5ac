#pragma once

#include <functional>
#include <string>
#include <vector>

#include "base/error.h"
#include "bench/measurement.h"
#include "command/command.h"
#include "device/device.h"

namespace flowhand {

/// What the measuring subcommands share.
struct BenchOptions {
    std::string rig;
    std::string aircraft;
    std::vector<std::string> controls;
    std::vector<std::string> recordings; ///< files; none: live
    double seconds = 180.0;              ///< longest live measurement of what is measured at once
    bool asJson = false;
};

/// Adds the options and CONTROL... of `options` to a subcommand.
void addBenchOptions(CLI::App& command, BenchOptions& options);

/// Looks at what came so far (empty: not from every device yet), tells the person what to do now, and says whether that
/// is enough.
using BenchLook = std::function<bool(const Measurement&)>;

/// All that some devices of the rig sent: of the recordings, else live until `look` has enough, the time is over or
/// Ctrl-C ends it. Errors: those of recordedMeasurement() and LiveMeasurement.
[[nodiscard]] Result<Measurement> measure(const BenchOptions& options, const std::vector<DeviceWish>& devices,
                                          const WantedInputs& wanted, const BenchLook& look);

} // namespace flowhand
