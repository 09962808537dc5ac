#include <algorithm>
#include <filesystem>
#include <memory>
#include <string>
#include <tuple>
#include <utility>
#include <vector>

#include <nlohmann/json.hpp>

#include "aircraft/groundplan.h"
#include "aircraft/practice.h"
#include "aircraft/practicefile.h"
#include "base/textfile.h"
#include "command/command.h"
#include "command/datafolder.h"
#include "command/lintscenario.h"
#include "procedure/library.h"
#include "procedure/lint.h"
#include "rig/rig.h"
#include "rig/rigfile.h"
#include "session/hands.h"
#include "session/mistakes.h"

namespace flowhand {

namespace {

namespace fs = std::filesystem;

constexpr const char* kAircraftFile = "aircraft.toml";
constexpr const char* kPracticeFile = "practice.toml";
constexpr const char* kGroundFile = "ground.toml";
constexpr const char* kHandsFolder = "hands";
constexpr const char* kHandsEnding = ".hands";
constexpr const char* kScenarioFolder = "scenarios";
constexpr const char* kMistakesEnding = ".mistakes.toml";

constexpr const char* kNoFlow =
    "this is no flow: it has no [[step]]; is that misspelt, or is the file in the wrong place?";
constexpr const char* kNoFlowForHands =
    "there is no flow of this name that could be flown by these hands; has the flow an error, or another name?";

bool isThere(const fs::path& path) {
    std::error_code ignored;
    return fs::exists(path, ignored);
}

/// Checks files and folders, and collects what it finds.
class Linter {
public:
    /// `procedures`: the aircraft that rig files may be for.
    explicit Linter(std::string procedures) : m_procedures(std::move(procedures)) {}

    void check(const fs::path& path) {
        std::error_code failed;
        if (fs::is_directory(path, failed)) {
            if (!checkFolder(path))
                m_problems.error(
                    "nothing-to-check",
                    "there is no aircraft.toml, ground.toml or rig file in this folder or below it; name a "
                    "flow file, a rig file or an aircraft's folder",
                    {path.string()});
        } else if (!isThere(path)) {
            m_problems.error("unreadable-file", "there is no such file or folder", {path.string()});
        } else {
            checkFile(path);
        }
    }

    [[nodiscard]] std::vector<Problem> sorted() const {
        std::vector<Problem> problems = m_problems.all();
        for (Problem& problem : problems)
            problem.error.place.file = fs::path(problem.error.place.file).lexically_normal().string();
        std::stable_sort(problems.begin(), problems.end(), [](const Problem& a, const Problem& b) {
            const SourcePlace& x = a.error.place;
            const SourcePlace& y = b.error.place;
            return std::tie(x.file, x.line, x.column) < std::tie(y.file, y.line, y.column);
        });
        return problems;
    }
    [[nodiscard]] bool hasErrors() const { return m_problems.hasErrors(); }
    [[nodiscard]] std::size_t fileCount() const { return m_files; }

private:
    bool checkFolder(const fs::path& folder) {
        bool isAny = false;
        if (isThere(folder / kGroundFile))
            isAny = checkGround(folder / kGroundFile);
        if (isThere(folder / kAircraftFile))
            return checkAircraftFolder(folder);
        std::error_code failed;
        std::vector<fs::path> below;
        std::vector<fs::path> files;
        fs::directory_iterator at(folder, failed);
        for (const fs::directory_iterator end; !failed && at != end; at.increment(failed)) {
            if (at->is_directory(failed) && !at->is_symlink(failed))
                below.push_back(at->path());
            else if (isRig(at->path()))
                files.push_back(at->path());
        }
        std::sort(below.begin(), below.end());
        for (const fs::path& file : files)
            checkRig(file);
        for (const fs::path& entry : below)
            isAny = checkFolder(entry) || isAny;
        return isAny || !files.empty();
    }

