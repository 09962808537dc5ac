#pragma once

#include "command/command.h"

namespace flowhand {

/// The manual's pages.
void addManualCommand(CLI::App& app, CommandLine& line);

} // namespace flowhand
