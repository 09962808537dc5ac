#pragma once

#include <deque>
#include <vector>

#include "device/hub.h"
#include "device/playback.h"
#include "session/slowtime.h"

namespace flowhand {

/// What devices, or recordings of them, have told and the run has not yet taken, by the run's time. Session thread.
class DeviceInbox {
public:
    explicit DeviceInbox(SlowTime slow) : m_slow(slow) {}

    /// All that has come; the run began at `origin` of the flight.
    void drain(DeviceHub& devices, Time origin);
    void fill(const Playback& playback, Time origin);
    /// Times count from so much later on.
    void rebase(Duration earlier);

    [[nodiscard]] bool hasReading() const { return !m_readings.empty(); }
    [[nodiscard]] bool isEmpty() const { return m_readings.empty() && m_notices.empty(); }
    /// Of the first one that waits; kForever: none.
    [[nodiscard]] Time nextReading() const { return m_readings.empty() ? kForever : m_readings.front().time; }
    [[nodiscard]] Time nextNotice() const { return m_notices.empty() ? kForever : m_notices.front().time; }
    /// The first one that waits; there must be one.
    [[nodiscard]] Reading takeReading();
    [[nodiscard]] DeviceNotice takeNotice();

private:
    SlowTime m_slow;
    std::vector<Reading> m_freshReadings; ///< as drained
    std::vector<DeviceNotice> m_freshNotices;
    std::deque<Reading> m_readings;
    std::deque<DeviceNotice> m_notices;
};

} // namespace flowhand
