#pragma once

#include <cstdint>

#include "condition/condition.h"

namespace flowhand {

/// Kleene's three values on two bits, so that `and`, `or` and every window work on each bit by itself: bit 0 is
/// 'certainly so' (unknown read as false), bit 1 'possibly so' (unknown read as true).
enum class Kleene : std::uint8_t { False = 0, Unknown = 2, True = 3 };

[[nodiscard]] constexpr Kleene kleene(bool isCertain, bool isPossible) {
    return isCertain ? Kleene::True : isPossible ? Kleene::Unknown : Kleene::False;
}
[[nodiscard]] constexpr Kleene kleene(bool is) {
    return is ? Kleene::True : Kleene::False;
}
[[nodiscard]] constexpr bool isCertain(Kleene a) {
    return (static_cast<unsigned>(a) & 1U) != 0;
}
[[nodiscard]] constexpr bool isPossible(Kleene a) {
    return (static_cast<unsigned>(a) & 2U) != 0;
}
[[nodiscard]] constexpr Kleene operator&&(Kleene a, Kleene b) {
    return static_cast<Kleene>(static_cast<unsigned>(a) & static_cast<unsigned>(b));
}
[[nodiscard]] constexpr Kleene operator||(Kleene a, Kleene b) {
    return static_cast<Kleene>(static_cast<unsigned>(a) | static_cast<unsigned>(b));
}
[[nodiscard]] constexpr Kleene operator!(Kleene a) {
    return kleene(!isPossible(a), !isCertain(a));
}
[[nodiscard]] constexpr Truth truthOf(Kleene a) {
    return a == Kleene::True ? Truth::True : a == Kleene::False ? Truth::False : Truth::Unknown;
}

} // namespace flowhand
