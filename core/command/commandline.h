#pragma once

#include <optional>
#include <ostream>

namespace flowhand {

/// Reads the arguments and runs the command that they name. Gives its exit status; nothing when no command was named:
/// then the window is wanted.
[[nodiscard]] std::optional<int> runCommandLine(int argc, char** argv, std::ostream& out, std::ostream& err);

/// Flies the demonstration of every shipped flow with scripted hands and prints the debriefs: what the program does
/// without a display and without arguments. Nothing is stored.
[[nodiscard]] int flyDemonstration(std::ostream& out, std::ostream& err);

} // namespace flowhand
