#include "session/attention.h"

namespace flowhand {

void attendToDue(DeviceHub& devices, const Rig& rig, const Flow& flow, const std::vector<StepResult>& results) {
    std::vector<SignalId> wanted;
    for (std::size_t i = 0; i < results.size(); ++i)
        if (results[i].state == StepState::Due || results[i].state == StepState::Seen)
            wanted.insert(wanted.end(), flow.steps[i].controls.begin(), flow.steps[i].controls.end());
    for (std::size_t i = 0; i < rig.devices().size(); ++i) {
        const auto device = static_cast<DeviceIndex>(i);
        devices.attendTo(device, rig.inputsOf(device, wanted));
    }
}

} // namespace flowhand