    bool checkAircraftFolder(const fs::path& folder) {
        ++m_files;
        const std::optional<AircraftFolder> loaded = loadAircraftFolder(folder.string(), m_problems);
        if (!loaded)
            return true;
        m_files += loaded->flows.size() + loaded->scenarios.size();
        lint(*loaded, m_problems);
        for (const Scenario& scenario : loaded->scenarios)
            m_files += lintScenario(scenario, *loaded, m_problems);
        if (isThere(folder / kPracticeFile))
            checkPractice(folder / kPracticeFile, *loaded->aircraft);
        for (const Flow& flow : loaded->flows)
            checkFlow(flow, *loaded->aircraft);
        checkStrays(folder, *loaded);
        return true;
    }

    /// Files that look like something to fly and are not.
    void checkStrays(const fs::path& folder, const AircraftFolder& loaded) {
        std::error_code failed;
        for (const fs::directory_entry& entry : fs::directory_iterator(folder, failed)) {
            const fs::path& path = entry.path();
            if (path.extension() == ".toml" && path.filename() != kAircraftFile && path.filename() != kPracticeFile &&
                !isFlowFile(path.string()))
                m_problems.error("not-a-flow", kNoFlow, {path.string()});
        }
        for (const fs::directory_entry& entry : fs::directory_iterator(folder / kHandsFolder, failed))
            if (isOfHands(entry.path()) && !flowOf(entry.path(), loaded))
                m_problems.error("no-flow-for-hands", kNoFlowForHands, {entry.path().string()});
    }

    static bool isRig(const fs::path& path) {
        if (path.extension() != ".toml")
            return false;
        const Result<TomlFile> file = TomlFile::load(path.string());
        return file && isRigFile(*file);
    }

    /// A rig file does not say which aircraft it is for: it is checked as one for the aircraft that it fits best.
    void checkRig(const fs::path& file) {
        ++m_files;
        if (!m_library) {
            Problems others;
            m_library = loadLibrary(m_procedures, others);
        }
        const auto errorsIn = [](const Problems& problems) {
            return std::count_if(problems.all().begin(), problems.all().end(), [](const Problem& problem) {
                return problem.severity == Severity::Error;
            });
        };
        std::optional<Problems> best;
        for (const AircraftFolder& folder : *m_library) {
            Problems found;
            (void)Rig::load(file.string(), folder.aircraft->signals, folder.aircraft->controls.size(), found);
            if (!best || errorsIn(found) < errorsIn(*best))
                best = std::move(found);
        }
        if (!best)
            m_problems.error("no-aircraft",
                             "there is no aircraft in " + m_procedures +
                                 " whose controls this rig could be wired to; name their folder by --procedures",
                             {file.string()});
        else
            for (const Problem& problem : best->all())
                m_problems.add(problem.severity, problem.error);
    }

    /// A script of hands, or the mistakes beside it.
    static bool isOfHands(const fs::path& path) {
        return path.extension() == kHandsEnding || path.filename().string().ends_with(kMistakesEnding);
    }

    static const Flow* flowOf(const fs::path& hands, const AircraftFolder& loaded) {
        const std::string name = hands.filename().string();
        for (const Flow& flow : loaded.flows)
            if (flow.id == name.substr(0, name.find('.')))
                return &flow;
        return nullptr;
    }

    void checkPractice(const fs::path& file, const Aircraft& aircraft) {
        ++m_files;
        if (const Result<PracticeFigures> figures = loadPractice(file.string(), aircraft); !figures)
            m_problems.add(Severity::Error, figures.error());
    }

    bool checkGround(const fs::path& file) {
        ++m_files;
        if (const Result<GroundPlan> plan = loadGroundPlan(file.string()); !plan)
            m_problems.add(Severity::Error, plan.error());
        return true;
    }

