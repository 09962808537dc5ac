#include "bench/results.h"

#include <nlohmann/json.hpp>

#include "base/phrasejson.h"
#include "bench/filteradvice.h"
#include "bench/repeatcheck.h"

namespace flowhand {

namespace {

using Json = nlohmann::ordered_json;

constexpr std::size_t kCheckWidth = 14;
constexpr std::size_t kVerdictWidth = 14;

template <class Number>
Json optional(const std::optional<Number>& number) {
    return number ? Json(*number) : Json(nullptr);
}

Json millis(Duration time) {
    return std::round(seconds(time) * 1e6) / 1e3;
}

Json jsonOf(const Phrase& words, FindingsAs as) {
    return as == FindingsAs::Record ? phraseJson(words) : Json(words.english());
}

Json jsonOf(const std::vector<Finding>& findings, FindingsAs as) {
    Json list = Json::array();
    for (const Finding& finding : findings) {
        Json json{{"check", finding.check}, {"verdict", soundnessName(finding.verdict)}};
        json["text"] = jsonOf(finding.text, as);
        json["reason"] = jsonOf(finding.reason, as);
        json["remedy"] = jsonOf(finding.remedy, as);
        list.push_back(std::move(json));
    }
    return list;
}

Json jsonOf(const Place& place) {
    return {{"at", place.at},
            {"visits", place.visits},
            {"from_below", place.fromBelow},
            {"from_above", place.fromAbove},
            {"spread", place.spread},
            {"repeat_error", place.repeat},
            {"backlash", optional(place.backlash)}};
}

Json jsonOf(const AxisCalibration& calibration, FindingsAs as) {
    Json json{{"noise", calibration.noise},
              {"low", jsonOf(calibration.low)},
              {"high", jsonOf(calibration.high)},
              {"end_band", calibration.endBand},
              {"share_of_converter", calibration.share},
              {"backlash", optional(calibration.backlash)},
              {"repeat_error_percent", calibration.repeatPercent}};
    if (calibration.centre) {
        json["centre"] = jsonOf(calibration.centre->place);
        json["centre"]["dead_band"] = calibration.centre->deadBand;
    }
    if (calibration.idle)
        json["idle"] = jsonOf(*calibration.idle);
    if (!calibration.gates.empty()) {
        json["hysteresis"] = calibration.hysteresis;
        json["gates"] = Json::array();
        for (const GatePlace& gate : calibration.gates) {
            Json place{{"position", gate.position}, {"band", gate.band}};
            place.update(jsonOf(gate.place));
            json["gates"].push_back(std::move(place));
        }
    }
    if (!calibration.values.empty()) {
        json["linearity_percent"] = optional(calibration.linearity);
        json["values"] = Json::array();
        for (const ValuePlace& value : calibration.values) {
            Json place{{"value", value.value}};
            place.update(jsonOf(value.place));
            json["values"].push_back(std::move(place));
        }
    }
    json["findings"] = jsonOf(calibration.findings, as);
    return json;
}

Json jsonOf(const AxisHealth& health, FindingsAs as) {
    Json gaps = Json::array();
    for (const TrackGap& gap : health.gaps)
        gaps.push_back({{"from", gap.from}, {"to", gap.to}, {"passes", gap.passes}});
    return {{"sigma", health.sigma},
            {"peak_to_peak", health.peakToPeak},
            {"effective_bits", health.effectiveBits},
            {"noise_free_bits", health.noiseFreeBits},
            {"travel", health.travel},
            {"share_of_converter", health.share},
            {"drift", optional(health.drift)},
            {"rest_ms", millis(health.restLength)},
            {"quantum", health.quantum},
            {"dead_codes", optional(health.deadCodes)},
            {"gaps", std::move(gaps)},
            {"spikes", health.spikes},
            {"largest_spike", health.largestSpike},
            {"smallest_spike", health.smallestSpike},
            {"longest_spike_ms", millis(health.longestSpike)},
            {"largest_step", health.largestStep},
            {"fastest_per_second", health.fastest},
            {"hysteresis", optional(health.hysteresis)},
            {"return_error", optional(health.returnError)},
            {"linearity_percent", optional(health.linearity)},
            {"findings", jsonOf(health.findings, as)}};
}

Json jsonOf(const ContactHealth& health, FindingsAs as) {
    return {{"changes", health.changes},
            {"mean_bounce_ms", millis(health.meanBounce)},
            {"longest_bounce_ms", millis(health.longestBounce)},
            {"bounce_bins_us", kBounceBinsMicros},
            {"bounce_histogram", health.histogram},
            {"chatter", health.chatter},
            {"shortest_state_ms", millis(health.shortestState)},
            {"findings", jsonOf(health.findings, as)}};
}

Json jsonOf(const SwitchHealth& health, FindingsAs as) {
    return {{"changes", health.changes},
            {"longest_none_ms", millis(health.longestNone)},
            {"longest_both_ms", millis(health.longestBoth)},
            {"usual_none_ms", millis(health.usualNone)},
            {"usual_both_ms", millis(health.usualBoth)},
            {"never_closed", health.neverClosed},
            {"findings", jsonOf(health.findings, as)}};
}

Json jsonOf(const DeviceHealth& health, FindingsAs as) {
    return {{"reports", health.reports},
            {"paced", health.isPaced},
            {"interval_ms", millis(health.interval)},
            {"jitter_ms", millis(health.jitter)},
            {"longest_ms", millis(health.longest)},
            {"dropouts", health.dropouts},
            {"lost", health.lost},
            {"findings", jsonOf(health.findings, as)}};
}

Json jsonOf(const FilterAdvice& advice, FindingsAs as) {
    Json keys = Json::object();
    for (const RigKey& key : advice.keys)
        keys[key.key] = key.value.empty() ? Json(nullptr) : Json(key.value);
    return {{"delay_ms", millis(advice.delay)},
            {"allowed_ms", millis(advice.allowed)},
            {"noise", advice.noise},
            {"keys", std::move(keys)},
            {"findings", jsonOf(advice.findings, as)}};
}

std::string padded(const std::string& text, std::size_t width) {
    return text + std::string(text.size() < width ? width - text.size() : 1, ' ');
}

template <class Health>
void append(const std::vector<std::pair<std::string, Health>>& parts, std::vector<Finding>& all) {
    for (const auto& [input, health] : parts)
        for (Finding finding : health.findings) {
            if (parts.size() > 1)
                finding.text = phrase("{1}: {2}").with(input, std::move(finding.text));
            all.push_back(std::move(finding));
        }
}

} // namespace

std::string calibrationJson(const std::vector<AxisCalibration>& calibrations, FindingsAs as) {
    Json json{{"axes", Json::array()}};
    for (const AxisCalibration& calibration : calibrations)
        json["axes"].push_back(jsonOf(calibration, as));
    return json.dump();
}

std::string repeatCheckJson(const RepeatCheck& check, FindingsAs as) {
    Json json{{"places", Json::array()}};
    for (const CheckedPlace& place : check.places)
        json["places"].push_back({{"place", place.name.english()},
                                  {"in_file", place.inFile},
                                  {"found", jsonOf(place.found)},
                                  {"error_percent", place.percent},
                                  {"reads", optional(place.reads)}});
    json["findings"] = jsonOf(check.findings, as);
    return json.dump(-1, ' ', false, Json::error_handler_t::replace);
}

std::vector<Finding> ControlHealth::findings() const {
    std::vector<Finding> all;
    append(axes, all);
    append(contacts, all);
    for (const SwitchHealth& health : switches)
        all.insert(all.end(), health.findings.begin(), health.findings.end());
    return all;
}

std::string healthJson(const ControlHealth& health, const FilterAdvice& filters, const DeviceHealths& devices,
                       FindingsAs as) {
    Json json{{"axes", Json::object()}, {"contacts", Json::object()}};
    for (const auto& [input, axis] : health.axes)
        json["axes"][input] = jsonOf(axis, as);
    for (const auto& [input, contact] : health.contacts)
        json["contacts"][input] = jsonOf(contact, as);
    if (!health.switches.empty())
        json["switch"] = jsonOf(health.switches.front(), as);
    json["filters"] = jsonOf(filters, as);
    json["devices"] = Json::object();
    for (const auto& [name, device] : devices)
        json["devices"][name] = jsonOf(device, as);
    return json.dump(-1, ' ', false, Json::error_handler_t::replace);
}

std::string deviceHealthJson(const DeviceHealth& health) {
    return jsonOf(health, FindingsAs::English).dump();
}

std::string findingsText(const std::vector<Finding>& findings) {
    std::string text;
    for (const Finding& finding : findings) {
        text += "  " + padded(finding.check, kCheckWidth) + padded(soundnessName(finding.verdict), kVerdictWidth) +
                finding.text.english() + "\n";
        const std::string indent(2 + kCheckWidth + kVerdictWidth, ' ');
        if (finding.verdict != Soundness::Good && !finding.reason.isEmpty())
            text += indent + finding.reason.english() + "\n";
        if (!finding.remedy.isEmpty())
            text += indent + "-> " + finding.remedy.english() + "\n";
    }
    return text;
}

} // namespace flowhand
