#include <QTemporaryDir>
#include <QTest>
#include <filesystem>
#include <fstream>
#include <sstream>

#include "pilot.h"

using namespace flowhand;
using namespace flowhand::test;

namespace {

/// From line-up until the flaps are up, as flows have it.
void takeOff(Pilot& pilot) {
    pilot.levers(45.0);
    pilot.wait(4.0);
    pilot.levers(90.0);
    QVERIFY(pilot.waitUntil(
        [&] {
            return pilot["on_ground"] == 0.0;
        },
        60.0));
}

} // namespace

class TestPractice : public QObject {
    Q_OBJECT

    QTemporaryDir m_folder;

    /// A copy of the shipped aircraft whose practice.toml has `from` replaced with `to`.
    Result<PracticeAircraft> changed(const std::string& from, const std::string& to, const std::string& place) {
        namespace fs = std::filesystem;
        const fs::path copy = m_folder.path().toStdString();
        fs::copy(PROCEDURES, copy, fs::copy_options::recursive | fs::copy_options::overwrite_existing);
        const fs::path file = copy / "twin_jet" / "practice.toml";
        std::stringstream text;
        text << std::ifstream(file).rdbuf();
        std::string source = text.str();
        const std::size_t at = source.find(from);
        if (at == std::string::npos)
            qFatal("the practice file has no '%s'", from.c_str());
        std::ofstream(file) << source.replace(at, from.size(), to);
        Problems problems;
        m_copy = loadAircraft((copy / "twin_jet" / "aircraft.toml").string(), problems);
        return PracticeAircraft::create(*m_copy, place);
    }
    std::optional<Aircraft> m_copy;

private Q_SLOTS:
    void beginTellsEveryMotionSignal() {
        const Pilot pilot("stand");
        const Aircraft& aircraft = pilot.aircraft();
        QCOMPARE(pilot.record().size(), aircraft.signals.size() - aircraft.controls.size());
        QCOMPARE(pilot["ground_speed"], 0.0);
        QCOMPARE(pilot["on_ground"], 1.0);
        QCOMPARE(pilot["runway_clear"], 1.0);
        QCOMPARE(pilot["heading"], 180.0);
        QCOMPARE(pilot["centreline_offset"], 0.0);
        QVERIFY(isNear(pilot["engine_power_1"], 6.0, 0.1));
    }

    void onlyChangesTravelTwentyTimesASecond() {
        Pilot pilot("line_up");
        pilot.levers(60.0);
        pilot.wait(20.0);
        std::map<SignalId, Value> last;
        Time time{};
        for (const Sample& sample : pilot.record()) {
            QVERIFY(sample.time >= time);
            time = sample.time;
            QCOMPARE(sample.time % PracticeAircraft::kMotionPeriod, Duration::zero());
            const auto [at, isNew] = last.try_emplace(sample.signal, sample.value);
            QVERIFY(isNew || !(at->second == sample.value));
            at->second = sample.value;
        }
        const double knots = pilot["ground_speed"] * 10.0;
        QVERIFY(isNear(knots, std::round(knots), 1e-6));
    }

    void standsParked() {
        Pilot pilot("stand");
        pilot.levers(15.0);
        pilot.wait(10.0);
        QCOMPARE(pilot["ground_speed"], 0.0);
        pilot.put("parking_brake", "off");
        pilot.wait(10.0);
        QVERIFY(pilot["ground_speed"] > 1.0);
    }

    void idleDoesNotStartTheWheels() {
        Pilot pilot("stand");
        pilot.put("parking_brake", "off");
        pilot.wait(10.0);
        QCOMPARE(pilot["ground_speed"], 0.0);
    }

    void takeOffRollTakesThirtyToFortySeconds() {
        Pilot pilot("line_up");
        takeOff(pilot);
        QVERIFY2(pilot.time() > 30.0 && pilot.time() < 40.0, qPrintable(QString::number(pilot.time())));
        QVERIFY(std::fabs(pilot["centreline_offset"]) < 0.5);
        QVERIFY(pilot["airspeed"] > 136.0 && pilot["airspeed"] < 160.0);
    }

