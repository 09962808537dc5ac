#include <memory>

#include "command/command.h"
#include "command/loadrun.h"
#include "command/otherflow.h"
#include "report/storeddebrief.h"
#include "store/store.h"

namespace flowhand {

namespace {

struct DebriefOptions {
    std::string run;
    std::string store = defaultStoreFile();
    bool isJson = false;
    std::string flows;
    bool isJudgedAgain = false;
};

int goThrough(const DebriefOptions& options, CommandLine& line) {
    Result<StoredRun> run = loadRun(options.store, options.run);
    if (!run)
        return complain(line, run.error());
    RejudgeWish wish{FLOWHAND_VERSION, options.isJudgedAgain};
    if (!options.flows.empty()) {
        const Result<OtherFlow> other = otherFlow(options.flows, run->header);
        if (!other)
            return complain(line, other.error());
        wish.aircraft = other->aircraft;
        wish.flow = other->flow;
    }
    const Result<StoredDebrief> debrief = StoredDebrief::of(std::move(*run), wish);
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
    CLI::Option* again = command->add_flag("--rejudge", options->isJudgedAgain,
                                           "Judge the recorded movements again by this version, and say what changed");
    command
        ->add_option("--flows", options->flows,
                     "Judge by this flow file, or by the flow of the same name in this folder, not by the one flown")
        ->needs(again)
        ->type_name("PATH");
    command->callback([options, &line] {
        line.chosen = [options, &line] {
            return goThrough(*options, line);
        };
    });
}

} // namespace flowhand
