#pragma once

#include <cmath>
#include <string>

#include "base/signal.h"
#include "base/time.h"

namespace flowhand {

/// "0.4 ms": short times of contacts, filters and reports, to a tenth.
[[nodiscard]] inline std::string millisText(Duration time) {
    return numberText(std::round(seconds(time) * 1e4) / 10) + " ms";
}

} // namespace flowhand
