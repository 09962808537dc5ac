#pragma once

#include "measured.h"
#include "rateflight.h"

class SocketHid;

/// Flies in the program's own window, drawn in memory and not on a display, until `isOver()`. With `isIdle` the run
/// waits all the time to be begun. Once a process.
[[nodiscard]] Measured flyInWindow(const RateFlight& flight, SocketHid& system, bool isIdle, bool (*isOver)());
