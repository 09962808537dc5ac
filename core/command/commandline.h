#pragma once

#include <optional>
#include <ostream>
#include <string>

namespace flowhand {

/// What was said of the window on the command line.
struct WindowWish {
    std::string rigFile;   ///< empty: the person's own rig, if there is one
    std::string storeFile; ///< where runs are kept
};

/// Reads the arguments and runs the command that they name. Gives its exit status; nothing when no command was named:
/// then the window is wanted, as `window` says.
[[nodiscard]] std::optional<int> runCommandLine(int argc, char** argv, std::ostream& out, std::ostream& err,
                                                WindowWish& window);

/// Flies the demonstration of every shipped flow with scripted hands and prints the debriefs: what the program does
/// without a display and without arguments. Nothing is stored.
[[nodiscard]] int flyDemonstration(std::ostream& out, std::ostream& err);

} // namespace flowhand
