#pragma once

#include <string>

#include "report/debrief.h"

namespace flowhand {

/// The debrief as one page that needs nothing else: to read in a browser, to print, to hand on. With pictures where the
/// input has its timeline.
[[nodiscard]] std::string debriefHtml(const DebriefInput& input);

} // namespace flowhand
