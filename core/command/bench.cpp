#include "command/benchcommand.h"

#include "base/textfile.h"
#include "command/datafolder.h"
#include "procedure/library.h"

namespace flowhand {

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

Result<Aircraft> aircraftOf(const std::string& aircraftFile, const std::string& rigFile) {
    Problems problems;
    if (!aircraftFile.empty()) {
        std::optional<Aircraft> aircraft = loadAircraft(aircraftFile, problems);
        if (!aircraft)
            return tl::unexpected<Error>(problems.firstError());
        return std::move(*aircraft);
    }
    const Result<std::string> source = readFile(rigFile);
    if (!source)
        return tl::unexpected<Error>(source.error());
    for (AircraftFolder& folder : loadLibrary(dataFolder() + "/procedures", problems)) {
        Problems ofRig;
        Aircraft& aircraft = *folder.aircraft;
        if (parseRigFile(*source, rigFile, aircraft.signals, aircraft.controls.size(), ofRig))
            return std::move(aircraft);
        problems = std::move(ofRig);
    }
    return problems.hasErrors() ? tl::unexpected<Error>(problems.firstError())
                                : failure("no-aircraft", "say for which aircraft it is: --aircraft FILE", {rigFile});
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
