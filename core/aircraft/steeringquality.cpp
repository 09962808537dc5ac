#include "aircraft/steeringquality.h"

#include <algorithm>
#include <cmath>

namespace flowhand {

void SteeringQuality::step(double offset, double speed, bool isInBend, double seconds) {
    if (speed > 0.0 && !m_isRolling)
        *this = {};
    m_isRolling = speed > 0.0;
    const double way = speed * seconds;
    m_way += way;
    m_squares += offset * offset * way;
    m_largest = m_isRolling ? std::max(m_largest, std::fabs(offset)) : m_largest;
    m_turnSpeed = isInBend ? std::max(m_turnSpeed, speed) : m_turnSpeed;
}

double SteeringQuality::rms() const {
    return m_way > 0.0 ? std::sqrt(m_squares / m_way) : 0.0;
}

} // namespace flowhand
