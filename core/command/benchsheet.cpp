#include <memory>

#include <nlohmann/json.hpp>

#include "command/benchcommand.h"
#include "report/checksheet.h"

namespace flowhand {

namespace {

using Json = nlohmann::ordered_json;

struct SheetOptions {
    std::string rigFile;
    std::string aircraftFile;
    std::string outFile;
    bool asJson = false;
};

int sheet(CommandLine& line, const SheetOptions& options) {
    const Result<Aircraft> aircraft = aircraftOf(options.aircraftFile, options.rigFile);
    if (!aircraft)
        return complain(line, aircraft.error());
    return writeCheckSheet(line, options.rigFile, *aircraft, options.outFile, options.asJson);
}

} // namespace

int writeCheckSheet(CommandLine& line, const std::string& rigFile, const Aircraft& aircraft, const std::string& outFile,
                    bool asJson) {
    Problems problems;
    const Result<CheckSheet> saved = saveCheckSheet(rigFile, aircraft, outFile, problems);
    if (!saved)
        return complain(line, saved.error());
    for (const Problem& problem : problems.all())
        line.err << describe(problem.error) << "\n";
    if (asJson)
        line.out << Json{{"sheet", outFile},
                         {"controls", saved->controls.size()},
                         {"confirmed", saved->confirmedCount()}}
                        .dump(-1, ' ', false, Json::error_handler_t::replace)
                 << "\n";
    else
        line.err << "Check sheet in " << outFile << "; " << saved->confirmedCount() << " of " << saved->controls.size()
                 << " controls were seen working\n";
    return kExitDone;
}

void addBenchSheetCommand(CLI::App& bench, CommandLine& line) {
    auto options = std::make_shared<SheetOptions>();
    CLI::App* command = bench.add_subcommand("sheet", "Write the check sheet of a rig from its evidence");
    command->add_option("--rig", options->rigFile, "Rig file")->required()->type_name("FILE");
    command->add_option("--aircraft", options->aircraftFile, "Aircraft file; without it the shipped one that fits")
        ->type_name("FILE");
    command->add_option("--out", options->outFile, "The page to write")->required()->type_name("FILE.html");
    command->add_flag("--json", options->asJson, "JSON: the page, and how many controls were confirmed");
    command->callback([options, &line] {
        line.chosen = [options, &line] {
            return sheet(line, *options);
        };
    });
}

} // namespace flowhand
