#pragma once

#include <memory>
#include <string_view>
#include <vector>

#include "rig/control.h"
#include "rig/controlreader.h"

namespace flowhand {

/// A way of wiring a control, as its [[control]] says in `wiring`. assets/rigs/README.md lists them with their keys.
struct WiringKind {
    std::string_view name;
    std::size_t leastSignals;
    std::size_t mostSignals;
    std::unique_ptr<Control> (*read)(ControlReader&);
};

[[nodiscard]] const std::vector<WiringKind>& wiringKinds();

// Each stands in the file of its state machine. The reader has the right number of signals.
[[nodiscard]] std::unique_ptr<Control> readAxis(ControlReader& reader);
[[nodiscard]] std::unique_ptr<Control> readCodedSwitch(ControlReader& reader);
[[nodiscard]] std::unique_ptr<Control> readContact(ControlReader& reader);
[[nodiscard]] std::unique_ptr<Control> readEncoder(ControlReader& reader);
[[nodiscard]] std::unique_ptr<Control> readGates(ControlReader& reader);
[[nodiscard]] std::unique_ptr<Control> readHatSwitch(ControlReader& reader);
[[nodiscard]] std::unique_ptr<Control> readOnOffOn(ControlReader& reader);
[[nodiscard]] std::unique_ptr<Control> readParkingLatch(ControlReader& reader);
[[nodiscard]] std::unique_ptr<Control> readRelativeWheel(ControlReader& reader);
[[nodiscard]] std::unique_ptr<Control> readSelector(ControlReader& reader);
[[nodiscard]] std::unique_ptr<Control> readSetClear(ControlReader& reader);
[[nodiscard]] std::unique_ptr<Control> readSplitAxis(ControlReader& reader);
[[nodiscard]] std::unique_ptr<Control> readStepButtons(ControlReader& reader);
[[nodiscard]] std::unique_ptr<Control> readSwitchedAxis(ControlReader& reader);
[[nodiscard]] std::unique_ptr<Control> readToggle(ControlReader& reader);
[[nodiscard]] std::unique_ptr<Control> readTwoAxes(ControlReader& reader);
[[nodiscard]] std::unique_ptr<Control> readZones(ControlReader& reader);

} // namespace flowhand
