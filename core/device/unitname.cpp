#include "device/unitname.h"

#include <array>

namespace flowhand {

namespace {

constexpr std::size_t kQuantities = 6; // length, mass, time, temperature, current, luminous intensity
using BaseUnits = std::array<const char*, kQuantities>;

// By system, from 1 on: SI linear, SI rotation, English linear, English rotation
constexpr BaseUnits kSystems[] = {{"cm", "g", "s", "K", "A", "cd"},
                                  {"radians", "g", "s", "K", "A", "cd"},
                                  {"inches", "slugs", "s", "degrees Fahrenheit", "A", "cd"},
                                  {"degrees", "slugs", "s", "degrees Fahrenheit", "A", "cd"}};

/// A nibble in two's complement.
int exponentIn(std::uint32_t code, std::size_t nibble) {
    return static_cast<int>((code >> (4 * nibble) & 0xF) ^ 0x8) - 8;
}

} // namespace

std::string unitName(std::uint32_t code) {
    const std::uint32_t system = code & 0xF;
    if (system == 0)
        return "none";
    if (system > std::size(kSystems))
        return "vendor's";
    std::string name;
    for (std::size_t i = 0; i < kQuantities; ++i) {
        const int exponent = exponentIn(code, i + 1);
        if (exponent == 0)
            continue;
        name += (name.empty() ? "" : " ") + std::string(kSystems[system - 1][i]);
        if (exponent != 1)
            name += "^" + std::to_string(exponent);
    }
    return name.empty() ? "none" : name;
}

} // namespace flowhand
