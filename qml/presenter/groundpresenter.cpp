#include "presenter/groundpresenter.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <utility>

#include "procedure/phase.h"

namespace flowhand {

namespace {

/// Metres between two points of the trail: a wheel's width on screen.
constexpr double kTrailGrain = 0.5;
/// Farther than it rolls between two looks: it was put somewhere else.
constexpr double kJump = 50.0;
/// Points; 200 m, farther back than the picture shows.
constexpr std::size_t kTrailLength = 400;

double distance(PlanPoint a, PlanPoint b) {
    return std::hypot(a.x - b.x, a.y - b.y);
}

/// Forward of the main wheels and to the right of them, m.
PlanPoint besideWheels(const GroundPosition& position, double forward, double right) {
    const double along = std::sin(position.heading);
    const double north = std::cos(position.heading);
    return {position.mainWheels.x + forward * along + right * north,
            position.mainWheels.y + forward * north - right * along};
}

/// In these the aircraft rolls.
bool doesRoll(const Flow& flow) {
    static constexpr std::array kRolling = {"taxi_out", "line_up", "take_off", "landing", "taxi_in"};
    const std::size_t from = findPhase(flow.phaseFrom).value_or(0);
    const std::size_t to = flow.phaseTo.empty() ? from : findPhase(flow.phaseTo).value_or(from);
    return std::any_of(kRolling.begin(), kRolling.end(), [&](const char* phase) {
        const std::size_t at = findPhase(phase).value_or(phases().size());
        return from <= at && at <= to;
    });
}

} // namespace

void GroundPresenter::begin(std::shared_ptr<const GroundScene> scene, const Flow& flow) {
    if (scene != m_scene)
        m_trail = Trail();
    m_scene = std::move(scene);
    m_doesMatter = doesRoll(flow);
    Q_EMIT changed();
}

void GroundPresenter::show(const RunSnapshot& snapshot) {
    show(snapshot.ground);
    tell();
}

void GroundPresenter::show(const std::vector<GroundPosition>& way) {
    show(std::nullopt);
    for (const GroundPosition& position : way)
        show(position);
    tell();
}

void GroundPresenter::show(std::optional<GroundPosition> position) {
    m_position = m_scene ? std::move(position) : std::nullopt;
    if (m_position)
        leaveTrail();
    else
        m_trail = Trail();
}

void GroundPresenter::tell() {
    const bool isShown = m_doesMatter && m_position && m_position->isOnGround;
    Q_EMIT changed();
    if (std::exchange(m_isShown, isShown) != isShown)
        Q_EMIT shownChanged();
}

void GroundPresenter::leaveTrail() {
    const PlanPoint nose = besideWheels(*m_position, m_scene->wheelbase, 0.0);
    const double moved = m_trail.nose.empty() ? kJump : distance(nose, m_trail.nose.back());
    if (moved >= kJump || !m_position->isOnGround)
        m_trail = Trail();
    else if (moved < kTrailGrain)
        return;
    m_trail.nose.push_back(nose);
    m_trail.left.push_back(besideWheels(*m_position, 0.0, -m_scene->track / 2));
    m_trail.right.push_back(besideWheels(*m_position, 0.0, m_scene->track / 2));
    if (m_trail.nose.size() > kTrailLength)
        for (std::vector<PlanPoint>* points : {&m_trail.nose, &m_trail.left, &m_trail.right})
            points->erase(points->begin());
}

} // namespace flowhand