    /// What a flow has outside its file: where it starts, and the hands that demonstrate it.
    void checkFlow(const Flow& flow, const Aircraft& aircraft) {
        const fs::path folder = fs::path(flow.file).parent_path();
        if (!flow.startPlace.empty() && !isThere(folder / kPracticeFile))
            m_problems.error("no-practice", "there is no practice.toml beside the flow, so nothing knows this place",
                             flow.startWhere);
        else if (!flow.startPlace.empty())
            checkPlace(flow.startPlace, flow.startWhere, aircraft);
        for (const Step& step : flow.steps)
            if (!step.jumpPlace.empty() && isThere(folder / kPracticeFile))
                checkPlace(step.jumpPlace, step.jumpWhere, aircraft);
        const fs::path hands = folder / kHandsFolder / (flow.id + kHandsEnding);
        if (isThere(hands))
            checkHands(hands, aircraft, flow);
    }

    void checkPlace(const std::string& place, const SourcePlace& where, const Aircraft& aircraft) {
        if (const Result<PracticeAircraft> there = PracticeAircraft::create(aircraft, place); !there)
            m_problems.error(there.error().code, there.error().message, where);
    }

    /// The script and, when there are any, the mistakes derived from it.
    void checkHands(const fs::path& file, const Aircraft& aircraft, const Flow& flow) {
        ++m_files;
        const Result<std::string> source = readFile(file.string());
        if (!source) {
            m_problems.add(Severity::Error, source.error());
            return;
        }
        const std::vector<HandLine> lines = parseHandScript(*source, file.string(), aircraft, flow, m_problems);
        const fs::path mistakes = file.parent_path() / (flow.id + kMistakesEnding);
        if (!isThere(mistakes))
            return;
        ++m_files;
        (void)loadMistakes(mistakes.string(), lines, aircraft, flow, m_problems);
    }

    void checkFile(const fs::path& path) {
        if (path.filename() == kGroundFile) {
            checkGround(path);
            return;
        }
        const bool isHands = isOfHands(path);
        const fs::path beside = path.has_parent_path() ? path.parent_path() : fs::path(".");
        const fs::path folder = aircraftFolderOf(beside);
        if (isRig(path)) {
            checkRig(path);
            return;
        }
        if (!isThere(folder / kAircraftFile)) {
            if (const Result<TomlFile> file = TomlFile::load(path.string()); path.extension() == ".toml" && !file)
                m_problems.add(Severity::Error, file.error());
            else
                m_problems.error(
                    "no-aircraft",
                    "there is no aircraft.toml beside this file, so its controls are not known; put it into "
                    "an aircraft's folder",
                    {path.string()});
            return;
        }
        ++m_files;
        Problems all;
        const std::optional<AircraftFolder> loaded = loadAircraftFolder(folder.string(), all);
        if (loaded)
            lint(*loaded, all);
        keep(all, loaded ? path : folder / kAircraftFile);
        if (loaded)
            checkInFolder(path, *loaded);
        if (loaded && isOfScenario(path, *loaded))
            return;
        if (loaded && isHands && flowOf(path, *loaded) == nullptr)
            m_problems.error("no-flow-for-hands", kNoFlowForHands, {path.string()});
        else if (loaded && !isHands && path.filename() != kAircraftFile && path.filename() != kPracticeFile &&
                 !isFlowFile(path.string()))
            m_problems.error("not-a-flow", kNoFlow, {path.string()});
    }

    void checkInFolder(const fs::path& path, const AircraftFolder& loaded) {
        if (path.filename() == kPracticeFile)
            checkPractice(path, *loaded.aircraft);
        for (const Flow& flow : loaded.flows) {
            if (fs::path(flow.file).lexically_normal() == path)
                checkFlow(flow, *loaded.aircraft);
            if (isOfHands(path) && flowOf(path, loaded) == &flow)
                checkHands(path.parent_path() / (flow.id + kHandsEnding), *loaded.aircraft, flow);
        }
    }

    /// The nearest folder with an aircraft file: the file's own, or above it for hands and scenarios.
    static fs::path aircraftFolderOf(const fs::path& beside) {
        for (const char* up : {"", "..", "../.."})
            if (const fs::path folder = (beside / up).lexically_normal(); isThere(folder / kAircraftFile))
                return folder;
        return beside;
    }

