#pragma once

#include <cmath>

#include "base/sample.h"
#include "base/time.h"

namespace flowhand {

/// Tells the spring of a self-centring control from the hand. Let go, it runs back faster than a hand would lead it.
class SpringReturn {
public:
    /// `rate`: in units of the value a second; a return at least so fast is the spring's. `rest`: what the centre
    /// reads. `overshoot`: how far beyond the centre the spring may carry it.
    SpringReturn(double rate, double rest, double overshoot) : m_rate(rate), m_rest(rest), m_overshoot(overshoot) {}

    /// Who brought the control to `value` at `time`.
    [[nodiscard]] Actor take(double value, Time time);
    void forget() { m_isKnown = m_isReturning = false; }

private:
    double m_rate;
    double m_rest;
    double m_overshoot;
    bool m_isKnown = false;
    bool m_isReturning = false;
    double m_value = 0.0;
    Time m_time{};
};

} // namespace flowhand
