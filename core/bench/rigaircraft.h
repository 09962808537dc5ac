#pragma once

#include <string>
#include <vector>

#include "base/problem.h"
#include "procedure/library.h"

namespace flowhand {

/// Of the aircraft, the one that a rig file is written for: whose controls it wires with the fewest errors, the first
/// of equals. A row of `library`, which must not be empty; `problems` gets what is wrong with the file for that one.
/// `source` is the file's text, `file` stands in messages.
[[nodiscard]] std::size_t aircraftOfRig(const std::string& source, const std::string& file,
                                        const std::vector<AircraftFolder>& library, Problems& problems);

} // namespace flowhand
