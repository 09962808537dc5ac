#pragma once

#include <vector>

#include "bench/calibration.h"

namespace flowhand {

/// Dwells that are one place, by rising count.
using DwellCluster = std::vector<const Dwell*>;

/// Parts the dwells wherever two neighbours are further apart than `gap`; by rising count.
[[nodiscard]] std::vector<DwellCluster> clustersOf(const std::vector<Dwell>& dwells, double gap);

/// The `count` places that were held, where the dwells show just as many; pauses on the way are left out. Empty when
/// they do not; `travel` in counts.
[[nodiscard]] std::vector<DwellCluster> placesAmong(const std::vector<Dwell>& dwells, std::size_t count, double travel);

[[nodiscard]] Place placeOf(const DwellCluster& cluster);

} // namespace flowhand
