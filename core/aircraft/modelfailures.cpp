// What failures do to the model.

#include "aircraft/model.h"

namespace flowhand {

void AircraftModel::fail(const Failure& failure) {
    m_failures.push_back(failure);
    if (failure.kind == FailureKind::FlapAsymmetry)
        m_flapFault = {true, failure.side == Side::Left, failure.amount};
}

void AircraftModel::follow(const Route& route) {
    m_route = &route;
    lookAtRoute();
    m_nose = nosewheel();
    m_routeDistance = route.line.nearest(m_nose);
    m_line = route.line.pointAt(m_routeDistance);
    m_speedsFor = 0.0; // another runway, another wind along it
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
