#include "progress/progress.h"

#include <algorithm>
#include <map>

namespace flowhand {

Phrase forgettingNote() {
    return phrase("The plan follows a forgetting model, half-life regression (Settles and Meeder 2016), measured on "
                  "words of a language. For flows and the skill of the hand it is unproven: it says what to fly first, "
                  "not what you can still do.");
}

Progress progressOf(const std::vector<PractisedRun>& runs, const std::vector<KnownFlow>& known, const Moment& now) {
    std::map<FlowName, std::vector<const PractisedRun*>> byFlow;
    for (const PractisedRun& run : runs)
        byFlow[run.flow].push_back(&run);
    Progress progress;
    for (const KnownFlow& each : known) {
        const auto flown = byFlow.find(each.flow);
        if (flown == byFlow.end())
            continue;
        progress.flows.push_back(flowProgress(flown->second));
        byFlow.erase(flown);
    }
    for (const auto& left : byFlow)
        progress.flows.push_back(flowProgress(left.second));
    progress.plan = planOf(progress.flows, known, now);
    return progress;
}

std::vector<KnownFlow> knownFlows(const std::vector<AircraftFolder>& library) {
    std::vector<KnownFlow> known;
    for (const AircraftFolder& folder : library)
        for (const Flow& flow : folder.flows) {
            KnownFlow each;
            each.flow.aircraftFolder = folder.aircraft->folder;
            each.flow.flowId = flow.id;
            each.title = flow.title;
            each.isAbnormal = flow.abnormal.has_value();
            known.push_back(std::move(each));
        }
    return known;
}

} // namespace flowhand
