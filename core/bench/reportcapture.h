#pragma once

#include <atomic>
#include <memory>
#include <mutex>
#include <thread>
#include <vector>

#include "base/time.h"
#include "device/hidsystem.h"
#include "device/recording.h"

namespace flowhand {

/// Reads every report of one device on a thread of its own, stamped as it is read with the time since `start`: looking
/// must not hold it up. The clock must outlive it.
class ReportCapture {
public:
    ReportCapture(std::unique_ptr<HidDevice> device, const Clock& clock, Time start);
    ~ReportCapture();
    ReportCapture(const ReportCapture&) = delete;
    ReportCapture& operator=(const ReportCapture&) = delete;

    /// Appends what came since the last call; false when the device is gone. Any thread.
    [[nodiscard]] bool take(std::vector<RecordedReport>& reports);

private:
    void work();

    std::unique_ptr<HidDevice> m_device; ///< of the thread alone
    const Clock& m_clock;
    Time m_start;
    std::atomic<bool> m_isStopping = false;
    std::mutex m_mutex; ///< guards the two below
    std::vector<RecordedReport> m_reports;
    bool m_isLost = false;
    std::thread m_thread;
};

} // namespace flowhand
