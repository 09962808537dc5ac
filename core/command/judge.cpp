#include <charconv>
#include <cmath>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "base/textfile.h"
#include "command/command.h"
#include "command/loadrun.h"
#include "condition/judgement.h"
#include "condition/reading.h"
#include "condition/trace.h"
#include "procedure/aircraftfile.h"

namespace flowhand {

namespace {

struct JudgeOptions {
    std::string condition;
    std::string trace;
    std::string run;
    std::string store = defaultStoreFile();
    std::string aircraft;
    std::string end;
    bool isJson = false;
};

struct Understood {
    Condition condition;
    Trace trace;
};

/// The first error of a condition that did not compile.
Error errorOf(const std::vector<ConditionProblem>& problems) {
    for (const ConditionProblem& problem : problems)
        if (!problem.isWarning)
            return {problem.code, problem.message, {"condition", 1, static_cast<int>(problem.offset) + 1}};
    return {"syntax", "the condition cannot be read", {"condition", 1, 1}};
}

/// Columns that say too little about their signal are understood as the condition uses them.
Result<Understood> understand(const JudgeOptions& options, const TraceTable& table, const Aircraft& aircraft,
                              std::vector<ConditionProblem>& problems) {
    std::vector<std::string> names = table.signalNames();
    for (const Signal& signal : aircraft.signals.all())
        names.push_back(signal.name);
    Result<Trace> trace = table.read(aircraft.signals, readingOf(options.condition, names, aircraft.values));
    if (!trace)
        return tl::unexpected(trace.error());
    std::optional<Condition> condition =
        Condition::compile(options.condition, {trace->signals, aircraft.values}, problems);
    if (!condition)
        return tl::unexpected(errorOf(problems));
    return Understood{std::move(*condition), std::move(*trace)};
}

const char* wordOf(Truth truth) {
    return truth == Truth::True ? "true" : truth == Truth::False ? "false" : "unknown";
}
std::string jsonOf(Truth truth) {
    return truth == Truth::Unknown ? "\"unknown\"" : wordOf(truth);
}

/// Shortest decimal that reads back as the same number; infinities as "inf" and "-inf".
std::string decimalOf(double value) {
    if (std::isinf(value))
        return value > 0 ? "inf" : "-inf";
    char text[40];
    return {text, std::to_chars(text, text + sizeof text, value).ptr};
}
std::string jsonOf(double value) {
    return std::isinf(value) ? "\"" + decimalOf(value) + "\"" : decimalOf(value);
}

/// To 12 digits: the last ones of a binary fraction are not what decimals would give.
double rounded(double value) {
    constexpr int kDigits = 12;
    char text[40];
    const auto written = std::to_chars(text, text + sizeof text, value, std::chars_format::general, kDigits);
    (void)std::from_chars(text, written.ptr, value);
    return value;
}

using MarginSegments = std::vector<Judgement::MarginSegment>;

/// Rounded. `isSame` says which neighbours are shown as one.
template <class IsSame>
MarginSegments shownMargins(const MarginSegments& margins, IsSame isSame) {
    MarginSegments shown;
    for (Judgement::MarginSegment segment : margins) {
        segment.margin.value = std::isinf(segment.margin.value) ? segment.margin.value : rounded(segment.margin.value);
        if (!shown.empty() && shown.back().to == segment.from && isSame(shown.back().margin, segment.margin))
            shown.back().to = segment.to;
        else
            shown.push_back(segment);
    }
    return shown;
}

/// `[item, item]`, each made by `write`.
template <class Item, class Write>
std::string listOf(const std::vector<Item>& items, Write write) {
    std::string text = "[";
    for (const Item& item : items)
        text += (text.size() > 1 ? ", [" : "[") + write(item) + "]";
    return text + "]";
}

/// By hand, because times are exact decimals, with more digits than a JSON library's numbers keep.
void printJson(const Judgement& judgement, std::ostream& out) {
    const auto span = [](Time from, Time to) {
        return secondsText(from) + ", " + secondsText(to) + ", ";
    };
    out << "{\"segments\": " << listOf(judgement.segments, [&](const Judgement::Segment& segment) {
        return span(segment.from, segment.to) + jsonOf(segment.truth);
    });
    out << ",\n \"points\": " << listOf(judgement.points, [](const Judgement::Point& point) {
        return secondsText(point.time) + ", " + jsonOf(point.truth);
    });
    const MarginSegments margins = shownMargins(judgement.margins, [](const Margin& a, const Margin& b) {
        return a.value == b.value;
    });
    out << ",\n \"margins\": " << listOf(margins, [&](const Judgement::MarginSegment& segment) {
        return span(segment.from, segment.to) + jsonOf(segment.margin.value);
    });
    out << "}\n";
}

void printText(const Judgement& judgement, const SignalTable& signals, std::ostream& out) {
    const auto span = [](Time from, Time to) {
        return secondsText(from) + " s to " + secondsText(to) + " s: ";
    };
    for (const Judgement::Segment& segment : judgement.segments)
        out << span(segment.from, segment.to) << wordOf(segment.truth) << '\n';
    for (const Judgement::Point& point : judgement.points)
        out << "at " << secondsText(point.time) << " s only: " << wordOf(point.truth) << '\n';
    const MarginSegments margins = shownMargins(judgement.margins, [](const Margin& a, const Margin& b) {
        return a.value == b.value && a.signal == b.signal;
    });
    for (const Judgement::MarginSegment& segment : margins) {
        if (std::isinf(segment.margin.value))
            continue;
        const SignalId signal = segment.margin.signal;
        out << span(segment.from, segment.to) << "margin " << decimalOf(segment.margin.value);
        if (signal != kNoSignal)
            out << (signals[signal].unit.symbol.empty() ? "" : " " + signals[signal].unit.symbol) << " of "
                << signals[signal].name;
        out << '\n';
    }
    if (judgement.segments.empty())
        out << "The trace has one instant only; say with --end until when its values stay.\n";
}

Result<Aircraft> aircraftOf(const JudgeOptions& options) {
    if (options.aircraft.empty())
        return Aircraft{};
    Problems problems;
    std::optional<Aircraft> aircraft = loadAircraft(options.aircraft, problems);
    if (!aircraft)
        return tl::unexpected(problems.firstError());
    return std::move(*aircraft);
}

Result<Time> endOf(const JudgeOptions& options, const Trace& trace) {
    if (options.end.empty())
        return trace.rows.back().time;
    const Result<Time> end = parseSeconds(options.end);
    if (end && *end < trace.rows.front().time)
        return failure("bad-time", "--end " + options.end + " is before the trace begins, at " +
                                       secondsText(trace.rows.front().time) + " s");
    return end;
}

int show(const JudgeOptions& options, const Condition& condition, const std::vector<ConditionProblem>& problems,
         const Trace& trace, CommandLine& line) {
    for (const ConditionProblem& problem : problems)
        line.err << "condition:1:" << problem.offset + 1 << ": warning: " << problem.message << '\n';
    const Result<Time> end = endOf(options, trace);
    if (!end)
        return complain(line, end.error());
    const Judgement judgement = judge(condition, trace, *end);
    if (options.isJson)
        printJson(judgement, line.out);
    else
        printText(judgement, trace.signals, line.out);
    return kExitDone;
}

int judgeTrace(const JudgeOptions& options, CommandLine& line) {
    const Result<Aircraft> aircraft = aircraftOf(options);
    if (!aircraft)
        return complain(line, aircraft.error());
    const Result<std::string> content = readFile(options.trace, kLargestRecorded);
    if (!content)
        return complain(line, content.error());
    const Result<TraceTable> table = TraceTable::parse(*content, options.trace);
    if (!table)
        return complain(line, table.error());
    std::vector<ConditionProblem> problems;
    const Result<Understood> understood = understand(options, *table, *aircraft, problems);
    if (!understood)
        return complain(line, understood.error());
    return show(options, understood->condition, problems, understood->trace, line);
}

/// A run's samples as a trace of its aircraft's signals.
Trace traceOf(const StoredRun& run, const Aircraft& aircraft) {
    Trace trace;
    trace.signals = aircraft.signals;
    for (const Sample& sample : run.samples) {
        if (trace.rows.empty() || trace.rows.back().time != sample.time)
            trace.rows.push_back({sample.time, {}});
        trace.rows.back().changes.emplace_back(sample.signal, sample.value);
    }
    return trace;
}

int judgeRun(const JudgeOptions& options, CommandLine& line) {
    const Result<StoredRun> run = loadRun(options.store, options.run);
    if (!run)
        return complain(line, run.error());
    Problems problems;
    const std::optional<Aircraft> aircraft = parseAircraft(run->header.aircraftSource, "aircraft of the run", problems);
    if (!aircraft)
        return complain(line, problems.firstError());
    if (run->samples.empty())
        return complain(line, {"empty-run", "this run has no samples to judge", {options.store}});
    std::vector<ConditionProblem> found;
    const std::optional<Condition> condition = Condition::compile(options.condition, aircraft->scope(), found);
    if (!condition)
        return complain(line, errorOf(found));
    return show(options, *condition, found, traceOf(*run, *aircraft), line);
}

} // namespace

void addJudgeCommand(CLI::App& app, CommandLine& line) {
    auto options = std::make_shared<JudgeOptions>();
    CLI::App* command = app.add_subcommand("judge", "Try a condition on a trace of signals over time");
    command->add_option("condition", options->condition, "The condition, as in a flow file")->required();
    CLI::Option* trace = command->add_option("--trace", options->trace,
                                             "Table of values: first line 'time,SIGNAL,...', times in seconds");
    CLI::Option* run =
        command->add_option("--run", options->run, "A stored run: its number, or 'last'")->excludes(trace);
    command->add_option("--db", options->store, "Where the run is stored")->type_name("FILE");
    command->add_option("--aircraft", options->aircraft, "Aircraft file that gives units, positions and aircraft.NAME")
        ->excludes(run);
    command->add_option("--end", options->end, "Until when, in seconds; by default the last line's time");
    command->add_flag("--json", options->isJson, "Print one JSON object");
    command->callback([options, &line] {
        line.chosen = [options, &line] {
            if (options->trace.empty() && options->run.empty())
                return complain(line, {"no-trace", "say what to judge: --trace FILE or --run ID", {}});
            return options->run.empty() ? judgeTrace(*options, line) : judgeRun(*options, line);
        };
    });
}

} // namespace flowhand
