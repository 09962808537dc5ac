// What failures do to the model.

#include <algorithm>
#include <cmath>

#include "aircraft/model.h"

namespace flowhand {

namespace {

/// Steady roll of a wing whose one half has dCL more lift at its flap: the moment 0.1 dCL (flaps in the middle of each
/// half, 0.2 spans from the aircraft's middle) against the damping 0.5 p b / 2V gives p = 0.4 dCL V / b. The damping is
/// from memory and about the same for all straight wings.
constexpr double kRollByFlaps = 0.4;

} // namespace

void AircraftModel::fail(const Failure& failure) {
    m_failures.push_back(failure);
    if (failure.kind == FailureKind::FlapAsymmetry)
        m_flapFault = {true, failure.side == Side::Left, failure.amount};
}

void AircraftModel::follow(const Route& route) {
    m_route = &route;
    m_routeDistance = route.line.nearest(nosewheel());
    m_speedsFor = 0.0; // another runway, another wind along it
}

/// A hand on the yoke has to hold what the flaps do; the assist holds it as far as the yoke would go.
double AircraftModel::rollRate(const CockpitState& cockpit, const AssistCommand& command) const {
    const double byFlaps = kRollByFlaps * m_airframe.liftApart(m_figures.air) * m_speed / m_figures.air.span;
    if (byFlaps == 0.0 || std::fabs(cockpit.yokeBank) > m_figures.assist.yokeNeutral)
        return command.bankRate + byFlaps;
    const double most = m_figures.assist.yokeBankRate;
    return std::clamp(command.bankRate - byFlaps, -most, most) + byFlaps;
}

SteeringDemand AircraftModel::steeringDemand(const CockpitState& cockpit, double automaticBrake, double assist) const {
    SteeringDemand demand{cockpit.tiller, cockpit.pedals, cockpit.brakeLeft, cockpit.brakeRight,
                          automaticBrake, assist,         cockpit.isParked};
    for (const Failure& failure : m_failures) {
        const bool isLeft = failure.side == Side::Left;
        switch (failure.kind) {
        case FailureKind::SteeringLost:
            demand.isSteeringLost = true;
            break;
        case FailureKind::BrakeLost:
            (isLeft ? demand.isLeftBrakeLost : demand.isRightBrakeLost) = true;
            break;
        case FailureKind::BrakeDrags:
            (isLeft ? demand.dragLeft : demand.dragRight) = failure.amount;
            break;
        case FailureKind::EngineOut:
        case FailureKind::ReverserLocked:
        case FailureKind::ReverserUnlocked:
        case FailureKind::FlapAsymmetry:
            break;
        }
    }
    return demand;
}

} // namespace flowhand
