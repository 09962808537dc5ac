#include <QTest>
#include <rapidcheck.h>

#include "twinjet.h"

using namespace flowhand;
using namespace flowhand::test;

namespace {

constexpr double kStep = 0.01;

/// An aircraft's mass, wing and wheels with nothing but a constant thrust and a drag that grows with the speed squared.
PracticeFigures plainFigures(double acceleration, double dragPerMass, const std::string& folder = "twin_jet") {
    PracticeFigures figures = shippedFigures(folder);
    figures.engine.kind = EngineKind::Jet;
    figures.engine.machLapse = 0.0;
    figures.engine.ratedThrust = acceleration * figures.mass.mass / figures.engines;
    figures.air.flaps = {{"up", 0.0, 0.0, 0.0, 1.0}};
    figures.air.liftSlope = 1e-9;
    figures.air.gearDrag = 0.0;
    figures.air.drag = 2.0 * dragPerMass * figures.mass.mass / (standardAir(0.0).density * figures.air.wingArea);
    figures.mass.flowIdle = figures.mass.flowFull = 0.0;
    figures.wheels.rolling = 0.0;
    figures.wheels.breakaway = 0.0;
    return figures;
}

struct Roll {
    double distance = 0.0;
    double time = 0.0;
};

/// Full thrust from standing until `speed` (m/s over the ground) or, when 0, until lift-off.
Roll takeOffRoll(const PracticeFigures& figures, const CockpitState& cockpit, double speed) {
    const GroundPlan plan = longRunway();
    AircraftModel model(figures, plan, plan.routes.front(), placeAt("start"), flightValues(), cockpit);
    const double start = model.mainWheels().x;
    Roll roll;
    while (roll.time < 200.0 && model.isOnGround() && (speed == 0.0 || model.speed() < speed)) {
        model.step(cockpit, kStep);
        roll.time += kStep;
    }
    roll.distance = model.mainWheels().x - start;
    return roll;
}

Roll shippedRoll(PracticeFigures figures) {
    CockpitState controls = cockpit(90.0);
    controls.flapAngle = 12.0;
    return takeOffRoll(figures, controls, 0.0);
}

/// Brakes of `acceleration` on both sides together.
double stopDistance(double acceleration, double dragPerMass, double speed, const std::string& folder = "twin_jet") {
    PracticeFigures figures = plainFigures(1.0, dragPerMass, folder);
    figures.wheels.brakeForce = acceleration * figures.mass.mass / 2.0;
    figures.wheels.brakeLag = kStep;
    figures.wheels.friction = 5.0;
    CockpitState controls = cockpit(0.0, figures.engines);
    for (EngineControls& engine : controls.engines)
        engine.hasFuel = false;
    controls.brakeLeft = controls.brakeRight = 1.0;
    StartPlace place = placeAt("start");
    place.calibrated = calibratedFromTrue(speed, standardAir(0.0));
    const GroundPlan plan = longRunway();
    AircraftModel model(figures, plan, plan.routes.front(), place, flightValues(), controls);
    const double start = model.mainWheels().x;
    for (double time = 0.0; time < 200.0 && model.speed() > 0.0; time += kStep)
        model.step(controls, kStep);
    return model.mainWheels().x - start;
}

double energyOf(const AircraftModel& model) {
    return 0.5 * model.speed() * model.speed() + kGravity * model.height();
}

} // namespace

class TestFlight : public QObject {
    Q_OBJECT

private Q_SLOTS:
    // Closed form of a = a0 - k V^2: S = ln[a0 / (a0 - k V^2)] / 2k, t = artanh(V sqrt(k / a0)) / sqrt(a0 k).
    void takeOffRollAgreesWithTheClosedForm_data() {
        QTest::addColumn<QString>("folder");
        QTest::addColumn<double>("a0");
        QTest::addColumn<double>("k");
        QTest::addColumn<double>("speed");
        QTest::newRow("twin jet") << "twin_jet" << 2.0 << 4e-5 << 250.0 / 3.6;
        QTest::newRow("twin turboprop") << "twin_turboprop" << 2.2 << 8e-5 << 50.0;
        QTest::newRow("light single") << "light_single" << 1.8 << 4e-4 << 26.0;
    }
    void takeOffRollAgreesWithTheClosedForm() {
        QFETCH(QString, folder);
        QFETCH(double, a0);
        QFETCH(double, k);
        QFETCH(double, speed);
        const PracticeFigures figures = plainFigures(a0, k, folder.toStdString());
        const Roll roll = takeOffRoll(figures, cockpit(100.0, figures.engines), speed);
        const double distance = std::log(a0 / (a0 - k * speed * speed)) / (2.0 * k);
        const double time = std::atanh(speed * std::sqrt(k / a0)) / std::sqrt(a0 * k);
        QVERIFY(isNear(roll.distance, distance, 0.005 * distance));
        QVERIFY(isNear(roll.time, time, 0.005 * time));
    }

