#pragma once

#include <functional>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "base/error.h"
#include "base/phrase.h"
#include "base/time.h"
#include "device/device.h"
#include "device/hidsystem.h"

namespace flowhand {

/// A device as the bench commands know it, connected or recorded.
struct SourceDevice {
    std::string name; ///< of the product
    std::uint16_t vendor = 0;
    std::uint16_t product = 0;
    std::string serial;
    std::string port;
};

/// What came since the last call.
struct InputNews {
    std::vector<Reading> readings;      ///< by rising time
    std::vector<DeviceIndex> connected; ///< before the readings: their inputs are known now
    std::vector<Phrase> messages;       ///< a device went or failed, in words
    Time now{};
};

/// Where the bench's readings come from: devices, in their own time, or recordings, as fast as they are read.
class InputSource {
public:
    virtual ~InputSource() = default;
    /// A DeviceIndex is an index into these.
    [[nodiscard]] virtual const std::vector<SourceDevice>& devices() const = 0;
    [[nodiscard]] virtual std::vector<InputInfo> inputs(DeviceIndex device) const = 0;
    /// How many it has sent so far, changed or not.
    [[nodiscard]] virtual std::uint64_t reports(DeviceIndex device) const = 0;
    /// Waits a little; nothing at the end: the recordings are over, or the person asked for it.
    [[nodiscard]] virtual std::optional<InputNews> next() = 0;
    [[nodiscard]] virtual bool isRecorded() const = 0;
};

/// All connected sets of controls, and the other devices that `wishes` name, until `isStopping`, which the thread that
/// calls next() asks. `system` and `clock` must outlive it.
/// Errors: `no-device`, those of DeviceHub::open().
[[nodiscard]] Result<std::unique_ptr<InputSource>> liveSource(HidSystem& system, const Clock& clock,
                                                              const std::vector<DeviceWish>& wishes,
                                                              std::function<bool()> isStopping);
/// Side by side by when each was started where all say it, else their times count from the same moment. Errors: those
/// of loadRecording() and readRecordedDevice().
[[nodiscard]] Result<std::unique_ptr<InputSource>> recordedSource(const std::vector<std::string>& files);

/// By index of `wishes` the source's device that answers to it, in words where none or several do.
struct SourceMatch {
    std::optional<DeviceIndex> device;
    Phrase why;
};
[[nodiscard]] std::vector<SourceMatch> matchSource(const InputSource& source, const std::vector<DeviceWish>& wishes);

} // namespace flowhand
