#include "aircraft/performance.h"

#include <algorithm>
#include <cmath>

#include "aircraft/model.h"

namespace flowhand {

namespace {

constexpr double kSpeedGrain = 1.0;               // m/s, of the sums over a roll
constexpr double kScreen = 35.0 * kMetresPerFoot; // 14 CFR 25.113
constexpr double kMostGradient = 0.35;            // what the approach of a very light aircraft's climb is cut at
constexpr double kLeastGradient = 0.005;          // a take-off that does not climb is very long, not endless
constexpr double kRecognition = 2.0;              // s at V1 before the brakes act; 14 CFR 25.109, from memory
constexpr int kHalvings = 16;                     // of the speed range in which V1 is looked for: to 0.001 m/s

/// Forces in a roll at one true airspeed, with the wing as it stands on its wheels.
class RollForces {
public:
    RollForces(const PracticeFigures& figures, const PerformanceCase& now, bool areSpoilersUp)
        : m_figures(figures), m_case(now) {
        const FlapFigures* flap = figures.air.flap(now.flap);
        m_frame.settle({flap != nullptr ? flap->angle : 0.0, true, areSpoilersUp});
        EngineDemand demand;
        demand.lever = now.lever;
        m_pulling.settle(figures.engine, demand);
        m_idling.settle(figures.engine, {});
    }

