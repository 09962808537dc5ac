#include <QTest>
#include <rapidcheck.h>

#include "condition/condition.h"
#include "pilot.h"

using namespace flowhand;
using namespace flowhand::test;

namespace {

/// The three shipped aircraft, one row each.
void folders() {
    QTest::addColumn<QString>("folder");
    for (const char* folder : {"twin_jet", "twin_turboprop", "light_single"})
        QTest::newRow(folder) << folder;
}

Pilot sitIn(const std::string& folder, const std::string& place) {
    return Pilot(place, {}, folder);
}

/// s and m from the start of the roll to lift-off, all power.
std::pair<double, double> takeOff(Pilot& pilot) {
    const double from = pilot["stop_distance"];
    pilot.levers(100.0);
    const bool hasLifted = pilot.waitUntil(
        [&] {
            return pilot["on_ground"] == 0.0;
        },
        90.0);
    return hasLifted ? std::pair(pilot.time(), from - pilot["stop_distance"]) : std::pair(1e9, 1e9);
}

} // namespace

class TestFleet : public QObject {
    Q_OBJECT

private Q_SLOTS:
    void everyPlaceStands_data() {
        QTest::addColumn<QString>("folder");
        QTest::addColumn<QString>("place");
        for (const char* folder : {"twin_jet", "twin_turboprop", "light_single"})
            for (const StartPlace& place : shippedFigures(folder).places)
                QTest::addRow("%s, %s", folder, place.name.c_str()) << folder << QString::fromStdString(place.name);
    }
    void everyPlaceStands() {
        QFETCH(QString, folder);
        QFETCH(QString, place);
        Pilot pilot = sitIn(folder.toStdString(), place.toStdString());
        const double height = pilot["height"];
        pilot.wait(3.0);
        QVERIFY(height > 0.0 || pilot["on_ground"] == 1.0);
        QVERIFY(std::fabs(pilot["centreline_offset"]) < 1.0);
    }

    void theFlightHasAPlaceForEachPhase_data() { folders(); }
    void theFlightHasAPlaceForEachPhase() {
        QFETCH(QString, folder);
        const PracticeFigures figures = shippedFigures(folder.toStdString());
        for (const char* place :
             {"stand", "holding_point", "line_up", "v1", "thousand_feet", "final", "fifty_feet", "rollout"})
            QVERIFY2(figures.place(place) != nullptr, place);
    }

    // Part of a whole flight: roll, climb-out, gear and flap up, by the assist.
    void takesOffAndClimbs_data() { folders(); }
    void takesOffAndClimbs() {
        QFETCH(QString, folder);
        Pilot pilot = sitIn(folder.toStdString(), "line_up");
        const double vr = pilot["aircraft.vr"];
        const auto [time, distance] = takeOff(pilot);
        QVERIFY2(time > 10.0 && time < 40.0 && distance < 1500.0, qPrintable(QString::number(time)));
        QVERIFY(pilot["airspeed"] >= vr - 1.0 && pilot["airspeed"] < vr + 16.0);
        pilot.wait(45.0);
        QVERIFY(pilot["height"] > 400.0);
        QVERIFY(pilot["airspeed"] > pilot["aircraft.v2"]);
        QVERIFY(std::fabs(pilot["centreline_offset"]) < 5.0);
    }