    // a0 2 m/s2 to 250 km/h: without drag 1,206 m (transtutors, textbook problem); with k 4e-5 computed: 1,267.8 m,
    // 35.91 s.
    void takeOffRollAgreesWithATextbook() {
        const double speed = 250.0 / 3.6;
        const CockpitState full = cockpit(100.0);
        const Roll free = takeOffRoll(plainFigures(2.0, 1e-12), full, speed);
        QVERIFY(isNear(free.distance, 1206.0, 0.005 * 1206.0));
        const Roll dragged = takeOffRoll(plainFigures(2.0, 4e-5), full, speed);
        QVERIFY(isNear(dragged.distance, 1267.8, 0.005 * 1267.8));
        QVERIFY(isNear(dragged.time, 35.91, 0.005 * 35.91));
    }

    // S = ln(1 + k V^2 / a0) / 2k.
    void brakingAgreesWithTheClosedForm_data() {
        QTest::addColumn<QString>("folder");
        QTest::addColumn<double>("a0");
        QTest::addColumn<double>("k");
        QTest::addColumn<double>("speed");
        QTest::newRow("twin jet, gentle") << "twin_jet" << 1.5 << 4e-5 << 60.0;
        QTest::newRow("twin jet, hard") << "twin_jet" << 4.0 << 4e-5 << 70.0;
        QTest::newRow("twin jet, slow, much drag") << "twin_jet" << 2.0 << 4e-4 << 30.0;
        QTest::newRow("twin turboprop") << "twin_turboprop" << 2.5 << 8e-5 << 50.0;
        QTest::newRow("light single") << "light_single" << 3.0 << 4e-4 << 26.0;
    }
    void brakingAgreesWithTheClosedForm() {
        QFETCH(QString, folder);
        QFETCH(double, a0);
        QFETCH(double, k);
        QFETCH(double, speed);
        const double wanted = std::log(1.0 + k * speed * speed / a0) / (2.0 * k);
        QVERIFY(isNear(stopDistance(a0, k, speed, folder.toStdString()), wanted, 0.005 * wanted));
    }

    // Private pilot texts: 10 % more speed is 21 % more distance.
    void tenPercentFasterTakesAFifthMoreRunway() {
        const double slow = stopDistance(2.5, 1e-12, 60.0);
        QVERIFY(isNear(stopDistance(2.5, 1e-12, 66.0) / slow, 1.21, 0.005));
    }

    void energyIsKeptWithoutThrustAndDrag() {
        PracticeFigures figures = twinJetFigures();
        figures.air.drag = figures.air.inducedDrag = figures.air.gearDrag = 0.0;
        for (FlapFigures& flap : figures.air.flaps)
            flap.drag = 0.0;
        CockpitState controls = cockpit(0.0);
        for (EngineControls& engine : controls.engines)
            engine.hasFuel = false;
        controls.isGearDown = false;
        StartPlace place = placeAt("start");
        place.height = 3000.0;
        place.calibrated = 130.0;
        const GroundPlan plan = longRunway();
        AircraftModel model(figures, plan, plan.routes.front(), place, flightValues(), controls);
        const double before = energyOf(model);
        for (int i = 0; i < 3000; ++i) {
            controls.yokePitch = i < 300 ? 0.4 : i < 900 ? -0.3 : i < 1500 ? 0.2 : 0.0;
            model.step(controls, kStep);
        }
        QVERIFY(std::fabs(model.height() - 3000.0) > 20.0);
        QVERIFY(isNear(energyOf(model), before, 0.0005 * before));
    }

