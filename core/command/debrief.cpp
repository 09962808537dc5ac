#include <memory>

#include "command/command.h"
#include "command/loadrun.h"
#include "report/storeddebrief.h"
#include "store/store.h"

namespace flowhand {

namespace {

struct DebriefOptions {
    std::string run;
    std::string store = defaultStoreFile();
    bool isJson = false;
    bool isJudgedAgain = false;
};

int goThrough(const DebriefOptions& options, CommandLine& line) {
    Result<StoredRun> run = loadRun(options.store, options.run);
    if (!run)
        return complain(line, run.error());
    const Result<StoredDebrief> debrief = StoredDebrief::of(std::move(*run), options.isJudgedAgain, FLOWHAND_VERSION);
    if (!debrief)
        return complain(line, debrief.error());
    line.out << (options.isJson ? debriefJson(debrief->input()) + "\n" : debriefText(debrief->input()));
    return kExitDone;
}

} // namespace

void addDebriefCommand(CLI::App& app, CommandLine& line) {
    auto options = std::make_shared<DebriefOptions>();
    CLI::App* command = app.add_subcommand("debrief", "Go through a stored run: what went wrong first, then each step");
    command->add_option("RUN", options->run, "Its number, as 'flowhand runs' lists it, or last")->required();
    command->add_option("--db", options->store, "Where the runs are stored")->type_name("FILE");
    command->add_flag("--json", options->isJson, "Print the debrief as JSON");
    command->add_flag("--rejudge", options->isJudgedAgain,
                      "Judge the recorded movements again by this version, and say what changed");
    command->callback([options, &line] {
        line.chosen = [options, &line] {
            return goThrough(*options, line);
        };
    });
}

} // namespace flowhand
