#pragma once

#include <map>
#include <memory>
#include <string>
#include <utility>
#include <vector>

#include "base/error.h"
#include "bench/reportcapture.h"
#include "bench/series.h"
#include "device/device.h"
#include "device/hidsystem.h"
#include "rig/input.h"

namespace flowhand {

/// All that some devices of a rig sent at the same time, on one clock; by their index in the rig file.
using Measurement = std::map<DeviceIndex, DeviceSeries>;

/// What is wanted of a rig's devices: names of inputs, by device.
using WantedInputs = std::map<DeviceIndex, std::vector<std::string>>;

/// Null where its device was not measured, or has no such input.
[[nodiscard]] const Series* seriesIn(const Measurement& measurement, const InputRef& input);

/// Measures devices of a rig live, each read on a thread of its own. One thread uses it; system and clock must outlive
/// it.
class LiveMeasurement {
public:
    /// Opens those of the rig's `devices` that something is wanted of. Errors: those of finding and of opening them.
    [[nodiscard]] static Result<LiveMeasurement> begin(HidSystem& system, const Clock& clock,
                                                       const std::vector<DeviceWish>& devices, WantedInputs wanted);

    /// Takes what came since the last call; false when a device is gone.
    [[nodiscard]] bool poll();
    /// Errors: those of seriesOf(), of a device that has said nothing yet too.
    [[nodiscard]] Result<Measurement> sofar() const;

private:
    struct Device {
        DeviceIndex index = 0;
        std::string name;
        std::vector<std::string> inputs;
        Recording recording;
        std::unique_ptr<ReportCapture> capture;
    };
    std::vector<Device> m_devices;
};

/// The same from recordings. They are given to the rig's `devices` by id, serial and port as far as both say them,
/// equal units in the order of the files; their times count from the same moment, or from when each was started where
/// all of them say so. Errors: `no-recording`, those of seriesOf().
[[nodiscard]] Result<Measurement> recordedMeasurement(const std::vector<std::string>& files,
                                                      const std::vector<DeviceWish>& devices,
                                                      const WantedInputs& wanted);

} // namespace flowhand
