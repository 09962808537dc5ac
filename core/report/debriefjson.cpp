#include <nlohmann/json.hpp>

#include "report/debrief.h"
#include "report/findings.h"

namespace flowhand {

namespace {

using Json = nlohmann::ordered_json;

std::int64_t micros(Time time) {
    return std::chrono::floor<std::chrono::microseconds>(time).count();
}

Json optionalTime(const std::optional<Time>& time) {
    return time ? Json(micros(*time)) : Json(nullptr);
}

Json headOf(const DebriefInput& input) {
    const RunHeader& header = input.header;
    return {{"run", input.runId > 0 ? Json(input.runId) : Json(nullptr)},
            {"started_unix_ms", header.startedUnixMillis},
            {"pilot", header.pilot},
            {"program_version", header.programVersion},
            {"aircraft", {{"folder", header.aircraftFolder}, {"title", input.aircraft.title}}},
            {"flow", {{"id", input.flow.id}, {"title", input.flow.title}, {"target", input.flow.target}}},
            {"rig", header.rigTitle},
            {"motion", header.motionSource},
            {"seat", header.setup.ownSeat},
            {"solo", header.setup.isSolo}};
}

Json stepsOf(const Findings& findings) {
    Json steps = Json::array();
    for (const StepFinding& step : findings.steps) {
        Json margin = nullptr;
        if (step.margin)
            margin = {{"value", *step.margin}, {"unit", step.marginUnit}};
        steps.push_back({{"id", step.id},
                         {"title", step.title},
                         {"seat", step.seat},
                         {"own", step.isOwn},
                         {"weight", step.weight},
                         {"due_us", optionalTime(step.due)},
                         {"done_us", optionalTime(step.done)},
                         {"how", step.verdict},
                         {"by", step.by},
                         {"simulated", step.isSimulated},
                         {"margin", std::move(margin)},
                         {"lost_milli_points", step.milliPoints}});
    }
    return steps;
}

Json guardsOf(const Findings& findings) {
    Json guards = Json::array();
    for (const GuardFinding& guard : findings.guards) {
        Json episodes = Json::array();
        for (const Episode& episode : guard.episodes)
            episodes.push_back({{"from_us", micros(episode.from)}, {"to_us", optionalTime(episode.to)}});
        guards.push_back({{"id", guard.id},
                          {"title", guard.title},
                          {"critical", guard.isCritical},
                          {"broken", !guard.episodes.empty()},
                          {"episodes", std::move(episodes)}});
    }
    return guards;
}

Json ledgerOf(const DebriefInput& input, const Findings& findings) {
    Json ledger = Json::array();
    for (const LedgerLine& line : findings.ledger) {
        const bool isStep = line.step >= 0 && static_cast<std::size_t>(line.step) < input.flow.steps.size();
        const bool isGuard = line.guard >= 0 && static_cast<std::size_t>(line.guard) < input.flow.guards.size();
        ledger.push_back(
            {{"milli_points", line.milliPoints},
             {"step", isStep ? Json(input.flow.steps[static_cast<std::size_t>(line.step)].id) : Json(nullptr)},
             {"guard", isGuard ? Json(input.flow.guards[static_cast<std::size_t>(line.guard)].id) : Json(nullptr)},
             {"what", line.what},
             {"text", line.text}});
    }
    return ledger;
}

Json extrasOf(const Findings& findings) {
    Json extras = Json::array();
    for (const ExtraFinding& extra : findings.extras)
        extras.push_back({{"time_us", micros(extra.time)},
                          {"what", extra.isWrongValue ? "wrong value" : "wrong control"},
                          {"text", extra.text},
                          {"put_back", extra.isPutBack}});
    return extras;
}

Json rejudgementOf(const DebriefInput& input) {
    if (input.rejudgement == nullptr)
        return nullptr;
    const Rejudgement& again = *input.rejudgement;
    return {{"by", again.by},
            {"compared", again.isCompared},
            {"same", again.isSame},
            {"gone", again.gone},
            {"added", again.added},
            {"milli_points_before", again.isCompared ? Json(again.milliPointsBefore) : Json(nullptr)}};
}

} // namespace

std::string debriefJson(const DebriefInput& input) {
    const Findings findings = findingsOf(input);
    const Score& score = input.score;
    Json json = headOf(input);
    json["cut_off"] = input.isCutOff;
    json["simulated_input"] = findings.isSimulated;
    json["scored"] = score.isScored;
    json["milli_points"] = score.milliPoints;
    json["upper_milli_points"] = score.upperMilliPoints;
    json["passed"] = score.isPassed;
    json["why_not_passed"] = score.whyNotPassed;
    json["weight"] = score.weight;
    json["pace_us"] = micros(score.pace);
    json["ledger"] = ledgerOf(input, findings);
    json["steps"] = stepsOf(findings);
    json["guards"] = guardsOf(findings);
    json["extras"] = extrasOf(findings);
    json["remarks"] = findings.remarks;
    json["rejudged"] = rejudgementOf(input);
    json["damage"] = input.damage;
    json["note"] = kTrainingNote;
    return json.dump(2, ' ', false, Json::error_handler_t::replace);
}

} // namespace flowhand