    // Newton's second law along the path: what the momentum changes by is the sum of thrust and weight over time.
    void momentumInFlightChangesByTheImpulse() {
        QVERIFY(rc::check("momentum in flight", [] {
            PracticeFigures figures = twinJetFigures();
            figures.mass.flowIdle = figures.mass.flowFull = 0.0;
            figures.engine.machLapse = figures.engine.densityPower = 0.0;
            figures.air.drag = figures.air.inducedDrag = figures.air.gearDrag = 0.0;
            for (FlapFigures& flap : figures.air.flaps)
                flap.drag = 0.0;
            const double power = *rc::gen::inRange(20, 100);
            CockpitState controls = cockpit(power);
            controls.isGearDown = false;
            Engine engine;
            engine.settle(figures.engine, {power, 0.0, 0.0, true, false});
            const double thrust = figures.engines * engine.thrust(figures.engine, standardAir(0.0), 0.0);
            StartPlace place = placeAt("start");
            place.height = 3000.0;
            place.calibrated = *rc::gen::inRange(110, 140);
            const GroundPlan plan = longRunway();
            AircraftModel model(figures, plan, plan.routes.front(), place, flightValues(), controls);
            const double before = model.mass() * model.speed();
            double impulse = 0.0;
            for (int i = 0; i < 1500; ++i) {
                if (i % 300 == 0) {
                    controls.yokePitch = *rc::gen::inRange(-30, 30) / 100.0;
                    controls.yokeBank = *rc::gen::inRange(-30, 30) / 100.0;
                }
                const double path = model.path();
                const double alpha = model.motion().pitch * kRadiansPerDegree - path;
                impulse += (thrust * std::cos(alpha) - model.mass() * kGravity * std::sin(path)) * kStep;
                model.step(controls, kStep);
            }
            RC_ASSERT(isNear(model.mass() * model.speed() - before, impulse, 0.001 * before));
        }));
    }

    // The same on the ground: thrust, drag and brakes.
    void momentumOnTheGroundChangesByTheImpulse() {
        QVERIFY(rc::check("momentum on the ground", [] {
            const double a0 = *rc::gen::inRange(5, 30) / 10.0;
            const double k = *rc::gen::inRange(1, 20) * 1e-5;
            const double brakes = *rc::gen::inRange(0, 40) / 10.0;
            PracticeFigures figures = plainFigures(a0, k);
            figures.wheels.brakeForce = brakes * figures.mass.mass / 2.0;
            figures.wheels.brakeLag = kStep;
            figures.wheels.friction = 5.0;
            CockpitState controls = cockpit(100.0);
            controls.brakeLeft = controls.brakeRight = 1.0;
            StartPlace place = placeAt("start");
            place.calibrated = 60.0;
            place.isTakeOffRoll = true;
            const GroundPlan plan = longRunway();
            AircraftModel model(figures, plan, plan.routes.front(), place, flightValues(), controls);
            model.step(controls, kStep); // the brakes are on
            const double before = model.mass() * model.speed();
            double impulse = 0.0;
            for (int i = 0; i < 500; ++i) {
                impulse += model.mass() * (a0 - brakes - k * model.speed() * model.speed()) * kStep;
                model.step(controls, kStep);
            }
            RC_ASSERT(isNear(model.mass() * model.speed() - before, impulse, 0.002 * before));
        }));
    }

    void rollingOutLosesWhatFrictionTakes() {
        PracticeFigures figures = plainFigures(1.0, 1e-12);
        figures.wheels.rolling = 0.02;
        CockpitState controls = cockpit(0.0);
        for (EngineControls& engine : controls.engines)
            engine.hasFuel = false;
        StartPlace place = placeAt("start");
        place.calibrated = 50.0;
        const GroundPlan plan = longRunway();
        AircraftModel model(figures, plan, plan.routes.front(), place, flightValues(), controls);
        for (int i = 0; i < 1000; ++i)
            model.step(controls, kStep);
        QVERIFY(isNear(model.speed(), 50.0 - 0.02 * kGravity * 10.0, 0.01));
    }

    // 3 deg are 318 ft to the nautical mile (approach chart table; computed 318.4), and so many ft/min by ground speed
    // (the same table, computed to the foot).
    void approachHoldsThreeDegrees_data() {
        QTest::addColumn<double>("knots");
        QTest::addColumn<double>("sink");
        QTest::newRow("120 kt") << 120.0 << 637.0;
        QTest::newRow("130 kt") << 130.0 << 690.0;
        QTest::newRow("140 kt") << 140.0 << 743.0;
        QTest::newRow("180 kt") << 180.0 << 955.0;
    }
    void approachHoldsThreeDegrees() {
        QFETCH(double, knots);
        QFETCH(double, sink);
        const PracticeFigures figures = twinJetFigures();
        StartPlace place = placeAt("threshold");
        place.height = 1500.0 * kMetresPerFoot;
        place.beyond = figures.assist.aimDistance - place.height / std::tan(figures.assist.glidePath);
        place.calibrated = knots * kMetresPerSecondPerKnot;
        place.sink = sink * kMetresPerFoot / 60.0;
        CockpitState controls = cockpit(30.0);
        controls.flapAngle = 34.0;
        const GroundPlan plan = longRunway();
        AircraftModel model(figures, plan, plan.routes.front(), place, flightValues(), controls);
        for (int i = 0; i < 1000; ++i)
            model.step(controls, kStep);
        const double height = model.height();
        const double from = model.mainWheels().x;
        while (model.mainWheels().x - from < 1852.0) {
            model.step(controls, kStep);
            const double wanted = sink * model.motion().groundSpeed / knots;
            QVERIFY(isNear(-model.motion().verticalSpeed, wanted, 0.04 * wanted));
        }
        QVERIFY(isNear((height - model.height()) / kMetresPerFoot, 318.4, 8.0));
    }

