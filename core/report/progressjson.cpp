#include <nlohmann/json.hpp>

#include "base/valuewords.h"
#include "report/debrief.h"
#include "report/progresstext.h"

namespace flowhand {

namespace {

using Json = nlohmann::ordered_json;

std::int64_t microsOf(Duration duration) {
    return std::chrono::duration_cast<std::chrono::microseconds>(duration).count();
}

template <class T>
Json orNull(const std::optional<T>& value) {
    return value ? Json(*value) : Json(nullptr);
}

Json pointsOf(const FlowProgress& flow) {
    Json points = Json::array();
    for (const ProgressPoint& point : flow.points)
        points.push_back({{"run", point.run},
                          {"started_unix_ms", point.startedUnixMillis},
                          {"milli_points", point.milliPoints},
                          {"passed", point.isPassed},
                          {"complete", point.isComplete},
                          {"pace_us", microsOf(point.pace)},
                          {"help", point.help}});
    return points;
}

Json stepsOf(const FlowProgress& flow) {
    Json steps = Json::array();
    for (const StepRate& step : flow.steps) {
        Json instead = Json::array();
        for (const Instead& each : step.instead)
            instead.push_back({{"what", each.words.english()}, {"runs", each.runs}});
        steps.push_back({{"step", step.id},
                         {"title", step.title},
                         {"wrong", step.wrong},
                         {"runs", step.runs},
                         {"instead", std::move(instead)}});
    }
    return steps;
}

Json curveOf(const FlowProgress& flow) {
    if (!flow.curve)
        return nullptr;
    return {{"fit", nameOf(flow.curve->kind).english()},
            {"scale_s", flow.curve->scale},
            {"rate", flow.curve->rate},
            {"residual_ln", flow.curve->residual},
            {"runs", flow.curve->tries}};
}

Json flowOf(const FlowProgress& flow) {
    return {{"aircraft", flow.flow.aircraftFolder},
            {"flow", flow.flow.flowId},
            {"title", flow.title},
            {"runs", pointsOf(flow)},
            {"points_per_run", orNull(flow.pointsPerRun)},
            {"seconds_per_run", orNull(flow.secondsPerRun)},
            {"learning_curve", curveOf(flow)},
            {"goes_wrong", stepsOf(flow)},
            {"half_life_days", flow.memory.halfLifeDays()},
            {"due_unix_ms", flow.memory.dueUnixMillis()}};
}

Json planJson(const Plan& plan) {
    Json today = Json::array();
    for (const PlannedFlow& flow : plan.today)
        today.push_back({{"aircraft", flow.flow.aircraftFolder},
                         {"flow", flow.flow.flowId},
                         {"title", flow.title},
                         {"reason", flow.reason.english()}});
    return {{"today", std::move(today)},
            {"later", plan.later.english()},
            {"due_on_days_ahead", plan.ahead},
            {"model", forgettingNote().english()}};
}

} // namespace

std::string progressJson(const PracticeRecord& record, const Progress& progress, const FlowName* flow) {
    Json flows = Json::array();
    for (const FlowProgress& each : progress.flows)
        if (flow == nullptr || each.flow == *flow)
            flows.push_back(flowOf(each));
    Json lines = Json::array();
    for (const PracticeLine& line : record.lines)
        lines.push_back({{"pilot", line.pilot}, {"rig", line.rig}, {"runs", line.runs}});
    const Json all{{"pilot", record.isEveryPilot ? Json(nullptr) : Json(record.line.pilot)},
                   {"rig", record.isEveryRig ? Json(nullptr) : Json(record.line.rig)},
                   {"plan", planJson(progress.plan)},
                   {"flows", std::move(flows)},
                   {"all_pilots_and_rigs", std::move(lines)},
                   {"simulated_runs", record.simulatedRuns},
                   {"remarks", englishOf(record.remarks)},
                   {"note", kTrainingNote}};
    return all.dump(2, ' ', false, Json::error_handler_t::replace) + '\n';
}

} // namespace flowhand
