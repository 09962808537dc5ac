#include <QTest>
#include <rapidcheck.h>

#include "aircraft/ground.h"
#include "twinjet.h"

using namespace flowhand;
using namespace flowhand::test;

namespace {

constexpr double kStep = 0.01;

RollingState rollingAt(double speed) {
    RollingState state;
    state.mass = 62000.0;
    state.speed = speed;
    state.weightOnWheels = state.mass * kGravity;
    return state;
}

/// Steady yaw rate at a held speed, rad/s.
double steadyRate(const GroundFigures& figures, const SteeringDemand& demand, const RollingState& state) {
    GroundHandling wheels;
    for (int i = 0; i < 2000; ++i)
        (void)wheels.step(figures, demand, state, kStep);
    return wheels.yawRate();
}

} // namespace

class TestGround : public QObject {
    Q_OBJECT

    const GroundFigures m_figures = twinJetFigures().wheels;

private Q_SLOTS:
    // Computed from R = L / tan(angle), L = 15 m.
    void bicycleRadii() {
        QVERIFY(isNear(turnRadiusMain(15.0, 5.0 * kRadiansPerDegree), 171.5, 0.06));
        QVERIFY(isNear(turnRadiusMain(15.0, 10.0 * kRadiansPerDegree), 85.1, 0.06));
        QVERIFY(isNear(turnRadiusMain(15.0, 50.0 * kRadiansPerDegree), 12.6, 0.06));
        QVERIFY(isNear(turnRadiusNose(15.0, 30.0 * kRadiansPerDegree), 30.0, 1e-9));
        const double rate = turnRate(15.0, 30.0 * kRadiansPerDegree, 10.0 * kMetresPerSecondPerKnot);
        QVERIFY(isNear(rate / kRadiansPerDegree, 11.35, 0.006));
    }

    // Horonjeff, Planning and Design of Airports, eq. 2-1, p. 58: b 15 m, t 6 m, 50 deg; the value computed.
    void outerWheelRadius() {
        QVERIFY(isNear(turnRadiusOuterWheel(15.0, 6.0, 50.0 * kRadiansPerDegree), 15.59, 0.006));
    }

    // 14 CFR Part 60, table A2A 1.a.2: turn rate against nosewheel angle within 10 % or 2 deg/s of the bicycle's.
    void turnRateOfTheModel_data() {
        QTest::addColumn<double>("degrees");
        QTest::addColumn<double>("knots");
        QTest::newRow("10 deg, 10 kt") << 10.0 << 10.0;
        QTest::newRow("30 deg, 5 kt") << 30.0 << 5.0;
        QTest::newRow("30 deg, 10 kt") << 30.0 << 10.0;
        QTest::newRow("60 deg, 5 kt") << 60.0 << 5.0;
        QTest::newRow("to the left") << -30.0 << 10.0;
    }
    void turnRateOfTheModel() {
        QFETCH(double, degrees);
        QFETCH(double, knots);
        SteeringDemand demand;
        demand.tiller = degrees * kRadiansPerDegree;
        const double speed = knots * kMetresPerSecondPerKnot;
        const double wanted = turnRate(m_figures.wheelbase, demand.tiller, speed);
        const double tolerance = std::max(0.1 * std::fabs(wanted), 2.0 * kRadiansPerDegree);
        QVERIFY(isNear(steadyRate(m_figures, demand, rollingAt(speed)), wanted, tolerance));
    }

    // Part 60, table A2A 1.a.1: minimum radius turn within 3 ft or 20 %.
    void minimumRadiusOfTheModel() {
        SteeringDemand demand;
        demand.tiller = 70.0 * kRadiansPerDegree;
        const double speed = 3.0 * kMetresPerSecondPerKnot;
        const double radius = speed / steadyRate(m_figures, demand, rollingAt(speed));
        const double wanted = turnRadiusMain(m_figures.wheelbase, demand.tiller);
        QVERIFY(isNear(radius, wanted, std::max(3.0 * kMetresPerFoot, 0.2 * wanted)));
    }

