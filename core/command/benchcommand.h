#pragma once

#include <ostream>
#include <string>
#include <vector>

#include "base/error.h"
#include "bench/evidence.h"
#include "command/command.h"
#include "procedure/library.h"
#include "rig/rigfile.h"

namespace flowhand {

/// Each adds one subcommand to `bench` (one file a command).
void addBenchCalibrateCommand(CLI::App& bench, CommandLine& line);
void addBenchCoverageCommand(CLI::App& bench, CommandLine& line);
void addBenchHealthCommand(CLI::App& bench, CommandLine& line);
void addBenchSheetCommand(CLI::App& bench, CommandLine& line);
void addBenchWalkCommand(CLI::App& bench, CommandLine& line);
void addBenchWireCommand(CLI::App& bench, CommandLine& line);

/// The rig file at `path`, read for `aircraft`. Warnings go to `err`; the error is the file's first.
[[nodiscard]] Result<RigFile> loadRigFor(const std::string& path, const Aircraft& aircraft, std::ostream& err);

/// The aircraft that a person named, or else the shipped one that the rig file fits, with the flows beside it. Errors:
/// those of the aircraft's file, `no-aircraft`; a broken flow is left out, and for the lint to tell.
[[nodiscard]] Result<AircraftFolder> aircraftFolderOf(const std::string& aircraftFile, const std::string& rigFile);
/// The same without flows.
[[nodiscard]] Result<Aircraft> aircraftOf(const std::string& aircraftFile, const std::string& rigFile);

/// The evidence beside a rig file. Damaged lines are named on `err` and left out.
[[nodiscard]] Result<std::vector<EvidenceRecord>> loadEvidenceOf(const std::string& rigFile, std::ostream& err);

/// Writes the rig's check sheet and says so; the exit status.
int writeCheckSheet(CommandLine& line, const std::string& rigFile, const Aircraft& aircraft, const std::string& outFile,
                    bool asJson);

} // namespace flowhand
