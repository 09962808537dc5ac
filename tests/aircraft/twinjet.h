#pragma once

#include <string>

#include "aircraft/model.h"
#include "procedure/aircraftfile.h"

namespace flowhand::test {

/// A shipped aircraft by its folder.
inline Aircraft shippedAircraft(const std::string& folder) {
    Problems problems;
    std::optional<Aircraft> aircraft =
        loadAircraft(std::string(PROCEDURES) + "/" + folder + "/aircraft.toml", problems);
    if (!aircraft)
        qFatal("%s", describe(problems.firstError()).c_str());
    return std::move(*aircraft);
}

inline PracticeFigures shippedFigures(const std::string& folder) {
    const Aircraft aircraft = shippedAircraft(folder);
    Result<PracticeFigures> figures = loadPractice(std::string(PROCEDURES) + "/" + folder + "/practice.toml", aircraft);
    if (!figures)
        qFatal("%s", describe(figures.error()).c_str());
    return std::move(*figures);
}

/// The demonstration aircraft.
inline Aircraft twinJet() {
    return shippedAircraft("twin_jet");
}

inline PracticeFigures twinJetFigures() {
    return shippedFigures("twin_jet");
}

/// A runway of 20 km to the east, one straight route on it.
inline GroundPlan longRunway() {
    GroundPlan plan;
    plan.turnNotice = 10.0;
    plan.stopPassed = 10.0;
    plan.runway = {"09", {0.0, 0.0}, {20000.0, 0.0}, 45.0, 75.0};
    Route route;
    route.name = "along";
    route.line = *GuideLine::build({{0.0, 0.0}, {20000.0, 0.0}}, {});
    route.marks.push_back({"start", 0.0, false});
    route.marks.push_back({"threshold", 10000.0, false});
    plan.routes.push_back(std::move(route));
    return plan;
}

inline CockpitState cockpit(double lever, int engines = 2) {
    CockpitState state;
    state.engines.assign(static_cast<std::size_t>(engines), EngineControls{lever, 0.0, true});
    return state;
}

inline StartPlace placeAt(const std::string& mark) {
    StartPlace place;
    place.route = "along";
    place.mark = mark;
    return place;
}

inline FlightValues flightValues() {
    return {"12", "34", 90.0};
}

inline bool isNear(double value, double wanted, double tolerance) {
    if (std::fabs(value - wanted) <= tolerance)
        return true;
    qWarning("%.6g is not %.6g within %.2g", value, wanted, tolerance);
    return false;
}

} // namespace flowhand::test
