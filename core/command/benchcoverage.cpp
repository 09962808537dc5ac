#include <algorithm>
#include <filesystem>
#include <memory>
#include <string>
#include <utility>
#include <vector>

#include "base/names.h"
#include "base/textfile.h"
#include "bench/coverage.h"
#include "command/benchcommand.h"
#include "procedure/library.h"
#include "report/coveragetable.h"

namespace flowhand {

namespace {

namespace fs = std::filesystem;

struct CoverageOptions {
    std::string rigFile;
    std::vector<std::string> paths;
    std::vector<std::string> flows; ///< ids; none: all
    std::string seat;               ///< empty: the aircraft's first
    bool hasBothSeats = false;
    bool mustBeProven = false;
    std::string csvFile;
    bool asJson = false;
};

constexpr const char* kAircraftFile = "aircraft.toml";

/// One aircraft and those of its flows that were asked for.
struct Asked {
    AircraftFolder folder;
    std::vector<const Flow*> flows;
};

/// Folders of aircraft, folders of such folders, and flow files.
Result<std::vector<Asked>> find(const CoverageOptions& options, std::ostream& err) {
    std::vector<Asked> all;
    for (const std::string& text : options.paths) {
        fs::path path = fs::path(text).lexically_normal();
        if (!path.has_filename() && path.has_parent_path()) // "twin_jet/"
            path = path.parent_path();
        std::error_code ignored;
        const bool isFile = fs::is_regular_file(path, ignored);
        const fs::path folder = isFile ? (path.has_parent_path() ? path.parent_path() : fs::path(".")) : path;
        Problems problems;
        std::vector<AircraftFolder> loaded;
        if (!isFile && !fs::exists(folder / kAircraftFile, ignored)) {
            loaded = loadLibrary(folder.string(), problems);
        } else if (std::optional<AircraftFolder> one = loadAircraftFolder(folder.string(), problems)) {
            loaded.push_back(std::move(*one));
        }
        if (problems.hasErrors())
            return tl::unexpected<Error>(problems.firstError());
        for (const Problem& problem : problems.all())
            err << describe(problem.error) << "\n";
        std::size_t count = 0;
        for (AircraftFolder& aircraft : loaded) {
            Asked asked{std::move(aircraft), {}};
            for (const Flow& flow : asked.folder.flows) {
                const bool isWanted = !isFile || fs::path(flow.file).lexically_normal() == path;
                const bool isNamed = options.flows.empty() || std::find(options.flows.begin(), options.flows.end(),
                                                                        flow.id) != options.flows.end();
                if (isWanted && isNamed)
                    asked.flows.push_back(&flow);
            }
            count += asked.flows.size();
            if (!asked.flows.empty())
                all.push_back(std::move(asked));
        }
        if (count == 0)
            return failure("no-flow",
                           options.flows.empty()
                               ? "there is no flow here; name a flow file or an aircraft's folder"
                               : "there is no flow '" + joined(options.flows, "' or '") + "' here; see 'flowhand lint'",
                           {text});
    }
    return all;
}

Result<std::vector<std::string>> seatsOf(const Aircraft& aircraft, const CoverageOptions& options) {
    if (options.hasBothSeats)
        return aircraft.seats;
    if (options.seat.empty())
        return std::vector<std::string>{aircraft.seats.front()};
    if (std::find(aircraft.seats.begin(), aircraft.seats.end(), options.seat) == aircraft.seats.end())
        return failure("unknown-seat", "there is no seat '" + options.seat + "' in the " + aircraft.title +
                                           "; there are " + joined(aircraft.seats, ", "));
    return std::vector<std::string>{options.seat};
}

int coverage(CommandLine& line, const CoverageOptions& options) {
    const Result<std::vector<Asked>> asked = find(options, line.err);
    if (!asked)
        return complain(line, asked.error());
    const Result<std::vector<EvidenceRecord>> evidence = loadEvidenceOf(options.rigFile, line.err);
    if (!evidence)
        return complain(line, evidence.error());
    bool isGood = true;
    std::string csv;
    for (const Asked& one : *asked) {
        const Aircraft& aircraft = *one.folder.aircraft;
        const auto seats = seatsOf(aircraft, options);
        if (!seats)
            return complain(line, seats.error());
        Result<RigFile> rig = loadRigFor(options.rigFile, aircraft, line.err);
        if (!rig)
            return complain(line, rig.error());
        const CoverageInput input{aircraft, one.flows, *evidence, *seats};
        const Result<Coverage> found = coverageOf(*rig, input);
        if (!found)
            return complain(line, found.error());
        const CoverageTable table{rig->title, input, *found};
        line.out << (options.asJson ? coverageJson(table) : coverageText(table));
        const std::string rows = coverageCsv(table);
        csv += csv.empty() ? rows : rows.substr(rows.find('\n') + 1); // one head line
        isGood = isGood && (options.mustBeProven ? found->isProven() : found->isComplete());
    }
    if (!options.csvFile.empty())
        if (const Status written = writeFile(options.csvFile, csv); !written)
            return complain(line, written.error());
    return isGood ? kExitDone : kExitError;
}

} // namespace

void addBenchCoverageCommand(CLI::App& bench, CommandLine& line) {
    auto options = std::make_shared<CoverageOptions>();
    CLI::App* command = bench.add_subcommand(
        "coverage", "Which steps this rig can confirm, and which of its controls are wired, calibrated, seen working");
    command->add_option("path", options->paths, "Flow files, or folders of aircraft")->required();
    command->add_option("--rig", options->rigFile, "Rig file")->required()->type_name("FILE");
    command->add_option("--flow", options->flows, "Only this flow; may be said more than once")
        ->allow_extra_args(false)
        ->type_name("NAME");
    CLI::Option* seat =
        command->add_option("--seat", options->seat, "Whose steps; without it the first seat's")->type_name("SEAT");
    command->add_flag("--both-seats", options->hasBothSeats, "All steps: nobody is the partner")->excludes(seat);
    command->add_flag("--proven", options->mustBeProven, "Exit status 1 also when a control was not seen working");
    command->add_option("--csv", options->csvFile, "Write steps and controls as a table")->type_name("FILE");
    command->add_flag("--json", options->asJson, "JSON, an object for each aircraft");
    command->callback([options, &line] {
        line.chosen = [options, &line] {
            return coverage(line, *options);
        };
    });
}

} // namespace flowhand
