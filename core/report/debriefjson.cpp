#include <nlohmann/json.hpp>

#include "base/valuewords.h"
#include "report/debrief.h"
#include "report/findings.h"
#include "session/anchor.h"

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
            {"help", header.help},
            {"time_scale", header.setup.timeScale},
            {"seat", header.setup.ownSeat},
            {"solo", header.setup.isSolo}};
}

Json contextOf(const StepContext& context) {
    const auto speed = [](const std::optional<double>& knots) {
        return knots ? Json(*knots) : Json(nullptr);
    };
    return {{"ground_speed_kt", speed(context.groundSpeed)},
            {"airspeed_kt", speed(context.airspeed)},
            {"turning", context.isTurning},
            {"substitute", context.isSubstitute}};
}

Json timesOf(const StepTimes& times, const Aircraft& aircraft) {
    Json wrongReach = nullptr;
    if (times.wrongReach)
        wrongReach = {{"time_us", micros(times.wrongReach->time)},
                      {"control", aircraft.signals[times.wrongReach->signal].name}};
    Json hesitation = nullptr;
    if (times.hesitation)
        hesitation = {{"from_us", micros(times.hesitation->from)}, {"length_us", micros(times.hesitation->length)}};
    Json overshoot = nullptr;
    if (times.overshoot)
        overshoot = {{"time_us", micros(times.overshoot->time)},
                     {"control", aircraft.signals[times.overshoot->signal].name},
                     {"amount", times.overshoot->amount}};
    return {{"cue_began_us", optionalTime(times.cueBegan)}, {"cue_ended_us", optionalTime(times.cueEnded)},
            {"wrong_reach", std::move(wrongReach)},         {"first_movement_us", optionalTime(times.firstMovement)},
            {"hesitation", std::move(hesitation)},          {"overshoot", std::move(overshoot)},
            {"seen_us", optionalTime(times.seen)},          {"settled_us", optionalTime(times.settled)},
            {"ended_us", optionalTime(times.ended)}};
}

Json allTimesOf(const DebriefInput& input) {
    Json all = Json::array();
    if (input.timeline == nullptr)
        return all;
    for (std::size_t i = 0; i < input.timeline->steps().size(); ++i) {
        const StepTimes& times = input.timeline->steps()[i];
        Json step{{"id", input.flow.steps[i].id}};
        step.update(timesOf(times, input.aircraft));
        step["context"] = contextOf(times.context);
        all.push_back(std::move(step));
    }
    return all;
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
                         {"how", step.verdict.english()},
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
             {"what", nameOf(line.what)},
             {"text", line.text.english()}});
    }
    return ledger;
}

Json extrasOf(const Findings& findings) {
    Json extras = Json::array();
    for (const ExtraFinding& extra : findings.extras)
        extras.push_back({{"time_us", micros(extra.time)},
                          {"what", extra.isWrongValue ? "wrong value" : "wrong control"},
                          {"text", extra.text.english()},
                          {"put_back", extra.isPutBack}});
    return extras;
}

Json changedOf(const Rejudgement& again) {
    Json steps = Json::array();
    for (const StepComparison& step : again.changed)
        steps.push_back({{"id", step.id},
                         {"before", step.otherVerdict.english()},
                         {"now", step.verdict.english()},
                         {"text", changeText(step).english()}});
    return steps;
}

Json repairsOf(const DebriefInput& input) {
    Json repairs = Json::array();
    if (input.timeline == nullptr)
        return repairs;
    for (const Repair& repair : input.timeline->repairs())
        repairs.push_back({{"time_us", micros(repair.time)},
                           {"text", repair.text.english()},
                           {"repaired_us", optionalTime(repair.repaired)}});
    return repairs;
}

Json notesOf(const DebriefInput& input) {
    Json notes = Json::array();
    if (input.notes == nullptr)
        return notes;
    for (const Note& note : *input.notes)
        notes.push_back({{"note", note.id},
                         {"kind", nameOf(note.kind)},
                         {"author", note.author},
                         {"step", note.anchor.step.empty() ? Json(nullptr) : Json(note.anchor.step)},
                         {"offset_us", micros(note.anchor.offset)},
                         {"time_us", micros(timeOf(note.anchor, input.flow, input.results))},
                         {"guard", note.guard.empty() ? Json(nullptr) : Json(note.guard)},
                         {"phase", note.phase.empty() ? Json(nullptr) : Json(note.phase)},
                         {"choice", note.choice.empty() ? Json(nullptr) : Json(note.choice)},
                         {"text", note.text},
                         {"written_unix_ms", note.writtenUnixMillis}});
    return notes;
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
            {"flow", again.otherFlow.empty() ? Json(nullptr) : Json(again.otherFlow)},
            {"changed", changedOf(again)},
            {"remarks", englishOf(again.remarks)},
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
    json["why_not_passed"] = score.whyNotPassed.english();
    json["weight"] = score.weight;
    json["pace_us"] = micros(score.pace);
    json["ledger"] = ledgerOf(input, findings);
    json["steps"] = stepsOf(findings);
    json["times"] = allTimesOf(input);
    json["guards"] = guardsOf(findings);
    json["extras"] = extrasOf(findings);
    json["repairs"] = repairsOf(input);
    json["remarks"] = englishOf(findings.remarks);
    json["notes"] = notesOf(input);
    json["rejudged"] = rejudgementOf(input);
    json["damage"] = input.damage;
    json["note"] = kTrainingNote;
    return json.dump(2, ' ', false, Json::error_handler_t::replace);
}

} // namespace flowhand
