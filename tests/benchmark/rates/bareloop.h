#pragma once

#include <memory>
#include <vector>

#include "device/hidsystem.h"
#include "measured.h"

/// What the program is measured against: reads each of RateFlight's devices that the system lists on a thread of its
/// own, does nothing with its reports but look for a press, until `isOver()` is true.
[[nodiscard]] Measured runBareLoop(flowhand::HidSystem& system, std::size_t devices, bool (*isOver)());
