#include <QTest>

#include "pilot.h"

using namespace flowhand;
using namespace flowhand::test;

namespace {

Failure engineOut(std::size_t engine) {
    return {FailureKind::EngineOut, engine};
}

Failure at(FailureKind kind, Side side, double amount = 0.0) {
    return {kind, 0, side, amount};
}

/// Rolls from the runway's beginning at take-off thrust up to 100 kt, with the feet off the pedals.
Pilot rollingAt100() {
    Pilot pilot("line_up");
    pilot.levers(90.0);
    if (!pilot.waitUntil(
            [&] {
                return pilot["airspeed"] >= 100.0;
            },
            60.0))
        qFatal("never reached 100 kt");
    return pilot;
}

double sign(Side side) {
    return side == Side::Left ? -1.0 : 1.0;
}

} // namespace

/// What each failure does to the motion, against the same run without it.
class TestFailures : public QObject {
    Q_OBJECT

private Q_SLOTS:
    // Common practice: an engine that fails has no thrust within a few seconds, and the nose goes to its side.
    void engineOutSlowsAndTurns_data() {
        QTest::addColumn<int>("engine");
        QTest::newRow("left") << 0;
        QTest::newRow("right") << 1;
    }
    void engineOutSlowsAndTurns() {
        QFETCH(int, engine);
        Pilot whole = rollingAt100();
        Pilot broken = rollingAt100();
        broken.fail(engineOut(static_cast<std::size_t>(engine)));
        for (Pilot* pilot : {&whole, &broken}) {
            pilot->set("rudder_pedals", 4.0); // feet on, so that nobody else steers
            pilot->wait(4.0);
        }
        const std::string own = std::to_string(engine + 1);
        const std::string other = std::to_string(2 - engine);
        QVERIFY(broken["engine_power_" + own] < 5.0);
        QCOMPARE(broken["engine_power_" + other], whole["engine_power_" + other]);
        QVERIFY(broken["ground_speed"] < whole["ground_speed"] - 5.0);
        const double turned = broken["centreline_angle"] - whole["centreline_angle"];
        QVERIFY2((engine == 0 ? -turned : turned) > 1.0, qPrintable(QString::number(turned)));
    }

    // The live engine pushes the nose to the dead one's side; the wing that hangs back drops.
    void engineOutYawsAndRollsInTheAir_data() {
        QTest::addColumn<int>("engine");
        QTest::newRow("left") << 0;
        QTest::newRow("right") << 1;
    }
    void engineOutYawsAndRollsInTheAir() {
        QFETCH(int, engine);
        Pilot whole("thousand_feet");
        Pilot broken("thousand_feet");
        broken.fail(engineOut(static_cast<std::size_t>(engine)));
        for (Pilot* pilot : {&whole, &broken}) {
            pilot->set("rudder_pedals", 4.0); // feet on the pedals, a hand on the yoke, both hardly moved
            pilot->set("yoke_roll", 6.0);
            pilot->wait(4.0);
        }
        const double side = engine == 0 ? -1.0 : 1.0;
        QVERIFY(side * (broken["bank"] - whole["bank"]) > 10.0);
        QVERIFY(side * (broken["heading"] - whole["heading"]) > 5.0);
    }
    void theAssistHoldsADeadEngine() {
        Pilot pilot("thousand_feet");
        pilot.fail(engineOut(0));
        pilot.wait(20.0);
        QVERIFY(isNear(pilot["bank"], 0.0, 2.0));
        QVERIFY(isNear(pilot["heading"], 90.0, 2.0));
        QVERIFY(std::fabs(pilot["centreline_offset"]) < 15.0);
    }
    void pedalsHoldADeadEngine() {
        const auto turned = [](double pedals) {
            Pilot pilot("thousand_feet");
            pilot.set("rudder_pedals", pedals);
            pilot.set("yoke_roll", 6.0);
            pilot.fail(engineOut(0));
            pilot.wait(5.0);
            return pilot["heading"] - 90.0;
        };
        const double none = turned(4.0);
        QVERIFY(turned(50.0) > none + 5.0); // on the good side
        QVERIFY(turned(-30.0) < none - 1.0);
    }
    // Still air: N = q V_fin slip, so the nose settles beside the path by the engines' moment over the fin's.
    void theNoseSettlesWhereTheFinHoldsIt() {
        const PracticeFigures jet = twinJetFigures();
        const GroundPlan plan = longRunway();
        StartPlace place = placeAt("start");
        place.height = 2000.0;
        place.calibrated = 110.0;
        CockpitState controls = cockpit(60.0);
        controls.pedals = 0.05;
        controls.isGearDown = false;
        AircraftModel model(jet, plan, plan.routes.front(), place, flightValues(), controls);
        model.fail(engineOut(1));
        for (int i = 0; i < 2500; ++i)
            model.step(controls, 0.01);
        const AirState air = standardAir(model.height());
        Engine live;
        live.settle(jet.engine, {60.0, 0.0, 0.0, true, false});
        const double moment = live.thrust(jet.engine, air, model.speed()) * jet.body.engineArm;
        const double pressure = 0.5 * air.density * model.speed() * model.speed();
        const double wanted = (moment / pressure + 0.05 * jet.wheels.rudderMoment) / jet.wheels.finMoment;
        const MotionState motion = model.motion();
        const double slip = std::remainder(motion.heading - motion.track, 360.0) * kRadiansPerDegree;
        QVERIFY(isNear(slip, wanted, 0.03 * wanted));
    }
    void oneEngineInTheMiddlePullsStraight() {
        Pilot pilot("thousand_feet", {}, "light_single");
        pilot.set("rudder_pedals", 4.0);
        pilot.wait(4.0);
        const double before = pilot["heading"];
        pilot.fail(engineOut(0));
        pilot.wait(4.0);
        QVERIFY(isNear(pilot["heading"], before, 1.0));
    }