    /// A scenario, or hands for one of its flows: checks it.
    bool isOfScenario(const fs::path& path, const AircraftFolder& loaded) {
        if (path.parent_path().filename() == kScenarioFolder && path.extension() == ".toml") {
            for (const Scenario& scenario : loaded.scenarios)
                if (fs::path(scenario.file).lexically_normal() == path)
                    (void)lintScenario(scenario, loaded, m_problems);
            return true;
        }
        const Flow* flow = loaded.flow(path.stem().string());
        const bool isHands = path.extension() == kHandsEnding &&
                             path.parent_path().parent_path().filename() == kScenarioFolder && flow != nullptr;
        if (isHands)
            checkHands(path, *loaded.aircraft, *flow);
        return isHands;
    }

    /// Of `all`, what concerns one file.
    void keep(const Problems& all, const fs::path& file) {
        for (const Problem& problem : all.all())
            if (fs::path(problem.error.place.file).lexically_normal() == file.lexically_normal())
                m_problems.add(problem.severity, problem.error);
    }

    const std::string m_procedures;
    std::optional<std::vector<AircraftFolder>> m_library; ///< loaded for the first rig file
    Problems m_problems;
    std::size_t m_files = 0;
};

const char* nameOf(Severity severity) {
    return severity == Severity::Error ? "error" : severity == Severity::Warning ? "warning" : "advice";
}

void printJson(const std::vector<Problem>& problems, std::ostream& out) {
    nlohmann::ordered_json list = nlohmann::ordered_json::array();
    for (const Problem& problem : problems)
        list.push_back({{"severity", nameOf(problem.severity)},
                        {"code", problem.error.code},
                        {"file", problem.error.place.file},
                        {"line", problem.error.place.line},
                        {"column", problem.error.place.column},
                        {"message", problem.error.message}});
    // A file may hold any bytes; what is no UTF-8 is shown as a replacement character.
    out << list.dump(2, ' ', false, nlohmann::ordered_json::error_handler_t::replace) << '\n';
}

void printText(const std::vector<Problem>& problems, std::size_t files, std::ostream& out) {
    for (const Problem& problem : problems)
        out << describe(problem.error) << " [" << nameOf(problem.severity) << " " << problem.error.code << "]\n";
    if (problems.empty())
        out << (files == 1 ? "1 file, " : std::to_string(files) + " files, ") << "nothing to complain of.\n";
}

void printRules(std::ostream& out) {
    for (const LintRule& rule : lintRules())
        out << rule.code << ": " << rule.text << " (" << rule.source << ")\n";
}

struct LintOptions {
    std::vector<std::string> paths;
    std::string procedures = dataFolder() + "/procedures";
    bool isJson = false;
    bool wantsRules = false;
};

int runLint(const LintOptions& options, CommandLine& line) {
    if (options.wantsRules) {
        printRules(line.out);
        return kExitDone;
    }
    if (options.paths.empty())
        return complain(line, {"missing-path", "name at least one file or folder to check", {}});
    Linter linter(options.procedures);
    for (const std::string& path : options.paths)
        linter.check(fs::path(path).lexically_normal());
    if (options.isJson)
        printJson(linter.sorted(), line.out);
    else
        printText(linter.sorted(), linter.fileCount(), line.out);
    return linter.hasErrors() ? kExitError : kExitDone;
}

} // namespace

void addLintCommand(CLI::App& app, CommandLine& line) {
    auto options = std::make_shared<LintOptions>();
    CLI::App* command = app.add_subcommand(
        "lint", "Check flows, aircraft files, scenarios, ground plans, scripts of hands and rig files");
    command->add_option("path", options->paths, "Files, or folders with everything below them");
    command
        ->add_option("--procedures", options->procedures, "Folder of the aircraft that rig files are checked against")
        ->type_name("FOLDER");
    command->add_flag("--json", options->isJson, "Print what is found as JSON");
    command->add_flag("--rules", options->wantsRules, "List the rules of good flows that are checked");
    command->callback([options, &line] {
        line.chosen = [options, &line] {
            return runLint(*options, line);
        };
    });
}

} // namespace flowhand
