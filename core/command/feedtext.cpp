#include "command/feedtext.h"

#include <algorithm>
#include <cstdio>
#include <utility>
#include <vector>

#include "base/names.h"

namespace flowhand {

std::string feedText(const FeedStatus& status) {
    if (!status.problem.empty())
        return "nothing can come: " + status.problem;
    if (!status.silent)
        return "nothing heard yet";
    char text[96];
    if (!status.isHeard && seconds(*status.silent) >= seconds(FeedIntake::kLostAfter)) {
        std::snprintf(text, sizeof text, "silent for %.0f s", seconds(*status.silent));
        return text;
    }
    std::snprintf(text, sizeof text, "%.3g messages/s", status.rate);
    std::string all = text;
    if (status.own) {
        std::snprintf(text, sizeof text, ", clock %.1f s", seconds(*status.own));
        all += text;
    }
    if (status.delay) {
        std::snprintf(text, sizeof text, ", delay %.0f ms", 1000.0 * seconds(*status.delay));
        all += text;
    }
    return all;
}

std::string feedValues(const FeedStatus& status, const Aircraft& aircraft) {
    std::vector<std::string> values;
    for (std::size_t i = 0; i < status.values.size(); ++i)
        if (status.values[i].isKnown())
            values.push_back(aircraft.signals.all()[i].label + " " +
                             valueText(aircraft.signals.all()[i], status.values[i]));
    return joined(values, ", ");
}

const AircraftFolder* talkativeAircraft(const std::vector<AircraftFolder>& library) {
    const auto motion = [](const AircraftFolder& folder) {
        return folder.aircraft->signals.size() - folder.aircraft->controls.size();
    };
    const auto most = std::max_element(library.begin(), library.end(), [&](const auto& a, const auto& b) {
        return motion(a) < motion(b);
    });
    return most != library.end() ? &*most : nullptr;
}

std::string feedCounts(const FeedTally& tally) {
    const std::pair<const char*, std::uint64_t> counts[] = {
        {"malformed", tally.malformed},        {"bad checksum", tally.badChecksum}, {"oversized", tally.oversized},
        {"unknown names", tally.unknownNames}, {"refused values", tally.refused},   {"out of time", tally.backwards},
        {"from others", tally.foreign},        {"dropped", tally.dropped}};
    std::vector<std::string> parts;
    for (const auto& [name, count] : counts)
        if (count > 0)
            parts.push_back(std::string(name) + " " + std::to_string(count));
    return joined(parts, ", ");
}

} // namespace flowhand