    // Common practice: 2 to 3 deg/s; flaps up one to two minutes after lift-off.
    void climbsAndReachesTheFlapSpeeds() {
        Pilot pilot("line_up");
        takeOff(pilot);
        const double liftOff = pilot.time();
        QVERIFY(pilot.waitUntil(
            [&] {
                return pilot["height"] > 100.0;
            },
            15.0));
        pilot.put("gear_lever", "up");
        QVERIFY(pilot.waitUntil(
            [&] {
                return pilot["height"] > 1500.0;
            },
            60.0));
        QVERIFY(pilot["airspeed"] > 142.0);
        QVERIFY(isNear(pilot["heading"], 90.0, 0.5));
        QVERIFY(isNear(pilot["bank"], 0.0, 0.5));
        QCOMPARE(pilot["gear_position"], 0.0);
        pilot.levers(75.0);
        QVERIFY(pilot.waitUntil(
            [&] {
                return pilot["airspeed"] > 165.0;
            },
            60.0));
        pilot.put("flap_lever", "4");
        QVERIFY(pilot.waitUntil(
            [&] {
                return pilot["airspeed"] > 190.0;
            },
            60.0));
        pilot.put("flap_lever", "up");
        const double after = pilot.time() - liftOff;
        QVERIFY2(after > 45.0 && after < 120.0, qPrintable(QString::number(after)));
        pilot.wait(10.0);
        QCOMPARE(pilot["flap_angle"], 0.0);
        QVERIFY(pilot["vertical_speed"] > 300.0);
    }

    void rotatesAtAboutTwoAndAHalfDegreesASecond() {
        Pilot pilot("line_up");
        pilot.levers(90.0);
        QVERIFY(pilot.waitUntil(
            [&] {
                return pilot["pitch"] > 1.0;
            },
            60.0));
        QVERIFY(isNear(pilot["airspeed"], 137.5, 2.5));
        const double from = pilot["pitch"];
        pilot.wait(2.0);
        QVERIFY(isNear((pilot["pitch"] - from) / 2.0, 2.5, 0.5));
    }

    void waitsForThePersonWhoHasTheYoke() {
        Pilot pilot("line_up");
        pilot.set("yoke_pitch", 20.0);
        pilot.wait(1.0);
        pilot.set("yoke_pitch", 0.0);
        pilot.levers(90.0);
        QVERIFY(pilot.waitUntil(
            [&] {
                return pilot["airspeed"] > 140.0;
            },
            60.0));
        QCOMPARE(pilot["pitch"], 0.0);
        pilot.set("yoke_pitch", 50.0);
        pilot.wait(2.0);
        QVERIFY(pilot["pitch"] > 3.0);
    }

    void takeOffButtonSetsTakeOffThrust() {
        Pilot pilot("line_up");
        pilot.levers(45.0);
        pilot.wait(4.0);
        pilot.put("takeoff_button", "on");
        pilot.wait(0.5);
        pilot.put("takeoff_button", "off");
        pilot.wait(6.0);
        QVERIFY(isNear(pilot["engine_power_1"], 90.6, 0.5));
        pilot.levers(0.0);
        pilot.wait(6.0);
        QVERIFY(isNear(pilot["engine_power_1"], 6.0, 0.5));
    }

    void rejectedTakeOffIsBrakedAutomatically() {
        Pilot pilot("line_up");
        pilot.levers(90.0);
        QVERIFY(pilot.waitUntil(
            [&] {
                return pilot["airspeed"] > 100.0;
            },
            60.0));
        pilot.levers(0.0);
        pilot.wait(1.0);
        QCOMPARE(pilot["autobrake_active"], 1.0);
        QVERIFY(pilot.waitUntil(
            [&] {
                return pilot["ground_speed"] == 0.0;
            },
            30.0));
    }

    void touchesDownSoftlyAndRollsOut() {
        Pilot pilot("fifty_feet");
        QVERIFY(isNear(pilot["height"], 50.0, 0.5));
        QVERIFY(isNear(pilot["airspeed"], 134.0, 0.2));
        QCOMPARE(pilot["on_ground"], 0.0);
        QVERIFY(pilot.waitUntil(
            [&] {
                return pilot["height"] < 30.0;
            },
            10.0));
        pilot.levers(0.0);
        double sink = 0.0;
        QVERIFY(pilot.waitUntil(
            [&] {
                sink = pilot["on_ground"] == 1.0 ? sink : pilot["vertical_speed"];
                return pilot["on_ground"] == 1.0;
            },
            15.0));
        QVERIFY2(pilot.time() > 5.5 && pilot.time() < 9.0, qPrintable(QString::number(pilot.time())));
        QVERIFY2(sink > -300.0, qPrintable(QString::number(sink)));
        const double touchdown = pilot.time();
        pilot.wait(1.0);
        pilot.put("spoiler_lever", "up");
        pilot.reverse(100.0);
        QVERIFY(pilot.waitUntil(
            [&] {
                return pilot["reverser_1"] == 2.0;
            },
            5.0));
        QVERIFY(pilot.waitUntil(
            [&] {
                return pilot["airspeed"] < 70.0;
            },
            40.0));
        pilot.reverse(10.0);
        QVERIFY(pilot.waitUntil(
            [&] {
                return pilot["ground_speed"] < 30.0;
            },
            40.0));
        const double rolled = pilot.time() - touchdown;
        QVERIFY2(rolled > 25.0 && rolled < 35.0, qPrintable(QString::number(rolled)));
        QVERIFY(pilot["stop_distance"] > 470.0); // the turn-off is still ahead
        QVERIFY(std::fabs(pilot["centreline_offset"]) < 0.5);
    }