    // Horonjeff, Table 6-22, from ICAO: speeds and radii of taxiway curves, each 0.134 g. The model turns there with
    // the nosewheel at the angle that the linear bicycle with its understeer asks for.
    void taxiwayCurves_data() {
        QTest::addColumn<double>("kmPerHour");
        QTest::addColumn<double>("radius");
        QTest::newRow("16 km/h") << 16.0 << 15.0;
        QTest::newRow("32 km/h") << 32.0 << 60.0;
        QTest::newRow("48 km/h") << 48.0 << 135.0;
        QTest::newRow("64 km/h") << 64.0 << 240.0;
        QTest::newRow("80 km/h") << 80.0 << 375.0;
        QTest::newRow("96 km/h") << 96.0 << 540.0;
    }
    void taxiwayCurves() {
        QFETCH(double, kmPerHour);
        QFETCH(double, radius);
        const double speed = kmPerHour / 3.6;
        const double side = speed * speed / radius;
        QVERIFY(isNear(side / kGravity, 0.134, 0.001));
        const RollingState state = rollingAt(speed);
        SteeringDemand demand;
        demand.assist = std::atan(m_figures.wheelbase / radius) + state.mass * m_figures.centreOfGravity * side /
                                                                      (m_figures.wheelbase * m_figures.corneringForce);
        const double rate = steadyRate(m_figures, demand, state);
        QVERIFY(isNear(speed / rate, radius, 0.05 * radius));
    }

    void sideForceHasALimit() {
        QVERIFY(rc::check("the wheels never hold more than friction allows", [this] {
            GroundFigures figures = m_figures;
            figures.friction = *rc::gen::inRange(10, 90) / 100.0;
            const double speed = *rc::gen::inRange(1, 80);
            SteeringDemand demand;
            demand.tiller = *rc::gen::inRange(-70, 71) * kRadiansPerDegree;
            demand.pedals = *rc::gen::inRange(-100, 101) / 100.0;
            const double side = std::fabs(steadyRate(figures, demand, rollingAt(speed)) * speed);
            RC_ASSERT(side <= figures.friction * kGravity + 1e-9);
        }));
    }

    void straightNeedsNoSteering() { QCOMPARE(steadyRate(m_figures, {}, rollingAt(60.0)), 0.0); }

    void tillerLosesAuthorityWithSpeed() {
        QCOMPARE(authority(0.0, 10.0, 40.0, 0.1), 1.0);
        QVERIFY(isNear(authority(25.0, 10.0, 40.0, 0.1), 0.55, 1e-12));
        QVERIFY(isNear(authority(99.0, 10.0, 40.0, 0.1), 0.1, 1e-12));
    }

    void rudderGrowsWithTheAir() {
        SteeringDemand demand;
        demand.pedals = 1.0;
        RollingState slow = rollingAt(30.0 * kMetresPerSecondPerKnot);
        slow.isNoseDown = false;
        RollingState fast = rollingAt(120.0 * kMetresPerSecondPerKnot);
        fast.isNoseDown = false;
        slow.dynamicPressure = 0.5 * 1.225 * slow.speed * slow.speed;
        fast.dynamicPressure = 0.5 * 1.225 * fast.speed * fast.speed;
        QVERIFY(steadyRate(m_figures, demand, fast) > 3.0 * steadyRate(m_figures, demand, slow));
    }

    void moreThrustLeftTurnsRight() {
        RollingState state = rollingAt(40.0);
        state.thrustMoment = 200e3;
        QVERIFY(steadyRate(m_figures, {}, state) > 0.001);
    }

    void unevenBrakesTurn() {
        SteeringDemand demand;
        demand.brakeRight = 0.3;
        QVERIFY(steadyRate(m_figures, demand, rollingAt(20.0)) > 0.001);
    }

    void antiSkidLimitsTheBrakes() {
        GroundFigures figures = m_figures;
        figures.friction = 0.18; // ice: NASA TR R-20, abstract
        SteeringDemand demand;
        demand.brakeLeft = demand.brakeRight = 1.0;
        const RollingState state = rollingAt(50.0);
        GroundHandling wheels;
        for (int i = 0; i < 300; ++i)
            (void)wheels.step(figures, demand, state, kStep);
        const double share = 1.0 - figures.centreOfGravity / figures.wheelbase;
        QVERIFY(isNear(wheels.brakeLeft() + wheels.brakeRight(),
                       figures.antiSkid * figures.friction * share * state.weightOnWheels, 1.0));
    }

    void standsUntilPushedHardEnough() {
        GroundHandling wheels;
        RollingState state = rollingAt(0.0);
        state.forward = m_figures.breakaway * state.weightOnWheels - 1.0;
        QCOMPARE(wheels.step(m_figures, {}, state, kStep), 0.0);
        state.forward += 2.0;
        QVERIFY(wheels.step(m_figures, {}, state, kStep) > 0.0);
    }
};

QTEST_APPLESS_MAIN(TestGround)
#include "test_aircraft_ground.moc"
