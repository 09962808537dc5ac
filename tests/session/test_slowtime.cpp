// In slow time all of a run goes slower together; hands stay as fast as they are.

#include <QtTest>

#include "session/onscreenflight.h"

using namespace flowhand;
using namespace flowhand::test;
using namespace std::chrono_literals;

namespace {

const char* const kFlow = R"toml(
format = 1
title = "Roll"
phases = ["take_off"]
seat = "captain"
[start]
place = "line_up"
[start.controls]
thrust_lever_1 = "0 %"
thrust_lever_2 = "0 %"
flap_lever = "12"
fuel_lever_1 = "run"
fuel_lever_2 = "run"
[[step]]
id = "light"
title = "Landing lights on"
cue = { by = "ground", text = "Cleared for take-off." }
done = "landing_lights"
within = "5 s"
[[step]]
id = "flap"
title = "Flap lever to 22"
after = []
done = "flap_lever == 22"
within = "60 s"
[[step]]
id = "trim"
title = "Trim to 3"
after = []
done = "pitch_trim > 2.5 deg"
within = "60 s"
)toml";

} // namespace

class TestSlowTime : public QObject {
    Q_OBJECT

    const Flow m_flow = jetFlow(kFlow);

private Q_SLOTS:
    void clocks() {
        const SlowTime slow(4);
        QCOMPARE(slow.toRun(8s), Time(2s));
        QCOMPARE(slow.toReal(2s), Time(8s));
        QCOMPARE(slow.toRun(kForever), kForever);
        QCOMPARE(slow.toReal(kForever), kForever);
        QCOMPARE(slow.toRun(7us), Time(1us));
        QCOMPARE(slow.toRunFrom(8us), Time(2us));
        QCOMPARE(slow.toRunFrom(9us), Time(3us));
        QCOMPARE(SlowTime(1).toRunFrom(9us), Time(9us));
        QCOMPARE(ofHands(300ms, slow.scale()), Duration(75ms));
    }

    /// The same roll, in so many times the time.
    void theAircraftIsSlower() {
        std::vector<Sample> rolls[2];
        for (const int slowness : {1, 4}) {
            OnScreenFlight flight(m_flow, {slowness});
            flight.loop->command(CommandKind::Start);
            flight.move("thrust_lever_1", "90 %");
            flight.move("thrust_lever_2", "90 %");
            flight.goOn(slowness * 12s);
            QVERIFY(flight["airspeed"] > 20.0);
            for (const Sample& sample : flight.recorder.allSamples)
                if (sample.origin == Origin::Practice && sample.time < 11s)
                    rolls[slowness / 4].push_back(sample);
        }
        QCOMPARE(rolls[1].size(), rolls[0].size());
        QVERIFY(rolls[1] == rolls[0]);
    }

    /// Three seconds after the cue has ended is three quarters of a second of the run.
    void limitsAndCuesAreSlower_data() {
        QTest::addColumn<int>("slowness");
        QTest::newRow("as fast as real") << 1;
        QTest::newRow("4 times slower") << 4;
    }
    void limitsAndCuesAreSlower() {
        QFETCH(int, slowness);
        OnScreenFlight flight(m_flow, {slowness});
        flight.loop->command(CommandKind::Start);
        while (flight.state("light") != StepState::Due && flight.now() < 60s)
            flight.goOn(20ms);
        const Time due = flight.now(); // real, when the words end
        QVERIFY(due >= slowness * 1s);
        flight.goOn(8s);
        flight.move("landing_lights", "on");
        flight.goOn(2s);
        QVERIFY(flight.state("light") == StepState::Done);
        const RunSnapshot run = flight.loop->snapshot();
        const bool isLate = run.score.late.at(0) > Duration{};
        QCOMPARE(isLate, slowness == 1); // 8 s and 2 s, within 5 s
        const Duration response = run.results[0].done - run.results[0].due;
        QVERIFY(std::abs((response * slowness - Duration(8s)).count()) < Duration(100ms).count());
        QVERIFY(std::abs((run.results[0].due * slowness - due).count()) < Time(100ms).count());
        QVERIFY(flight.isJudgedTheSame());
    }

    /// A lever has come to rest 0.3 s after it stopped, a gate is chosen after 0.5 s, however slow the run.
    void handsAreNot_data() {
        QTest::addColumn<QString>("control");
        QTest::addColumn<QString>("value");
        QTest::addColumn<QString>("step");
        QTest::addColumn<int>("millis");
        QTest::newRow("wheel") << "pitch_trim"
                               << "3 deg"
                               << "trim" << 300;
        QTest::newRow("gate") << "flap_lever"
                              << "22"
                              << "flap" << 500;
    }
    void handsAreNot() {
        QFETCH(QString, control);
        QFETCH(QString, value);
        QFETCH(QString, step);
        QFETCH(int, millis);
        for (const int slowness : {1, 5}) {
            OnScreenFlight flight(m_flow, {slowness});
            flight.loop->command(CommandKind::Start);
            flight.goOn(2s);
            flight.move(control.toStdString(), value.toStdString());
            flight.goOn(millis * 1ms - 20ms);
            QVERIFY(flight.state(step.toStdString()) == StepState::Seen);
            flight.goOn(60ms);
            QVERIFY(flight.state(step.toStdString()) == StepState::Done);
        }
    }

    void scriptedHandsGoByTheClock() {
        OnScreenFlight flight(m_flow, {3, true, nullptr, "at 6 s: landing_lights on\nafter 3 s: flap_lever 22\n"});
        flight.loop->command(CommandKind::Start);
        flight.goOn(5900ms);
        QCOMPARE(flight["landing_lights"], 0.0);
        flight.goOn(200ms);
        QCOMPARE(flight["landing_lights"], 1.0);
        flight.goOn(2700ms);
        QCOMPARE(flight["flap_lever"], 2.0);
        flight.goOn(600ms);
        QCOMPARE(flight["flap_lever"], 3.0);
        QVERIFY(flight.isJudgedTheSame());
    }

    void whatComesNextIsTold() {
        OnScreenFlight flight(m_flow, {4});
        flight.loop->command(CommandKind::Start);
        flight.goOn(1s);
        QVERIFY(flight.loop->nextTime() > flight.now());
        QVERIFY(flight.loop->nextTime() <= flight.now() + 4 * PracticeAircraft::kStep);
    }
};

QTEST_APPLESS_MAIN(TestSlowTime)
#include "test_slowtime.moc"