    // Straight ahead to the height of the turn, round by its angle, level where the climb ends and at the speed that
    // the levers hold.
    void turnsAndLevelsOff_data() { folders(); }
    void turnsAndLevelsOff() {
        QFETCH(QString, folder);
        const AssistFigures assist = shippedFigures(folder.toStdString()).assist;
        const double turnHeight = assist.turnHeight / kMetresPerFoot;
        const double levelHeight = assist.levelHeight / kMetresPerFoot;
        const double speed = assist.accelerateTo / kMetresPerSecondPerKnot;
        Pilot pilot = sitIn(folder.toStdString(), "thousand_feet");
        pilot.levers(100.0);
        QVERIFY(pilot.waitUntil(
            [&] {
                if (pilot["airspeed"] > 0.9 * speed)
                    pilot.put("flap_lever", "up");
                return pilot["height"] > turnHeight - 50.0;
            },
            300.0));
        QVERIFY(isNear(pilot["track"], 90.0, 1.0));
        double mostBank = 0.0;
        double highest = 0.0;
        const auto cruise = [&] {
            pilot.levers(std::clamp(50.0 + 5.0 * (speed - pilot["airspeed"]), 0.0, 100.0));
            mostBank = std::max(mostBank, std::fabs(pilot["bank"]));
            highest = std::max(highest, pilot["height"]);
            return false;
        };
        QVERIFY(!pilot.waitUntil(cruise, 600.0));
        QVERIFY(isNear(pilot["height"], levelHeight, 30.0));
        QVERIFY2(highest < levelHeight + 100.0, qPrintable(QString::number(highest)));
        QVERIFY(isNear(pilot["vertical_speed"], 0.0, 60.0));
        QVERIFY(isNear(pilot["track"], 90.0 + assist.turnBy / kRadiansPerDegree, 2.0));
        QVERIFY(isNear(pilot["airspeed"], speed, 10.0));
        QVERIFY(isNear(pilot["bank"], 0.0, 1.0));
        QVERIFY(isNear(mostBank, assist.bankMost / kRadiansPerDegree, 2.0));
    }

    void landsFromFourMiles_data() { folders(); }
    void landsFromFourMiles() {
        QFETCH(QString, folder);
        Pilot pilot = sitIn(folder.toStdString(), "final");
        const Aircraft& aircraft = pilot.aircraft();
        pilot.put("flap_lever", aircraft.values.at("landing_flap").word);
        double lowest = 1e9;
        double sink = 0.0;
        const bool isDown = pilot.waitUntil(
            [&] {
                const double error = pilot["aircraft.vapp"] - pilot["airspeed"];
                pilot.levers(pilot["height"] < 30.0 ? 0.0 : std::clamp(35.0 + 6.0 * error, 0.0, 65.0));
                if (pilot["on_ground"] == 1.0)
                    return true;
                lowest = std::min(lowest, pilot["airspeed"]);
                sink = pilot["vertical_speed"];
                return false;
            },
            300.0);
        QVERIFY(isDown);
        QVERIFY2(sink > -400.0, qPrintable(QString::number(sink)));
        QVERIFY2(lowest > pilot["aircraft.vref"] / 1.35, qPrintable(QString::number(lowest)));
        QVERIFY(pilot["stop_distance"] > 0.0); // before the turn-off
        pilot.brakes(60.0);
        QVERIFY(pilot.waitUntil(
            [&] {
                return pilot["ground_speed"] == 0.0;
            },
            60.0));
    }

    void heavierAndHotterRollLonger_data() { folders(); }
    void heavierAndHotterRollLonger() {
        QFETCH(QString, folder);
        const std::string name = folder.toStdString();
        const MassFigures mass = shippedFigures(name).mass;
        const auto roll = [&](const Surroundings& surroundings) {
            Pilot pilot("line_up", surroundings, name);
            return takeOff(pilot).second;
        };
        const double usual = roll({});
        QVERIFY(roll({"", std::nullopt, mass.most}) > usual);
        QVERIFY(roll({"", Wind{270.0, 5.0}, std::nullopt}) > usual);
        QVERIFY(roll({"", Wind{90.0, 5.0}, std::nullopt}) < usual);
        QVERIFY(roll({"standing_water", std::nullopt, std::nullopt}) > usual);
    }

