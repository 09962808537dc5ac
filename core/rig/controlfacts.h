#pragma once

#include <string>

namespace flowhand {

/// What the session must know of a control as this rig wires it.
struct ControlFacts {
    bool isWired = false;
    bool isSimulated = false; ///< on-screen or scripted
    double sigma = 0.0;       ///< noise, in the signal's unit
    double perCount = 0.0;    ///< noise of so much of the unit for each raw count of it; 0 for contacts
    double range = 0.0;       ///< travel, in the signal's unit; 0 for contacts
    bool isMomentary = false;
    std::string controlName; ///< the rig's name of the physical control
};

} // namespace flowhand
