#include <charconv>
#include <memory>

#include "command/command.h"
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

/// The id that a person means by "12" or "last".
Result<std::int64_t> findRun(Store& store, const std::string& name) {
    std::int64_t id = 0;
    const auto [end, problem] = std::from_chars(name.data(), name.data() + name.size(), id);
    if (problem == std::errc() && end == name.data() + name.size())
        return id;
    if (name != "last")
        return failure("bad-run", "'" + name + "' is no run; write its number, as 'flowhand runs' lists it, or last");
    const Result<std::vector<RunSummary>> runs = store.runs();
    if (!runs)
        return tl::unexpected(runs.error());
    if (runs->empty())
        return failure("no-such-run", "there are no runs yet; 'flowhand practise FLOW' flies one");
    return runs->front().id;
}

int goThrough(const DebriefOptions& options, CommandLine& line) {
    Result<Store> store = Store::open(options.store, {false, true});
    if (!store)
        return complain(line, store.error());
    const Result<std::int64_t> id = findRun(*store, options.run);
    if (!id)
        return complain(line, id.error());
    Result<StoredRun> run = store->load(*id);
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
