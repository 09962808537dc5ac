#include <QTest>
#include <rapidcheck.h>

#include "aircraft/performance.h"
#include "twinjet.h"

using namespace flowhand;
using namespace flowhand::test;

namespace {

constexpr double kPsi = 6894.757; // Pa

PerformanceCase caseOf(const PracticeFigures& figures, const std::string& flap) {
    PerformanceCase now;
    now.mass = figures.mass.mass;
    now.flap = flap;
    now.lever = 100.0;
    return now;
}

} // namespace

class TestPerformance : public QObject {
    Q_OBJECT

private Q_SLOTS:
    // 14 CFR 25.109(c)(1), coefficients from memory; the values at 100 kt computed.
    void wetFrictionByTyrePressure_data() {
        QTest::addColumn<double>("psi");
        QTest::addColumn<double>("friction");
        QTest::newRow("50 psi") << 50.0 << 0.303;
        QTest::newRow("100 psi") << 100.0 << 0.275;
        QTest::newRow("200 psi") << 200.0 << 0.253;
        QTest::newRow("300 psi") << 300.0 << 0.226;
        QTest::newRow("between two") << 150.0 << 0.264;
        QTest::newRow("softer than the softest") << 30.0 << 0.303;
    }
    void wetFrictionByTyrePressure() {
        QFETCH(double, psi);
        QFETCH(double, friction);
        QVERIFY(isNear(wetFriction(100.0 * kMetresPerSecondPerKnot, psi * kPsi), friction, 0.0006));
    }

    // 9 sqrt(p): Horne, NASA TN D-2056, from memory; computed.
    void hydroplaning_data() {
        QTest::addColumn<double>("psi");
        QTest::addColumn<double>("knots");
        QTest::newRow("36 psi") << 36.0 << 54.0;
        QTest::newRow("100 psi") << 100.0 << 90.0;
        QTest::newRow("144 psi") << 144.0 << 108.0;
        QTest::newRow("200 psi") << 200.0 << 127.3;
    }
    void hydroplaning() {
        QFETCH(double, psi);
        QFETCH(double, knots);
        QVERIFY(isNear(hydroplaningSpeed(psi * kPsi) / kMetresPerSecondPerKnot, knots, 0.06));
    }

    // 14 CFR 25.109(c)(2): efficiency 0.80 on wet; AC 25-32, table 2, from memory: code 2 is 0.05 from 85 % of the
    // hydroplaning speed, code 3 0.16, code 1 0.08.
    void surfacesBrakeAsPublished() {
        PracticeFigures jet = twinJetFigures();
        const double speed = 100.0 * kMetresPerSecondPerKnot;
        QVERIFY(jet.setSurface("wet"));
        QVERIFY(isNear(brakingFriction(jet.wheels, speed), 0.8 * 0.253, 0.001));
        QVERIFY(jet.setSurface("standing_water"));
        QVERIFY(isNear(brakingFriction(jet.wheels, 0.86 * 127.3 * kMetresPerSecondPerKnot), 0.05, 1e-9));
        QVERIFY(brakingFriction(jet.wheels, speed) > 0.05);
        QVERIFY(jet.setSurface("snow"));
        QCOMPARE(brakingFriction(jet.wheels, speed), 0.16);
        QVERIFY(jet.setSurface("ice"));
        QCOMPARE(brakingFriction(jet.wheels, speed), 0.08);
    }

    // Momentum theory: standing still T = (2 rho A P^2)^(1/3); in motion P = T (V + v) with T = 2 rho A (V + v) v.
    void propellerPullsAsMomentumTheorySays() {
        PropellerFigures propeller;
        propeller.diameter = 2.0;
        propeller.efficiency = 1.0;
        propeller.standingShare = 1.0;
        propeller.fullFrom = 1.0;
        const double disc = 2.0 * 1.225 * 3.14159265358979 * 1.0;
        const double power = 100e3;
        QVERIFY(isNear(propellerThrust(propeller, power, 1.225, 0.0), std::cbrt(disc * power * power), 1e-6));
        double last = 1e9;
        for (double speed = 0.0; speed < 120.0; speed += 5.0) {
            const double thrust = propellerThrust(propeller, power, 1.225, speed);
            const double induced = -speed / 2.0 + std::sqrt(speed * speed / 4.0 + thrust / disc);
            QVERIFY(isNear(thrust * (speed + induced), power, 1e-6 * power));
            QVERIFY(thrust < last);
            last = thrust;
        }
    }

