#include <filesystem>
#include <memory>

#include "aircraft/practicefile.h"
#include "base/names.h"
#include "base/textfile.h"
#include "command/command.h"
#include "command/datafolder.h"
#include "procedure/fileformat.h"
#include "procedure/flowstarter.h"
#include "procedure/library.h"

namespace flowhand {

namespace fs = std::filesystem;

namespace {

struct NewOptions {
    std::string name;
    std::string procedures = dataFolder() + "/procedures";
};

/// The folder and the id in "twin_jet/first_flow".
Result<std::pair<std::string, std::string>> partsOf(const std::string& name) {
    const std::size_t slash = name.find('/');
    const std::string id = slash == std::string::npos ? std::string() : name.substr(slash + 1);
    if (id.empty() || slash == 0)
        return failure("bad-name", "say whose flow it is, as in twin_jet/first_flow");
    if (!isPlainName(id))
        return failure("bad-name",
                       "a flow's name has lower case letters, digits and '_', a letter first; '" + id + "' is none");
    return std::pair(name.substr(0, slash), id);
}

Result<std::string> startPlaceOf(const Aircraft& aircraft) {
    const Result<PracticeFigures> figures = loadPracticeOf(aircraft);
    if (!figures)
        return tl::unexpected(figures.error());
    const bool hasStand = figures->place("stand") != nullptr;
    return hasStand ? "stand" : figures->places.front().name;
}

Result<fs::path> folderOf(const std::string& procedures, const std::string& name) {
    const fs::path folder = fs::path(procedures) / name;
    std::error_code problem;
    if (fs::exists(folder / "aircraft.toml", problem))
        return folder;
    std::vector<std::string> known;
    for (const fs::directory_entry& entry : fs::directory_iterator(procedures, problem))
        if (fs::exists(entry.path() / "aircraft.toml", problem))
            known.push_back(entry.path().filename().string());
    return failure("unknown-aircraft", "there is no aircraft '" + name + "' in " + procedures + "; there are " +
                                           joined(known, ", ") + nearestHint(name, known));
}

int makeFlow(const NewOptions& options, CommandLine& line) {
    const auto parts = partsOf(options.name);
    if (!parts)
        return complain(line, parts.error());
    const Result<fs::path> folder = folderOf(options.procedures, parts->first);
    if (!folder)
        return complain(line, folder.error());
    Problems problems;
    const std::optional<Aircraft> aircraft = loadAircraft((*folder / "aircraft.toml").string(), problems);
    if (!aircraft)
        return complain(line, allErrors(problems));
    const Result<std::string> place = startPlaceOf(*aircraft);
    if (!place)
        return complain(line, place.error());
    const std::string file = (*folder / (parts->second + ".toml")).string();
    std::error_code problem;
    if (fs::exists(file, problem))
        return complain(line, {"file-exists", "this file is there already; take another name", {file}});
    if (const Status written = writeFile(file, flowStarter(*aircraft, parts->second, *place)); !written)
        return complain(line, written.error());
    line.out << "Wrote " << file << ". Go on with\n"
             << "  flowhand lint " << file << "       says what is wrong with it\n"
             << "  flowhand practise " << options.name << "       flies it\n";
    return kExitDone;
}

} // namespace

void addNewCommand(CLI::App& app, CommandLine& line) {
    auto options = std::make_shared<NewOptions>();
    CLI::App* command = app.add_subcommand("new", "Begin a file of your own");
    command->require_subcommand(1);
    CLI::App* flow = command->add_subcommand("flow", "Write a flow with remarks, to go on from");
    flow->add_option("name", options->name, "The aircraft's folder and the flow's name, as twin_jet/first_flow")
        ->required();
    flow->add_option("--procedures", options->procedures, "Folder of the aircraft")->type_name("FOLDER");
    flow->callback([options, &line] {
        line.chosen = [options, &line] {
            return makeFlow(*options, line);
        };
    });
}

} // namespace flowhand
