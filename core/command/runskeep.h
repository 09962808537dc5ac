#pragma once

#include <string>

#include "command/command.h"

namespace flowhand {

/// The subcommands of `runs` that keep the stored runs in order: tag, untag, reference, delete, restore, trim, check,
/// backup. `store` is the file that `runs --db` names; it must live as long as the command line.
void addRunsKeeping(CLI::App& runs, CommandLine& line, const std::string& store);

} // namespace flowhand
