#pragma once

#include <vector>

#include "session/score.h"

namespace flowhand {

/// When the response to each done step is counted from, by step; of the others their own `done`. The later of its cue
/// and the last step, anyone's, done before it; for a step done before its cue, the last done step alone; its own time
/// when there is none. Of simultaneous steps the first listed counts as the earlier.
[[nodiscard]] std::vector<Time> responseStarts(const std::vector<StepResult>& results, const std::vector<bool>& isDone);

} // namespace flowhand