    void armedSpoilersComeUpByThemselves() {
        Pilot pilot("fifty_feet");
        pilot.put("spoiler_lever", "armed");
        pilot.levers(0.0);
        QVERIFY(pilot.waitUntil(
            [&] {
                return pilot["on_ground"] == 1.0;
            },
            15.0));
        pilot.wait(2.0);
        QCOMPARE(pilot["spoiler_position"], 100.0);
        pilot.put("spoiler_lever", "down");
        pilot.wait(2.0);
        QCOMPARE(pilot["spoiler_position"], 0.0);
    }

    void toeBrakesEndAutomaticBraking() {
        Pilot pilot("rollout");
        pilot.wait(2.0);
        QCOMPARE(pilot["autobrake_active"], 1.0);
        pilot.brakes(40.0);
        pilot.wait(0.5);
        pilot.brakes(0.0);
        pilot.wait(0.5);
        QCOMPARE(pilot["autobrake_active"], 0.0);
    }

    void thrustInTheFlareGoesAround() {
        Pilot pilot("fifty_feet");
        pilot.levers(90.0);
        pilot.wait(15.0);
        QVERIFY(pilot["on_ground"] == 0.0);
        QVERIFY(pilot["vertical_speed"] > 500.0);
    }

    void sameHandsSameBytes() {
        const auto fly = [] {
            Pilot pilot("line_up");
            pilot.levers(45.0);
            pilot.wait(4.0);
            pilot.set("thrust_lever_1", 90.0);
            pilot.wait(0.1);
            pilot.set("thrust_lever_2", 90.0);
            pilot.set("rudder_pedals", 5.0);
            pilot.wait(1.0);
            pilot.set("rudder_pedals", 0.0);
            pilot.wait(50.0);
            return pilot.record();
        };
        QVERIFY(fly() == fly());
    }

    void everyShippedPlaceStands_data() {
        QTest::addColumn<QString>("place");
        for (const StartPlace& place : twinJetFigures().places)
            QTest::newRow(place.name.c_str()) << QString::fromStdString(place.name);
    }
    void everyShippedPlaceStands() {
        QFETCH(QString, place);
        Pilot pilot(place.toStdString());
        pilot.wait(1.0);
        QVERIFY(std::fabs(pilot["centreline_offset"]) < 0.1);
        QVERIFY(std::fabs(pilot["centreline_angle"]) < 0.5);
    }

    // Out of trim nose down it rotates late and slowly, nose up soon and fast.
    void trimMovesTheRotation() {
        const auto rotated = [](double trim) {
            Pilot pilot("line_up");
            pilot.set("pitch_trim", trim);
            pilot.levers(90.0);
            (void)pilot.waitUntil(
                [&] {
                    return pilot["pitch"] > 8.0;
                },
                60.0);
            return pilot.time();
        };
        const double good = rotated(1.5);
        QVERIFY2(rotated(-4.0) > good + 0.8, qPrintable(QString::number(rotated(-4.0) - good)));
        QVERIFY2(rotated(4.5) < good - 0.3, qPrintable(QString::number(rotated(4.5) - good)));
    }
    void trimIsFeltInTheYoke() {
        const auto pitchAfter = [](double trim) {
            Pilot pilot("initial_climb");
            pilot.set("pitch_trim", trim);
            pilot.set("yoke_pitch", 6.0);
            pilot.wait(1.0);
            return pilot["pitch"];
        };
        QVERIFY(pitchAfter(4.0) > pitchAfter(1.0) + 0.3);
        QVERIFY(pitchAfter(-2.0) < pitchAfter(1.0) - 0.3);
    }

