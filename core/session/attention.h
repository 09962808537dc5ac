#pragma once

#include <vector>

#include "device/hub.h"
#include "procedure/flow.h"
#include "rig/rig.h"
#include "session/score.h"

namespace flowhand {

/// Has the hub attend to what may do one of the flow's steps now (DeviceHub::attendTo): of those controls every moment
/// counts. Session thread.
void attendToDue(DeviceHub& devices, const Rig& rig, const Flow& flow, const std::vector<StepResult>& results);

} // namespace flowhand
