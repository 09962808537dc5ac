#include <algorithm>
#include <cmath>

#include "procedure/flow.h"
#include "store/archiveparts.h"

namespace flowhand {

namespace {

using namespace std::chrono_literals;

/// Runs are four hours long at most (session); days leave room for one left standing.
constexpr Time kLongestRun = std::chrono::hours(240);
constexpr std::size_t kLongestText = 1000; // characters of a name or a title
constexpr std::int64_t kMostMilliPoints = 100'000'000;

/// Whether it can be a file's or a folder's name, and nothing else: no way out of where it stands.
bool isName(const std::string& name) {
    const bool isPlain = std::all_of(name.begin(), name.end(), [](char letter) {
        return (letter >= 'a' && letter <= 'z') || (letter >= 'A' && letter <= 'Z') ||
               (letter >= '0' && letter <= '9') || letter == '_' || letter == '-' || letter == ' ' ||
               static_cast<unsigned char>(letter) >= 0x80;
    });
    return !name.empty() && name.size() <= kLongestText && isPlain;
}

bool isText(const std::string& text) {
    return text.size() <= kLongestText && std::none_of(text.begin(), text.end(), [](char letter) {
               return static_cast<unsigned char>(letter) < 0x20 || letter == 0x7F;
           });
}

/// Of the wall clock: its nanoseconds must fit a Time, which they do until 2262.
bool isUnixMillis(std::int64_t millis) {
    return millis >= 0 && millis < 9'000'000'000'000;
}

bool isOfRun(Time time) {
    return time >= -1h && time <= kLongestRun;
}

bool isValue(const Signal& signal, Value value) {
    if (!value.isKnown())
        return true;
    const double number = value.number();
    if (signal.kind == SignalKind::Number)
        return std::isfinite(number);
    const bool isWhole = number == std::floor(number);
    if (signal.kind == SignalKind::OnOff)
        return number == 0.0 || number == 1.0;
    return isWhole && number >= -1.0 && number < static_cast<double>(signal.positions.size());
}

std::string wrongNames(const StoredRun& run) {
    const RunHeader& header = run.header;
    if (!isName(header.aircraftFolder) || !isName(header.flowId))
        return "the aircraft's or the flow's name is not one";
    if (!isUnixMillis(header.startedUnixMillis))
        return "its date is none";
    std::vector<std::string> texts = {header.pilot,    header.programVersion, header.flowTitle,
                                      header.rigTitle, header.motionSource,   header.help,
                                      run.judgedBy,    header.setup.ownSeat};
    texts.insert(texts.end(), header.controlNames.begin(), header.controlNames.end());
    texts.insert(texts.end(), run.summary.tags.begin(), run.summary.tags.end());
    for (const ControlFacts& facts : header.setup.controls)
        texts.push_back(facts.controlName);
    if (!std::all_of(texts.begin(), texts.end(), isText))
        return "a name in it is too long or no text";
    const auto hasComma = [](const std::string& tag) {
        return tag.empty() || tag.find(',') != std::string::npos;
    };
    if (std::any_of(run.summary.tags.begin(), run.summary.tags.end(), hasComma))
        return "a tag in it is not one";
    return {};
}

std::string wrongSetup(const RunHeader& header, const Aircraft& aircraft) {
    const SessionSetup& setup = header.setup;
    if (setup.controls.size() != aircraft.controls.size() || header.controlNames.size() > 0xFFFF)
        return "its controls are not the aircraft's";
    for (const ControlFacts& facts : setup.controls)
        if (!(facts.sigma >= 0.0 && facts.range >= 0.0 && std::isfinite(facts.sigma) && std::isfinite(facts.range)))
            return "a control's noise or range is no number";
    const bool isGood = setup.partnerErrorRate >= 0.0 && setup.partnerErrorRate <= 1.0 && setup.latency >= 0s &&
                        setup.latency <= 1min && setup.timeScale > 0.0 && setup.timeScale <= 1000.0;
    return isGood ? std::string() : "its set-up is out of range";
}

std::string wrongSamples(const StoredRun& run, const Aircraft& aircraft) {
    for (const Sample& sample : run.samples) {
        const bool isGood =
            isOfRun(sample.time) && indexOf(sample.signal) < aircraft.signals.size() &&
            sample.actor <= Actor::Machine &&
            static_cast<std::size_t>(sample.control) < std::max<std::size_t>(run.header.controlNames.size(), 1);
        if (!isGood || !isValue(aircraft.signals[sample.signal], sample.value))
            return "a sample in it is out of range";
    }
    return {};
}

/// Each has a time of its own, later than all before, that no sample has (session/replay.h).
std::string wrongCommands(const StoredRun& run) {
    Time before = Time::min();
    for (const RunCommand& command : run.commands) {
        const auto sample =
            std::lower_bound(run.samples.begin(), run.samples.end(), command.time, [](const Sample& one, Time time) {
                return one.time < time;
            });
        const bool isShared = sample != run.samples.end() && sample->time == command.time;
        if (!isOfRun(command.time) || command.time <= before || isShared || !isText(command.text))
            return "its commands are out of order or range";
        before = command.time;
    }
    return {};
}

std::string wrongResult(const StoredRun& run) {
    const auto isPoints = [](std::int64_t points) {
        return points >= -kMostMilliPoints && points <= kMostMilliPoints;
    };
    const auto isTime = [](Time time) {
        return time == kForever || isOfRun(time);
    };
    const auto isLength = [](Duration length) {
        return length >= -kLongestRun && length <= kLongestRun;
    };
    const Score& score = run.score;
    bool isGood = isOfRun(run.summary.length) && isPoints(score.milliPoints) && isPoints(score.upperMilliPoints) &&
                  isLength(score.pace) && isLength(run.losses.latest) && score.weight >= 0;
    for (const LedgerLine& line : score.ledger)
        isGood &= isPoints(line.milliPoints);
    for (const Duration late : score.late)
        isGood &= isLength(late);
    for (const StepResult& result : run.results)
        isGood &= isTime(result.due) && isTime(result.done) && isLength(result.suspended);
    return isGood ? std::string() : "its result is out of range";
}

std::string wrongNotes(const StoredRun& run, const Flow& flow) {
    std::vector<Note> before;
    for (const Note& note : run.notes) {
        if (const Status allowed = checkNote(note, flow, before); !allowed)
            return "a note in it: " + allowed.error().message;
        if (!isText(note.author) || !isUnixMillis(note.writtenUnixMillis))
            return "a note's author or date is none";
        before.push_back(note);
    }
    return {};
}

} // namespace

std::string wrongWith(const StoredRun& run) {
    if (std::string wrong = wrongNames(run); !wrong.empty())
        return wrong;
    Problems problems;
    const std::optional<Aircraft> aircraft =
        parseAircraft(run.header.aircraftSource, run.header.aircraftFolder + "/aircraft.toml", problems);
    const std::optional<Flow> flow =
        aircraft ? parseFlow(run.header.flowSource, run.header.flowFile, *aircraft, problems) : std::nullopt;
    if (!flow)
        return problems.hasErrors() ? describe(problems.firstError()) : "its aircraft is empty";
    std::string wrong = wrongSetup(run.header, *aircraft);
    if (wrong.empty())
        wrong = wrongSamples(run, *aircraft);
    if (wrong.empty())
        wrong = wrongCommands(run);
    if (wrong.empty())
        wrong = wrongResult(run);
    if (wrong.empty())
        wrong = wrongNotes(run, *flow);
    return wrong;
}

} // namespace flowhand
