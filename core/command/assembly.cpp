#include "command/assembly.h"

#include <algorithm>
#include <chrono>
#include <filesystem>

#include "base/names.h"
#include "command/command.h"

namespace flowhand {

namespace fs = std::filesystem;

namespace {

RunHeader headerOf(const RunWish& wish) {
    using namespace std::chrono;
    RunHeader header;
    header.startedUnixMillis = duration_cast<milliseconds>(system_clock::now().time_since_epoch()).count();
    header.pilot = wish.pilot;
    header.help = wish.help;
    header.programVersion = FLOWHAND_VERSION;
    header.aircraftFolder = wish.aircraft->folder;
    header.aircraftSource = wish.aircraft->toml.source();
    header.flowId = wish.flow->id;
    header.flowTitle = wish.flow->title;
    header.flowFile = wish.flow->file;
    header.flowSource = wish.flow->source;
    header.motionSource = "practice aircraft";
    header.controlNames = {""};
    header.setup.ownSeat = wish.seat;
    header.setup.isSolo = wish.isSolo;
    header.setup.seed = wish.seed;
    header.setup.partnerErrorRate = wish.partnerErrorRate;
    header.setup.latency = wish.latency;
    return header;
}

/// The rig's facts, and for what it lacks those of a control on screen or in a script: no noise, its whole travel.
std::vector<ControlFacts> factsOf(const Aircraft& aircraft, const std::optional<Rig>& rig, bool isSimulated) {
    std::vector<ControlFacts> facts(aircraft.controls.size());
    if (rig)
        facts = rig->facts();
    for (const CockpitControl& control : aircraft.controls) {
        ControlFacts& fact = facts[indexOf(control.signal)];
        if (fact.isWired)
            continue;
        const Signal& signal = aircraft.signals[control.signal];
        fact.isSimulated = isSimulated;
        fact.range = signal.highest - signal.lowest;
        fact.isMomentary = control.kind == ControlKind::Button;
        fact.controlName = signal.label;
    }
    return facts;
}

Result<Playback> loadRecordings(const std::vector<DeviceWish>& wishes, const std::vector<std::string>& files) {
    std::vector<NamedRecording> recordings;
    for (const std::string& file : files) {
        Result<Recording> recording = loadRecording(file);
        if (!recording)
            return tl::unexpected(recording.error());
        recordings.push_back({file, std::move(*recording)});
    }
    return playBack(wishes, recordings);
}

/// What moves the rig's controls: its devices, or recordings of them.
Status addDevices(AssembledRun& run, const RunWish& wish, HidSystem& system, const Clock& clock) {
    const std::vector<DeviceWish>& wishes = run.parts.rig->devices();
    if (!wish.recordings.empty()) {
        Result<Playback> playback = loadRecordings(wishes, wish.recordings);
        if (!playback)
            return tl::unexpected(playback.error());
        run.parts.playback = std::move(*playback);
        run.parts.header.rigTitle += " (recorded)";
        return {};
    }
    Result<std::unique_ptr<DeviceHub>> hub = DeviceHub::open(system, clock, run.origin, wishes);
    if (!hub)
        return tl::unexpected(hub.error());
    run.devices = std::move(*hub);
    run.parts.devices = run.devices.get();
    return {};
}

Status addRig(AssembledRun& run, const RunWish& wish, HidSystem& system, const Clock& clock) {
    Problems problems;
    run.parts.rig = Rig::load(wish.rigFile, wish.aircraft->signals, wish.aircraft->controls.size(), problems);
    if (!run.parts.rig)
        return tl::unexpected(allErrors(problems));
    const Rig& rig = *run.parts.rig;
    run.parts.header.rigTitle = rig.title();
    run.parts.header.rigSource = rig.source();
    run.parts.header.controlNames = rig.controlNames();
    for (const Problem& warning : problems.all())
        run.remarks.push_back(describe(warning.error));
    run.remarks.insert(run.remarks.end(), rig.remarks().begin(), rig.remarks().end());
    return addDevices(run, wish, system, clock);
}

} // namespace

Result<AssembledRun> assembleRun(const RunWish& wish, Store* store, HidSystem& system, const Clock& clock) {
    const std::vector<std::string>& seats = wish.aircraft->seats;
    if (std::find(seats.begin(), seats.end(), wish.seat) == seats.end())
        return failure("unknown-seat", wish.aircraft->title + " has no seat '" + wish.seat + "'; it has " +
                                           joined(seats, ", ") + nearestHint(wish.seat, seats));
    AssembledRun run;
    run.origin = wholeTick(clock.now());
    run.parts.aircraft = wish.aircraft;
    run.parts.flow = wish.flow;
    run.parts.header = headerOf(wish);
    if (!wish.rigFile.empty())
        if (const Status added = addRig(run, wish, system, clock); !added)
            return tl::unexpected(added.error());
    if (!wish.handsFile.empty()) {
        Problems problems;
        run.parts.hands = Hands::load(wish.handsFile, *wish.aircraft, *wish.flow, problems);
        if (!run.parts.hands)
            return tl::unexpected(allErrors(problems));
    }
    Result<PracticeAircraft> practice = PracticeAircraft::create(*wish.aircraft, wish.flow->startPlace);
    if (!practice)
        return tl::unexpected(practice.error());
    run.parts.practice.emplace(std::move(*practice));
    const bool isSimulated = wish.hasScreenControls || run.parts.hands.has_value();
    run.parts.header.setup.controls = factsOf(*wish.aircraft, run.parts.rig, isSimulated);
    if (store != nullptr) {
        run.recorder = store->recorder();
        run.parts.recorder = run.recorder.get();
    }
    return run;
}

Result<FoundFlow> findFlow(const std::vector<AircraftFolder>& library, const std::string& name) {
    std::vector<std::string> known;
    std::vector<FoundFlow> found;
    std::error_code problem;
    for (const AircraftFolder& folder : library) {
        for (const Flow& flow : folder.flows) {
            const std::string whole = folder.aircraft->folder + "/" + flow.id;
            known.push_back(whole);
            if (name == flow.id || name == whole || fs::equivalent(name, flow.file, problem))
                found.push_back({folder.aircraft.get(), &flow});
        }
    }
    if (known.empty())
        return failure("unknown-flow",
                       "there is no flow at all; is this the folder above the folders of the aircraft?");
    if (found.empty())
        return failure("unknown-flow",
                       "there is no flow '" + name + "'; there are " + joined(known, ", ") + nearestHint(name, known));
    if (found.size() > 1)
        return failure("unknown-flow",
                       "several aircraft have a flow '" + name + "'; write the aircraft too, as in " + known.front());
    return found.front();
}

std::string demonstrationOf(const Flow& flow) {
    std::error_code problem;
    const fs::path hands = fs::path(flow.file).parent_path() / "hands" / (flow.id + ".hands");
    return fs::exists(hands, problem) ? hands.string() : std::string();
}

} // namespace flowhand
