#pragma once

#include <cstddef>
#include <cstdint>
#include <vector>

#include "base/time.h"
#include "procedure/flow.h"

namespace flowhand {

/// A done step as a candidate of the in-order chain.
struct ChainStep {
    std::size_t step = 0; ///< index in the flow
    Time done{};
    std::int64_t worth = 0; ///< milli-points lost more when it is out of order than when it is in the chain; >= 0
};

/// Which of `done` are out of order: those outside the chain that loses least, exactly.
///
/// Two steps conflict when one comes after the other (`after`, also through other steps, whoever's they are and whether
/// they were done or not), but was done before it. Members of one group never conflict; simultaneous steps do not
/// either. On a tie those stay in the chain that more others jumped ahead of.
///
/// "comes after, but was done before" is itself a partial order, so the steps to keep are a heaviest set without two
/// related ones. Where the order is a list of levels (a strict list, groups), that is a heaviest non-decreasing
/// sequence, found in n log n; elsewhere it comes from a maximum flow (antichain.h).
[[nodiscard]] std::vector<bool> outOfOrder(const std::vector<Step>& steps, const std::vector<ChainStep>& done);

} // namespace flowhand
