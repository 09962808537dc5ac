#include "command/assembly.h"

#include <algorithm>
#include <chrono>

#include "base/names.h"
#include "command/command.h"
#include "command/flowsearch.h"
#include "session/onscreenfacts.h"
#include "session/scenariowatch.h"
#include "session/slowtime.h"

namespace flowhand {

namespace {

const std::string& seatOf(const RunWish& wish) {
    return wish.seat.empty() && !wish.aircraft->seats.empty() ? wish.aircraft->seats.front() : wish.seat;
}

std::string scenarioPart(const RunWish& wish, int part) {
    return wish.scenario != nullptr ? wish.scenario->title + ", part " + std::to_string(part) : std::string();
}

void setFlow(RunHeader& header, const Flow& flow) {
    header.flowId = flow.id;
    header.flowTitle = flow.title;
    header.flowFile = flow.file;
    header.flowSource = flow.source;
}

std::int64_t unixMillisNow() {
    using namespace std::chrono;
    return duration_cast<milliseconds>(system_clock::now().time_since_epoch()).count();
}

RunHeader headerOf(const RunWish& wish) {
    RunHeader header;
    header.startedUnixMillis = unixMillisNow();
    header.pilot = wish.pilot;
    header.help = wish.help;
    header.programVersion = FLOWHAND_VERSION;
    header.aircraftFolder = wish.aircraft->folder;
    header.aircraftSource = wish.aircraft->toml.source();
    setFlow(header, *wish.flow);
    header.scenario = scenarioPart(wish, 1);
    header.controlNames = {""};
    header.setup.ownSeat = seatOf(wish);
    header.setup.isSolo = wish.isSolo;
    header.setup.seed = wish.seed;
    header.setup.partnerErrorRate = wish.partnerErrorRate;
    header.setup.latency = wish.latency;
    if (wish.scenario != nullptr)
        header.setup.events = setupEvents(*wish.scenario);
    return header;
}

/// The rig's facts, and for what it lacks those of a control on screen or in a script: no noise, its whole travel.
std::vector<ControlFacts> factsOf(const Aircraft& aircraft, const std::optional<Rig>& rig, bool isSimulated) {
    std::vector<ControlFacts> facts = onScreenFacts(aircraft);
    const std::vector<ControlFacts>* wired = rig ? &rig->facts() : nullptr;
    for (std::size_t i = 0; i < facts.size(); ++i) {
        facts[i].isSimulated = isSimulated;
        if (wired != nullptr && (*wired)[i].isWired)
            facts[i] = (*wired)[i];
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
        run.remarks.emplace_back(describe(warning.error));
    run.remarks.insert(run.remarks.end(), rig.remarks().begin(), rig.remarks().end());
    return addDevices(run, wish, system, clock);
}

/// The partner steers, brakes and flies as the flow's demonstration does; nothing for whoever flies alone.
Result<std::optional<Hands>> partnerHandsOf(const RunWish& wish, const Flow& flow) {
    const std::string file = wish.isSolo ? std::string() : demonstrationOf(flow, wish.scenario, wish.seed);
    std::optional<Hands> hands;
    if (file.empty())
        return hands;
    Problems problems;
    hands = Hands::load(file, *wish.aircraft, flow, problems);
    if (!hands)
        return tl::unexpected(allErrors(problems));
    return hands;
}

Status addFeed(AssembledRun& run, const RunWish& wish, const Clock& clock) {
    Result<MotionSources> sources = MotionSources::choose(*wish.aircraft, !wish.feed.empty(), wish.sources);
    if (!sources)
        return tl::unexpected(sources.error());
    run.parts.sources = std::move(*sources);
    if (!wish.feed.empty()) {
        const Result<FeedSpec> spec = FeedSpec::parse(wish.feed);
        if (!spec)
            return tl::unexpected(spec.error());
        const FeedSignals signals{&wish.aircraft->signals, wish.aircraft->controls.size()};
        Result<std::unique_ptr<Feed>> feed =
            Feed::open(*spec, signals, {clock, run.origin}, [devices = run.devices.get(), bell = run.bell.get()] {
                if (devices != nullptr)
                    devices->wake();
                else
                    bell->ring();
            });
        if (!feed)
            return tl::unexpected(feed.error());
        run.feed = std::move(*feed);
        run.parts.feed = run.feed.get();
        if (spec->isOpenToAll())
            run.remarks.push_back(
                phrase("{1} hears every computer that reaches this one; from:SENDER behind the port hears one.")
                    .with(spec->title()));
    }
    run.parts.header.motionSource =
        run.parts.sources.title(*wish.aircraft, run.feed ? run.feed->title() : std::string());
    return {};
}

Status addPractice(AssembledRun& run, const RunWish& wish) {
    if (wish.slowness > 1 && !wish.feed.empty())
        return failure("slow-feed", "a feed cannot be slowed: leave out --slow, or fly by the practice aircraft");
    run.parts.slowness = wish.slowness;
    run.parts.header.setup.timeScale = SlowTime(wish.slowness).scale();
    const bool hasPlace = wish.scenario != nullptr && !wish.scenario->startPlace.empty();
    const std::string& usual = hasPlace ? wish.scenario->startPlace : wish.flow->startPlace;
    const std::string& place = wish.place.empty() ? usual : wish.place;
    const Surroundings surroundings = wish.scenario != nullptr ? wish.scenario->surroundings : Surroundings{};
    Result<PracticeAircraft> practice = PracticeAircraft::create(*wish.aircraft, place, surroundings);
    if (!practice)
        return tl::unexpected(practice.error());
    if (!run.parts.sources.usesPractice())
        return {};
    if (!wish.place.empty())
        run.parts.header.motionSource += " from " + wish.place;
    run.parts.practice.emplace(std::move(*practice));
    return {};
}

/// What follows a flow that has ended: what its outcome says, or the scenario's next. A demonstration goes on as far
/// as there are hands for it.
Successor successorOf(const RunWish& wish, Store* store, const RunHeader& first) {
    const std::vector<std::string> flows =
        wish.scenario != nullptr ? wish.scenario->flows : std::vector<std::string>{wish.flow->id};
    const bool isScripted = !wish.handsFile.empty() || !wish.recordings.empty();
    return [wish, store, first, isScripted, order = FlowOrder(flows),
            part = 1](const Flow& ended, const std::string& outcome) mutable -> std::optional<NextRun> {
        const Flow* flow = wish.folder->flow(order.after(ended, outcome));
        if (flow == nullptr)
            return std::nullopt;
        NextRun next;
        next.flow = flow;
        const std::string script =
            wish.isDemonstration ? demonstrationOf(*flow, wish.scenario, wish.seed) : std::string();
        if (!script.empty()) {
            Problems problems;
            next.hands = Hands::load(script, *wish.aircraft, *flow, problems);
        }
        if (isScripted && !next.hands && !wish.hasScreenControls)
            return std::nullopt;
        if (Result<std::optional<Hands>> partner = partnerHandsOf(wish, *flow))
            next.partnerHands = std::move(*partner);
        next.header = first;
        next.header.setup.hasPartnerHands = next.partnerHands.has_value();
        setFlow(next.header, *flow);
        next.header.scenario = scenarioPart(wish, ++part);
        next.header.startedUnixMillis = unixMillisNow();
        if (store != nullptr)
            next.recorder = store->recorder();
        return next;
    };
}

} // namespace

void AssembledRun::noteNotStored(const Error& why) {
    remarks.push_back(phrase("This run is not stored. {1}").with(describe(why)));
}

Result<AssembledRun> assembleRun(const RunWish& wish, Store* store, HidSystem& system, const Clock& clock) {
    const std::vector<std::string>& seats = wish.aircraft->seats;
    if (seats.empty() || std::find(seats.begin(), seats.end(), seatOf(wish)) == seats.end())
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
    Result<std::optional<Hands>> partner = partnerHandsOf(wish, *wish.flow);
    if (!partner)
        return tl::unexpected(partner.error());
    run.parts.partnerHands = std::move(*partner);
    run.parts.header.setup.hasPartnerHands = run.parts.partnerHands.has_value();
    if (const Status added = addFeed(run, wish, clock); !added)
        return tl::unexpected(added.error());
    if (const Status added = addPractice(run, wish); !added)
        return tl::unexpected(added.error());
    run.parts.scenario = wish.scenario;
    const bool isSimulated = wish.hasScreenControls || run.parts.hands.has_value();
    run.parts.header.setup.controls = factsOf(*wish.aircraft, run.parts.rig, isSimulated);
    if (store != nullptr) {
        run.recorder = store->recorder();
        run.parts.recorder = run.recorder.get();
    }
    if (wish.folder != nullptr)
        run.parts.successor = successorOf(wish, store, run.parts.header);
    return run;
}

} // namespace flowhand
