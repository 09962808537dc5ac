#include "presenter/runplayer.h"

#include <algorithm>
#include <cmath>

namespace flowhand {

Time RunPlayer::advance(Time now, Duration passed, Time length, const std::optional<LoopStretch>& loop) {
    if (!m_isPlaying)
        return now;
    const Time next = now + Duration(std::llround(static_cast<double>(passed.count()) * pace()));
    if (loop && loop->to > loop->from) {
        if (now < loop->from || now > loop->to)
            return loop->from;
        if (next > loop->to)
            return loop->from + (next - loop->from) % (loop->to - loop->from);
    }
    if (next >= length)
        m_isPlaying = false;
    return std::min(next, length);
}

} // namespace flowhand
