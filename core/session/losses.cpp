#include "session/losses.h"

#include <cstdio>

namespace flowhand {

namespace {

Phrase suspectedRemark(const DeviceLosses& device) {
    return (device.suspected == 1 ? phrase("{1} report may have been lost from {2}: the computer was too busy to read "
                                           "them in time.")
                                  : phrase("{1} reports may have been lost from {2}: the computer was too busy to read "
                                           "them in time."))
        .with(std::to_string(device.suspected), device.device);
}

Phrase replacedRemark(const DeviceLosses& device) {
    return (device.replaced == 1 ? phrase("{1} change of {2} gave way to newer ones before they could be taken.")
                                 : phrase("{1} changes of {2} gave way to newer ones before they could be taken."))
        .with(std::to_string(device.replaced), device.device);
}

} // namespace

std::vector<Phrase> lossRemarks(const RunLosses& losses) {
    std::vector<Phrase> remarks;
    for (const DeviceLosses& device : losses.devices) {
        if (device.suspected > 0)
            remarks.push_back(suspectedRemark(device));
        if (device.replaced > 0)
            remarks.push_back(replacedRemark(device));
    }
    if (losses.lateChanges > 0) {
        char most[32];
        std::snprintf(most, sizeof most, "%.1f ms", 1000.0 * seconds(losses.latest));
        remarks.push_back((losses.lateChanges == 1
                               ? phrase("{1} change of the controls came in late, by at most {2}.")
                               : phrase("{1} changes of the controls came in late, by at most {2}."))
                              .with(std::to_string(losses.lateChanges), most));
    }
    return remarks;
}

} // namespace flowhand
