#pragma once

#include "command/command.h"

namespace flowhand {

/// How a pilot gets on.
void addProgressCommand(CLI::App& app, CommandLine& line);

} // namespace flowhand
