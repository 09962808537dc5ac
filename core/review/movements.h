#pragma once

#include <vector>

#include "review/reviewedrun.h"
#include "session/movement.h"

namespace flowhand {

/// Every movement of a control by a hand or the partner in the record, from leaving rest to settling (or to the end of
/// the record), in the order in which they began. The same definition as the judge's (session/movement.h).
[[nodiscard]] std::vector<ControlMovement> movementsOf(const ReviewedRun& run);

} // namespace flowhand
