#pragma once

#include <map>
#include <optional>
#include <string>
#include <vector>

#include "base/problem.h"
#include "base/signal.h"
#include "base/tomlfile.h"
#include "condition/scope.h"

namespace flowhand {

/// How a cockpit control is built, which says how it is drawn and what it can do.
enum class ControlKind : std::uint8_t {
    Lever,      ///< a number along a slot, in %
    GatedLever, ///< positions with gates
    Switch,     ///< on/off, stays
    Selector,   ///< positions on a dial
    Button,     ///< on/off, on while pressed
    Wheel,      ///< a number either side of a centre, turned: the tiller
    Pedal,      ///< a number: rudder pedals either side of a centre, toe brakes from 0
    Yoke        ///< a number either side of a centre: pitch or bank
};

/// A control of the cockpit. Its state is the signal of the same name; `signal` gives kind, range, positions and scale.
struct CockpitControl {
    SignalId signal = kNoSignal;
    ControlKind kind = ControlKind::Switch;
    std::string area;               ///< where in the cockpit: "pedestal", "left console"
    bool isContinuous = false;      ///< steered by: never an extra
    std::vector<std::string> seats; ///< who can reach it; empty = both
    std::string panelLabel;         ///< as written beside the control; the challenge of a checklist repeats it
};

/// An aircraft file: its controls and the names conditions may use.
/// `signals` holds the controls first, then the motion signals (procedure/motion.h).
struct Aircraft {
    std::string folder; ///< its name in procedures/
    std::string file;
    std::string title;
    std::vector<std::string> seats;
    std::map<std::string, AircraftValue, std::less<>> values;
    std::vector<CockpitControl> controls; ///< controls[i].signal == SignalId(i)
    SignalTable signals;
    TomlFile toml; ///< the whole file, kept with a run

    [[nodiscard]] bool isControl(SignalId id) const { return indexOf(id) < controls.size(); }
    [[nodiscard]] const CockpitControl& control(SignalId id) const { return controls[indexOf(id)]; }
    [[nodiscard]] ConditionScope scope() const { return {signals, values}; }
};

/// Reads `aircraft.toml` of a folder. Nothing when `problems` got an error.
[[nodiscard]] std::optional<Aircraft> loadAircraft(const std::string& file, Problems& problems);
/// The same from memory, as an editor holds it or a stored run keeps it; `file` stands in messages.
[[nodiscard]] std::optional<Aircraft> parseAircraft(std::string source, const std::string& file, Problems& problems);

} // namespace flowhand
