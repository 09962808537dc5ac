#pragma once

#include "base/time.h"

namespace flowhand {

/// Of a run's time, `to` not included.
struct Stretch {
    Time from{};
    Time to{};
};

} // namespace flowhand
