#include <cstdio>
#include <memory>
#include <nlohmann/json.hpp>

#include "base/valuewords.h"
#include "command/command.h"
#include "command/loadrun.h"
#include "report/findings.h"
#include "report/texttable.h"
#include "review/comparison.h"

namespace flowhand {

namespace {

struct CompareOptions {
    std::string run;
    std::string other;
    std::string store = defaultStoreFile();
    bool isJson = false;
};

std::string signedSeconds(const std::optional<Duration>& duration) {
    if (!duration)
        return "-";
    char text[32];
    std::snprintf(text, sizeof text, "%+.1f", seconds(*duration));
    return text;
}

std::string timeText(const std::optional<Duration>& time) {
    return time ? clockText(*time) : "-";
}

std::string nameOf(const ReviewedRun& run, std::int64_t id) {
    std::string name = "Run " + std::to_string(id) + " (" + wallTime(run.header.startedUnixMillis);
    if (!run.header.pilot.empty())
        name += ", " + run.header.pilot;
    return name + ", " + (run.score.isScored ? pointsText(run.score.milliPoints) + " points" : "no score") + ")";
}

void printText(const RunComparison& comparison, const std::string& title, std::ostream& out) {
    out << title << '\n';
    for (const Phrase& difference : comparison.differences)
        out << "  " << difference.english() << '\n';
    std::vector<std::vector<std::string>> rows;
    for (const StepComparison& step : comparison.steps) {
        rows.push_back({step.title, timeText(step.elapsed), timeText(step.otherElapsed), signedSeconds(step.cumulative),
                        signedSeconds(step.delta), joined(step.differences, "; ").english()});
    }
    // With the blanks between them at most 100 characters.
    out << textTable({{"step", 26, false},
                      {"done", 7, true},
                      {"other", 7, true},
                      {"behind", 7, true},
                      {"of it", 7, true},
                      {"what differed", 34, false}},
                     rows, "");
    out << "behind: seconds after the other run; of it: since the step before. Time held is not counted.\n";
}

nlohmann::ordered_json optionalMicros(const std::optional<Duration>& duration) {
    if (!duration)
        return nullptr;
    return std::chrono::duration_cast<std::chrono::microseconds>(*duration).count();
}

void printJson(const RunComparison& comparison, std::int64_t run, std::int64_t other, std::ostream& out) {
    using Json = nlohmann::ordered_json;
    Json steps = Json::array();
    for (const StepComparison& step : comparison.steps)
        steps.push_back({{"id", step.id},
                         {"title", step.title},
                         {"elapsed_us", optionalMicros(step.elapsed)},
                         {"other_elapsed_us", optionalMicros(step.otherElapsed)},
                         {"cumulative_us", optionalMicros(step.cumulative)},
                         {"delta_us", optionalMicros(step.delta)},
                         {"how", step.verdict.english()},
                         {"other_how", step.otherVerdict.english()},
                         {"lost_milli_points", step.milliPoints},
                         {"other_lost_milli_points", step.otherMilliPoints},
                         {"differences", englishOf(step.differences)}});
    const Json all{
        {"run", run}, {"other", other}, {"differences", englishOf(comparison.differences)}, {"steps", steps}};
    out << all.dump(2, ' ', false, Json::error_handler_t::replace) << '\n';
}

/// The run named, or else the reference of the flow.
Result<std::int64_t> otherRun(Store& store, const CompareOptions& options, std::int64_t run) {
    if (!options.other.empty())
        return findRun(store, options.other);
    const Result<std::int64_t> reference = store.referenceFor(run);
    if (reference && *reference == 0)
        return failure("no-reference",
                       "this flow has no reference run yet: 'flowhand runs reference RUN' makes a run one; or name the "
                       "other run");
    return reference;
}

int compare(const CompareOptions& options, CommandLine& line) {
    Result<Store> store = Store::open(options.store, {false, true});
    if (!store)
        return complain(line, store.error());
    const Result<std::int64_t> id = findRun(*store, options.run);
    const Result<std::int64_t> otherId = id ? otherRun(*store, options, *id) : id;
    if (!otherId)
        return complain(line, otherId.error());
    const Result<StoredDebrief> run = loadDebrief(*store, *id);
    if (!run)
        return complain(line, run.error());
    const Result<StoredDebrief> other = loadDebrief(*store, *otherId);
    if (!other)
        return complain(line, other.error());
    const RunComparison comparison = compareRuns(run->timeline(), other->timeline());
    if (options.isJson)
        printJson(comparison, *id, *otherId, line.out);
    else
        printText(comparison,
                  nameOf(run->timeline().run(), *id) + " beside " + nameOf(other->timeline().run(), *otherId),
                  line.out);
    return kExitDone;
}

} // namespace

void addCompareCommand(CLI::App& app, CommandLine& line) {
    auto options = std::make_shared<CompareOptions>();
    CLI::App* command = app.add_subcommand("compare", "Set two stored runs beside each other, step by step");
    command->add_option("RUN", options->run, "Its number, as 'flowhand runs' lists it, or last")->required();
    command->add_option("OTHER", options->other, "Its number; without it the reference of the flow");
    command->add_option("--db", options->store, "Where the runs are stored")->type_name("FILE");
    command->add_flag("--json", options->isJson, "Print the comparison as JSON");
    command->callback([options, &line] {
        line.chosen = [options, &line] {
            return compare(*options, line);
        };
    });
}

} // namespace flowhand
