#include "rig/controls.h"

namespace flowhand {

const std::vector<WiringKind>& wiringKinds() {
    static const std::vector<WiringKind> kKinds = {
        {"axis", 1, 8, readAxis},
        {"gates", 1, 1, readGates},
        {"split_axis", 2, 2, readSplitAxis},
        {"switched_axis", 2, 2, readSwitchedAxis},
        {"two_axes", 1, 1, readTwoAxes},
        {"contact", 1, 1, readContact},
        {"on_off_on", 1, 1, readOnOffOn},
        {"selector", 1, 1, readSelector},
        {"coded_switch", 1, 1, readCodedSwitch},
        {"zones", 1, 1, readZones},
        {"hat", 1, 1, readHatSwitch},
        {"toggle", 1, 1, readToggle},
        {"set_clear", 1, 1, readSetClear},
        {"step_buttons", 1, 1, readStepButtons},
        {"encoder", 1, 1, readEncoder},
        {"relative_wheel", 1, 1, readRelativeWheel},
        {"parking_latch", 1, 1, readParkingLatch},
    };
    return kKinds;
}

} // namespace flowhand
