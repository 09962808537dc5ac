#pragma once

#include <string>

namespace flowhand {

/// Where the shipped `procedures` and `assets` folders are: beside the installed program in share/flowhand, else in the
/// source tree it was built from.
[[nodiscard]] std::string dataFolder();
/// Where the manual is with its pictures: installed, or beside the program as it was built; else its pages alone, in
/// the source tree.
[[nodiscard]] std::string manualFolder();

} // namespace flowhand
