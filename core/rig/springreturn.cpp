// One control with a spring. Deflection is the distance from its rest.
//
//   #  now        movement                                             by       then
//   1  empty      first value                                          hand     held
//   2  held       away from rest, or across it                         hand     held
//   3  held       towards rest, slower than the spring                 hand     held
//   4  held       towards rest, as fast as the spring or faster        machine  returning
//   5  returning  towards rest, at any speed, not yet there            machine  returning
//   6  returning  arrives at rest                                      machine  held
//   7  returning  across rest, no further than the overshoot           machine  returning
//   8  returning  away from rest, within the overshoot                 machine  returning
//   9  returning  away from rest, beyond the overshoot                 hand     held
#include "rig/springreturn.h"

#include <algorithm>

namespace flowhand {

namespace {

/// Devices report changes only, so the first report of a return comes after a long rest: a rate is taken over this
/// much time at the most. The period of a slow device.
constexpr Duration kLongestPeriod = std::chrono::milliseconds(20);

} // namespace

Actor SpringReturn::take(double value, Time time) {
    const double before = std::fabs(m_value - m_rest);
    const double after = std::fabs(value - m_rest);
    const double period = seconds(std::clamp<Duration>(time - m_time, kTick, kLongestPeriod));
    const double rate = std::fabs(value - m_value) / period;
    const bool isTowards = after < before;
    const bool isAcross = (value - m_rest) * (m_value - m_rest) < 0;
    const bool isSpring =
        m_isKnown && (m_isReturning ? isTowards || after <= m_overshoot : isTowards && !isAcross && rate >= m_rate);
    m_isKnown = true;
    m_isReturning = isSpring && after > 0;
    m_value = value;
    m_time = time;
    return isSpring ? Actor::Machine : Actor::Hand;
}

} // namespace flowhand
