#include <algorithm>
#include <memory>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include <nlohmann/json.hpp>

#include "base/names.h"
#include "bench/walker.h"
#include "command/benchcommand.h"
#include "command/interrupt.h"

namespace flowhand {

namespace {

using Json = nlohmann::ordered_json;

struct WalkOptions {
    std::string rigFile;
    std::string aircraftFile;
    std::vector<std::string> signals;
    std::vector<std::string> recordings;
    std::optional<double> steeringDegrees; ///< the rig file's, where they are not given
    std::optional<double> leverDegrees;
    std::optional<double> travelPercent;
    double patience = 60.0;
    std::string sheetFile;
    bool isUnstored = false;
    bool asJson = false;
};

/// Says on the terminal how a walk goes. Lives for one command.
class WalkTeller {
public:
    WalkTeller(CommandLine& line, bool asJson) : m_line(line), m_isJson(asJson) {}

    void ask(const Walk& walk) {
        const std::size_t at = static_cast<std::size_t>(&walk.current() - walk.controls().data());
        m_told = walk.ask().english();
        if (!m_isJson)
            m_line.out << "(" << at + 1 << " of " << walk.controls().size() << ") " << m_told << "\n" << std::flush;
        else
            print({{"control", walk.current().name}, {"ask", m_told}});
    }

    /// Only on a terminal's behalf: what is still open, when that changes.
    void progress(const Walk& walk) {
        if (m_isJson || walk.ask().english() == m_told)
            return;
        m_told = walk.ask().english();
        m_line.out << "    " << m_told << "\n" << std::flush;
    }

    void outcome(const WalkedControl& control) {
        const bool isConfirmed = control.outcome == WalkOutcome::Confirmed;
        std::vector<std::string> missing;
        for (const WalkedSignal& signal : control.signals)
            if (!signal.isConfirmed)
                missing.push_back(signal.missing.english());
        if (m_isJson) {
            print({{"control", control.name},
                   {"confirmed", isConfirmed},
                   {"missing", missing},
                   {"moved_instead", control.movedInstead}});
            return;
        }
        m_line.out << "    " << control.name << (isConfirmed ? ": confirmed" : ": not confirmed");
        if (!missing.empty())
            m_line.out << "; not seen: " << joined(missing, "; ");
        if (!isConfirmed && !control.movedInstead.empty())
            m_line.out << "; moved instead: " << joined(control.movedInstead, ", ");
        m_line.out << "\n" << std::flush;
    }

private:
    void print(const Json& json) {
        m_line.out << json.dump(-1, ' ', false, Json::error_handler_t::replace) << "\n" << std::flush;
    }