    void slipperyStopsLonger_data() { folders(); }
    void slipperyStopsLonger() {
        QFETCH(QString, folder);
        double last = 0.0;
        for (const char* surface : {"dry", "wet", "snow", "ice"}) {
            Pilot pilot("rollout", {surface, std::nullopt, std::nullopt}, folder.toStdString());
            const double from = pilot["stop_distance"];
            pilot.levers(0.0);
            pilot.brakes(100.0);
            QVERIFY(pilot.waitUntil(
                [&] {
                    return pilot["ground_speed"] == 0.0;
                },
                120.0));
            QVERIFY2(from - pilot["stop_distance"] >= last, surface);
            last = from - pilot["stop_distance"];
        }
    }

    // 14 CFR Part 60, tables A2A 1.a.1 and 1.a.2: minimum radius within 3 ft or 20 %, turn rate within 10 % or 2 deg/s
    // of the bicycle's.
    void turnsAsTheBicycle_data() { folders(); }
    void turnsAsTheBicycle() {
        QFETCH(QString, folder);
        const PracticeFigures figures = shippedFigures(folder.toStdString());
        const bool hasTiller = figures.wheels.tillerLeast < 1.0;
        SteeringDemand demand;
        (hasTiller ? demand.tiller : demand.pedals) = hasTiller ? figures.wheels.steeringLimit : 1.0;
        const double angle = hasTiller ? figures.wheels.steeringLimit : figures.wheels.pedalAngle;
        RollingState state;
        state.mass = figures.mass.mass;
        state.speed = 3.0 * kMetresPerSecondPerKnot;
        state.weightOnWheels = state.mass * kGravity;
        GroundHandling wheels;
        for (int i = 0; i < 3000; ++i)
            (void)wheels.step(figures.wheels, demand, state, 0.01);
        const double rate = turnRate(figures.wheels.wheelbase, angle, state.speed);
        QVERIFY(isNear(wheels.yawRate(), rate, std::max(0.1 * rate, 2.0 * kRadiansPerDegree)));
        const double radius = turnRadiusMain(figures.wheels.wheelbase, angle);
        QVERIFY(isNear(state.speed / wheels.yawRate(), radius, std::max(3.0 * kMetresPerFoot, 0.2 * radius)));
    }

    // Horonjeff, Planning and Design of Airports, eq. 6-9, p. 247: where the nosewheel goes round on a radius R, the
    // axis of the aircraft lies at most Amax = asin(d / R) off the line, d from nosewheel to main wheels. So the
    // steering angle, too.
    void noseOnACircleLiesAsFarOffAsPublished_data() {
        QTest::addColumn<QString>("folder");
        QTest::addColumn<double>("degrees");
        for (const char* folder : {"twin_jet", "twin_turboprop", "light_single"})
            for (const double degrees : {5.0, 10.0, 15.0, 20.0})
                QTest::addRow("%s, %g deg", folder, degrees) << folder << degrees;
    }
    void noseOnACircleLiesAsFarOffAsPublished() {
        QFETCH(QString, folder);
        QFETCH(double, degrees);
        const PracticeFigures figures = shippedFigures(folder.toStdString());
        const bool hasTiller = figures.wheels.tillerLeast < 1.0;
        const double angle =
            hasTiller ? degrees * kRadiansPerDegree : std::min(degrees * kRadiansPerDegree, figures.wheels.pedalAngle);
        SteeringDemand demand;
        (hasTiller ? demand.tiller : demand.pedals) = hasTiller ? angle : angle / figures.wheels.pedalAngle;
        RollingState state;
        state.mass = figures.mass.mass;
        state.speed = 3.0 * kMetresPerSecondPerKnot;
        state.weightOnWheels = state.mass * kGravity;
        GroundHandling wheels;
        for (int i = 0; i < 3000; ++i)
            (void)wheels.step(figures.wheels, demand, state, 0.01);
        const double across = wheels.yawRate() * figures.wheels.wheelbase;
        const double radius = std::hypot(state.speed, across) / wheels.yawRate();
        QVERIFY(isNear(std::asin(figures.wheels.wheelbase / radius), angle, 0.05 * angle));
    }

