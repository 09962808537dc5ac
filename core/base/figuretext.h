#pragma once

#include <string>

#include "base/time.h"

namespace flowhand {

/// To a tenth, rounded as printf does: "2.5".
[[nodiscard]] std::string toTenths(double number);

/// To a tenth of a second: "2.5 s".
[[nodiscard]] std::string secondsToTenths(Duration duration);

} // namespace flowhand
