#pragma once

#include <map>
#include <string>

#include "base/signal.h"
#include "base/unit.h"

namespace flowhand {

/// `aircraft.NAME` in a condition: a number with a unit, or a word (a position such as the planned flap).
struct AircraftValue {
    bool isWord = false;
    std::string word;
    double number = 0.0;
    Unit unit;
};

/// The names a condition may use. Must outlive what is compiled against it.
struct ConditionScope {
    const SignalTable& signals;
    const std::map<std::string, AircraftValue, std::less<>>& aircraft;
};

} // namespace flowhand
