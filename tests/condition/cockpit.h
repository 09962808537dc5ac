#pragma once

#include <map>
#include <optional>
#include <string>
#include <vector>

#include "condition/condition.h"
#include "condition/scope.h"

namespace flowhand {

/// A few signals of every kind to write conditions on.
struct Cockpit {
    Cockpit() {
        flap = add("flap_lever", SignalKind::Position, "", 0, 0, {"up", "4", "12", "22", "34"});
        gear = add("gear_lever", SignalKind::Position, "", 0, 0, {"up", "down"});
        secondFlap = add("standby_flap_lever", SignalKind::Position, "", 0, 0, {"up", "4", "12", "22", "34"});
        speed = add("ground_speed", SignalKind::Number, "kt", 0, 200);
        airspeed = add("airspeed", SignalKind::Number, "kt", 0, 400);
        tiller = add("tiller", SignalKind::Number, "deg", -70, 70);
        lever1 = add("thrust_lever_1", SignalKind::Number, "%", 0, 100);
        lever2 = add("thrust_lever_2", SignalKind::Number, "%", 0, 100);
        brake = add("parking_brake", SignalKind::OnOff, "", 0, 0, {});
        light = add("taxi_light", SignalKind::OnOff, "", 0, 0, {});
        count = add("turns", SignalKind::Number, "", 0, 0);
        aircraft["tiller_limit"] = {false, "", 80, *findUnit("kt")};
        aircraft["settle_time"] = {false, "", 2, *findUnit("s")};
        aircraft["planned_flap"] = {true, "12", 0, {}};
    }

    SignalId add(const std::string& name, SignalKind kind, const std::string& unit, double lowest, double highest,
                 std::vector<std::string> positions = {}) {
        Signal signal;
        signal.name = name;
        signal.kind = kind;
        signal.unit = *findUnit(unit);
        signal.lowest = lowest;
        signal.highest = highest;
        signal.scale = highest > lowest ? highest - lowest : 1.0;
        signal.positions = std::move(positions);
        return *table.add(signal);
    }

    /// Nothing when it has errors; `problems` has those and the warnings.
    std::optional<Condition> compile(const std::string& text) {
        problems.clear();
        return Condition::compile(text, {table, aircraft}, problems);
    }
    /// Of a condition without errors.
    Condition condition(const std::string& text) { return compile(text).value(); }

    SignalTable table;
    std::map<std::string, AircraftValue, std::less<>> aircraft;
    std::vector<ConditionProblem> problems;
    SignalId flap, gear, secondFlap, speed, airspeed, tiller, lever1, lever2, brake, light, count;
};

} // namespace flowhand
