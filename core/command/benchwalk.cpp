#include <algorithm>
#include <chrono>
#include <map>
#include <memory>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include <nlohmann/json.hpp>

#include "base/names.h"
#include "bench/walkevidence.h"
#include "command/benchcommand.h"
#include "command/inputsource.h"
#include "rig/rig.h"

namespace flowhand {

namespace {

using Json = nlohmann::ordered_json;

struct WalkOptions {
    std::string rigFile;
    std::string aircraftFile;
    std::vector<std::string> signals;
    std::vector<std::string> recordings;
    WalkTolerances tolerances;
    double leverPercent = 3.0;
    double patience = 60.0;
    std::string sheetFile;
    bool isUnstored = false;
    bool asJson = false;
};

/// What the inputs of the rig's devices sent since the control was asked for, for its evidence.
class Traces {
public:
    explicit Traces(const std::vector<DeviceWish>& devices) : m_devices(devices) {}

    void take(const std::string& input, const Reading& reading) {
        RawTrace& trace = m_all[{reading.device, input}];
        trace.changes.push_back({reading.time, reading.raw, reading.isNull});
    }

    /// Of one control's inputs; what they said last before `begin` stands at `begin`.
    [[nodiscard]] std::vector<RawTrace> of(const Control& control, Time begin, Time end,
                                           const std::vector<std::uint64_t>& reports) const {
        std::vector<RawTrace> traces;
        for (const InputRef& input : control.inputs()) {
            const bool isThere = std::any_of(traces.begin(), traces.end(), [&](const RawTrace& trace) {
                return trace.device == m_devices[input.device].name && trace.input == input.name;
            });
            const auto found = m_all.find({input.device, input.name});
            if (isThere || found == m_all.end())
                continue;
            RawTrace trace{m_devices[input.device].name, input.name, begin, end, reports[input.device], {}};
            for (const RawChange& change : found->second.changes) {
                if (change.time > end)
                    break;
                if (change.time <= begin)
                    trace.changes.clear();
                trace.changes.push_back(change);
                trace.changes.back().time = std::max(change.time, begin);
            }
            traces.push_back(std::move(trace));
        }
        return traces;
    }

private:
    const std::vector<DeviceWish>& m_devices;
    std::map<std::pair<DeviceIndex, std::string>, RawTrace> m_all;
};

/// Asks for one control after the other and keeps what was seen. Lives for one command.
class Walker {
public:
    Walker(CommandLine& line, const WalkOptions& options, const Aircraft& aircraft, const RigFile& file, Rig& rig,
           InputSource& source)
        : m_line(line), m_options(options), m_aircraft(aircraft), m_file(file), m_rig(rig), m_source(source),
          m_traces(file.devices), m_reportsBefore(file.devices.size(), 0) {}

    int run(Walk& walk, const std::vector<ControlFingerprint>& fingerprints, const std::vector<Reach>& reaches) {
        tellAsk(walk);
        while (!walk.isDone()) {
            const std::optional<InputNews> news = m_source.next();
            if (!news)
                return stop(walk, fingerprints, reaches);
            take(*news, walk);
            const std::size_t at = static_cast<std::size_t>(&walk.current() - walk.controls().data());
            if (walk.advance(news->now)) {
                if (const Status status = keep(walk.controls()[at], fingerprints, reaches); !status)
                    return complain(m_line, status.error());
                if (!walk.isDone())
                    tellAsk(walk);
            } else {
                tellProgress(walk);
            }
        }
        return walk.isAllConfirmed() ? kExitDone : kExitError;
    }

    /// Which of the source's devices is which of the rig's.
    Status bind() {
        const std::vector<SourceMatch> matches = matchSource(m_source, m_file.devices);
        m_rigDevice.assign(m_source.devices().size(), std::nullopt);
        bool isAny = false;
        for (std::size_t i = 0; i < matches.size(); ++i) {
            if (!matches[i].device) {
                m_line.err << m_file.devices[i].name << ": " << matches[i].why << "\n";
                continue;
            }
            isAny = true;
            m_rigDevice[*matches[i].device] = static_cast<DeviceIndex>(i);
        }
        if (!isAny)
            return failure("no-device", "none of the rig's devices is there; plug them in, and see 'flowhand devices'");
        return {};
    }

private:
    /// The recordings are over, or the person asked for the end: what was asked for is not confirmed.
    int stop(Walk& walk, const std::vector<ControlFingerprint>& fingerprints, const std::vector<Reach>& reaches) {
        const WalkedControl& control = walk.current();
        const std::string missing = walk.ask();
        walk.skip(m_now);
        if (m_source.isRecorded())
            if (const Status status = keep(control, fingerprints, reaches); !status)
                return complain(m_line, status.error());
        return complain(m_line, {"walk-stopped", "the walk stopped early. " + missing, {}});
    }

    void take(const InputNews& news, Walk& walk) {
        m_now = news.now;
        for (const DeviceIndex unit : news.connected) {
            if (!m_rigDevice[unit])
                continue;
            if (const Status status = m_rig.connect(*m_rigDevice[unit], m_source.inputs(unit)); !status)
                m_line.err << describe(status.error()) << "\n";
        }
        for (const std::string& message : news.messages)
            m_line.err << message << "\n";
        std::vector<Sample> samples;
        for (Reading reading : news.readings) {
            const DeviceIndex unit = reading.device;
            if (!m_rigDevice[unit])
                continue;
            reading.device = *m_rigDevice[unit];
            m_traces.take(m_source.inputs(unit)[reading.input].name, reading);
            m_rig.take(reading, samples);
        }
        m_rig.advance(news.now, samples);
        for (const Sample& sample : samples)
            walk.take(sample);
    }