    // Load factor and stall speed against bank: n = 1 / cos(bank), Vs grows with its root. Computed.
    void stallSpeedGrowsWithTheRootOfTheLoad_data() {
        QTest::addColumn<double>("bank");
        QTest::addColumn<double>("load");
        QTest::addColumn<double>("stall");
        QTest::newRow("level") << 0.0 << 1.000 << 1.000;
        QTest::newRow("15 deg") << 15.0 << 1.035 << 1.017;
        QTest::newRow("30 deg") << 30.0 << 1.155 << 1.075;
        QTest::newRow("45 deg") << 45.0 << 1.414 << 1.189;
        QTest::newRow("60 deg") << 60.0 << 2.000 << 1.414;
        QTest::newRow("70 deg") << 70.0 << 2.924 << 1.710;
        QTest::newRow("75 deg") << 75.0 << 3.864 << 1.966;
        QTest::newRow("80 deg") << 80.0 << 5.759 << 2.400;
    }
    void stallSpeedGrowsWithTheRootOfTheLoad() {
        QFETCH(double, bank);
        QFETCH(double, load);
        QFETCH(double, stall);
        const double n = 1.0 / std::cos(bank * kRadiansPerDegree);
        QVERIFY(isNear(n, load, 0.0006));
        const AerodynamicFigures air = twinJetFigures().air;
        QVERIFY(isNear(stallSpeed(air, n * 60000.0, "up") / stallSpeed(air, 60000.0, "up"), stall, 0.0006));
    }

    void speedsAreMultiplesOfTheStall() {
        const PracticeFigures jet = twinJetFigures();
        const PerformanceCase now = caseOf(jet, "12");
        const double stall = stallSpeed(jet.air, now.mass, "12");
        const TakeOffSpeeds speeds = takeOffSpeeds(jet, now);
        QVERIFY(isNear(speeds.vr, jet.performance.rotate * stall, 1e-9));
        QVERIFY(isNear(speeds.v2, jet.performance.safety * stall, 1e-9));
        QVERIFY(speeds.v1 <= speeds.vr);
        QVERIFY(jet.performance.safety >= 1.13);    // 14 CFR 25.107
        QVERIFY(jet.performance.reference >= 1.23); // 14 CFR 25.125
    }

    // Balanced: at V1 stopping takes as much runway as going on.
    void balancedSpeedBalances() {
        PracticeFigures jet = twinJetFigures();
        jet.body.engineArm = 0.0; // no limit by the rudder
        QVERIFY(jet.setSurface("wet"));
        const PerformanceCase now = caseOf(jet, "12");
        const TakeOffSpeeds speeds = takeOffSpeeds(jet, now);
        QVERIFY(speeds.v1 < speeds.vr);
        const double stop = accelerateStop(jet, now, speeds.v1);
        QVERIFY(isNear(accelerateGo(jet, now, speeds.v1), stop, 0.001 * stop));
        QVERIFY(accelerateStop(jet, now, speeds.v1 - 5.0) < accelerateGo(jet, now, speeds.v1 - 5.0));
    }

    void slipperyRunwayLowersV1() {
        for (const auto& [folder, flap] : {std::pair("twin_jet", "12"), std::pair("twin_turboprop", "15")}) {
            PracticeFigures figures = shippedFigures(folder);
            figures.body.engineArm = 0.0; // no limit by the rudder
            const PerformanceCase now = caseOf(figures, flap);
            const double dry = takeOffSpeeds(figures, now).v1;
            QVERIFY(figures.setSurface("ice"));
            QVERIFY(takeOffSpeeds(figures, now).v1 < dry - 1.0);
        }
    }

    // V1 is not below the speed from which the rudder holds the engine that is left.
    void rudderLimitsV1() {
        PracticeFigures jet = twinJetFigures();
        QVERIFY(jet.setSurface("ice"));
        PerformanceCase now = caseOf(jet, "12");
        const double least = leastControlSpeed(jet, now);
        const double pressure = 0.5 * now.air.density * least * least;
        Engine engine;
        engine.settle(jet.engine, {100.0, 0.0, 0.0, true, true});
        const double moment = engine.thrust(jet.engine, now.air, least) * jet.body.engineArm;
        QVERIFY(isNear(pressure * jet.wheels.rudderMoment, moment, 0.001 * moment));
        QVERIFY(takeOffSpeeds(jet, now).v1 >= std::min(least, takeOffSpeeds(jet, now).vr) - 0.01);
    }

    void simpleMethodHasOneSpeed() {
        const PracticeFigures single = shippedFigures("light_single");
        QVERIFY(single.performance.method == SpeedMethod::Simple);
        const TakeOffSpeeds speeds = takeOffSpeeds(single, caseOf(single, "10"));
        QCOMPARE(speeds.v1, speeds.vr);
    }