    void fuelIsBurnt_data() { folders(); }
    void fuelIsBurnt() {
        QFETCH(QString, folder);
        Pilot pilot = sitIn(folder.toStdString(), "thousand_feet");
        const double fuel = pilot["fuel"];
        const double mass = pilot["mass"];
        const MassFigures figures = shippedFigures(folder.toStdString()).mass;
        pilot.levers(100.0);
        pilot.wait(120.0);
        const double engines = folder == "light_single" ? 1.0 : 2.0;
        QVERIFY(isNear(fuel - pilot["fuel"], engines * figures.flowFull / 30.0,
                       0.12 * engines * figures.flowFull / 30.0 + 10.0));
        QVERIFY(isNear(mass - pilot["mass"], fuel - pilot["fuel"], 10.1));
    }

    void sameHandsSameBytes_data() { folders(); }
    void sameHandsSameBytes() {
        QFETCH(QString, folder);
        const auto fly = [&] {
            Pilot pilot = sitIn(folder.toStdString(), "line_up");
            pilot.levers(45.0);
            pilot.wait(2.0);
            pilot.levers(100.0);
            pilot.set("rudder_pedals", 5.0);
            pilot.wait(1.0);
            pilot.set("rudder_pedals", 0.0);
            pilot.wait(60.0);
            return pilot.record();
        };
        QVERIFY(fly() == fly());
    }

    void speedsCanBeUsedInConditions() {
        const Aircraft jet = twinJet();
        std::vector<ConditionProblem> problems;
        const auto condition = Condition::compile("airspeed > aircraft.v1 + 5 kt", jet.scope(), problems);
        QVERIFY(condition);
        std::vector<Value> values(jet.signals.size());
        const auto holds = [&](double airspeed, double v1) {
            values[indexOf(*jet.signals.find("airspeed"))] = Value::number(airspeed);
            values[indexOf(*jet.signals.find("aircraft.v1"))] = Value::number(v1);
            return condition->holdsNow(values);
        };
        QCOMPARE(condition->holdsNow(values), Truth::Unknown);
        QCOMPARE(holds(140.0, 136.0), Truth::False);
        QCOMPARE(holds(140.0, 130.0), Truth::True);
        problems.clear();
        QVERIFY(!Condition::compile("airspeed > aircraft.v9", jet.scope(), problems));
    }

    // Pilot's Handbook of Aeronautical Knowledge, Fig. 10-3 of an older edition: 29.70 inHg is 205 ft from standard.
    void altimeterShowsByItsSetting() {
        Pilot pilot = sitIn("light_single", "thousand_feet");
        pilot.set("altimeter_setting", 29.70 * 33.86389);
        pilot.wait(0.1);
        QVERIFY(isNear(pilot["altitude"] - pilot["indicated_altitude"], 205.0, 6.0));
    }

    void turbopropStartsByItsStarter() {
        Pilot pilot = sitIn("twin_turboprop", "cold");
        pilot.put("condition_lever_1", "low");
        pilot.wait(10.0);
        QCOMPARE(pilot["engine_power_1"], 0.0);
        pilot.put("condition_lever_1", "off");
        pilot.put("battery", "off");
        pilot.put("start_switch_1", "start");
        pilot.wait(5.0);
        QCOMPARE(pilot["engine_power_1"], 0.0);
        pilot.put("battery", "on");
        pilot.wait(6.0);
        QVERIFY(isNear(pilot["engine_power_1"], 3.0, 0.2));
        pilot.put("condition_lever_1", "low");
        pilot.wait(15.0);
        pilot.put("start_switch_1", "off");
        pilot.wait(1.0);
        QVERIFY(isNear(pilot["engine_power_1"], 7.0, 0.2));
        pilot.put("fire_handle_1", "on");
        pilot.wait(30.0);
        QCOMPARE(pilot["engine_power_1"], 0.0);
    }

