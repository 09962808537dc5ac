#include "command/feedtext.h"

#include <algorithm>
#include <cstdio>
#include <utility>
#include <vector>

#include "base/names.h"

namespace flowhand {

namespace {

std::string number(const char* format, double value) {
    char text[32];
    std::snprintf(text, sizeof text, format, value);
    return text;
}

Phrase countOf(const Phrase& what, std::uint64_t count) {
    return phrase("{1} {2}").with(what, std::to_string(count));
}

} // namespace

Phrase feedText(const FeedStatus& status) {
    if (!status.problem.empty())
        return phrase("nothing can come: {1}").with(status.problem);
    if (!status.silent)
        return phrase("nothing heard yet");
    if (!status.isHeard && seconds(*status.silent) >= seconds(FeedIntake::kLostAfter))
        return phrase("silent for {1} s").with(number("%.0f", seconds(*status.silent)));
    std::vector<Phrase> parts{phrase("{1} messages/s").with(number("%.3g", status.rate))};
    if (status.own)
        parts.push_back(phrase("clock {1} s").with(number("%.1f", seconds(*status.own))));
    if (status.delay)
        parts.push_back(phrase("delay {1} ms").with(number("%.0f", 1000.0 * seconds(*status.delay))));
    return joined(parts, ", ");
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

Phrase feedCounts(const FeedTally& tally) {
    const std::pair<Phrase, std::uint64_t> counts[] = {
        {phrase("malformed"), tally.malformed},    {phrase("bad checksum"), tally.badChecksum},
        {phrase("oversized"), tally.oversized},    {phrase("unknown names"), tally.unknownNames},
        {phrase("refused values"), tally.refused}, {phrase("out of time"), tally.backwards},
        {phrase("from others"), tally.foreign},    {phrase("dropped"), tally.dropped}};
    std::vector<Phrase> parts;
    for (const auto& [name, count] : counts)
        if (count > 0)
            parts.push_back(countOf(name, count));
    return joined(parts, ", ");
}

} // namespace flowhand
