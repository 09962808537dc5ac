#pragma once

#include <string>
#include <vector>

#include "base/error.h"
#include "device/device.h"
#include "device/hidsystem.h"
#include "device/recording.h"

namespace flowhand {

/// A recording as the bench reads it: the device it was made of, and everything that its inputs said.
struct RecordedDevice {
    DeviceInfo unit; ///< its path is the file
    std::vector<InputInfo> inputs;
    std::vector<Reading> readings; ///< changes, in the order of their times; `device` is what was asked for
    std::vector<Time> reports;     ///< of every report, changed or not
};

/// Its times count from `lead` before it was started. Errors, at the file: those of recordedUnit() and decodeReports(),
/// and of the descriptor.
[[nodiscard]] Result<RecordedDevice> readRecordedDevice(const Recording& recording, const std::string& file,
                                                        DeviceIndex device, Duration lead);

} // namespace flowhand
