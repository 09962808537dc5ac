#pragma once

#include <QString>
#include <fstream>
#include <optional>
#include <sstream>
#include <string>

#include "procedure/aircraftfile.h"
#include "procedure/flow.h"

/// The small aircraft of tests/data/procedure/bench, which the tests' flows refer to.
inline const flowhand::Aircraft& benchAircraft() {
    static const flowhand::Aircraft aircraft = [] {
        flowhand::Problems problems;
        return *flowhand::loadAircraft(TEST_DATA "/procedure/bench/aircraft.toml", problems);
    }();
    return aircraft;
}

inline QString benchText(const std::string& file) {
    std::ifstream stream(std::string(TEST_DATA "/procedure/bench/") + file);
    std::stringstream text;
    text << stream.rdbuf();
    return QString::fromStdString(text.str());
}