    // Pilot's Handbook of Aeronautical Knowledge, ch. 5 (from memory): rate = 1091 tan(bank) / V, radius = V^2 / (11.26
    // tan(bank)) ft; with exact gravity 5.255 deg/s and 2,208 ft for 120 kt and 30 deg (2,208 ft also wannamaker.org).
    // The banks of a turn at 3 deg/s computed.
    void turnsByItsBank_data() {
        QTest::addColumn<double>("knots");
        QTest::addColumn<double>("bank");
        QTest::addColumn<double>("rate");
        QTest::addColumn<double>("radius");
        QTest::newRow("120 kt, 30 deg") << 120.0 << 30.0 << 5.255 << 2208.0;
        QTest::newRow("standard rate, 90 kt") << 90.0 << 13.9 << 3.0 << 2901.0;
        QTest::newRow("standard rate, 120 kt") << 120.0 << 18.2 << 3.0 << 3868.0;
        QTest::newRow("standard rate, 180 kt") << 180.0 << 26.3 << 3.0 << 5802.0;
    }
    void turnsByItsBank() {
        QFETCH(double, knots);
        QFETCH(double, bank);
        QFETCH(double, rate);
        QFETCH(double, radius);
        PracticeFigures figures = shippedFigures("light_single");
        figures.assist.bankMost = bank * kRadiansPerDegree;
        figures.assist.turnHeight = 500.2;
        figures.assist.turnBy = 170.0 * kRadiansPerDegree;
        StartPlace place = placeAt("start");
        place.height = 500.0;
        figures.assist.levelHeight = 501.0;
        place.calibrated = calibratedFromTrue(knots * kMetresPerSecondPerKnot, standardAir(500.0));
        const CockpitState controls = cockpit(100.0, 1);
        const GroundPlan plan = longRunway();
        AircraftModel model(figures, plan, plan.routes.front(), place, flightValues(), controls);
        for (int i = 0; i < 1200; ++i)
            model.step(controls, kStep);
        QVERIFY(isNear(model.motion().bank, bank, 0.3));
        const double share = model.speed() / (knots * kMetresPerSecondPerKnot); // it has slowed or sped up a little
        QVERIFY(isNear(model.motion().turnRate * share, rate, 0.015 * rate));
        const double turned = model.motion().turnRate * kRadiansPerDegree;
        QVERIFY(isNear(model.speed() / turned / kMetresPerFoot / (share * share), radius, 0.015 * radius));
    }

    // What the energy changes by is the work of thrust and drag along the path.
    void energyChangesByTheWorkDone_data() {
        QTest::addColumn<QString>("folder");
        QTest::addColumn<double>("knots");
        QTest::newRow("twin jet") << "twin_jet" << 220.0;
        QTest::newRow("twin turboprop") << "twin_turboprop" << 160.0;
        QTest::newRow("light single") << "light_single" << 80.0;
    }
    void energyChangesByTheWorkDone() {
        QFETCH(QString, folder);
        QFETCH(double, knots);
        PracticeFigures figures = shippedFigures(folder.toStdString());
        figures.mass.flowIdle = figures.mass.flowFull = 0.0;
        StartPlace place = placeAt("start");
        place.height = 1500.0;
        place.calibrated = knots * kMetresPerSecondPerKnot;
        CockpitState controls = cockpit(70.0, figures.engines);
        controls.isGearDown = false;
        const GroundPlan plan = longRunway();
        AircraftModel model(figures, plan, plan.routes.front(), place, flightValues(), controls);
        Airframe frame;
        frame.settle({0.0, false, false});
        Engine engine;
        engine.settle(figures.engine, {70.0, 0.0, 0.0, true, false});
        const double before = energyOf(model);
        double work = 0.0; // for each kg
        double most = 0.0;
        for (int i = 0; i < 2000; ++i) {
            controls.yokePitch = i < 400 ? 0.2 : i < 900 ? -0.2 : 0.0;
            const AirState air = standardAir(model.height());
            const double alpha = model.motion().pitch * kRadiansPerDegree - model.path();
            const double pressure = 0.5 * air.density * model.speed() * model.speed();
            const double thrust = figures.engines * engine.thrust(figures.engine, air, model.speed());
            const double drag = frame.forces(figures.air, pressure, alpha, model.height()).drag;
            work += (thrust * std::cos(alpha) - drag) * model.speed() / model.mass() * kStep;
            most = std::max(most, std::fabs(work));
            model.step(controls, kStep);
        }
        QVERIFY(most > 0.005 * before);
        QVERIFY(isNear(energyOf(model) - before, work, 0.0005 * before));
    }

