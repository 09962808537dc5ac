#include "base/unit.h"

#include <cassert>

namespace flowhand {

namespace {

constexpr Dimension kNone{};
constexpr Dimension kLength{1, 0, 0, 0, 0, 0};
constexpr Dimension kTimeDimension{0, 1, 0, 0, 0, 0};
constexpr Dimension kSpeed{1, -1, 0, 0, 0, 0};
constexpr Dimension kAcceleration{1, -2, 0, 0, 0, 0};
constexpr Dimension kMass{0, 0, 1, 0, 0, 0};
constexpr Dimension kForce{1, -2, 1, 0, 0, 0};
constexpr Dimension kPressure{-1, -2, 1, 0, 0, 0};
constexpr Dimension kAngle{0, 0, 0, 1, 0, 0};
constexpr Dimension kAngularRate{0, -1, 0, 1, 0, 0};
constexpr Dimension kShare{0, 0, 0, 0, 1, 0};
constexpr Dimension kTemperature{0, 0, 0, 0, 0, 1};

constexpr double kNauticalMile = 1852.0;
constexpr double kFoot = 0.3048;
constexpr double kPound = 0.45359237;

const std::vector<Unit>& units() {
    static const std::vector<Unit> all = {
        {"", kNone, 1.0},
        {"m", kLength, 1.0},
        {"km", kLength, 1000.0},
        {"ft", kLength, kFoot},
        {"NM", kLength, kNauticalMile},
        {"s", kTimeDimension, 1.0},
        {"ms", kTimeDimension, 0.001},
        {"min", kTimeDimension, 60.0},
        {"h", kTimeDimension, 3600.0},
        {"m/s", kSpeed, 1.0},
        {"km/h", kSpeed, 1.0 / 3.6},
        {"kt", kSpeed, kNauticalMile / 3600.0},
        {"ft/min", kSpeed, kFoot / 60.0},
        {"m/s2", kAcceleration, 1.0},
        {"kt/s", kAcceleration, kNauticalMile / 3600.0},
        {"g", kAcceleration, 9.80665},
        {"kg", kMass, 1.0},
        {"t", kMass, 1000.0},
        {"lb", kMass, kPound},
        {"N", kForce, 1.0},
        {"kN", kForce, 1000.0},
        {"Pa", kPressure, 1.0},
        {"hPa", kPressure, 100.0},
        {"inHg", kPressure, 3386.389},
        {"deg", kAngle, 1.0},
        {"deg/s", kAngularRate, 1.0},
        {"rpm", kAngularRate, 6.0},
        {"%", kShare, 1.0},
        {"K", kTemperature, 1.0},
    };
    return all;
}

} // namespace

Dimension operator*(Dimension a, Dimension b) {
    const auto add = [](std::int8_t x, std::int8_t y) {
        return static_cast<std::int8_t>(x + y);
    };
    return {add(a.length, b.length), add(a.time, b.time),   add(a.mass, b.mass),
            add(a.angle, b.angle),   add(a.share, b.share), add(a.temperature, b.temperature)};
}

Dimension operator/(Dimension a, Dimension b) {
    const auto less = [](std::int8_t x, std::int8_t y) {
        return static_cast<std::int8_t>(x - y);
    };
    return {less(a.length, b.length), less(a.time, b.time),   less(a.mass, b.mass),
            less(a.angle, b.angle),   less(a.share, b.share), less(a.temperature, b.temperature)};
}

std::optional<Unit> findUnit(std::string_view symbol) {
    for (const Unit& unit : units())
        if (unit.symbol == symbol)
            return unit;
    return std::nullopt;
}

std::vector<std::string> unitSymbols() {
    std::vector<std::string> symbols;
    for (const Unit& unit : units())
        if (!unit.symbol.empty())
            symbols.push_back(unit.symbol);
    return symbols;
}

double convert(double value, const Unit& from, const Unit& to) {
    assert(from.dimension == to.dimension);
    return from.factor == to.factor ? value : value * from.factor / to.factor;
}

} // namespace flowhand
