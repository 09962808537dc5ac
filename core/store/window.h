#pragma once

#include <cstdint>

#include "base/sample.h"
#include "base/time.h"

namespace flowhand {

/// Runs are stored in windows of this length (README.md, 'Tables').
inline constexpr Duration kWindow = std::chrono::seconds(5);
inline constexpr std::size_t kStreams = 5; ///< one for each Origin

[[nodiscard]] constexpr std::int64_t windowOf(Time time) {
    return time.count() / kWindow.count() - (time.count() % kWindow.count() < 0 ? 1 : 0);
}
[[nodiscard]] constexpr Time startOf(std::int64_t window) {
    return kWindow * window;
}
[[nodiscard]] constexpr std::int64_t micros(Time time) {
    return std::chrono::floor<std::chrono::microseconds>(time).count();
}

} // namespace flowhand
