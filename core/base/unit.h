#pragma once

#include <array>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace flowhand {

/// What a number measures, as exponents of length, time, mass, angle, share and temperature difference.
/// A share (%) is a dimension of its own, so that `thrust_lever < 2` without its unit is an error.
struct Dimension {
    std::int8_t length = 0;
    std::int8_t time = 0;
    std::int8_t mass = 0;
    std::int8_t angle = 0;
    std::int8_t share = 0;
    std::int8_t temperature = 0;

    bool operator==(const Dimension&) const = default;
    [[nodiscard]] bool isNone() const { return *this == Dimension{}; }
};

[[nodiscard]] Dimension operator*(Dimension a, Dimension b);
[[nodiscard]] Dimension operator/(Dimension a, Dimension b);

/// A unit of measure: `value in this unit * factor` = value in m, s, kg, deg, %, K.
/// Sources of the factors: BIPM, The International System of Units, 9th edition, and ISO 80000-3 (knot, foot, mile).
struct Unit {
    std::string symbol;
    Dimension dimension;
    double factor = 1.0;

    bool operator==(const Unit&) const = default;
};

/// By its symbol as written in files: "kt", "ft/min", "deg", "%" ...; the empty symbol is a bare number.
[[nodiscard]] std::optional<Unit> findUnit(std::string_view symbol);

/// All symbols, for messages and the author's guide.
[[nodiscard]] std::vector<std::string> unitSymbols();

/// `value` of unit `from` expressed in unit `to`; both must have the same dimension.
[[nodiscard]] double convert(double value, const Unit& from, const Unit& to);

} // namespace flowhand
