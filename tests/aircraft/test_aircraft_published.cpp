// The shipped aircraft's figures, and what the model makes of them, against published figures and common practice.

#include <QTest>

#include "aircraft/performance.h"
#include "twinjet.h"

using namespace flowhand;
using namespace flowhand::test;

namespace {

constexpr double kKnot = kMetresPerSecondPerKnot;
constexpr double kStep = 0.01;

void folders() {
    QTest::addColumn<QString>("folder");
    for (const char* folder : {"twin_jet", "twin_turboprop", "light_single"})
        QTest::newRow(folder) << folder;
}

void airliners() {
    QTest::addColumn<QString>("folder");
    for (const char* folder : {"twin_jet", "twin_turboprop"})
        QTest::newRow(folder) << folder;
}

double valueOf(const Aircraft& aircraft, const char* name) {
    return aircraft.values.at(name).number;
}

bool isWithin(double value, double lowest, double highest) {
    if (value >= lowest && value <= highest)
        return true;
    qWarning("%.6g does not lie between %.6g and %.6g", value, lowest, highest);
    return false;
}

/// m from a speed over the ground to a stop on the wheels: full brakes, spoilers out, engines idle.
double stopFrom(const PracticeFigures& figures, double speed) {
    const GroundPlan plan = longRunway();
    CockpitState controls = cockpit(0.0, figures.engines);
    controls.flapAngle = figures.air.flaps.back().angle;
    controls.spoilers = SpoilerLever::Up;
    controls.brakeLeft = controls.brakeRight = 1.0;
    StartPlace place = placeAt("start");
    place.calibrated = speed;
    place.mass = 58000.0;
    AircraftModel model(figures, plan, plan.routes.front(), place, flightValues(), controls);
    const double from = model.mainWheels().x;
    for (double time = 0.0; time < 200.0 && model.speed() > 0.0; time += kStep)
        model.step(controls, kStep);
    return model.mainWheels().x - from;
}

/// s from one lever to another until the power is there.
double spoolTime(const EngineFigures& figures, double fromLever, double power) {
    Engine engine;
    EngineDemand demand;
    demand.lever = fromLever;
    engine.settle(figures, demand);
    demand.lever = 100.0;
    double time = 0.0;
    for (; engine.power() < power && time < 60.0; time += kStep)
        engine.step(figures, demand, kStep);
    return time;
}

} // namespace

class TestPublished : public QObject {
    Q_OBJECT

private Q_SLOTS:
    // NASA TR R-20, abstract: dry about 0.8 at any speed, snow 0.25 to 0.37, ice 0.18. Rolling 0.02 on dry concrete:
    // a textbook, second-hand.
    void surfacesHoldAsPublished_data() { folders(); }
    void surfacesHoldAsPublished() {
        QFETCH(QString, folder);
        PracticeFigures figures = shippedFigures(folder.toStdString());
        QVERIFY(figures.setSurface("dry"));
        QCOMPARE(figures.wheels.friction, 0.8);
        QCOMPARE(figures.wheels.rolling, 0.02);
        QVERIFY(figures.setSurface("snow"));
        QVERIFY(isWithin(figures.wheels.friction, 0.25, 0.37));
        QVERIFY(figures.setSurface("ice"));
        QCOMPARE(figures.wheels.friction, 0.18);
    }

    // NASA TR R-20, abstract: wet from 0.05 to more than 0.80.
    void wetLiesInThePublishedRange() {
        for (const double psi : {30.0, 50.0, 115.0, 200.0, 300.0})
            for (double knots = 0.0; knots <= 180.0; knots += 5.0)
                QVERIFY(isWithin(wetFriction(knots * kKnot, psi * 6894.757), 0.05, 0.90));
    }

    // 14 CFR 25.109(c)(2): 0.30 on-off, 0.50 quasi-modulating, 0.80 fully modulating.
    void antiSkidIsOfAPublishedKind_data() { folders(); }
    void antiSkidIsOfAPublishedKind() {
        QFETCH(QString, folder);
        const double share = shippedFigures(folder.toStdString()).wheels.antiSkidWet;
        QVERIFY(share == 0.3 || share == 0.5 || share == 0.8);
    }

    // Airplane Flying Handbook, p. 331: a knot too fast takes 20 to 30 ft more on a dry runway, 40 to 50 ft on a wet
    // one. The model's brakes are pressed fully, a little harder than those of the book: from 15 ft, to 55 ft.
    void excessSpeedCostsRunway_data() {
        QTest::addColumn<QString>("surface");
        QTest::addColumn<double>("least");
        QTest::addColumn<double>("most");
        QTest::newRow("dry") << "dry" << 15.0 << 30.0;
        QTest::newRow("wet") << "wet" << 40.0 << 55.0;
    }
    void excessSpeedCostsRunway() {
        QFETCH(QString, surface);
        QFETCH(double, least);
        QFETCH(double, most);
        PracticeFigures jet = twinJetFigures();
        QVERIFY(jet.setSurface(surface.toStdString()));
        const double more = stopFrom(jet, 140.0 * kKnot) - stopFrom(jet, 130.0 * kKnot);
        QVERIFY(isWithin(more / kMetresPerFoot / 10.0, least, most));
    }

