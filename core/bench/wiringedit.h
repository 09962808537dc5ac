#pragma once

#include <optional>
#include <string>
#include <vector>

#include "base/error.h"
#include "bench/wiringsolver.h"
#include "device/device.h"
#include "rig/rigfile.h"

namespace flowhand {

/// A device as a rig file would name it.
struct WiringDevice {
    std::string name;   ///< in the rig file
    DeviceWish wish;    ///< id, and serial or port where units must be told apart
    bool isNew = false; ///< the rig file does not have it yet
};

/// The text of a rig file with this control in it: in place of the one that makes one of its signals, else at the end;
/// new devices are added before. `source` may be empty: a new file titled `title`. Comments and layout of all else
/// stay. Error `not-editable` when the file's controls are not written as [[control]] tables.
[[nodiscard]] Result<std::string> withControl(const std::string& source, const std::string& title,
                                              const WiringWish& wish, const SignalTable& signals,
                                              const WiringProposal& proposal, const std::vector<WiringDevice>& devices);

/// One input with two controls.
struct WiringConflict {
    std::string input;   ///< "quadrant: X"
    std::string control; ///< the other one
};

/// Of the control that makes `signal`: its inputs that another control uses as well. Sharing may be meant (crosstalk,
/// pedals that are a parking latch too), so it is for the builder to say.
[[nodiscard]] std::vector<WiringConflict> conflictsOf(const RigFile& rig, SignalId signal);

} // namespace flowhand
