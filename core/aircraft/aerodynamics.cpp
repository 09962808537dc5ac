#include "aircraft/aerodynamics.h"

#include <algorithm>
#include <cmath>

namespace flowhand {

namespace {

double towards(double from, double to, double most) {
    return from + std::clamp(to - from, -most, most);
}

double mixed(double a, double b, double share) {
    return a + (b - a) * share;
}

/// The gates' figures, and between two of them in proportion to the angle.
FlapFigures flapAt(const AerodynamicFigures& figures, double angle) {
    const std::vector<FlapFigures>& flaps = figures.flaps;
    for (std::size_t i = 1; i < flaps.size(); ++i) {
        const FlapFigures& below = flaps[i - 1];
        const FlapFigures& above = flaps[i];
        if (angle > above.angle)
            continue;
        const double share = (angle - below.angle) / (above.angle - below.angle);
        return {"", angle, mixed(below.lift, above.lift, share), mixed(below.drag, above.drag, share),
                mixed(below.liftMost, above.liftMost, share)};
    }
    return flaps.back();
}

} // namespace

const FlapFigures* AerodynamicFigures::flap(const std::string& position) const {
    const auto at = std::find_if(flaps.begin(), flaps.end(), [&](const FlapFigures& each) {
        return each.position == position;
    });
    return at == flaps.end() ? nullptr : &*at;
}

double groundEffect(double height, double span) {
    const double ratio = 16.0 * std::max(0.0, height) / span;
    return ratio * ratio / (1.0 + ratio * ratio);
}

void Airframe::settle(const AirframeDemand& demand) {
    m_flapLeft = m_flapRight = demand.flapAngle;
    m_gearDown = demand.isGearDown ? 1.0 : 0.0;
    m_spoilersUp = demand.areSpoilersUp ? 1.0 : 0.0;
}

void Airframe::step(const AerodynamicFigures& figures, const AirframeDemand& demand, double seconds,
                    const FlapFault& fault) {
    const double travel = figures.flapRate * seconds;
    const bool isStopped = fault.isThere && std::fabs(m_flapLeft - m_flapRight) >= fault.mostApart;
    if (!isStopped && !(fault.isThere && fault.isLeft))
        m_flapLeft = towards(m_flapLeft, demand.flapAngle, travel);
    if (!isStopped && !(fault.isThere && !fault.isLeft))
        m_flapRight = towards(m_flapRight, demand.flapAngle, travel);
    m_gearDown = towards(m_gearDown, demand.isGearDown ? 1.0 : 0.0, seconds / figures.gearTransit);
    m_spoilersUp = towards(m_spoilersUp, demand.areSpoilersUp ? 1.0 : 0.0, seconds / figures.spoilerTransit);
}

FlapFigures Airframe::flapNow(const AerodynamicFigures& figures) const {
    return flapAt(figures, flapAngle());
}

double Airframe::liftApart(const AerodynamicFigures& figures) const {
    return m_flapLeft == m_flapRight ? 0.0 : flapAt(figures, m_flapLeft).lift - flapAt(figures, m_flapRight).lift;
}

double Airframe::alphaFor(const AerodynamicFigures& figures, double lift) const {
    return (lift - flapNow(figures).lift) / figures.liftSlope;
}

double Airframe::alphaMost(const AerodynamicFigures& figures) const {
    return alphaFor(figures, flapNow(figures).liftMost);
}

AirForces Airframe::forces(const AerodynamicFigures& figures, double dynamicPressure, double alpha,
                           double height) const {
    const FlapFigures flap = flapNow(figures);
    // Past the stall the lift falls as steeply as it rose; the assist and the yoke's protection stay below it.
    const double rising = flap.lift + figures.liftSlope * alpha;
    const double clean = rising <= flap.liftMost ? rising : std::max(0.0, 2.0 * flap.liftMost - rising);
    const double lift = clean * (1.0 - figures.spoilerLiftLoss * m_spoilersUp);
    const double drag = figures.drag + flap.drag + figures.gearDrag * m_gearDown + figures.spoilerDrag * m_spoilersUp +
                        figures.inducedDrag * groundEffect(height + figures.wingHeight, figures.span) * lift * lift;
    const double scale = dynamicPressure * figures.wingArea;
    return {scale * lift, scale * drag};
}

} // namespace flowhand