    // 14 CFR 33.73(b), quoted: from at most 15 % to 95 % of rated power or thrust in 5 s or less. Airplane Flying
    // Handbook 2004, p. 15-5: about 2 s from the rpm of an approach; 6 to 8 s from idle (from memory), of older
    // engines.
    void enginesAnswer_data() { folders(); }
    void enginesAnswer() {
        QFETCH(QString, folder);
        const EngineFigures engine = shippedFigures(folder.toStdString()).engine;
        const double fifteen = (15.0 - engine.idlePower) / (100.0 - engine.idlePower) * 100.0;
        QVERIFY(isWithin(spoolTime(engine, fifteen, 95.0), 0.1, 5.0));
        QVERIFY(isWithin(spoolTime(engine, 45.0, 95.0), 0.1, 2.5));
        QVERIFY(isWithin(spoolTime(engine, 0.0, 95.0), 0.1, 8.0));
    }

    // 14 CFR 25.119: with the thrust that is there 8 s after the levers were moved, the landing climb is 3.2 %.
    void landingClimbAfterEightSeconds_data() { airliners(); }
    void landingClimbAfterEightSeconds() {
        QFETCH(QString, folder);
        const PracticeFigures figures = shippedFigures(folder.toStdString());
        const double mass = 0.95 * figures.mass.mass;
        const std::string flap = figures.air.flaps.back().position;
        const double speed = referenceSpeed(figures, mass, flap);
        Engine engine;
        engine.settle(figures.engine, {}); // idle
        EngineDemand full;
        full.lever = 100.0;
        full.isOnGround = false;
        for (int i = 0; i < 800; ++i)
            engine.step(figures.engine, full, kStep);
        const AirState air = standardAir(0.0);
        Airframe frame;
        frame.settle({figures.air.flaps.back().angle, true, false});
        const double pressure = 0.5 * air.density * speed * speed;
        const double alpha = frame.alphaFor(figures.air, mass * kGravity / (pressure * figures.air.wingArea));
        const double drag = frame.forces(figures.air, pressure, alpha, 100.0).drag;
        const double thrust = figures.engines * engine.thrust(figures.engine, air, speed);
        QVERIFY(isWithin((thrust - drag) / (mass * kGravity), 0.032, 0.5));
    }

    // A design assumption, from memory: a take-off roll at 0.15 to 0.30 g.
    void takeOffAcceleratesAsUsual_data() { folders(); }
    void takeOffAcceleratesAsUsual() {
        QFETCH(QString, folder);
        const PracticeFigures figures = shippedFigures(folder.toStdString());
        PerformanceCase now;
        now.mass = figures.mass.mass;
        now.flap = figures.air.flaps[folder == "twin_jet" ? 2 : 1].position;
        now.lever = folder == "light_single" ? 100.0 : 90.0;
        const double speed = takeOffSpeeds(figures, now).vr;
        const double mean = speed * speed / (2.0 * takeOffRoll(figures, now, speed)) / kGravity;
        QVERIFY(isWithin(mean, 0.15, 0.30));
    }

    // From memory: flaps 20 to 40 s, gear 5 to 15 s, of airliners.
    void flapsAndGearTakeTheUsualTime_data() { airliners(); }
    void flapsAndGearTakeTheUsualTime() {
        QFETCH(QString, folder);
        const AerodynamicFigures air = shippedFigures(folder.toStdString()).air;
        QVERIFY(isWithin(air.flaps.back().angle / air.flapRate, folder == "twin_jet" ? 20.0 : 15.0, 40.0));
        QVERIFY(isWithin(air.gearTransit, 5.0, 15.0));
    }

    // Common practice: 20 to 30 kt on straights, at most 10 kt in sharp turns (an encyclopaedia and a forum,
    // second-hand); pedals turn the nosewheel by 5 to 10 deg (second-hand), the tiller by 60 to 75 deg (from memory);
    // nosewheel steering ends at about 80 kt (Airplane Flying Handbook, p. 323).
    void groundHandlingIsAsUsual_data() { airliners(); }
    void groundHandlingIsAsUsual() {
        QFETCH(QString, folder);
        const Aircraft aircraft = shippedAircraft(folder.toStdString());
        const GroundFigures wheels = shippedFigures(folder.toStdString()).wheels;
        QVERIFY(isWithin(valueOf(aircraft, "taxi_straight"), 20.0, 30.0));
        QVERIFY(isWithin(valueOf(aircraft, "taxi_turn"), 5.0, 10.0));
        QVERIFY(isWithin(wheels.pedalAngle / kRadiansPerDegree, 5.0, 10.0));
        QVERIFY(isWithin(wheels.steeringLimit / kRadiansPerDegree, 60.0 - 1e-9, 75.0 + 1e-9));
        QVERIFY(isWithin(wheels.tillerFast / kKnot, 70.0 - 1e-9, 80.0 + 1e-9));
    }
};

QTEST_APPLESS_MAIN(TestPublished)
#include "test_aircraft_published.moc"
