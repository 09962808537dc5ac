// One axis. Its counts pass the median and the low-pass first (axissmoother.h), which tell a reading by themselves when
// their time has come; with neither they are the raw ones. Held is the count that counts, suspect one that may be a
// spike.
//
//   #  now        reading                                       then
//   1  empty      any                                           held = raw; following
//   2  following  less than the least change from held,         nothing: noise
//                 and no end of the travel reached
//   3  following  otherwise, within the spike limit of held     held = raw
//   4  following  further from held than the spike limit        suspect = raw, since now; suspicious
//   5  suspicious within the spike limit of held                it was a spike; following, as 2 or 3
//   6  suspicious within the spike limit of suspect             suspect = raw, its time runs on
//   7  suspicious otherwise                                     suspect = raw, since now
//   8  suspicious the settle time is over                       held = suspect; following
#include "rig/axisfilter.h"

#include <algorithm>
#include <cstdlib>

namespace flowhand {

bool AxisFilter::isJump(std::int64_t from, std::int64_t to) const {
    return m_limits.spikeLimit > 0 && std::abs(to - from) > m_limits.spikeLimit;
}

bool AxisFilter::follow(std::int64_t raw) {
    m_suspect.reset();
    const bool reachesEnd = (raw <= m_low && *m_held > m_low) || (raw >= m_high && *m_held < m_high);
    if (raw == *m_held || (std::abs(raw - *m_held) < m_limits.leastChange && !reachesEnd))
        return false;
    m_held = raw;
    return true;
}

bool AxisFilter::take(std::int64_t raw, Time time) {
    return consider(m_lowPass.take(m_median.take(raw, time), time), time);
}

bool AxisFilter::consider(std::int64_t raw, Time time) {
    if (!m_held) {
        m_held = raw;
        return true;
    }
    if (!isJump(*m_held, raw))
        return follow(raw);
    if (!m_suspect || isJump(*m_suspect, raw))
        m_suspectSince = time;
    m_suspect = raw;
    return false;
}

bool AxisFilter::advance(Time time) {
    bool hasChanged = suspectTimer() <= time && follow(*m_suspect);
    if (m_median.nextTimer() <= time)
        hasChanged |= consider(m_lowPass.take(m_median.advance(time), time), time);
    if (m_lowPass.nextTimer() <= time)
        hasChanged |= consider(m_lowPass.advance(time), time);
    return hasChanged;
}

Time AxisFilter::nextTimer() const {
    return std::min({suspectTimer(), m_median.nextTimer(), m_lowPass.nextTimer()});
}

void AxisFilter::forget() {
    m_median.forget();
    m_lowPass.forget();
    m_held.reset();
    m_suspect.reset();
}

} // namespace flowhand
