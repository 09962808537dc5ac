#include "command/commandline.h"

#include <utility>

#include "command/command.h"
#include "command/manual.h"
#include "command/progress.h"
#include "store/store.h"

namespace flowhand {

namespace {

constexpr const char* kPurpose =
    "Practise cockpit flows by hand on home-built controls. Without a command it opens the window.";
constexpr const char* kCautions =
    "Flowhand is a hobby trainer and is not for real-world flight training. Wire low voltage only, disconnect before "
    "you "
    "solder, keep to your local electrical codes, and learn to fly from a licensed instructor.";

} // namespace

int complain(CommandLine& line, const Error& error) {
    line.err << "flowhand: " << describe(error) << '\n';
    return kExitError;
}

Error allErrors(const Problems& problems) {
    Error all = problems.firstError();
    bool isFirst = true;
    for (const Problem& problem : problems.all())
        if (problem.severity == Severity::Error && !std::exchange(isFirst, false))
            all.message += '\n' + describe(problem.error);
    return all;
}

std::optional<int> runCommandLine(int argc, char** argv, std::ostream& out, std::ostream& err, WindowWish& window) {
    CLI::App app(kPurpose, "flowhand");
    app.footer(kCautions);
    app.set_version_flag("--version", std::string("flowhand ") + FLOWHAND_VERSION);
    app.require_subcommand(0, 1);
    window.storeFile = defaultStoreFile();
    app.add_option("--rig", window.rigFile, "Rig file: the window uses your controls")->type_name("FILE");
    app.add_option("--db", window.storeFile, "Where the window stores runs")->type_name("FILE");
    CommandLine line{out, err, {}};
    addPractiseCommand(app, line);
    addDebriefCommand(app, line);
    addCompareCommand(app, line);
    addProgressCommand(app, line);
    addNoteCommand(app, line);
    addExportCommand(app, line);
    addImportCommand(app, line);
    addRunsCommand(app, line);
    addFeedsCommand(app, line);
    addDevicesCommand(app, line);
    addDecodeCommand(app, line);
    addBenchCommand(app, line);
    addLintCommand(app, line);
    addNewCommand(app, line);
    addCardCommand(app, line);
    addJudgeCommand(app, line);
    addManualCommand(app, line);
    try {
        app.parse(argc, argv);
    } catch (const CLI::ParseError& problem) {
        return app.exit(problem, out, err) == 0 ? kExitDone : kExitError;
    }
    if (!line.chosen)
        return std::nullopt;
    return line.chosen();
}

} // namespace flowhand
