#pragma once

#include <functional>
#include <ostream>
#include <string>

#include <CLI/CLI.hpp>

#include "base/error.h"
#include "base/problem.h"

namespace flowhand {

/// Exit statuses of every command.
inline constexpr int kExitDone = 0;
inline constexpr int kExitError = 1;
inline constexpr int kExitNotPassed = 3; ///< flown, but not passed

/// What the commands share: where they print, and which of them was chosen. Lives as long as the command line's App.
struct CommandLine {
    std::ostream& out;
    std::ostream& err;
    std::function<int()> chosen; ///< set by the subcommand's callback; run once parsing is over
};

/// Prints `describe(error)` to `err`; gives kExitError.
int complain(CommandLine& line, const Error& error);

/// All errors as one: the first, and the others below it, a line each. Only when there is one.
Error allErrors(const Problems& problems);

/// Each adds one subcommand to `app` (one file a command).
void addFeedsCommand(CLI::App& app, CommandLine& line);
void addDevicesCommand(CLI::App& app, CommandLine& line);
void addDecodeCommand(CLI::App& app, CommandLine& line);
void addBenchCommand(CLI::App& app, CommandLine& line);
void addJudgeCommand(CLI::App& app, CommandLine& line);
void addLintCommand(CLI::App& app, CommandLine& line);
void addCardCommand(CLI::App& app, CommandLine& line);
void addNewCommand(CLI::App& app, CommandLine& line);
void addPractiseCommand(CLI::App& app, CommandLine& line);
void addRunsCommand(CLI::App& app, CommandLine& line);
void addDebriefCommand(CLI::App& app, CommandLine& line);
void addCompareCommand(CLI::App& app, CommandLine& line);
void addNoteCommand(CLI::App& app, CommandLine& line);
void addExportCommand(CLI::App& app, CommandLine& line);
void addImportCommand(CLI::App& app, CommandLine& line);

} // namespace flowhand
