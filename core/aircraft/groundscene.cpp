#include "aircraft/groundscene.h"

#include <filesystem>

namespace flowhand {

namespace {

std::string besideAircraft(const Aircraft& aircraft, const std::string& relative) {
    return (std::filesystem::path(aircraft.file).parent_path() / relative).lexically_normal().string();
}

} // namespace

Result<PracticeFigures> loadPracticeOf(const Aircraft& aircraft) {
    return loadPractice(besideAircraft(aircraft, "practice.toml"), aircraft);
}

Result<GroundPlan> loadGroundPlanOf(const Aircraft& aircraft, const PracticeFigures& figures) {
    return loadGroundPlan(besideAircraft(aircraft, "../" + figures.ground + "/ground.toml"));
}

Result<GroundScene> loadGroundScene(const Aircraft& aircraft) {
    Result<PracticeFigures> figures = loadPracticeOf(aircraft);
    if (!figures)
        return tl::unexpected(figures.error());
    Result<GroundPlan> plan = loadGroundPlanOf(aircraft, *figures);
    if (!plan)
        return tl::unexpected(plan.error());
    return GroundScene{std::move(*plan),        figures->wheels.wheelbase, figures->wheels.track,
                       figures->body.noseAhead, figures->body.tailBehind,  figures->air.span};
}

} // namespace flowhand
