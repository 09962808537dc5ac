#include <chrono>
#include <memory>
#include <nlohmann/json.hpp>

#include "base/names.h"
#include "command/command.h"
#include "command/runskeep.h"
#include "report/findings.h"
#include "report/texttable.h"
#include "store/store.h"

namespace flowhand {

namespace {

struct RunsOptions {
    std::string store = defaultStoreFile();
    RunQuery query;
    bool isJson = false;
};

/// What a run that is being flown has recorded is at most 0.5 s old (core/store/README.md); the rest is for slow disks.
constexpr auto kFreshness = std::chrono::seconds(3);

bool isFlying(const RunSummary& run) {
    const auto recorded = std::chrono::milliseconds(run.startedUnixMillis) + run.length;
    const auto age = std::chrono::system_clock::now().time_since_epoch() - recorded;
    return !run.isDamaged && !run.isFinished && age > -kFreshness && age < kFreshness;
}

std::string resultText(const RunSummary& run) {
    if (run.isDamaged)
        return "damaged";
    if (isFlying(run))
        return "being flown";
    if (!run.isFinished)
        return "cut off, recovered";
    const std::string simulated = run.isSimulated ? ", simulated" : "";
    if (!run.isScored)
        return "no score" + simulated;
    return pointsText(run.milliPoints) + (run.isPassed ? ", passed" : ", not passed") + simulated;
}

/// What a person has put beside the run.
std::string besideText(const RunSummary& run) {
    std::vector<std::string> parts = run.tags;
    if (run.isReference)
        parts.insert(parts.begin(), "reference");
    if (run.notes > 0)
        parts.push_back(std::to_string(run.notes) + (run.notes == 1 ? " note" : " notes"));
    return joined(parts, ", ");
}

bool isForAll(const RunQuery& query) {
    return query.text.empty() && query.tag.empty() && !query.isDeleted;
}

void printText(const std::vector<RunSummary>& runs, const RunQuery& query, std::ostream& out) {
    if (runs.empty()) {
        out << (isForAll(query) ? "No runs yet; 'flowhand practise FLOW' flies one.\n" : "No such runs.\n");
        return;
    }
    std::vector<std::vector<std::string>> rows;
    for (const RunSummary& run : runs)
        rows.push_back({std::to_string(run.id), run.isDamaged ? "" : wallTime(run.startedUnixMillis), run.flowTitle,
                        run.aircraftFolder, run.rigTitle.empty() ? "no rig" : run.rigTitle,
                        run.isDamaged ? "" : clockText(run.length), resultText(run), besideText(run)});
    // With the blanks between them at most 100 characters.
    out << textTable({{"run", 5, true},
                      {"started", 16, false},
                      {"flow", 16, false},
                      {"aircraft", 8, false},
                      {"rig", 9, false},
                      {"length", 6, true},
                      {"result", 15, false},
                      {"beside it", 11, false}},
                     rows, "");
}

void printJson(const std::vector<RunSummary>& runs, std::ostream& out) {
    using Json = nlohmann::ordered_json;
    Json all = Json::array();
    for (const RunSummary& run : runs)
        all.push_back({{"run", run.id},
                       {"started_unix_ms", run.startedUnixMillis},
                       {"flow", run.flowTitle},
                       {"aircraft", run.aircraftFolder},
                       {"rig", run.rigTitle},
                       {"pilot", run.pilot},
                       {"length_us", std::chrono::duration_cast<std::chrono::microseconds>(run.length).count()},
                       {"being_flown", isFlying(run)},
                       {"cut_off", !run.isFinished && !isFlying(run)},
                       {"damaged", run.isDamaged},
                       {"simulated_input", run.isSimulated},
                       {"scored", run.isScored},
                       {"milli_points", run.milliPoints},
                       {"passed", run.isPassed},
                       {"flow_id", run.flowId},
                       {"tags", run.tags},
                       {"reference", run.isReference},
                       {"deleted", run.isDeleted},
                       {"notes", run.notes}});
    out << all.dump(2, ' ', false, Json::error_handler_t::replace) << '\n';
}

int listRuns(const RunsOptions& options, CommandLine& line) {
    std::vector<RunSummary> runs;
    Result<Store> store = Store::open(options.store, {false, true});
    // Before the first run there is no file, and nothing wrong with that.
    const bool isNothingYet = !store && store.error().code == "store-missing" && options.store == defaultStoreFile();
    if (!store && !isNothingYet)
        return complain(line, store.error());
    if (store) {
        Result<std::vector<RunSummary>> all = store->runs(options.query);
        if (!all)
            return complain(line, all.error());
        runs = std::move(*all);
    }
    if (options.isJson)
        printJson(runs, line.out);
    else
        printText(runs, options.query, line.out);
    return kExitDone;
}

} // namespace

void addRunsCommand(CLI::App& app, CommandLine& line) {
    auto options = std::make_shared<RunsOptions>();
    CLI::App* command = app.add_subcommand("runs", "List the runs that are stored, newest first; keep them in order");
    command->add_option("--db", options->store, "Where the runs are stored")->type_name("FILE");
    command->add_flag("--json", options->isJson, "Print the list as JSON");
    command
        ->add_option("--search", options->query.text,
                     "Only those with this in flow, aircraft, rig, pilot, tags or notes")
        ->type_name("TEXT");
    command->add_option("--tag", options->query.tag, "Only those with this tag")->type_name("NAME");
    command->add_flag("--deleted", options->query.isDeleted, "Those that were deleted and can be restored");
    addRunsKeeping(*command, line, options->store);
    command->callback([options, command, &line] {
        if (!command->get_subcommands().empty())
            return;
        line.chosen = [options, &line] {
            return listRuns(*options, line);
        };
    });
}

} // namespace flowhand
