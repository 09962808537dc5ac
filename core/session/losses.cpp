#include "session/losses.h"

#include <cstdio>
#include <string_view>

namespace flowhand {

namespace {

/// "1 report", "12 reports".
std::string counted(std::uint64_t count, std::string_view what) {
    return std::to_string(count) + " " + std::string(what) + (count == 1 ? "" : "s");
}

} // namespace

std::vector<std::string> lossRemarks(const RunLosses& losses) {
    std::vector<std::string> remarks;
    for (const DeviceLosses& device : losses.devices) {
        if (device.suspected > 0)
            remarks.push_back(counted(device.suspected, "report") + " may have been lost from " + device.device +
                              ": the computer was too busy to read them in time.");
        if (device.replaced > 0)
            remarks.push_back(counted(device.replaced, "change") + " of " + device.device +
                              " gave way to newer ones before they could be taken.");
    }
    if (losses.lateChanges > 0) {
        char most[32];
        std::snprintf(most, sizeof most, "%.1f ms", 1000.0 * seconds(losses.latest));
        remarks.push_back(counted(losses.lateChanges, "change") + " of the controls came in late, by at most " + most +
                          ".");
    }
    return remarks;
}

} // namespace flowhand
