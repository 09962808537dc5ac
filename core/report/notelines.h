#pragma once

#include <string>
#include <vector>

#include "report/debrief.h"

namespace flowhand {

/// One note as a debrief shows it.
struct NoteLine {
    std::int64_t id = 0;
    Phrase what;  ///< "the pilot's own account", "ruling on 'Flap lever to 12': excused"
    Phrase where; ///< "0:12.3, 1.2 s into 'Flap lever to 12'"; empty: the run as a whole
    std::string text;
    std::string author;
};

/// In the order of a debriefing: the objective, the pilot's own account, notes along the run, then the instructor's
/// rulings, causes and marks, and what is practised next.
[[nodiscard]] std::vector<NoteLine> noteLines(const DebriefInput& input);

} // namespace flowhand
