#pragma once

#include <string>

#include "aircraft/groundplan.h"

namespace flowhand {

/// What a view draws the practice aircraft on, and how large it is. Metres; immutable.
struct GroundScene {
    GroundPlan plan;
    double wheelbase = 0.0;  ///< main wheels to nosewheel
    double track = 0.0;      ///< between the main wheels' middles
    double noseAhead = 0.0;  ///< of the main wheels
    double tailBehind = 0.0; ///< of the main wheels
    double wingspan = 0.0;
};

/// Where the practice aircraft is over that ground. Angles in rad.
struct GroundPosition {
    PlanPoint mainWheels;   ///< the middle between them
    double heading = 0.0;   ///< clockwise from north
    double nosewheel = 0.0; ///< to the right positive
    std::string route;      ///< whose line is to be followed
    bool isOnGround = true;
};

} // namespace flowhand
