#include <chrono>
#include <fstream>
#include <memory>

#include "command/benchcommand.h"
#include "report/checksheet.h"

namespace flowhand {

namespace {

struct SheetOptions {
    std::string rigFile;
    std::string aircraftFile;
    std::string outFile;
};

int sheet(CommandLine& line, const SheetOptions& options) {
    const Result<Aircraft> aircraft = aircraftOf(options.aircraftFile, options.rigFile);
    if (!aircraft)
        return complain(line, aircraft.error());
    return writeCheckSheet(line, options.rigFile, *aircraft, options.outFile);
}

} // namespace

int writeCheckSheet(CommandLine& line, const std::string& rigFile, const Aircraft& aircraft,
                    const std::string& outFile) {
    Result<RigFile> rig = loadRigFor(rigFile, aircraft, line.err);
    if (!rig)
        return complain(line, rig.error());
    const Result<std::vector<EvidenceRecord>> evidence = loadEvidenceOf(rigFile, line.err);
    if (!evidence)
        return complain(line, evidence.error());
    const auto wall = std::chrono::system_clock::now().time_since_epoch();
    const Result<CheckSheet> made = checkSheetOf(*rig, rigFile, aircraft, *evidence,
                                                 std::chrono::duration_cast<std::chrono::seconds>(wall).count());
    if (!made)
        return complain(line, made.error());
    std::ofstream file(outFile, std::ios::binary | std::ios::trunc);
    file << checkSheetHtml(*made, aircraft.signals) << std::flush;
    if (!file)
        return complain(line,
                        {"unwritable-file", "cannot write it: is the folder there, and the disk not full?", {outFile}});
    line.err << "Check sheet in " << outFile << "\n";
    return kExitDone;
}

void addBenchSheetCommand(CLI::App& bench, CommandLine& line) {
    auto options = std::make_shared<SheetOptions>();
    CLI::App* command = bench.add_subcommand("sheet", "Write the check sheet of a rig from its evidence");
    command->add_option("--rig", options->rigFile, "Rig file")->required()->type_name("FILE");
    command->add_option("--aircraft", options->aircraftFile, "Aircraft file; without it the shipped one that fits")
        ->type_name("FILE");
    command->add_option("--out", options->outFile, "The page to write")->required()->type_name("FILE.html");
    command->callback([options, &line] {
        line.chosen = [options, &line] {
            return sheet(line, *options);
        };
    });
}

} // namespace flowhand
