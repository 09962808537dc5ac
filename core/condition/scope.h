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

/// The names a condition may use. `aircraft.NAME` is the signal of that whole name where there is one, as of a V speed
/// that is computed, else the aircraft's value. Must outlive what is compiled against it.
struct ConditionScope {
    const SignalTable& signals;
    const std::map<std::string, AircraftValue, std::less<>>& aircraft;
};

} // namespace flowhand
