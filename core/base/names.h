#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace flowhand {

/// "; did you mean 'tiller'?" for the known name nearest to `name`, or nothing where none is near.
[[nodiscard]] std::string nearestHint(std::string_view name, const std::vector<std::string>& known);

[[nodiscard]] std::string joined(const std::vector<std::string>& words, std::string_view separator);

} // namespace flowhand
