#pragma once

#include <memory>
#include <vector>

#include "device/hidsystem.h"
#include "measured.h"

/// What the program is measured against: reads each device on a thread of its own, does nothing with its reports but
/// look for a press, until `isOver()` is true.
[[nodiscard]] Measured runBareLoop(std::vector<std::unique_ptr<flowhand::HidDevice>> devices, bool (*isOver)());
