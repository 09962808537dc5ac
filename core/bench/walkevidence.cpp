#include "bench/walkevidence.h"

#include <nlohmann/json.hpp>

namespace flowhand {

namespace {

using Json = nlohmann::ordered_json;

Json jsonOf(const WalkedSignal& walked, const Signal& signal, const Reach& reach) {
    Json json{{"signal", signal.name}, {"confirmed", walked.isConfirmed}, {"missing", walked.missing.english()}};
    json["seen"] = Json::array();
    for (std::size_t i = 0; i < walked.seen.size(); ++i)
        if (walked.seen[i])
            json["seen"].push_back(valueText(signal, reach.values[i]));
    const auto put = [&](const char* key, std::optional<double> value) {
        if (value)
            json[key] = *value;
    };
    if (reach.isContinuous) {
        json["low_end"] = reach.lowest;
        json["high_end"] = reach.highest;
        json["tolerance"] = walked.tolerance;
        put("lowest", walked.lowest);
        put("highest", walked.highest);
        put("centre", walked.centre);
    }
    json["trace"] = Json::array();
    for (const WalkedSignal::Point& point : walked.trace)
        json["trace"].push_back({seconds(point.time), point.value});
    return json;
}

std::optional<double> numberIn(const Json& json, const char* key) {
    const auto found = json.find(key);
    return found == json.end() || !found->is_number() ? std::nullopt : std::optional(found->get<double>());
}

WalkedSignalRecord signalOf(const Json& json) {
    WalkedSignalRecord record;
    record.signal = json.at("signal").get<std::string>();
    record.isConfirmed = json.at("confirmed").get<bool>();
    record.missing = json.at("missing").get<std::string>();
    record.seen = json.at("seen").get<std::vector<std::string>>();
    record.lowEnd = numberIn(json, "low_end");
    record.highEnd = numberIn(json, "high_end");
    record.lowest = numberIn(json, "lowest");
    record.highest = numberIn(json, "highest");
    record.centre = numberIn(json, "centre");
    record.tolerance = numberIn(json, "tolerance").value_or(0.0);
    for (const Json& point : json.at("trace"))
        record.trace.emplace_back(point.at(0).get<double>(), point.at(1).get<double>());
    return record;
}

} // namespace

EvidenceRecord walkEvidence(const WalkedControl& control, const ControlFingerprint& fingerprint,
                            const Aircraft& aircraft, const std::vector<Reach>& reaches,
                            const WalkTolerances& tolerances, bool isRecorded, std::int64_t unixSeconds,
                            std::vector<RawTrace> raw) {
    Json result{{"source", isRecorded ? "recording" : "device"},
                {"seconds", seconds(control.end - control.begin)},
                {"tolerances",
                 {{"steering_deg", tolerances.steeringDegrees},
                  {"lever_deg", tolerances.leverDegrees},
                  {"lever_share", tolerances.leverShare}}},
                {"moved_instead", control.movedInstead}};
    result["signals"] = Json::array();
    for (const WalkedSignal& signal : control.signals)
        result["signals"].push_back(jsonOf(signal, aircraft.signals[signal.signal], reaches[indexOf(signal.signal)]));
    EvidenceRecord record;
    record.kind = kWalkEvidence;
    record.unixSeconds = unixSeconds;
    record.control = fingerprint.control;
    record.signals = fingerprint.signals;
    record.fingerprint = fingerprint.hash;
    record.isGood = control.outcome == WalkOutcome::Confirmed;
    record.result = result.dump(-1, ' ', false, Json::error_handler_t::replace);
    record.raw = std::move(raw);
    return record;
}

Result<WalkRecord> walkRecordOf(const EvidenceRecord& evidence) {
    try {
        const Json json = Json::parse(evidence.result);
        WalkRecord record;
        record.isRecorded = json.at("source").get<std::string>() == "recording";
        record.seconds = json.at("seconds").get<double>();
        const Json& tolerances = json.at("tolerances");
        record.tolerances = {tolerances.at("steering_deg").get<double>(), tolerances.at("lever_deg").get<double>(),
                             tolerances.at("lever_share").get<double>()};
        record.movedInstead = json.at("moved_instead").get<std::vector<std::string>>();
        for (const Json& signal : json.at("signals"))
            record.signals.push_back(signalOf(signal));
        return record;
    } catch (const Json::exception& problem) {
        return failure("damaged-evidence", "the walk of '" + evidence.control + "' at " +
                                               dateText(evidence.unixSeconds) + " cannot be read (" + problem.what() +
                                               "); walk it again");
    }
}

} // namespace flowhand
