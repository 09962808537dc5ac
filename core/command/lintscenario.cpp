#include "command/lintscenario.h"

#include <filesystem>

#include "aircraft/practice.h"
#include "base/names.h"
#include "session/hands.h"

namespace flowhand {

namespace fs = std::filesystem;

namespace {

void checkFlows(const Scenario& scenario, const AircraftFolder& folder, Problems& problems) {
    std::vector<std::string> known;
    for (const Flow& flow : folder.flows)
        known.push_back(flow.id);
    for (const std::string& flow : scenario.flows)
        if (folder.flow(flow) == nullptr)
            problems.error("unknown-flow",
                           "there is no flow '" + flow + "', or it has an error; there are " + joined(known, ", ") +
                               nearestHint(flow, known),
                           scenario.flowsWhere);
}

void checkMotion(const Scenario& scenario, const AircraftFolder& folder, Problems& problems) {
    const Flow* first = folder.flow(scenario.flows.front());
    const std::string& place =
        scenario.startPlace.empty() && first != nullptr ? first->startPlace : scenario.startPlace;
    const Result<PracticeAircraft> practice = PracticeAircraft::create(*folder.aircraft, place, scenario.surroundings);
    if (!practice) {
        problems.error(practice.error().code, practice.error().message,
                       scenario.startWhere.file.empty() ? SourcePlace{scenario.file} : scenario.startWhere);
        return;
    }
    for (const ScenarioEvent& event : scenario.events)
        if (!event.route.empty() && !practice->hasRoute(event.route))
            problems.error("unknown-route", "the ground plan has no route '" + event.route + "'", event.place);
}

std::size_t checkHands(const Scenario& scenario, const AircraftFolder& folder, Problems& problems) {
    std::size_t files = 0;
    std::error_code failed;
    for (const fs::directory_entry& entry :
         fs::directory_iterator(fs::path(scenario.file).replace_extension(), failed)) {
        ++files;
        const Flow* flow = folder.flow(entry.path().stem().string());
        if (flow == nullptr || entry.path().extension() != ".hands")
            problems.error(
                "no-flow-for-hands",
                "there is no flow of this name that could be flown by these hands; has the flow an error, or "
                "another name?",
                {entry.path().string()});
        else
            (void)Hands::load(entry.path().string(), *folder.aircraft, *flow, problems);
    }
    return files;
}

} // namespace

std::size_t lintScenario(const Scenario& scenario, const AircraftFolder& folder, Problems& problems) {
    checkFlows(scenario, folder, problems);
    checkMotion(scenario, folder, problems);
    return checkHands(scenario, folder, problems);
}

} // namespace flowhand
