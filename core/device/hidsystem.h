#pragma once

#include <cstdint>
#include <memory>
#include <span>
#include <vector>

#include "base/error.h"
#include "base/time.h"
#include "device/device.h"

namespace flowhand {

/// One open device. Used by the thread that opened it; closed by its destructor.
class HidDevice {
public:
    virtual ~HidDevice() = default;
    /// One input report as the device sent it, id byte first where the descriptor has ids. 0: none came within
    /// `timeout`. What does not fit into `buffer` is lost, so it holds kMostReportBytes. Error `device-lost`: gone for
    /// good, open it anew.
    [[nodiscard]] virtual Result<std::size_t> read(std::span<std::uint8_t> buffer, Duration timeout) = 0;
};

/// Tells that devices may have come or gone.
class HidWatch {
public:
    virtual ~HidWatch() = default;
    /// Waits for a change, `wake()` or `timeout`; one thread. True when the list should be asked for again: after a
    /// change, or after a timeout where the system gives no notice of changes.
    virtual bool wait(Duration timeout) = 0;
    /// Ends a wait(), from any thread.
    virtual void wake() = 0;
};

/// All of the HID outside world. Must outlive what it hands out. Every function from any thread.
class HidSystem {
public:
    static constexpr std::size_t kMostReportBytes = 16384; ///< the kernel's limit, value from memory

    virtual ~HidSystem() = default;
    /// What is connected, once a node, ordered by port. Opens nothing.
    [[nodiscard]] virtual std::vector<DeviceInfo> list() = 0;
    /// The report descriptor, without opening the device. Error `no-descriptor`.
    [[nodiscard]] virtual Result<std::vector<std::uint8_t>> descriptor(const DeviceInfo& device) = 0;
    /// Errors: `unreadable-device` with the way out, `device-lost`.
    [[nodiscard]] virtual Result<std::unique_ptr<HidDevice>> open(const DeviceInfo& device) = 0;
    [[nodiscard]] virtual std::unique_ptr<HidWatch> watch() = 0;
};

/// The system's own devices, by hidapi.
[[nodiscard]] std::unique_ptr<HidSystem> systemDevices();

} // namespace flowhand
