#include "rig/controls.h"

namespace flowhand {

const std::vector<WiringKind>& wiringKinds() {
    static const std::vector<WiringKind> kKinds = {
        {"axis", 1, 8, readAxis},
        {"gates", 1, 1, readGates},
        {"contact", 1, 1, readContact},
        {"selector", 1, 1, readSelector},
    };
    return kKinds;
}

} // namespace flowhand