    void powerLeverGoesThroughFlatBladesIntoReverse() {
        Pilot pilot = sitIn("twin_turboprop", "rollout");
        QCOMPARE(pilot["reverser_1"], 1.0);
        const double from = pilot["ground_speed"];
        pilot.wait(2.0);
        const double byGroundIdle = from - pilot["ground_speed"];
        pilot.levers(-40.0);
        pilot.wait(3.0);
        QCOMPARE(pilot["reverser_1"], 2.0);
        const double before = pilot["ground_speed"];
        pilot.wait(2.0);
        QVERIFY(before - pilot["ground_speed"] > 1.5 * byGroundIdle);
    }

    // Armed, the propeller of a dead engine does not stand in the wind.
    void automaticFeatheringSavesTheClimb() {
        const auto climbed = [](const char* autofeather) {
            Pilot pilot = sitIn("twin_turboprop", "thousand_feet");
            pilot.put("autofeather", autofeather);
            pilot.wait(1.0);
            Failure failure;
            failure.kind = FailureKind::EngineOut;
            pilot.fail(failure);
            pilot.wait(40.0);
            return pilot["height"];
        };
        QVERIFY(climbed("armed") > climbed("off") + 30.0);
    }

    void pistonAnswersToMixtureMagnetosAndHeat() {
        Pilot pilot = sitIn("light_single", "stand");
        pilot.levers(30.0);
        pilot.wait(5.0);
        const double both = pilot["propeller_speed_1"];
        pilot.put("magnetos", "left");
        pilot.wait(3.0);
        const double drop = both - pilot["propeller_speed_1"];
        QVERIFY2(drop > 20.0 && drop < 175.0, qPrintable(QString::number(drop))); // common practice: at most 175 rpm
        pilot.put("magnetos", "both");
        pilot.put("carburettor_heat", "on");
        pilot.wait(3.0);
        QVERIFY(pilot["propeller_speed_1"] < both);
        pilot.put("carburettor_heat", "off");
        pilot.set("mixture", 0.0);
        pilot.wait(10.0);
        QCOMPARE(pilot["propeller_speed_1"], 0.0);
        pilot.set("mixture", 100.0);
        pilot.wait(5.0);
        QCOMPARE(pilot["propeller_speed_1"], 0.0); // not before the starter turns it
        pilot.put("magnetos", "start");
        pilot.wait(2.0);
        pilot.put("magnetos", "both");
        pilot.wait(3.0);
        QVERIFY(pilot["propeller_speed_1"] > 800.0);
    }

    void electricFlapsNeedPower() {
        Pilot pilot = sitIn("light_single", "cold");
        pilot.put("battery", "off");
        pilot.put("flap_lever", "20");
        pilot.wait(10.0);
        QCOMPARE(pilot["flap_angle"], 0.0);
        pilot.put("battery", "on");
        pilot.wait(10.0);
        QCOMPARE(pilot["flap_angle"], 20.0);
    }

    void steeringQualityIsMeasuredAlongTheWay() {
        SteeringQuality quality;
        for (int i = 0; i < 1000; ++i)
            quality.step(i < 500 ? 1.0 : -2.0, 5.0, i > 800, 0.01);
        QVERIFY(isNear(quality.rms(), std::sqrt((1.0 + 4.0) / 2.0), 1e-6));
        QCOMPARE(quality.largest(), 2.0);
        QCOMPARE(quality.turnSpeed(), 5.0);
        quality.step(9.0, 0.0, false, 0.01);
        QCOMPARE(quality.largest(), 2.0); // stays while it stands
        quality.step(0.5, 1.0, false, 0.01);
        QCOMPARE(quality.largest(), 0.5); // a new stretch
    }
};

QTEST_APPLESS_MAIN(TestFleet)
#include "test_aircraft_fleet.moc"
