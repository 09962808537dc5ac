#pragma once

#include <vector>

#include "aircraft/groundscene.h"
#include "review/timeline.h"

namespace flowhand {

/// Where the practice aircraft of a recorded run came from until `time`, oldest first, and where it was then, the last.
/// A record does not say whose line was followed: it is taken to be the one from which the recorded offset was
/// measured. Empty: the record does not say where the aircraft was. Any thread.
[[nodiscard]] std::vector<GroundPosition> groundWay(const Timeline& timeline, const GroundScene& scene, Time time);

} // namespace flowhand
