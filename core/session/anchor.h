#pragma once

#include <string>
#include <vector>

#include "procedure/flow.h"
#include "session/score.h"

namespace flowhand {

/// A place in a run that stays where it belongs when the run is judged again: so long after its step became due.
struct Anchor {
    std::string step; ///< its id; empty: none was due yet
    Duration offset{};
    Time time{}; ///< in the judgement in which it was made; counts where the step is never due

    bool operator==(const Anchor&) const = default;
};

/// The anchor of `time`: at the step that became due last before it.
[[nodiscard]] Anchor anchorAt(const Flow& flow, const std::vector<StepResult>& results, Time time);

/// Where the anchor lies in a judgement of the run.
[[nodiscard]] Time timeOf(const Anchor& anchor, const Flow& flow, const std::vector<StepResult>& results);

} // namespace flowhand
