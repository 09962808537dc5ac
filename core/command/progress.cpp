#include "command/progress.h"

#include <chrono>
#include <memory>

#include "command/datafolder.h"
#include "command/flowsearch.h"
#include "progress/progress.h"
#include "report/progresstext.h"

namespace flowhand {

namespace {

struct ProgressOptions {
    std::string store = defaultStoreFile();
    std::string procedures = dataFolder() + "/procedures";
    std::string pilot;
    std::string rig;
    std::string flow;
    PracticeWish wish;
    bool isJson = false;
};

Moment now() {
    using namespace std::chrono;
    return localMoment(duration_cast<milliseconds>(system_clock::now().time_since_epoch()).count());
}

/// Before the first run there is no file, and nothing wrong with that.
Result<PracticeRecord> recordFor(const ProgressOptions& options) {
    Result<PracticeRecord> record = practiceRecord(options.store, options.wish);
    if (!record && record.error().code == "store-missing" && options.store == defaultStoreFile())
        return PracticeRecord();
    return record;
}

int showProgress(const ProgressOptions& options, CommandLine& line) {
    Problems problems;
    const std::vector<AircraftFolder> library = loadLibrary(options.procedures, problems);
    FlowName only;
    if (!options.flow.empty()) {
        const Result<FoundFlow> found = findFlow(library, options.flow);
        if (!found)
            return complain(line, found.error());
        only = {found->aircraft->folder, found->flow->id};
    }
    const Result<PracticeRecord> record = recordFor(options);
    if (!record)
        return complain(line, record.error());
    if (record->lines.empty() && !options.isJson) {
        line.out << "No run counts as practice yet: fly a flow in the window, or with 'flowhand practise FLOW --rig "
                    "FILE'. Scripted hands and recordings do not count.\n";
        return kExitDone;
    }
    const Progress progress = progressOf(record->runs, knownFlows(library), now());
    const FlowName* const shown = options.flow.empty() ? nullptr : &only;
    line.out << (options.isJson ? progressJson(*record, progress, shown) : progressText(*record, progress, shown));
    return kExitDone;
}

} // namespace

void addProgressCommand(CLI::App& app, CommandLine& line) {
    auto options = std::make_shared<ProgressOptions>();
    CLI::App* command =
        app.add_subcommand("progress", "How you get on: what to fly next and why, trends, and which steps go wrong");
    CLI::Option* pilot =
        command->add_option("--pilot", options->pilot, "Whose runs; left out: those of whoever flew last")
            ->type_name("NAME");
    CLI::Option* rig =
        command
            ->add_option("--rig", options->rig,
                         "On which rig, by its title, or 'on-screen controls'; left out: the one flown last")
            ->type_name("TITLE");
    command->add_flag("--all-pilots", options->wish.isEveryPilot, "Mix the runs of all pilots")->excludes(pilot);
    command->add_flag("--all-rigs", options->wish.isEveryRig, "Mix the runs on all rigs")->excludes(rig);
    command->add_option("--flow", options->flow, "This flow alone, as 'flowhand practise' takes it")->type_name("FLOW");
    command->add_flag("--json", options->isJson, "Print it as JSON");
    command->add_option("--db", options->store, "Where the runs are stored")->type_name("FILE");
    command->add_option("--procedures", options->procedures, "Folder of the aircraft and their flows")
        ->type_name("FOLDER");
    command->callback([options, pilot, rig, &line] {
        if (pilot->count() > 0)
            options->wish.pilot = options->pilot;
        if (rig->count() > 0)
            options->wish.rig = options->rig;
        line.chosen = [options, &line] {
            return showProgress(*options, line);
        };
    });
}

} // namespace flowhand