    void moreFlapStallsSlower() {
        const AerodynamicFigures air = twinJetFigures().air;
        for (std::size_t i = 1; i < air.flaps.size(); ++i)
            QVERIFY(air.flaps[i].liftMost > air.flaps[i - 1].liftMost);
    }

    void flapsGearAndSpoilersTakeTheirTime() {
        const AerodynamicFigures air = twinJetFigures().air;
        Airframe frame;
        frame.settle({0.0, true, false});
        for (int i = 0; i < 100; ++i)
            frame.step(air, {34.0, false, true}, kStep);
        QVERIFY(isNear(frame.flapAngle(), air.flapRate, 1e-9));
        QVERIFY(isNear(frame.gearDown(), 1.0 - 1.0 / air.gearTransit, 1e-9));
        QVERIFY(isNear(frame.spoilersUp(), 1.0 / air.spoilerTransit, 1e-9));
        // Full travel: flaps 20 to 40 s, gear 5 to 15 s (values from memory).
        QVERIFY(air.flaps.back().angle / air.flapRate > 20.0 && air.flaps.back().angle / air.flapRate < 40.0);
        QVERIFY(air.gearTransit > 5.0 && air.gearTransit < 15.0);
    }

    void forcesRespond() {
        const AerodynamicFigures air = twinJetFigures().air;
        Airframe clean;
        clean.settle({0.0, false, false});
        Airframe dirty;
        dirty.settle({0.0, true, true});
        const AirForces low = clean.forces(air, 3000.0, 0.1, 0.0);
        const AirForces high = clean.forces(air, 3000.0, 0.1, 300.0);
        QVERIFY(low.drag < high.drag); // ground effect
        QVERIFY(dirty.forces(air, 3000.0, 0.1, 300.0).drag > high.drag);
        QVERIFY(dirty.forces(air, 3000.0, 0.1, 300.0).lift < high.lift);
        const double most = clean.alphaMost(air);
        QVERIFY(clean.forces(air, 3000.0, most + 0.05, 300.0).lift < clean.forces(air, 3000.0, most, 300.0).lift);
    }

    void heavierRollsLonger() {
        QVERIFY(rc::check("more mass, longer roll", [] {
            PracticeFigures light = twinJetFigures();
            light.mass.mass = *rc::gen::inRange(45000, 70000);
            PracticeFigures heavy = light;
            heavy.mass.mass += *rc::gen::inRange(500, 4000);
            RC_ASSERT(shippedRoll(heavy).distance > shippedRoll(light).distance);
        }));
    }

    void tailwindRollsLonger() {
        QVERIFY(rc::check("more tailwind, longer roll", [] {
            PracticeFigures calm = twinJetFigures();
            calm.weather.windFrom = 270.0;
            calm.weather.windSpeed = *rc::gen::inRange(0, 8);
            PracticeFigures windy = calm;
            windy.weather.windSpeed += *rc::gen::inRange(1, 5);
            RC_ASSERT(shippedRoll(windy).distance > shippedRoll(calm).distance);
        }));
    }

    void hotAirRollsLonger() {
        PracticeFigures hot = twinJetFigures();
        hot.weather.warmer = 20.0;
        QVERIFY(shippedRoll(hot).distance > shippedRoll(twinJetFigures()).distance);
    }

    // Assumed for the class, from memory: 0.15 to 0.30 g in the roll.
    void rollAcceleratesLikeItsClass() {
        const Roll roll = shippedRoll(twinJetFigures());
        const double mean = 2.0 * roll.distance / (roll.time * roll.time) / kGravity;
        QVERIFY2(mean > 0.15 && mean < 0.30, qPrintable(QString::number(mean)));
    }
};

QTEST_APPLESS_MAIN(TestFlight)
#include "test_aircraft_flight.moc"