    CommandLine& m_line;
    bool m_isJson;
    std::string m_told;
};

/// To the end of the walk, of the recordings, or of the person's patience.
int leadWalk(CommandLine& line, bool asJson, InputSource& source, RigFeed& feed, Walker& walker) {
    WalkTeller teller(line, asJson);
    const Walk& walk = walker.walk();
    Time now{};
    teller.ask(walk);
    while (!walk.isDone()) {
        const std::size_t at = static_cast<std::size_t>(&walk.current() - walk.controls().data());
        const std::optional<InputNews> news = source.next();
        if (!news) { // what was asked for is not confirmed
            const std::string missing = walk.ask().english();
            if (source.isRecorded()) {
                if (const Status kept = walker.skip(now); !kept)
                    return complain(line, kept.error());
                teller.outcome(walk.controls()[at]);
            }
            return complain(line, {"walk-stopped", "the walk stopped early. " + missing, {}});
        }
        now = news->now;
        std::vector<Sample> samples;
        std::vector<Phrase> messages;
        feed.take(*news, samples, messages);
        for (const Phrase& message : messages)
            line.err << message.english() << "\n";
        const Result<bool> isOver = walker.advance(samples, now);
        if (!isOver)
            return complain(line, isOver.error());
        if (!*isOver) {
            teller.progress(walk);
            continue;
        }
        teller.outcome(walk.controls()[at]);
        if (!walk.isDone())
            teller.ask(walk);
    }
    return walk.isAllConfirmed() ? kExitDone : kExitError;
}

Result<std::vector<SignalId>> signalsNamed(const std::vector<std::string>& names, const Aircraft& aircraft) {
    std::vector<SignalId> ids;
    std::vector<std::string> known;
    for (const CockpitControl& control : aircraft.controls)
        known.push_back(aircraft.signals[control.signal].name);
    for (const std::string& name : names) {
        const std::optional<SignalId> id = aircraft.signals.find(name);
        if (!id || !aircraft.isControl(*id))
            return failure("unknown-signal", "this aircraft has no control '" + name + "'" + nearestHint(name, known));
        ids.push_back(*id);
    }
    return ids;
}

WalkTolerances tolerancesOf(const WalkOptions& options, const RigFile& rig) {
    WalkTolerances tolerances = rig.tolerances;
    tolerances.steeringDegrees = options.steeringDegrees.value_or(tolerances.steeringDegrees);
    tolerances.leverDegrees = options.leverDegrees.value_or(tolerances.leverDegrees);
    if (options.travelPercent)
        tolerances.leverShare = *options.travelPercent / 100.0;
    return tolerances;
}

int walkRig(CommandLine& line, const WalkOptions& options) {
    const Result<Aircraft> aircraft = aircraftOf(options.aircraftFile, options.rigFile);
    if (!aircraft)
        return complain(line, aircraft.error());
    const auto only = signalsNamed(options.signals, *aircraft);
    if (!only)
        return complain(line, only.error());
    Result<RigFile> file = loadRigFor(options.rigFile, *aircraft, line.err);
    if (!file)
        return complain(line, file.error());
    Problems problems;
    std::optional<Rig> rig =
        Rig::parse(file->source, options.rigFile, aircraft->signals, aircraft->controls.size(), problems);
    const auto fingerprints = fingerprintsOf(*file, aircraft->signals);
    if (!rig || !fingerprints)
        return complain(line, rig ? fingerprints.error() : problems.firstError());
    const std::vector<Reach> reaches = reachesOf(*file, aircraft->signals, aircraft->controls.size());
    const std::unique_ptr<HidSystem> system = systemDevices();
    const SteadyClock clock;
    const Interrupt interrupt;
    const auto source = options.recordings.empty() ? liveSource(*system, clock, file->devices,
                                                                [&interrupt] {
                                                                    return interrupt.isAsked();
                                                                })
                                                   : recordedSource(options.recordings);
    if (!source)
        return complain(line, source.error());
    RigFeed feed(*file, *rig, **source);
    for (const Phrase& missing : feed.missing())
        line.err << missing.english() << "\n";
    if (!feed.isAnyThere())
        return complain(
            line, {"no-device", "none of the rig's devices is there; plug them in, and see 'flowhand devices'", {}});
    const std::string evidenceFile = options.isUnstored ? std::string() : evidenceFileOf(options.rigFile);
    Walker walker({*aircraft, *file, reaches, *fingerprints, feed, evidenceFile, (*source)->isRecorded()},
                  {tolerancesOf(options, *file), fromSeconds(options.patience), *only}, Time{});
    if (walker.walk().isDone())
        return complain(line, {"nothing-to-walk", "none of these controls is wired in this rig", {options.rigFile}});
    const int status = leadWalk(line, options.asJson, **source, feed, walker);
    if (options.sheetFile.empty())
        return status;
    const int written = writeCheckSheet(line, options.rigFile, *aircraft, options.sheetFile, options.asJson);
    return written == kExitDone ? status : written;
}

} // namespace

void addBenchWalkCommand(CLI::App& bench, CommandLine& line) {
    auto options = std::make_shared<WalkOptions>();
    CLI::App* command = bench.add_subcommand(
        "walk", "Check walk: move each control through its whole range, and keep the evidence beside the rig file");
    command->add_option("control", options->signals, "Only these controls of the aircraft")->type_name("SIGNAL");
    command->add_option("--rig", options->rigFile, "Rig file")->required()->type_name("FILE");
    command->add_option("--aircraft", options->aircraftFile, "Aircraft file; without it the shipped one that fits")
        ->type_name("FILE");
    command->add_option("--recording", options->recordings, "A recording instead of devices; once for each device")
        ->allow_extra_args(false)
        ->type_name("FILE");
    command
        ->add_option("--steering", options->steeringDegrees,
                     "Tolerance of controls that turn; without it that of the rig file, else 2")
        ->type_name("DEGREES")
        ->check(CLI::Range(kLeastToleranceDegrees, kMostToleranceDegrees));
    command
        ->add_option("--lever", options->leverDegrees,
                     "Tolerance of levers in degrees; without it that of the rig file, else 5")
        ->type_name("DEGREES")
        ->check(CLI::Range(kLeastToleranceDegrees, kMostToleranceDegrees));
    command
        ->add_option("--travel", options->travelPercent,
                     "Tolerance of all others, of their travel; without it that of the rig file, else 3")
        ->type_name("PERCENT")
        ->check(CLI::Range(kLeastTolerancePercent, kMostTolerancePercent));
    command->add_option("--patience", options->patience, "How long one control is waited for")
        ->type_name("SECONDS")
        ->capture_default_str()
        ->check(CLI::Range(1.0, 3600.0));
    command->add_option("--sheet", options->sheetFile, "Write the check sheet at the end")->type_name("FILE.html");
    command->add_flag("--unstored", options->isUnstored, "Keep no evidence");
    command->add_flag("--json", options->asJson, "JSON lines");
    command->callback([options, &line] {
        line.chosen = [options, &line] {
            return walkRig(line, *options);
        };
    });
}

} // namespace flowhand