    void lockedReverserStaysStowed() {
        Pilot whole("rollout");
        Pilot broken("rollout");
        broken.fail({FailureKind::ReverserLocked, 0});
        for (Pilot* pilot : {&whole, &broken}) {
            pilot->put("autobrake", "off");
            pilot->levers(0.0);
            pilot->reverse(100.0);
            pilot->wait(8.0);
        }
        QCOMPARE(broken["reverser_1"], 0.0);      // stowed
        QCOMPARE(broken["reverser_2"], 2.0);      // deployed
        QVERIFY(broken["engine_power_1"] < 10.0); // no thrust forward while the lever asks for reverse
        QVERIFY(broken["ground_speed"] > whole["ground_speed"] + 2.0);
    }

    void lockedReverserStaysDeployed() {
        Pilot pilot("rollout");
        pilot.levers(0.0);
        pilot.reverse(100.0);
        pilot.wait(5.0);
        pilot.fail({FailureKind::ReverserLocked, 1});
        pilot.reverse(0.0);
        pilot.wait(5.0);
        QCOMPARE(pilot["reverser_1"], 0.0);
        QCOMPARE(pilot["reverser_2"], 2.0);
    }

    void unlockedReverserOpensALittleByItself() {
        Pilot pilot("line_up");
        pilot.fail({FailureKind::ReverserUnlocked, 1});
        pilot.levers(60.0);
        pilot.wait(10.0);
        QCOMPARE(pilot["reverser_1"], 0.0);      // stowed
        QCOMPARE(pilot["reverser_2"], 1.0);      // in transit
        QVERIFY(pilot["engine_power_2"] < 10.0); // no thrust into a reverser that opens
        QVERIFY(pilot["engine_power_1"] > 50.0);
    }
    void unlockedPropellerGoesFlatOnTheGroundAlone() {
        Pilot taxiing("taxiing", {}, "twin_turboprop");
        taxiing.fail({FailureKind::ReverserUnlocked, 1});
        taxiing.wait(2.0);
        QCOMPARE(taxiing["reverser_1"], 0.0);
        QCOMPARE(taxiing["reverser_2"], 1.0); // flat, with the lever at flight idle
        Pilot flying("final", {}, "twin_turboprop");
        flying.fail({FailureKind::ReverserUnlocked, 1});
        flying.wait(2.0);
        QCOMPARE(flying["reverser_2"], 0.0);
    }

    void lostSteeringLeavesTheTillerWithoutEffect() {
        Pilot whole("line_up");
        Pilot broken("line_up");
        broken.fail({FailureKind::SteeringLost});
        for (Pilot* pilot : {&whole, &broken}) {
            pilot->levers(30.0);
            QVERIFY(pilot->waitUntil(
                [&] {
                    return (*pilot)["ground_speed"] > 8.0;
                },
                60.0));
            pilot->set("tiller", 40.0);
            pilot->wait(5.0);
        }
        QVERIFY(whole["centreline_angle"] > 20.0);
        QVERIFY(std::fabs(broken["centreline_angle"]) < 1.0);
    }

    // Steered by the brakes: the nosewheel follows.
    void lostSteeringStillTurnsByBrakes() {
        Pilot pilot("line_up");
        pilot.fail({FailureKind::SteeringLost});
        pilot.levers(40.0);
        QVERIFY(pilot.waitUntil(
            [&] {
                return pilot["ground_speed"] > 12.0;
            },
            60.0));
        pilot.set("toe_brake_right", 40.0);
        pilot.wait(3.0);
        QVERIFY(pilot["centreline_angle"] > 2.0);
        QVERIFY(pilot["nosewheel_angle"] > 1.0);
    }