    /// N of `pulling` engines at take-off power and `idling` ones.
    [[nodiscard]] double thrust(double speed, int pulling, int idling) const {
        return pulling * m_pulling.thrust(m_figures.engine, m_case.air, speed) +
               idling * m_idling.thrust(m_figures.engine, m_case.air, speed);
    }
    [[nodiscard]] AirForces wing(double speed, double alpha) const {
        return m_frame.forces(m_figures.air, 0.5 * m_case.air.density * speed * speed, alpha, 0.0);
    }
    [[nodiscard]] double acceleration(double speed, int pulling) const {
        const AirForces wing = this->wing(speed, 0.0);
        const double onWheels = std::max(0.0, m_case.mass * kGravity - wing.lift);
        return (thrust(speed, pulling, 0) - wing.drag - m_figures.wheels.rolling * onWheels) / m_case.mass;
    }
    [[nodiscard]] double deceleration(double speed) const {
        const AirForces wing = this->wing(speed, 0.0);
        const GroundFigures& wheels = m_figures.wheels;
        const double onWheels = std::max(0.0, m_case.mass * kGravity - wing.lift);
        const double onMain = onWheels * (1.0 - m_figures.mass.centreOfGravity / wheels.wheelbase);
        const double ground = std::max(0.0, speed - m_case.headwind);
        const double brakes = std::min(2.0 * wheels.brakeForce, brakingFriction(wheels, ground) * onMain);
        return (brakes + wing.drag + wheels.rolling * onWheels - thrust(speed, 0, m_figures.engines)) / m_case.mass;
    }
    /// One engine failed, in the air at `speed`.
    [[nodiscard]] double gradient(double speed) const {
        const double pressure = 0.5 * m_case.air.density * speed * speed;
        const double lift = m_case.mass * kGravity / (pressure * m_figures.air.wingArea);
        const double alpha = m_frame.alphaFor(m_figures.air, lift);
        const double drag = m_frame.forces(m_figures.air, pressure, alpha, kScreen).drag;
        const double left = std::max(m_figures.engines - 1, 1);
        return (thrust(speed, static_cast<int>(left), 0) - drag) / (m_case.mass * kGravity);
    }

private:
    const PracticeFigures& m_figures;
    const PerformanceCase& m_case;
    Airframe m_frame;
    Engine m_pulling;
    Engine m_idling;
};

/// m over the ground between two true airspeeds at the accelerations that `rate` gives; the middle of each grain.
template <class Rate>
double rolled(double from, double to, double headwind, Rate rate) {
    double distance = 0.0;
    for (double at = std::max(from, headwind); at < to;) {
        const double next = std::min(to, at + kSpeedGrain);
        const double middle = (at + next) / 2.0;
        distance += (middle - headwind) * (next - at) / std::max(rate(middle), 0.01);
        at = next;
    }
    return distance;
}

} // namespace

double stallSpeed(const AerodynamicFigures& air, double mass, const std::string& position) {
    const FlapFigures* flap = air.flap(position);
    const double most = flap != nullptr ? flap->liftMost : air.flaps.front().liftMost;
    return std::sqrt(2.0 * mass * kGravity / (kSeaDensity * air.wingArea * most));
}

double takeOffRoll(const PracticeFigures& figures, const PerformanceCase& now, double speed) {
    const RollForces forces(figures, now, false);
    return rolled(0.0, trueFromCalibrated(speed, now.air), now.headwind, [&](double at) {
        return forces.acceleration(at, figures.engines);
    });
}

double accelerateStop(const PracticeFigures& figures, const PerformanceCase& now, double v1) {
    const double speed = trueFromCalibrated(v1, now.air);
    const RollForces stopping(figures, now, true);
    return takeOffRoll(figures, now, v1) + kRecognition * (speed - now.headwind) +
           rolled(0.0, speed, now.headwind, [&](double at) {
               return stopping.deceleration(at);
           });
}

double accelerateGo(const PracticeFigures& figures, const PerformanceCase& now, double v1) {
    const double stall = stallSpeed(figures.air, now.mass, now.flap);
    const double failed = trueFromCalibrated(v1, now.air);
    const double lifted = trueFromCalibrated(figures.performance.safety * stall, now.air);
    const RollForces forces(figures, now, false);
    const double onOne = rolled(failed, lifted, now.headwind, [&](double at) {
        return forces.acceleration(at, std::max(figures.engines - 1, 1));
    });
    const double gradient = std::clamp(forces.gradient(lifted), kLeastGradient, kMostGradient);
    const double airborne = kScreen / gradient * (1.0 - now.headwind / lifted);
    return takeOffRoll(figures, now, v1) + onOne + airborne;
}

double leastControlSpeed(const PracticeFigures& figures, const PerformanceCase& now) {
    if (figures.engines < 2 || figures.body.engineArm <= 0.0)
        return 0.0;
    const RollForces forces(figures, now, false);
    double low = 0.0;
    double high = 200.0;
    for (int i = 0; i < kHalvings; ++i) {
        const double speed = (low + high) / 2.0;
        const double moment = forces.thrust(speed, 1, 0) * figures.body.engineArm;
        const double rudder = 0.5 * now.air.density * speed * speed * figures.wheels.rudderMoment;
        (rudder < moment ? low : high) = speed;
    }
    return high;
}

TakeOffSpeeds takeOffSpeeds(const PracticeFigures& figures, const PerformanceCase& now) {
    const double stall = stallSpeed(figures.air, now.mass, now.flap);
    const double vr = figures.performance.rotate * stall;
    const double v2 = figures.performance.safety * stall;
    if (figures.performance.method == SpeedMethod::Simple)
        return {vr, vr, v2};
    double low = 0.5 * vr;
    double high = vr;
    for (int i = 0; i < kHalvings; ++i) {
        const double v1 = (low + high) / 2.0;
        (accelerateStop(figures, now, v1) < accelerateGo(figures, now, v1) ? low : high) = v1;
    }
    const double least = calibratedFromTrue(leastControlSpeed(figures, now), now.air);
    return {std::min(vr, std::max(low, least)), vr, v2};
}

double referenceSpeed(const PracticeFigures& figures, double mass, const std::string& flap) {
    return figures.performance.reference * stallSpeed(figures.air, mass, flap);
}

double approachSpeed(const PracticeFigures& figures, double reference, double headwind) {
    const PerformanceFigures& performance = figures.performance;
    return reference +
           std::clamp(performance.windShare * headwind, performance.leastAddition, performance.mostAddition);
}

} // namespace flowhand
