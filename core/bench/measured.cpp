#include "bench/measured.h"

#include <algorithm>
#include <cmath>
#include <optional>

#include <nlohmann/json.hpp>

#include "base/phrasejson.h"

namespace flowhand {

namespace {

using Json = nlohmann::ordered_json;

std::optional<Soundness> soundnessNamed(const std::string& name) {
    for (const Soundness soundness : {Soundness::Good, Soundness::Unmeasured, Soundness::Caution, Soundness::Bad})
        if (name == soundnessName(soundness))
            return soundness;
    return std::nullopt;
}

std::string textIn(const Json& json, const char* member) {
    const auto found = json.find(member);
    return found != json.end() && found->is_string() ? found->get<std::string>() : std::string();
}

/// Empty where there are none.
Phrase wordsIn(const Json& json, const char* member) {
    const auto found = json.find(member);
    if (found == json.end())
        return {};
    try {
        return phraseFrom(*found);
    } catch (const Json::exception&) {
        return {};
    }
}

/// Below these stand objects by input, by device, and the switch of a control.
bool isGroup(const std::string& name) {
    return name == "axes" || name == "contacts" || name == "switch" || name == "devices";
}

void collect(const Json& json, const std::string& part, std::vector<Finding>& all) {
    for (const auto& [name, member] : json.items()) {
        if (name != "findings") {
            // What followed for the filters was of the rig file as it was then.
            if (member.is_object() && name != "filters")
                collect(member, isGroup(name) ? std::string() : name, all);
            continue;
        }
        for (const Json& finding : member) {
            const std::optional<Soundness> soundness = soundnessNamed(textIn(finding, "verdict"));
            if (!soundness)
                continue;
            Phrase text = wordsIn(finding, "text");
            all.push_back({textIn(finding, "check"), *soundness,
                           part.empty() ? std::move(text) : phrase("{1}: {2}").with(part, std::move(text)),
                           wordsIn(finding, "reason"), wordsIn(finding, "remedy")});
        }
    }
}

template <class Number>
std::optional<Number> optionalIn(const Json& json, const char* member) {
    const Json& found = json.at(member);
    return found.is_null() ? std::nullopt : std::optional(found.get<Number>());
}

Duration millisIn(const Json& json, const char* member) {
    return fromSeconds(json.at(member).get<double>() / 1000);
}

Place placeOf(const Json& json) {
    Place place;
    place.at = json.at("at").get<std::int64_t>();
    place.visits = json.at("visits").get<std::size_t>();
    place.fromBelow = json.at("from_below").get<std::size_t>();
    place.fromAbove = json.at("from_above").get<std::size_t>();
    place.spread = json.at("spread").get<double>();
    place.repeat = json.at("repeat_error").get<double>();
    place.backlash = optionalIn<double>(json, "backlash");
    return place;
}

AxisCalibration axisCalibrationOf(const Json& json) {
    AxisCalibration axis;
    axis.noise = json.at("noise").get<double>();
    axis.low = placeOf(json.at("low"));
    axis.high = placeOf(json.at("high"));
    axis.endBand = json.at("end_band").get<std::int64_t>();
    axis.share = json.at("share_of_converter").get<double>();
    axis.backlash = optionalIn<double>(json, "backlash");
    axis.repeatPercent = json.at("repeat_error_percent").get<double>();
    if (json.contains("centre"))
        axis.centre = CentrePlace{placeOf(json.at("centre")), json.at("centre").at("dead_band").get<std::int64_t>()};
    if (json.contains("idle"))
        axis.idle = placeOf(json.at("idle"));
    if (json.contains("gates"))
        for (const Json& gate : json.at("gates"))
            axis.gates.push_back(
                {gate.at("position").get<std::string>(), placeOf(gate), gate.at("band").get<std::int64_t>()});
    if (json.contains("hysteresis"))
        axis.hysteresis = json.at("hysteresis").get<std::int64_t>();
    if (json.contains("values"))
        for (const Json& value : json.at("values"))
            axis.values.push_back({value.at("value").get<double>(), placeOf(value)});
    if (json.contains("linearity_percent"))
        axis.linearity = optionalIn<double>(json, "linearity_percent");
    return axis;
}

AxisHealth axisHealthOf(const Json& json) {
    AxisHealth axis;
    axis.sigma = json.at("sigma").get<double>();
    axis.peakToPeak = json.at("peak_to_peak").get<double>();
    axis.effectiveBits = json.at("effective_bits").get<double>();
    axis.noiseFreeBits = json.at("noise_free_bits").get<double>();
    axis.travel = json.at("travel").get<double>();
    axis.share = json.at("share_of_converter").get<double>();
    axis.drift = optionalIn<double>(json, "drift");
    axis.restLength = millisIn(json, "rest_ms");
    axis.quantum = json.at("quantum").get<std::int64_t>();
    axis.deadCodes = optionalIn<double>(json, "dead_codes");
    for (const Json& gap : json.at("gaps"))
        axis.gaps.push_back({gap.at("from").get<std::int64_t>(), gap.at("to").get<std::int64_t>(),
                             gap.at("passes").get<std::size_t>()});
    axis.spikes = json.at("spikes").get<std::size_t>();
    axis.largestSpike = json.at("largest_spike").get<double>();
    axis.longestSpike = millisIn(json, "longest_spike_ms");
    axis.hysteresis = optionalIn<double>(json, "hysteresis");
    axis.returnError = optionalIn<double>(json, "return_error");
    axis.linearity = optionalIn<double>(json, "linearity_percent");
    return axis;
}

ContactHealth contactHealthOf(const Json& json) {
    ContactHealth contact;
    contact.changes = json.at("changes").get<std::size_t>();
    contact.meanBounce = millisIn(json, "mean_bounce_ms");
    contact.longestBounce = millisIn(json, "longest_bounce_ms");
    const auto histogram = json.at("bounce_histogram").get<std::vector<std::size_t>>();
    for (std::size_t i = 0; i < contact.histogram.size() && i < histogram.size(); ++i)
        contact.histogram[i] = histogram[i];
    contact.chatter = json.at("chatter").get<std::size_t>();
    contact.shortestState = millisIn(json, "shortest_state_ms");
    return contact;
}

SwitchHealth switchHealthOf(const Json& json) {
    SwitchHealth health;
    health.changes = json.at("changes").get<std::size_t>();
    health.longestNone = millisIn(json, "longest_none_ms");
    health.longestBoth = millisIn(json, "longest_both_ms");
    health.usualNone = millisIn(json, "usual_none_ms");
    health.usualBoth = millisIn(json, "usual_both_ms");
    health.neverClosed = json.at("never_closed").get<std::vector<std::string>>();
    return health;
}

tl::unexpected<Error> damaged(const EvidenceRecord& record, const Json::exception& problem) {
    return failure("damaged-evidence", "the " + record.kind + " of '" + record.control + "' at " +
                                           dateText(record.unixSeconds) + " cannot be read (" + problem.what() +
                                           "); measure it again");
}

} // namespace

std::vector<Finding> findingsIn(const std::string& result) {
    std::vector<Finding> all;
    const Json json = Json::parse(result, nullptr, false);
    if (json.is_object())
        collect(json, {}, all);
    return all;
}

Result<std::vector<AxisCalibration>> calibrationOf(const EvidenceRecord& record) {
    try {
        const Json json = Json::parse(record.result);
        std::vector<AxisCalibration> axes;
        for (const Json& axis : json.at("axes"))
            axes.push_back(axisCalibrationOf(axis));
        return axes;
    } catch (const Json::exception& problem) {
        return damaged(record, problem);
    }
}

Result<ControlHealth> healthOf(const EvidenceRecord& record) {
    try {
        const Json json = Json::parse(record.result);
        ControlHealth health;
        for (const auto& [input, axis] : json.at("axes").items())
            health.axes.emplace_back(input, axisHealthOf(axis));
        for (const auto& [input, contact] : json.at("contacts").items())
            health.contacts.emplace_back(input, contactHealthOf(contact));
        if (json.contains("switch"))
            health.switches.push_back(switchHealthOf(json.at("switch")));
        return health;
    } catch (const Json::exception& problem) {
        return damaged(record, problem);
    }
}

Result<double> repeatErrorOf(const EvidenceRecord& record) {
    try {
        const Json json = Json::parse(record.result);
        double worst = 0.0;
        for (const Json& place : json.at("places"))
            worst = std::max(worst, std::fabs(place.at("error_percent").get<double>()));
        return worst;
    } catch (const Json::exception& problem) {
        return damaged(record, problem);
    }
}

} // namespace flowhand
