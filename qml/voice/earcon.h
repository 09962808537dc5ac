#pragma once

#include <cstdint>
#include <vector>

namespace flowhand {

/// Short tones of our own, for who has the eyes on the controls. Up is good, down is not.
enum class Earcon : std::uint8_t {
    Words, ///< something is said that cannot be spoken: look
    Done,
    Late,
    Wrong,
    Unsure,
    Guard, ///< a guard is broken
    Click  ///< a beat to tap to
};
constexpr int kEarconCount = 7;

/// One channel, `rate` values a second (Hz), within -1..1. Begins and ends in silence; shorter than half a second.
[[nodiscard]] std::vector<float> earconSamples(Earcon earcon, int rate);

} // namespace flowhand
