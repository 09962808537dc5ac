#include "session/deviceinbox.h"

#include <algorithm>
#include <utility>

namespace flowhand {

namespace {

template <class Things>
void takeInRun(Things& things, const SlowTime& slow, Time origin) {
    for (auto& thing : things)
        thing.time = slow.toRunFrom(thing.time) - origin;
}

/// Both are in order; so is the queue afterwards.
template <class Thing>
void merge(const std::vector<Thing>& from, std::deque<Thing>& queue) {
    const bool isBehind = queue.empty() || from.empty() || queue.back().time <= from.front().time;
    queue.insert(queue.end(), from.begin(), from.end());
    if (!isBehind)
        std::stable_sort(queue.begin(), queue.end(), [](const Thing& a, const Thing& b) {
            return a.time < b.time;
        });
}

template <class Thing>
Thing takeFirst(std::deque<Thing>& queue) {
    Thing first = std::move(queue.front());
    queue.pop_front();
    return first;
}

} // namespace

void DeviceInbox::drain(DeviceHub& devices, Time origin) {
    m_freshReadings.clear();
    m_freshNotices.clear();
    devices.drain(m_freshReadings, m_freshNotices);
    takeInRun(m_freshReadings, m_slow, origin);
    takeInRun(m_freshNotices, m_slow, origin);
    merge(m_freshReadings, m_readings);
    merge(m_freshNotices, m_notices);
}

void DeviceInbox::fill(const Playback& playback, Time origin) {
    m_readings.assign(playback.readings.begin(), playback.readings.end());
    m_notices.assign(playback.notices.begin(), playback.notices.end());
    takeInRun(m_readings, m_slow, origin);
    takeInRun(m_notices, m_slow, origin);
}

void DeviceInbox::rebase(Duration earlier) {
    for (Reading& reading : m_readings)
        reading.time -= earlier;
    for (DeviceNotice& notice : m_notices)
        notice.time -= earlier;
}

Reading DeviceInbox::takeReading() {
    return takeFirst(m_readings);
}

DeviceNotice DeviceInbox::takeNotice() {
    return takeFirst(m_notices);
}

} // namespace flowhand
