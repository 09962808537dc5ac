// What a step of the practice aircraft costs, of each of the three parked, rolling and flying, and how much faster than
// real time flows and a flight from gate to gate are flown and judged without a window. Goals: a step under 2 us; 5,000
// times faster than real time.
#include <algorithm>
#include <chrono>
#include <cstdio>
#include <filesystem>
#include <string>
#include <vector>

#include "aircraft/practice.h"
#include "base/textfile.h"
#include "procedure/library.h"
#include "session/runloop.h"

using namespace flowhand;

namespace {

constexpr int kSteps = 180000;    // 30 minutes of flight
constexpr double kStepGoal = 2.0; // us
constexpr double kFasterGoal = 5000.0;
constexpr Duration kLongestFlow = std::chrono::minutes(15);

const char* verdict(bool isMet) {
    return isMet ? "met" : "missed";
}

bool measure(const Aircraft& aircraft, const std::string& place, double lever) {
    Result<PracticeAircraft> practice = PracticeAircraft::create(aircraft, place);
    if (!practice) {
        std::fprintf(stderr, "%s\n", describe(practice.error()).c_str());
        return false;
    }
    for (const char* name : {"thrust_lever_1", "thrust_lever_2", "power_lever_1", "power_lever_2", "throttle"})
        if (const std::optional<SignalId> id = aircraft.signals.find(name))
            practice->take({Time{}, *id, Value::number(lever), Actor::Hand, Origin::Script, kNoControl});
    std::vector<Sample> motion;
    std::size_t samples = 0;
    const auto start = std::chrono::steady_clock::now();
    for (int i = 0; i < kSteps; ++i) {
        motion.clear();
        practice->step(motion);
        samples += motion.size();
    }
    const std::chrono::duration<double, std::micro> took = std::chrono::steady_clock::now() - start;
    const double each = took.count() / kSteps;
    const double faster = seconds(PracticeAircraft::kStep) * 1e6 / each;
    std::printf(
        "%-15s %-14s 30 min: %6.3f us a step (goal: under %.0f, %s), %6.0f times real time, %.2f samples a step\n",
        aircraft.folder.c_str(), place.c_str(), each, kStepGoal, verdict(each < kStepGoal), faster,
        static_cast<double>(samples) / kSteps);
    return true;
}

std::vector<ControlFacts> simulated(const Aircraft& aircraft) {
    std::vector<ControlFacts> facts;
    for (const CockpitControl& control : aircraft.controls) {
        const Signal& signal = aircraft.signals[control.signal];
        ControlFacts fact;
        fact.isSimulated = true;
        fact.range = signal.highest - signal.lowest;
        fact.isMomentary = control.kind == ControlKind::Button;
        facts.push_back(std::move(fact));
    }
    return facts;
}

struct Flown {
    double run = 0.0;  ///< s of the run
    double took = 0.0; ///< s
};

std::string handsOf(const Flow& flow) {
    const std::filesystem::path hands = std::filesystem::path(flow.file).parent_path() / "hands" / (flow.id + ".hands");
    return readFile(hands.string()).value_or(std::string());
}

/// The flow by its hands, judged and scored, until it ends; nothing when it has none.
Flown fly(const AircraftFolder& folder, const Flow& flow) {
    const std::string hands = handsOf(flow);
    Problems problems;
    RunParts parts;
    parts.aircraft = folder.aircraft.get();
    parts.flow = &flow;
    if (!hands.empty())
        parts.hands = Hands::parse(hands, flow.id + ".hands", *folder.aircraft, flow, problems);
    Result<PracticeAircraft> practice = PracticeAircraft::create(*folder.aircraft, flow.startPlace);
    if (!parts.hands || !practice)
        return {};
    parts.practice.emplace(std::move(*practice));
    parts.header.setup.ownSeat = folder.aircraft->seats.front();
    parts.header.setup.isSolo = true;
    parts.header.setup.controls = simulated(*folder.aircraft);
    const auto start = std::chrono::steady_clock::now();
    RunLoop loop(std::move(parts));
    loop.command(CommandKind::Start);
    Time time{};
    while (!loop.isEnded() && time < kLongestFlow)
        loop.advance(time += std::chrono::seconds(1));
    return {seconds(time), std::chrono::duration<double>(std::chrono::steady_clock::now() - start).count()};
}

Flown operator+(const Flown& a, const Flown& b) {
    return {a.run + b.run, a.took + b.took};
}

void tell(const char* what, const Flown& flown) {
    const double faster = flown.run / flown.took;
    std::printf("%s, judged: %.0f s flown in %.3f s, %.0f times real time (goal: %.0f, %s)\n", what, flown.run,
                flown.took, faster, kFasterGoal, verdict(faster >= kFasterGoal));
}

/// From gate to gate: the normal flows and checklists of the first seat, in the order of the flight.
Flown flyGateToGate(const AircraftFolder& folder) {
    Flown all;
    for (const Flow& flow : folder.flows)
        if (!flow.abnormal && !flow.id.ends_with("_first_officer"))
            all = all + fly(folder, flow);
    return all;
}

} // namespace

int main() {
    Problems problems;
    const std::vector<AircraftFolder> library = loadLibrary(PROCEDURES, problems);
    bool isWhole = !library.empty();
    for (const AircraftFolder& folder : library)
        isWhole = isWhole && measure(*folder.aircraft, "stand", 0.0) && measure(*folder.aircraft, "line_up", 20.0) &&
                  measure(*folder.aircraft, "line_up", 100.0);
    Flown all;
    for (const AircraftFolder& folder : library)
        for (const Flow& flow : folder.flows)
            all = all + fly(folder, flow);
    tell("flows of all aircraft by their hands", all);
    for (const AircraftFolder& folder : library)
        if (folder.aircraft->folder == "twin_jet")
            tell("twin_jet from gate to gate", flyGateToGate(folder));
    return isWhole ? 0 : 1;
}
