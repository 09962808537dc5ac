#pragma once

#include <string>

namespace flowhand {

/// Where the shipped `procedures` and `assets` folders are: beside the installed program in share/flowhand, else in the
/// source tree it was built from.
[[nodiscard]] std::string dataFolder();

} // namespace flowhand