    [[nodiscard]] std::vector<std::uint64_t> reportsNow() const {
        std::vector<std::uint64_t> reports(m_file.devices.size(), 0);
        for (std::size_t unit = 0; unit < m_rigDevice.size(); ++unit)
            if (m_rigDevice[unit])
                reports[*m_rigDevice[unit]] = m_source.reports(static_cast<DeviceIndex>(unit));
        return reports;
    }

    Status keep(const WalkedControl& control, const std::vector<ControlFingerprint>& fingerprints,
                const std::vector<Reach>& reaches) {
        tellOutcome(control);
        std::vector<std::uint64_t> reports = reportsNow();
        std::vector<std::uint64_t> during = reports;
        for (std::size_t i = 0; i < during.size(); ++i)
            during[i] -= m_reportsBefore[i];
        m_reportsBefore = std::move(reports);
        if (m_options.isUnstored)
            return {};
        const auto wall = std::chrono::system_clock::now().time_since_epoch();
        return appendEvidence(
            evidenceFileOf(m_options.rigFile),
            walkEvidence(control, fingerprints[control.control], m_aircraft, reaches, m_options.tolerances,
                         m_source.isRecorded(), std::chrono::duration_cast<std::chrono::seconds>(wall).count(),
                         m_traces.of(*m_file.controls[control.control], control.begin, control.end, during)));
    }

    void tellAsk(const Walk& walk) {
        const std::size_t at = static_cast<std::size_t>(&walk.current() - walk.controls().data());
        m_told = walk.ask();
        if (!m_options.asJson)
            m_line.out << "(" << at + 1 << " of " << walk.controls().size() << ") " << m_told << "\n" << std::flush;
        else
            print({{"control", walk.current().name}, {"ask", m_told}});
    }

    /// Only on a terminal's behalf: what is still open, when that changes.
    void tellProgress(const Walk& walk) {
        if (m_options.asJson || walk.ask() == m_told)
            return;
        m_told = walk.ask();
        m_line.out << "    " << m_told << "\n" << std::flush;
    }

    void tellOutcome(const WalkedControl& control) {
        const bool isConfirmed = control.outcome == WalkOutcome::Confirmed;
        std::vector<std::string> missing;
        for (const WalkedSignal& signal : control.signals)
            if (!signal.isConfirmed)
                missing.push_back(signal.missing);
        if (m_options.asJson) {
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

    void print(const Json& json) {
        m_line.out << json.dump(-1, ' ', false, Json::error_handler_t::replace) << "\n" << std::flush;
    }

    CommandLine& m_line;
    const WalkOptions& m_options;
    const Aircraft& m_aircraft;
    const RigFile& m_file;
    Rig& m_rig;
    InputSource& m_source;
    std::vector<std::optional<DeviceIndex>> m_rigDevice; ///< by the source's device
    Traces m_traces;
    std::vector<std::uint64_t> m_reportsBefore; ///< by the rig's device, when the control was asked for
    std::string m_told;
    Time m_now{};
};

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
    const auto source =
        options.recordings.empty() ? liveSource(*system, clock, file->devices) : recordedSource(options.recordings);
    if (!source)
        return complain(line, source.error());
    Walk walk(*aircraft, *file, reaches, {options.tolerances, fromSeconds(options.patience), *only}, Time{});
    if (walk.isDone())
        return complain(line, {"nothing-to-walk", "none of these controls is wired in this rig", {options.rigFile}});
    Walker walker(line, options, *aircraft, *file, *rig, **source);
    if (const Status status = walker.bind(); !status)
        return complain(line, status.error());
    const int status = walker.run(walk, *fingerprints, reaches);
    if (options.sheetFile.empty())
        return status;
    const int written = writeCheckSheet(line, options.rigFile, *aircraft, options.sheetFile);
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
    command->add_option("--steering", options->tolerances.steeringDegrees, "Tolerance of controls that turn")
        ->type_name("DEGREES")
        ->capture_default_str()
        ->check(CLI::Range(0.01, 90.0));
    command->add_option("--lever", options->tolerances.leverDegrees, "Tolerance of levers in degrees")
        ->type_name("DEGREES")
        ->capture_default_str()
        ->check(CLI::Range(0.01, 90.0));
    command->add_option("--travel", options->leverPercent, "Tolerance of all others, of their travel")
        ->type_name("PERCENT")
        ->capture_default_str()
        ->check(CLI::Range(0.1, 50.0));
    command->add_option("--patience", options->patience, "How long one control is waited for")
        ->type_name("SECONDS")
        ->capture_default_str()
        ->check(CLI::Range(1.0, 3600.0));
    command->add_option("--sheet", options->sheetFile, "Write the check sheet at the end")->type_name("FILE.html");
    command->add_flag("--unstored", options->isUnstored, "Keep no evidence");
    command->add_flag("--json", options->asJson, "JSON lines");
    command->callback([options, &line] {
        line.chosen = [options, &line] {
            options->tolerances.leverShare = options->leverPercent / 100.0;
            return walkRig(line, *options);
        };
    });
}

} // namespace flowhand
