#pragma once

#include <cstddef>
#include <cstdint>
#include <memory>
#include <optional>
#include <vector>

#include "base/error.h"
#include "base/time.h"
#include "device/device.h"
#include "device/hidsystem.h"

namespace flowhand {

/// What a device has sent since the hub was opened.
struct DeviceCounters {
    std::uint64_t reports = 0;
    std::uint64_t suspected = 0; ///< reports that may have been lost before they were read (losswatch.h)
    std::uint64_t drops = 0; ///< readings that a newer one of the same input replaced because nobody drained in time
    std::uint64_t truncated = 0; ///< reports shorter than the descriptor says
    std::uint64_t overlong = 0;  ///< reports longer than the descriptor says
    std::uint64_t unknown = 0;   ///< reports with an id that the descriptor does not have
    Duration period{};           ///< mean time between two reports, lately; 0: it sends now and then
};

/// The devices of one run. One thread reads each of them, one more looks for those that are missing: a device that
/// comes (back) is open within a second. The same unit is known again by its serial, else by its port.
///
/// Owned by whoever owns the run; drain() and waitUntil() belong to the session thread, the rest to any thread.
/// The destructor stops and joins all threads (within kReadWait).
class DeviceHub {
public:
    static constexpr Duration kReadWait = std::chrono::milliseconds(100); ///< longest a reader waits for a report
    static constexpr Duration kSearchPeriod = std::chrono::seconds(1);    ///< of looking for missing devices
    static constexpr Duration kLeisure = std::chrono::milliseconds(12);   ///< longest wait of what is not attended to
    static constexpr std::size_t kQueueLength = 65536;                    ///< readings a device: 1 s of 8 axes at 8 kHz

    /// `system` and `clock` must outlive the hub; `origin` is the run's start on `clock`. A device that is missing or
    /// unreadable is no error: a Lost notice says so, and it is waited for. Errors, at the wish's place:
    /// `equal-units` when two connected units answer to one wish, or two wishes cannot be told apart.
    [[nodiscard]] static Result<std::unique_ptr<DeviceHub>> open(HidSystem& system, const Clock& clock, Time origin,
                                                                 std::vector<DeviceWish> wishes,
                                                                 std::size_t queueLength = kQueueLength);
    ~DeviceHub();
    DeviceHub(const DeviceHub&) = delete;
    DeviceHub& operator=(const DeviceHub&) = delete;

    /// In the order of the wishes; a DeviceIndex is an index into them.
    [[nodiscard]] const std::vector<DeviceWish>& wishes() const;

    /// Appends what came since the last call, each list in the order of its times. A device's notices have times of
    /// their own: no reading of that device has the same.
    void drain(std::vector<Reading>& readings, std::vector<DeviceNotice>& notices);

    /// Returns when there is something to drain, after wake(), or when now() has reached `deadline`.
    void waitUntil(Time deadline);
    /// Ends the present or the next waitUntil().
    void wake();
    /// The run's time, in whole ticks.
    [[nodiscard]] Time now() const;

    /// Until the device's next connection only the changes of these inputs are handed on, one flag an input: what
    /// nobody uses is not even decoded.
    void listenOnlyTo(DeviceIndex device, std::vector<bool> inputs);

    /// Until the device's next connection waitUntil() returns within a millisecond for axes of these inputs only, one
    /// flag an input, and within kLeisure for others: a hundred wake-ups a second in place of a thousand. At once for
    /// switches and hats always. Without this call all are attended to.
    void attendTo(DeviceIndex device, std::vector<bool> inputs);

    /// As of its last connection; empty before the first.
    [[nodiscard]] std::vector<InputInfo> inputs(DeviceIndex device) const;
    /// The unit that is connected now.
    [[nodiscard]] std::optional<DeviceInfo> connected(DeviceIndex device) const;
    [[nodiscard]] DeviceCounters counters(DeviceIndex device) const;

private:
    struct State;
    explicit DeviceHub(std::unique_ptr<State> state);
    std::unique_ptr<State> m_state;
};

} // namespace flowhand