    void isPutElsewhereWholeWithTheControlsAsTheyAre() {
        Pilot pilot("line_up");
        pilot.fail({FailureKind::EngineOut, 0});
        pilot.levers(90.0);
        pilot.wait(10.0);
        QVERIFY(pilot["engine_power_1"] < 5.0);
        std::vector<Sample> told;
        QVERIFY(pilot.practice().put("thousand_feet"));
        pilot.levers(60.0);
        pilot.practice().settle(told);
        const auto now = [&](const char* signal) {
            const SignalId id = *pilot.aircraft().signals.find(signal);
            const auto at = std::find_if(told.begin(), told.end(), [&](const Sample& sample) {
                return sample.signal == id;
            });
            return at != told.end() ? at->value.number() : -1.0;
        };
        QCOMPARE(now("height"), 1000.0);
        QVERIFY(isNear(now("airspeed"), 156.0, 0.5));
        QVERIFY(isNear(now("engine_power_1"), 62.4, 0.2)); // 6 % and 60 % of the rest
        QCOMPARE(now("gear_position"), 0.0);
        pilot.wait(1.0);
        QVERIFY(pilot["height"] > 1000.0);
    }
    void putKnowsItsPlaces() {
        Pilot pilot("line_up");
        const Status put = pilot.practice().put("nowhere");
        QVERIFY(!put);
        QCOMPARE(put.error().code, std::string("unknown-place"));
    }

    void unknownPlaceListsThePlaces() {
        const Aircraft aircraft = twinJet();
        const Result<PracticeAircraft> practice = PracticeAircraft::create(aircraft, "lineup");
        QVERIFY(!practice);
        QCOMPARE(practice.error().code, std::string("unknown-place"));
        QVERIFY(practice.error().message.find("'line_up'") != std::string::npos);
        QVERIFY(practice.error().message.find("rollout") != std::string::npos);
    }

    void badFilesAreRefused_data() {
        QTest::addColumn<QString>("from");
        QTest::addColumn<QString>("to");
        QTest::addColumn<QString>("code");
        QTest::newRow("missing") << "wheelbase = \"15 m\"\n"
                                 << ""
                                 << "missing-key";
        QTest::newRow("misspelt") << "wing_area"
                                  << "wing_aera"
                                  << "missing-key";
        QTest::newRow("wrong unit") << "\"112 kN\""
                                    << "\"112 kg\""
                                    << "bad-value";
        QTest::newRow("no slip") << "slip_roll = 0.10"
                                 << ""
                                 << "missing-key";
        QTest::newRow("trim without its worth") << "per_degree = \"4 %\""
                                                << ""
                                                << "missing-key";
        QTest::newRow("zero") << "\"8 s\""
                              << "\"0 s\""
                              << "bad-value";
        QTest::newRow("flap gate without figures") << "position = \"22\""
                                                   << "position = \"20\""
                                                   << "missing-key";
        QTest::newRow("too heavy") << "payload = \"14.5 t\""
                                   << "payload = \"30 t\""
                                   << "out-of-limits";
        QTest::newRow("nose heavy") << "payload_arm = \"1.4 m\""
                                    << "payload_arm = \"4 m\""
                                    << "out-of-limits";
        QTest::newRow("more fuel than tanks") << "fuel_most = \"16 t\""
                                              << "fuel_most = \"8 t\""
                                              << "out-of-limits";
        QTest::newRow("a place too heavy") << "mass = \"58 t\""
                                           << "mass = \"80 t\""
                                           << "out-of-limits";
        QTest::newRow("no such method") << "\"balanced\""
                                        << "\"fair\""
                                        << "bad-value";
        QTest::newRow("no such engine") << "\"jet\""
                                        << "\"rocket\""
                                        << "unknown-kind";
        QTest::newRow("no such surface") << "surface = \"dry\""
                                         << "surface = \"sand\""
                                         << "unknown-surface";
        QTest::newRow("no such control") << "parking_brake = \"on\""
                                         << "parkingbrake = \"on\""
                                         << "unknown-control";
        QTest::newRow("no such position") << "flap_lever = \"12\""
                                          << "flap_lever = \"13\""
                                          << "bad-value";
        QTest::newRow("no such field") << "\"fenholt\""
                                       << "\"nowhere\""
                                       << "unreadable-file";
        QTest::newRow("no such mark") << "mark = \"stand\""
                                      << "mark = \"stands\""
                                      << "unknown-place";
        QTest::newRow("not TOML") << "[mass]"
                                  << "[mass"
                                  << "bad-toml";
    }
    void badFilesAreRefused() {
        QFETCH(QString, from);
        QFETCH(QString, to);
        QFETCH(QString, code);
        const Result<PracticeAircraft> practice = changed(from.toStdString(), to.toStdString(), "stand");
        QVERIFY(!practice);
        QCOMPARE(QString::fromStdString(practice.error().code), code);
    }
};

QTEST_APPLESS_MAIN(TestPractice)
#include "test_aircraft_practice.moc"
