#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "base/error.h"
#include "device/device.h"
#include "device/recording.h"

namespace flowhand {

/// A recording as the bench reads it: the device it was made of, and everything that its inputs said.
struct RecordedDevice {
    std::string file;
    std::string name; ///< as the recording names it, without its id
    std::uint16_t vendor = 0;
    std::uint16_t product = 0;
    std::vector<InputInfo> inputs;
    std::vector<Reading> readings; ///< changes, in the order of their times; `device` is what was asked for
    std::vector<Time> reports;     ///< of every report, changed or not
};

/// Reports without a time are taken for so far apart: the period of most full-speed devices (common practice).
inline constexpr Duration kUntimedPeriod = std::chrono::milliseconds(8);

/// Errors, at the file: `no-descriptor`, `bad-recording` (no id, times that go back), and those of the descriptor.
[[nodiscard]] Result<RecordedDevice> readRecordedDevice(const Recording& recording, const std::string& file,
                                                        DeviceIndex device);
/// The same from a file; errors also those of loadRecording().
[[nodiscard]] Result<RecordedDevice> loadRecordedDevice(const std::string& file, DeviceIndex device);

} // namespace flowhand
