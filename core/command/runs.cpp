#include <chrono>
#include <memory>
#include <nlohmann/json.hpp>

#include "command/command.h"
#include "report/findings.h"
#include "report/texttable.h"
#include "store/store.h"

namespace flowhand {

namespace {

struct RunsOptions {
    std::string store = defaultStoreFile();
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

void printText(const std::vector<RunSummary>& runs, std::ostream& out) {
    if (runs.empty()) {
        out << "No runs yet; 'flowhand practise FLOW' flies one.\n";
        return;
    }
    std::vector<std::vector<std::string>> rows;
    for (const RunSummary& run : runs)
        rows.push_back({std::to_string(run.id), run.isDamaged ? "" : wallTime(run.startedUnixMillis), run.flowTitle,
                        run.aircraftFolder, run.rigTitle.empty() ? "no rig" : run.rigTitle,
                        run.isDamaged ? "" : clockText(run.length), resultText(run)});
    // With the blanks between them at most 100 characters.
    out << textTable({{"run", 5, true},
                      {"started", 16, false},
                      {"flow", 20, false},
                      {"aircraft", 10, false},
                      {"rig", 12, false},
                      {"length", 7, true},
                      {"result", 18, false}},
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
                       {"passed", run.isPassed}});
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
        Result<std::vector<RunSummary>> all = store->runs();
        if (!all)
            return complain(line, all.error());
        runs = std::move(*all);
    }
    if (options.isJson)
        printJson(runs, line.out);
    else
        printText(runs, line.out);
    return kExitDone;
}

} // namespace

void addRunsCommand(CLI::App& app, CommandLine& line) {
    auto options = std::make_shared<RunsOptions>();
    CLI::App* command = app.add_subcommand("runs", "List the runs that are stored, newest first");
    command->add_option("--db", options->store, "Where the runs are stored")->type_name("FILE");
    command->add_flag("--json", options->isJson, "Print the list as JSON");
    command->callback([options, &line] {
        line.chosen = [options, &line] {
            return listRuns(*options, line);
        };
    });
}

} // namespace flowhand