    // Common practice: half of the headwind, not less than 5 kt, not more than 20 kt.
    void approachSpeedAddsForTheWind_data() {
        QTest::addColumn<double>("head");
        QTest::addColumn<double>("added");
        QTest::newRow("calm") << 0.0 << 5.0;
        QTest::newRow("16 kt") << 16.0 << 8.0;
        QTest::newRow("60 kt") << 60.0 << 20.0;
        QTest::newRow("from behind") << -10.0 << 5.0;
    }
    void approachSpeedAddsForTheWind() {
        QFETCH(double, head);
        QFETCH(double, added);
        const PracticeFigures jet = twinJetFigures();
        const double knot = kMetresPerSecondPerKnot;
        QVERIFY(isNear(approachSpeed(jet, 60.0, head * knot) - 60.0, added * knot, 1e-9));
    }

    // The roll that the speeds are worked out by is the one that the model makes.
    void sumsAgreeWithTheModel_data() {
        QTest::addColumn<QString>("folder");
        QTest::addColumn<QString>("flap");
        QTest::newRow("twin jet") << "twin_jet"
                                  << "12";
        QTest::newRow("twin turboprop") << "twin_turboprop"
                                        << "15";
        QTest::newRow("light single") << "light_single"
                                      << "10";
    }
    void sumsAgreeWithTheModel() {
        QFETCH(QString, folder);
        QFETCH(QString, flap);
        const PracticeFigures figures = shippedFigures(folder.toStdString());
        const PerformanceCase now = caseOf(figures, flap.toStdString());
        const GroundPlan plan = longRunway();
        CockpitState controls = cockpit(100.0, figures.engines);
        controls.flapAngle = figures.air.flap(now.flap)->angle;
        for (const double share : {0.55, 0.85}) {
            const double speed = share * takeOffSpeeds(figures, now).vr;
            AircraftModel model(figures, plan, plan.routes.front(), placeAt("start"), flightValues(), controls);
            const double start = model.mainWheels().x;
            while (model.speed() < speed)
                model.step(controls, 0.01);
            const double wanted = model.mainWheels().x - start;
            QVERIFY(isNear(takeOffRoll(figures, now, calibratedFromTrue(speed, now.air)), wanted, 0.005 * wanted));
        }
    }

    // More flap, lower stall speed; more mass, higher speeds; a tailwind, a longer way to stop.
    void propertiesOfAllThree() {
        for (const char* folder : {"twin_jet", "twin_turboprop", "light_single"}) {
            const PracticeFigures figures = shippedFigures(folder);
            QVERIFY(rc::check(folder, [&] {
                const double mass =
                    *rc::gen::inRange(static_cast<int>(figures.mass.least), static_cast<int>(figures.mass.most));
                for (std::size_t i = 1; i < figures.air.flaps.size(); ++i)
                    RC_ASSERT(stallSpeed(figures.air, mass, figures.air.flaps[i].position) <
                              stallSpeed(figures.air, mass, figures.air.flaps[i - 1].position));
                PerformanceCase now = caseOf(figures, figures.air.flaps[1].position);
                now.mass = mass;
                PerformanceCase heavier = now;
                heavier.mass = mass * 1.02;
                RC_ASSERT(takeOffSpeeds(figures, heavier).vr > takeOffSpeeds(figures, now).vr);
                const double v1 = takeOffSpeeds(figures, now).v1;
                PerformanceCase tail = now;
                tail.headwind = -*rc::gen::inRange(1, 8);
                RC_ASSERT(accelerateStop(figures, tail, v1) > accelerateStop(figures, now, v1));
                RC_ASSERT(accelerateStop(figures, heavier, v1) > accelerateStop(figures, now, v1));
                PerformanceCase hot = now;
                hot.air = standardAir(0.0, 25.0);
                RC_ASSERT(accelerateStop(figures, hot, v1) > accelerateStop(figures, now, v1));
            }));
        }
    }

    // Moments about the main wheels.
    void centreOfGravityIsTheMeanOfItsParts() {
        MassFigures mass;
        mass.empty = 700.0;
        mass.emptyArm = 0.4;
        mass.payloadArm = 0.5;
        mass.fuelArm = 0.2;
        QVERIFY(isNear(mass.centre({100.0, 200.0}), (700.0 * 0.4 + 200.0 * 0.5 + 100.0 * 0.2) / 1000.0, 1e-12));
        mass.fuel = 100.0;
        QCOMPARE(mass.loadingFor(900.0).payload, 100.0);
        QCOMPARE(mass.loadingFor(900.0).fuel, 100.0);
        QCOMPARE(mass.loadingFor(750.0).payload, 0.0);
        QCOMPARE(mass.loadingFor(750.0).fuel, 50.0);
    }
};

QTEST_APPLESS_MAIN(TestPerformance)
#include "test_aircraft_performance.moc"
