#pragma once

#include <memory>

#include "device/hidsystem.h"

namespace flowhand {

/// Watches /dev for hidraw nodes that come, go or change their rights. Where the system has no inotify left it says
/// after each timeout that something may have changed.
[[nodiscard]] std::unique_ptr<HidWatch> watchDev();

} // namespace flowhand
