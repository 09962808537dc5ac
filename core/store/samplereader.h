#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "session/stretch.h"
#include "store/chunk.h"
#include "store/connection.h"

namespace flowhand {

/// The samples of windows `first` to `last` (both included), in the run's order. What cannot be read is named in
/// `damage` and lies in the stretches `missing`; the rest is there.
[[nodiscard]] std::vector<Sample> readSamples(Connection& connection, std::int64_t run, std::int64_t first,
                                              std::int64_t last, std::vector<std::string>& damage,
                                              std::vector<Stretch>& missing);

} // namespace flowhand
