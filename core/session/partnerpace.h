#pragma once

#include <cstddef>
#include <cstdint>
#include <string_view>

#include "base/time.h"

namespace flowhand {

/// How a step by the partner goes wrong, to train monitoring.
enum class PartnerError : std::uint8_t { None, Late, WrongValue };

/// The partner's human pace and errors: a seeded spread, drawn for each step by itself, so that what happens in one
/// step changes no other. The same on every machine.
class PartnerPace {
public:
    /// `errorRate` 0..1.
    PartnerPace(std::uint64_t seed, double errorRate) : m_seed(seed), m_errorRate(errorRate) {}

    /// From a step's cue to the hand's movement or the voice.
    [[nodiscard]] Duration delay(std::size_t step) const;
    [[nodiscard]] PartnerError error(std::size_t step) const;

private:
    [[nodiscard]] std::uint64_t draw(std::size_t step, std::uint64_t what) const;

    std::uint64_t m_seed;
    double m_errorRate;
};

/// Characters of a UTF-8 text.
[[nodiscard]] std::size_t letterCount(std::string_view text);
/// How long these words take to speak.
[[nodiscard]] Duration speakingTime(std::size_t letters);

} // namespace flowhand
