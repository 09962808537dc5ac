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
constexpr Dimension kPower{2, -3, 1, 0, 0, 0};
constexpr Dimension kPressure{-1, -2, 1, 0, 0, 0};
constexpr Dimension kAngle{0, 0, 0, 1, 0, 0};
constexpr Dimension kAngularRate{0, -1, 0, 1, 0, 0};
constexpr Dimension kShare{0, 0, 0, 0, 1, 0};
constexpr Dimension kTemperature{0, 0, 0, 0, 0, 1};

constexpr double kNauticalMile = 1852.0;
constexpr double kHour = 3600.0;
constexpr double kTenThousandFeet = 3048.0;
constexpr double kHundredMillionPounds = 45359237.0;

/// `value in this unit * times / per` is in m, s, kg, deg, %, K; both are whole numbers.
struct ExactUnit {
    std::string symbol;
    Dimension dimension;
    double times = 1.0;
    double per = 1.0;

    [[nodiscard]] double factor() const { return times / per; }
};

const std::vector<ExactUnit>& units() {
    static const std::vector<ExactUnit> all = {
        {"", kNone, 1.0},
        {"m", kLength, 1.0},
        {"km", kLength, 1000.0},
        {"ft", kLength, kTenThousandFeet, 1e4},
        {"NM", kLength, kNauticalMile},
        {"s", kTimeDimension, 1.0},
        {"ms", kTimeDimension, 1.0, 1000.0},
        {"min", kTimeDimension, 60.0},
        {"h", kTimeDimension, kHour},
        {"m/s", kSpeed, 1.0},
        {"km/h", kSpeed, 1000.0, kHour},
        {"kt", kSpeed, kNauticalMile, kHour},
        {"ft/min", kSpeed, kTenThousandFeet, 60e4},
        {"m/s2", kAcceleration, 1.0},
        {"kt/s", kAcceleration, kNauticalMile, kHour},
        {"g", kAcceleration, 980665.0, 1e5},
        {"kg", kMass, 1.0},
        {"t", kMass, 1000.0},
        {"lb", kMass, kHundredMillionPounds, 1e8},
        {"N", kForce, 1.0},
        {"kN", kForce, 1000.0},
        {"kW", kPower, 1000.0},
        {"Pa", kPressure, 1.0},
        {"hPa", kPressure, 100.0},
        {"inHg", kPressure, 3386389.0, 1000.0},
        {"deg", kAngle, 1.0},
        {"deg/s", kAngularRate, 1.0},
        {"rpm", kAngularRate, 6.0},
        {"%", kShare, 1.0},
        {"K", kTemperature, 1.0},
    };
    return all;
}

struct Ratio {
    double times = 1.0;
    double per = 1.0;
};

/// Of a unit; of a combined one its factor over 1.
Ratio ratioOf(double factor) {
    for (const ExactUnit& unit : units())
        if (unit.factor() == factor)
            return {unit.times, unit.per};
    return {factor, 1.0};
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
    for (const ExactUnit& unit : units())
        if (unit.symbol == symbol)
            return Unit{unit.symbol, unit.dimension, unit.factor()};
    return std::nullopt;
}

std::vector<std::string> unitSymbols() {
    std::vector<std::string> symbols;
    for (const ExactUnit& unit : units())
        if (!unit.symbol.empty())
            symbols.push_back(unit.symbol);
    return symbols;
}

double convert(double value, const Unit& from, const Unit& to) {
    assert(from.dimension == to.dimension);
    if (from.factor == to.factor)
        return value;
    // Whole numbers first, so that 36 km/h are 10 m/s and not a little more or less.
    const Ratio a = ratioOf(from.factor);
    const Ratio b = ratioOf(to.factor);
    return value * (a.times * b.per) / (a.per * b.times);
}

} // namespace flowhand
