#include "procedure/floworder.h"

#include <algorithm>
#include <tuple>

#include "procedure/phase.h"

namespace flowhand {

void putInOrder(AircraftFolder& folder) {
    std::vector<std::string> listed;
    if (const TomlNode* list = folder.aircraft->toml.root().find(kFlowOrderKey))
        for (const TomlNode& item : list->items)
            listed.push_back(item.text);
    const auto place = [&](const Flow& flow) {
        return std::tuple(findPhase(flow.phaseFrom), std::find(listed.begin(), listed.end(), flow.id),
                          findPhase(flow.phaseTo));
    };
    std::stable_sort(folder.flows.begin(), folder.flows.end(), [&](const Flow& a, const Flow& b) {
        return place(a) < place(b);
    });
}

} // namespace flowhand
