#pragma once

#include <string>
#include <vector>

#include "bench/finding.h"

namespace flowhand {

/// All findings of a stored result, as results.h writes them; those of each part after another. What cannot be read is
/// left out.
[[nodiscard]] std::vector<Finding> findingsIn(const std::string& result);

} // namespace flowhand
