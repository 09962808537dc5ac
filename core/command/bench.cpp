#include "command/benchcommand.h"

#include <filesystem>

#include "base/textfile.h"
#include "bench/rigaircraft.h"
#include "command/datafolder.h"
#include "procedure/library.h"

namespace flowhand {

namespace {

constexpr const char* kAircraftFile = "aircraft.toml";

} // namespace

Result<RigFile> loadRigFor(const std::string& path, const Aircraft& aircraft, std::ostream& err) {
    Result<std::string> source = readFile(path);
    if (!source)
        return tl::unexpected<Error>(source.error());
    Problems problems;
    std::optional<RigFile> rig =
        parseRigFile(std::move(*source), path, aircraft.signals, aircraft.controls.size(), problems);
    if (!rig)
        return tl::unexpected<Error>(problems.firstError());
    for (const Problem& problem : problems.all())
        err << describe(problem.error) << "\n";
    return std::move(*rig);
}

namespace {

Result<AircraftFolder> aircraftNamed(const std::string& file) {
    Problems problems;
    const std::filesystem::path path(file);
    if (path.filename() == kAircraftFile)
        if (std::optional<AircraftFolder> folder = loadAircraftFolder(path.parent_path().string(), problems))
            return std::move(*folder);
    std::optional<Aircraft> aircraft = loadAircraft(file, problems);
    if (!aircraft)
        return tl::unexpected<Error>(problems.firstError());
    return AircraftFolder{std::make_unique<Aircraft>(std::move(*aircraft)), {}};
}

} // namespace

Result<AircraftFolder> aircraftFolderOf(const std::string& aircraftFile, const std::string& rigFile) {
    if (!aircraftFile.empty())
        return aircraftNamed(aircraftFile);
    const Result<std::string> source = readFile(rigFile);
    if (!source)
        return tl::unexpected<Error>(source.error());
    Problems ofLibrary;
    std::vector<AircraftFolder> library = loadLibrary(dataFolder() + "/procedures", ofLibrary);
    if (library.empty())
        return failure("no-aircraft", "say for which aircraft it is: --aircraft FILE", {rigFile});
    Problems ofRig;
    const std::size_t best = aircraftOfRig(*source, rigFile, library, ofRig);
    if (ofRig.hasErrors())
        return tl::unexpected<Error>(ofRig.firstError());
    return std::move(library[best]);
}

Result<Aircraft> aircraftOf(const std::string& aircraftFile, const std::string& rigFile) {
    Result<AircraftFolder> folder = aircraftFolderOf(aircraftFile, rigFile);
    if (!folder)
        return tl::unexpected<Error>(folder.error());
    return std::move(*folder->aircraft);
}

Result<std::vector<EvidenceRecord>> loadEvidenceOf(const std::string& rigFile, std::ostream& err) {
    Problems problems;
    Result<std::vector<EvidenceRecord>> evidence = readEvidence(evidenceFileOf(rigFile), problems);
    for (const Problem& problem : problems.all())
        err << describe(problem.error) << "\n";
    return evidence;
}

void addBenchCommand(CLI::App& app, CommandLine& line) {
    CLI::App* bench = app.add_subcommand("bench", "Prove the rig: wire, measure and check its controls");
    bench->require_subcommand(1);
    addBenchWireCommand(*bench, line);
    addBenchCalibrateCommand(*bench, line);
    addBenchHealthCommand(*bench, line);
    addBenchCoverageCommand(*bench, line);
    addBenchWalkCommand(*bench, line);
    addBenchSheetCommand(*bench, line);
}

} // namespace flowhand