    void flapsStopApartAndRoll_data() {
        QTest::addColumn<int>("side");
        QTest::newRow("left stays out") << static_cast<int>(Side::Left);
        QTest::newRow("right stays out") << static_cast<int>(Side::Right);
    }
    void flapsStopApartAndRoll() {
        QFETCH(int, side);
        Pilot whole("fifty_feet");
        Pilot broken("fifty_feet");
        broken.fail(at(FailureKind::FlapAsymmetry, Side(side), 2.0));
        for (Pilot* pilot : {&whole, &broken}) {
            pilot->levers(90.0); // goes around
            pilot->wait(6.0);
            pilot->set("yoke_roll", 6.0); // a hand on the yoke, hardly turned
            pilot->put("flap_lever", "22");
            pilot->wait(4.0);
        }
        QVERIFY(isNear(broken["flap_angle"], 33.0, 0.11)); // one side at 34, the other at 32
        QVERIFY(whole["flap_angle"] < 31.0);
        // The wing whose flap stays out has more lift and goes up.
        QVERIFY(-sign(Side(side)) * (broken["bank"] - whole["bank"]) > 3.0);
    }
    void theAssistHoldsTheWingsLevelWithFlapsApart() {
        Pilot pilot("fifty_feet");
        pilot.fail(at(FailureKind::FlapAsymmetry, Side::Left, 3.0));
        pilot.levers(90.0);
        pilot.wait(6.0);
        pilot.put("flap_lever", "22");
        pilot.wait(10.0);
        QVERIFY(std::fabs(pilot["bank"]) < 3.0);
    }

    void brakes_data() {
        QTest::addColumn<int>("kind");
        QTest::addColumn<int>("side");
        QTest::addColumn<double>("turnsTo"); // 1 right
        QTest::newRow("left lost") << static_cast<int>(FailureKind::BrakeLost) << 0 << 1.0;
        QTest::newRow("right lost") << static_cast<int>(FailureKind::BrakeLost) << 1 << -1.0;
        QTest::newRow("left drags") << static_cast<int>(FailureKind::BrakeDrags) << 0 << -1.0;
        QTest::newRow("right drags") << static_cast<int>(FailureKind::BrakeDrags) << 1 << 1.0;
    }
    void brakes() {
        QFETCH(int, kind);
        QFETCH(int, side);
        QFETCH(double, turnsTo);
        const bool isLost = FailureKind(kind) == FailureKind::BrakeLost;
        Pilot whole("rollout");
        Pilot broken("rollout");
        broken.fail(at(FailureKind(kind), Side(side), 0.5));
        for (Pilot* pilot : {&whole, &broken}) {
            pilot->put("autobrake", "off");
            pilot->levers(0.0);
            pilot->brakes(isLost ? 40.0 : 0.0);
            pilot->set("rudder_pedals", 4.0); // feet on, so that nobody else steers
            pilot->wait(3.0);
        }
        const double faster = broken["ground_speed"] - whole["ground_speed"];
        QVERIFY2(isLost ? faster > 2.0 : faster < -2.0, qPrintable(QString::number(faster)));
        QVERIFY(turnsTo * (broken["centreline_angle"] - whole["centreline_angle"]) > 0.3);
    }

    void surroundings() {
        Pilot dry("rollout");
        Pilot ice("rollout", {"ice", std::nullopt, std::nullopt});
        for (Pilot* pilot : {&dry, &ice}) {
            pilot->levers(0.0);
            pilot->brakes(100.0);
            pilot->wait(8.0);
        }
        QVERIFY(ice["ground_speed"] > dry["ground_speed"] + 20.0);

        Pilot windy("line_up", {"", Wind{90.0, 10.0}, std::nullopt});
        windy.wait(0.1);
        QVERIFY(isNear(windy["airspeed"], 10.0 / kMetresPerSecondPerKnot, 0.4)); // stands, 10 m/s from ahead
    }
    void impossibleSurroundings() {
        const Aircraft aircraft = twinJet();
        const auto sand = PracticeAircraft::create(aircraft, "line_up", {"sand", std::nullopt, std::nullopt});
        QVERIFY(!sand);
        QCOMPARE(QString::fromStdString(sand.error().code), QString("unknown-surface"));
        const auto heavy = PracticeAircraft::create(aircraft, "line_up", {"", std::nullopt, 200000.0});
        QVERIFY(!heavy);
        QCOMPARE(QString::fromStdString(heavy.error().code), QString("out-of-limits"));
    }

    void restartTellsAllAgainFromWhereItIs() {
        Pilot pilot = rollingAt100();
        pilot.practice().restart();
        QCOMPARE(pilot.practice().nextStep(), PracticeAircraft::kStep);
        std::vector<Sample> told;
        pilot.practice().begin(told);
        const std::size_t motion = pilot.aircraft().signals.size() - pilot.aircraft().controls.size();
        QCOMPARE(told.size(), motion);
        const SignalId speed = *pilot.aircraft().signals.find("airspeed");
        QVERIFY(std::any_of(told.begin(), told.end(), [&](const Sample& sample) {
            return sample.signal == speed && sample.value.number() == pilot["airspeed"];
        }));
    }

    void followsAnotherLine() {
        Pilot pilot("stand");
        QVERIFY(pilot.practice().hasRoute("out_27"));
        QVERIFY(!pilot.practice().hasRoute("nowhere"));
        const double before = pilot["stop_distance"];
        pilot.practice().follow("out_27");
        pilot.wait(0.1);
        QVERIFY(pilot["stop_distance"] > before + 1000.0); // the other end of the runway is far from this stand
        QVERIFY(std::fabs(pilot["centreline_offset"]) < 1.0);
    }
};

QTEST_APPLESS_MAIN(TestFailures)
#include "test_aircraft_failures.moc"
