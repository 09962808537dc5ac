#pragma once

#include <string>
#include <vector>

#include "base/error.h"
#include "base/signal.h"
#include "rig/rigfile.h"

namespace flowhand {

/// Which control evidence is about, and how it is wired and calibrated now.
struct ControlFingerprint {
    std::string control; ///< its name in the rig file
    std::vector<std::string> signals;
    std::string hash; ///< 64 hexadecimal digits

    bool operator==(const ControlFingerprint&) const = default;
};

/// One for each of `rig.controls`, in their order. The hash covers what the control's [[control]] says and the id,
/// serial and port of the devices it uses; not its name, the filters, the devices' names, comments and layout: these
/// change neither wiring nor calibration.
[[nodiscard]] Result<std::vector<ControlFingerprint>> fingerprintsOf(const RigFile& rig, const SignalTable& signals);

} // namespace flowhand
