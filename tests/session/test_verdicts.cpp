#include <QtTest>

#include "session/cases.h"

using namespace flowhand;
using namespace flowhand::test;

namespace {

const char* const kFlapLight = R"toml(
[[step]]
id = "flap"
title = "Flap lever to 12"
done = "flap_lever == 12"
within = "4 s"
[[step]]
id = "light"
title = "Taxi light on"
done = "taxi_light"
within = "4 s"
)toml";

const char* const kGearUp = R"toml(
[[step]]
id = "gear"
title = "Gear lever up"
when = "vertical_speed > 300 ft/min"
done = "gear_lever == up"
[[step]]
id = "flap"
title = "Flap lever to 4"
done = "flap_lever == 4"
)toml";

const char* const kThrust = R"toml(
[[step]]
id = "flap"
title = "Flap lever to 12"
done = "flap_lever == 12"
expires = "thrust_lever_1 > 60 %"
weight = 3
[[step]]
id = "thrust"
title = "Set thrust"
done = "thrust_lever_1 > 80 %"
)toml";

const char* const kTurn = R"toml(
[[step]]
id = "light"
title = "Taxi light on"
done = "taxi_light"
within = "4 s"
suspend = "turn_ahead"
)toml";

/// Too early, found set, expiry, suspension, extras.
const std::vector<Case> kCases{
    {"too early: made true by a hand before its when", kGearUp, "vertical_speed = 0 ft/min",
     "1 gear_lever = up\n3 vertical_speed = 500 ft/min\n4 flap_lever = 4\n9 wait",
     "1.5 too-early gear, 1.5 due flap, 4.5 done flap, 4.5 run-ended completed"},
    {"on cue", kGearUp, "vertical_speed = 0 ft/min", "3 vertical_speed = 500 ft/min\n4 gear_lever = up\n5 wait",
     "3 due gear, 4.5 done gear, 4.5 due flap"},
    {"begun before its when, settled after: not too early", kGearUp, "vertical_speed = 0 ft/min",
     "2.8 gear_lever = up\n3 vertical_speed = 500 ft/min\n5 wait", "3 due gear, 3.3 done gear, 3.3 due flap"},
    {"an unknown when is not true yet", kGearUp, "", "4 gear_lever = up\n5 wait", "4.5 too-early gear, 4.5 due flap"},
    {"compare only: found set counts as done", R"toml(
[[step]]
id = "flap"
title = "Flap lever at 12"
kind = "check"
done = "flap_lever == 12"
)toml",
     "flap_lever = 12", "1 wait", "0 due flap, 0 found-set flap, 0 run-ended completed"},
    {"a check that is not so wants the hand", R"toml(
[[step]]
id = "flap"
title = "Flap lever at 12"
kind = "check"
done = "flap_lever == 12"
)toml",
     "", "1 flap_lever = 12\n2 wait", "0 due flap, 1.5 done flap, 1.5 run-ended completed"},
    {"a check may come true by another's doing, and not ahead of its turn", R"toml(
[[step]]
id = "light"
title = "Taxi light on"
done = "taxi_light"
[[step]]
id = "line"
title = "On the line"
kind = "check"
done = "abs(centreline_offset) < 5 m"
controls = ["toe_brake"]
)toml",
     "centreline_offset = 9 m",
     "1 centreline_offset = 2 m\n2 centreline_offset = 8 m\n3 taxi_light = on\n5 centreline_offset = 2 m\n6 wait",
     "0 due light, 3.3 done light, 3.3 due line, 5 done line, 5 run-ended completed"},
    {"a check of motion alone needs no hand", R"toml(
[[step]]
id = "speed"
title = "80 kt"
kind = "check"
done = "airspeed > 80 kt"
)toml",
     "airspeed = 60 kt", "1 airspeed = 81 kt\n2 wait", "0 due speed, 1 done speed, 1 run-ended completed"},
    {"expires: omitted when its condition comes", kThrust, "", "1 thrust_lever_1 = 70 %\n2 wait",
     "0 due flap, 1 omitted flap, 1 due thrust"},
    {"expires: set after that it stays omitted", kThrust, "", "1 thrust_lever_1 = 90 %\n3 flap_lever = 12\n5 wait",
     "0 due flap, 1 omitted flap, 1 due thrust, 1.3 done thrust, 1.3 run-ended completed"},
    {"expires: set before its turn but after that", R"toml(
[[step]]
id = "light"
title = "Taxi light on"
done = "taxi_light"
[[step]]
id = "flap"
title = "Flap lever to 12"
done = "flap_lever == 12"
expires = "thrust_lever_1 > 60 %"
)toml",
     "", "1 thrust_lever_1 = 70 %\n2 flap_lever = 12\n4 wait", "0 due light, 2.5 omitted flap"},
    {"expires after a time of its own", R"toml(
[[step]]
id = "light"
title = "Taxi light on"
done = "taxi_light"
expires = "7 s"
)toml",
     "", "20 wait", "0 due light, 7 omitted light, 7 run-ended completed"},
    {"without expires it is given up 3 times late after it was due", kTurn, "turn_ahead = off", "40 wait",
     "0 due light, 30 omitted light, 30 run-ended completed"},
    {"suspended: the clock of giving up stands too", kTurn, "turn_ahead = off",
     "10 turn_ahead = on\n25 turn_ahead = off\n50 wait", "0 due light, 45 omitted light, 45 run-ended completed"},
    {"left behind with an expires that never came: omitted at the end", R"toml(
[[step]]
id = "flap"
title = "Flap lever to 12"
done = "flap_lever == 12"
expires = "thrust_lever_1 > 60 %"
[[step]]
id = "light"
title = "Taxi light on"
done = "taxi_light"
)toml",
     "", "1 taxi_light = on\n2 wait", "0 due flap, 1.3 done light, 1.3 omitted flap, 1.3 run-ended completed"},
    {"wrong control, named with the step it stood in for", kFlapLight, "", "1 gear_lever = up\n3 wait",
     "0 due flap, 1.5 wrong-control flap gear_lever up"},
    {"wrong value", kFlapLight, "", "1 flap_lever = 22\n3 wait", "0 due flap, 1.5 wrong-value flap flap_lever 22"},
    {"returning after more than 2 s is no extra and cancels none", kFlapLight, "",
     "1 gear_lever = up\n3.1 gear_lever = down\n5 wait", "0 due flap, 1.5 wrong-control flap gear_lever up"},
    {"returning within 2 s cancels it", kFlapLight, "", "1 gear_lever = up\n3 gear_lever = down\n5 wait",
     "0 due flap, 1.5 wrong-control flap gear_lever up, 3.5 extra-cancelled flap"},
    {"two wrong values, back within 2 s of the last: it cancels one", kFlapLight, "",
     "1 flap_lever = 4\n2 flap_lever = 22\n3 flap_lever = up\n5 wait",
     "0 due flap, 1.5 wrong-value flap flap_lever 4, 2.5 wrong-value flap flap_lever 22, 3.5 extra-cancelled flap"},
    {"put right to where it belongs is a done step, and the wrong value stays", kFlapLight, "",
     "1 flap_lever = 4\n2 flap_lever = 12\n3 wait",
     "0 due flap, 1.5 wrong-value flap flap_lever 4, 2.5 done flap, 2.5 due light"},
    {"back before it settled is nothing at all", kFlapLight, "", "1 gear_lever = up\n1.3 gear_lever = down\n3 wait",
     "0 due flap"},
    {"undone again", kFlapLight, "", "1 flap_lever = 12\n3 flap_lever = 4\n5 wait",
     "0 due flap, 1.5 done flap, 1.5 due light, 3.5 undone flap flap_lever 4"},
    {"undone and put back within 2 s", kFlapLight, "", "1 flap_lever = 12\n3 flap_lever = 4\n4 flap_lever = 12\n5 wait",
     "0 due flap, 1.5 done flap, 1.5 due light, 3.5 undone flap flap_lever 4, 4.5 extra-cancelled flap"},
    {"a wrong button is not put back by letting it go", kFlapLight, "",
     "1 takeoff_button = on\n1.2 takeoff_button = off\n3 wait", "0 due flap, 1 wrong-control flap takeoff_button on"},
    {"continuous controls are never extras", kFlapLight, "",
     "1 tiller = 20 deg\n2 tiller = 0 deg\n3 toe_brake = 40 %\n4 thrust_lever_1 = 30 %\n6 wait", "0 due flap"},
    {"a number that is not continuous can be one", kFlapLight, "", "1 pitch_trim = 4 deg\n3 wait",
     "0 due flap, 1.3 wrong-control flap pitch_trim 4 deg"},
    {"a number moved within what its done step allows is none", R"toml(
[[step]]
id = "trim"
title = "Trim for take-off"
done = "pitch_trim > 3 deg"
[[step]]
id = "light"
title = "Taxi light on"
done = "taxi_light"
)toml",
     "", "1 pitch_trim = 5 deg\n3 pitch_trim = 4 deg\n6 pitch_trim = 1 deg\n8 wait",
     "0 due trim, 1.3 done trim, 1.3 due light, 6.3 undone trim pitch_trim 1 deg"},
    {"less than 1 % of the range is no movement", kFlapLight, "",
     "1 pitch_trim = 0.15 deg\n3 pitch_trim = 0.3 deg\n5 wait",
     "0 due flap, 3.3 wrong-control flap pitch_trim 0.3 deg"},
    {"between two gates a lever has settled nowhere", kFlapLight, "", "1 flap_lever = between\n8 wait", "0 due flap"},
    {"what fits a coming step is no extra", R"toml(
[[step]]
id = "light"
title = "Taxi light on"
done = "taxi_light"
[[step]]
id = "flap"
title = "Flap lever to 12"
done = "flap_lever == 12 and airspeed > 100 kt"
)toml",
     "airspeed = 0 kt", "1 flap_lever = 12\n3 taxi_light = on\n4 airspeed = 120 kt\n5 wait",
     "0 due light, 3.3 done light, 3.3 due flap, 4 done flap, 4 run-ended completed"},
    {"a movement is credited to the first listed open step that it fits", R"toml(
[[step]]
id = "a"
title = "Flap lever to 4"
group = "flaps"
done = "flap_lever == 4"
[[step]]
id = "b"
title = "Flap lever to 4 again"
group = "flaps"
done = "flap_lever == 4 and taxi_light"
controls = ["flap_lever"]
)toml",
     "", "1 flap_lever = 4\n2 wait", "0 due a, 0 due b, 1.5 done a"},
    {"steering back to the middle is no attempt at a later step", R"toml(
[[step]]
id = "light"
title = "Taxi light on"
done = "taxi_light"
[[step]]
id = "straight"
title = "Tiller central"
done = "abs(tiller) < 5 deg"
)toml",
     "", "1 tiller = 30 deg\n2 tiller = 0 deg\n3 taxi_light = on\n4 wait",
     "0 due light, 3.3 done light, 3.3 due straight, 3.3 found-set straight, 3.3 run-ended completed"},
    {"thrust set before the flap is out of order, not found set", R"toml(
[[step]]
id = "flap"
title = "Flap lever to 12"
done = "flap_lever == 12"
[[step]]
id = "thrust"
title = "Set thrust"
done = "thrust_lever_1 > 80 %"
)toml",
     "", "1 thrust_lever_1 = 90 %\n2 flap_lever = 12\n4 wait",
     "0 due flap, 1.3 done thrust, 2.5 done flap, 2.5 run-ended completed"},
    {"a continuous control held where a step wants it needs no new movement", R"toml(
[[step]]
id = "press"
title = "Brakes pressed"
done = "toe_brake > 20 %"
[[step]]
id = "stop"
title = "Stopped"
done = "toe_brake > 20 % and ground_speed < 1 kt"
)toml",
     "ground_speed = 10 kt", "1 toe_brake = 50 %\n8 ground_speed = 0 kt\n9 wait",
     "0 due press, 1.3 done press, 1.3 due stop, 8 done stop, 8 run-ended completed"},
    {"both levers have to settle", R"toml(
[[step]]
id = "thrust"
title = "Set thrust"
done = "thrust_lever_1 > 40 % and thrust_lever_2 > 40 %"
)toml",
     "", "1 thrust_lever_1 = 45 %\n1.1 thrust_lever_2 = 45 %\n1.3 thrust_lever_2 = 60 %\n2 wait",
     "0 due thrust, 1.6 done thrust, 1.6 run-ended completed"},
    {"sequence: done at once when the last one rises", R"toml(
[[step]]
id = "flap"
title = "Flap by way of 4 to 12"
done = "sequence(flap_lever == 4, flap_lever == 12, 5 s)"
[[step]]
id = "more"
title = "Flap lever to 22"
done = "flap_lever == 22"
)toml",
     "", "1 flap_lever = 4\n1.2 flap_lever = 12\n1.4 flap_lever = 22\n3 wait",
     "0 due flap, 1.2 done flap, 1.2 due more, 1.9 done more, 1.9 run-ended completed"},
};

SessionSetup noisy(const char* control, double sigma) {
    SessionSetup setup = onScreen();
    setup.controls[indexOf(*cockpit().signals.find(control))].sigma = sigma;
    return setup;
}

} // namespace

class TestVerdicts : public QObject {
    Q_OBJECT

private Q_SLOTS:
    void cases_data() { addRows(kCases); }
    void cases();
    void doneTimeIsTheStartOfTheTrueStretch();
    void seenComesBeforeDone();
    void marginIsTakenAtSettling();
    void bandGivesMu();
    void uncertainBelowThreeSigmas_data();
    void uncertainBelowThreeSigmas();
    void uncertainIsClearedByAClearerMovement();
    void anInstantIsCertainOnceTheMovementGoesBeyond();
    void motionIsNeverUncertain();
    void suspendedTimeComesOffTheResponse();
    void expiredCriticalStepDoesNotPass();
    void twelveTillerCorrectionsCostNothing();
    void tableThroughTheWholeJudge_data();
    void tableThroughTheWholeJudge();
    void verdictsInWords();
    void liveScoreLiesBetweenFloorAndCeiling();
};

void TestVerdicts::cases() {
    QFETCH(int, index);
    const Case& given = kCases[static_cast<std::size_t>(index)];
    QCOMPARE(eventsOf(given), QString(given.events));
}

void TestVerdicts::doneTimeIsTheStartOfTheTrueStretch() {
    const Flow flow = flowOf(kFlapLight);
    Bench bench(flow, onScreen());
    bench.begin();
    bench.play("1 flap_lever = 12\n1.2 flap_lever = between\n1.3 flap_lever = 12\n4 wait");
    QCOMPARE(bench.session.results()[0].done, Time(1'300'000'000));
    QCOMPARE(bench.session.results()[1].due, Time(1'300'000'000)); // told at 1.8 s, when the lever had settled
}

void TestVerdicts::seenComesBeforeDone() {
    const Flow flow = flowOf(kFlapLight);
    Bench bench(flow, onScreen());
    bench.begin();
    bench.play("1 flap_lever = between\n1.2 flap_lever = 12\n2 wait");
    QCOMPARE(QString::fromStdString(bench.events("run-started")),
             QString("0 due flap, 1 moved flap, 1.2 seen flap, 1.7 done flap, 1.7 due light"));
    QCOMPARE(bench.session.view().steps[0].seen, Time(1'200'000'000));
}

void TestVerdicts::marginIsTakenAtSettling() {
    const Flow flow = flowOf("[[step]]\nid = \"thrust\"\ntitle = \"Set thrust\"\ndone = \"thrust_lever_1 > 40 %\"\n");
    Bench bench(flow, onScreen());
    bench.begin();
    bench.play("1 thrust_lever_1 = 41 %\n1.2 thrust_lever_1 = 52 %\n2 wait");
    QCOMPARE(*bench.session.view().steps[0].margin, 12.0);
    QCOMPARE(bench.session.results()[0].done, Time(1'000'000'000));
}

void TestVerdicts::bandGivesMu() {
    const Flow flow = flowOf("[[step]]\nid = \"flap\"\ntitle = \"Flap lever to 4\"\ndone = \"flap_lever == 4\"\n"
                             "band = { signal = \"airspeed\", from = \"150 kt\", to = \"170 kt\" }\n");
    for (const auto& [speed, mu] : {std::pair("160", 1.0), {"152", 0.2}, {"170", 0.0}, {"190", 0.0}}) {
        Bench bench(flow, onScreen());
        bench.begin("airspeed = 100 kt");
        bench.play("1 flap_lever = 4\n1.4 airspeed = " + std::string(speed) + " kt\n2 wait");
        QCOMPARE(bench.session.results()[0].mu, mu);
    }
}

void TestVerdicts::uncertainBelowThreeSigmas_data() {
    QTest::addColumn<double>("lever");
    QTest::addColumn<double>("sigma");
    QTest::addColumn<bool>("isUncertain");
    QTest::newRow("no noise") << 40.001 << 0.0 << false;
    QTest::newRow("at 3 sigmas") << 41.5 << 0.5 << false;
    QTest::newRow("just below 3 sigmas") << 41.4999 << 0.5 << true;
    QTest::newRow("far above") << 80.0 << 0.5 << false;
}

void TestVerdicts::uncertainBelowThreeSigmas() {
    QFETCH(double, lever);
    QFETCH(double, sigma);
    QFETCH(bool, isUncertain);
    // The margin of the speed is smaller; the lever's counts all the same.
    const Flow flow = flowOf("[[step]]\nid = \"thrust\"\ntitle = \"Set thrust\"\n"
                             "done = \"thrust_lever_1 >= 40 % and airspeed < 80.001 kt\"\n");
    Bench bench(flow, noisy("thrust_lever_1", sigma));
    bench.begin("airspeed = 80 kt");
    bench.play("1 thrust_lever_1 = " + std::to_string(lever) + " %\n2 wait");
    QCOMPARE(bench.session.results()[0].state == StepState::Uncertain, isUncertain);
    const Score score = bench.session.score();
    QCOMPARE(score.milliPoints, isUncertain ? 0 : 100'000);
    QCOMPARE(score.upperMilliPoints, std::int64_t(100'000));
}

void TestVerdicts::uncertainIsClearedByAClearerMovement() {
    const Flow flow = flowOf("[[step]]\nid = \"thrust\"\ntitle = \"Set thrust\"\ndone = \"thrust_lever_1 > 40 %\"\n"
                             "[[step]]\nid = \"light\"\ntitle = \"Taxi light on\"\ndone = \"taxi_light\"\n");
    Bench bench(flow, noisy("thrust_lever_1", 0.5));
    bench.begin();
    bench.play("1 thrust_lever_1 = 41 %\n3 thrust_lever_1 = 48 %\n5 wait");
    QCOMPARE(QString::fromStdString(bench.events()),
             QString("0 due thrust, 1.3 uncertain thrust, 1.3 due light, 3.3 done thrust"));
    QCOMPARE(bench.session.results()[0].done, Time(1'000'000'000));
    QVERIFY(!bench.session.results()[0].isUncertain);
}

/// Seen: no rise of a noisy axis was ever certain, because at its crossing the margin is 0.
void TestVerdicts::anInstantIsCertainOnceTheMovementGoesBeyond() {
    const Flow flow = flowOf("[[step]]\nid = \"thrust\"\ntitle = \"Thrust\"\ndone = \"rise(thrust_lever_1 > 40 %)\"\n"
                             "[[step]]\nid = \"light\"\ntitle = \"Taxi light on\"\ndone = \"taxi_light\"\n");
    Bench beyond(flow, noisy("thrust_lever_1", 0.5));
    beyond.begin();
    beyond.play("1 thrust_lever_1 = 40.2 %\n1.1 thrust_lever_1 = 41.4 %\n1.2 thrust_lever_1 = 60 %\n"
                "1.3 thrust_lever_1 = 0 %\n5 wait");
    QCOMPARE(QString::fromStdString(beyond.events()),
             QString("0 due thrust, 1 uncertain thrust, 1 due light, 1.2 done thrust"));
    QCOMPARE(beyond.session.results()[0].done, Time(1'000'000'000));
    QVERIFY(!beyond.session.results()[0].isUncertain);
    Bench near(flow, noisy("thrust_lever_1", 0.5)); // never clearly above, but for another movement
    near.begin();
    near.play("1 thrust_lever_1 = 40.2 %\n1.1 thrust_lever_1 = 20 %\n3 thrust_lever_1 = 80 %\n5 wait");
    QCOMPARE(QString::fromStdString(near.events()), QString("0 due thrust, 1 uncertain thrust, 1 due light"));
}

void TestVerdicts::motionIsNeverUncertain() {
    const Flow flow =
        flowOf("[[step]]\nid = \"speed\"\ntitle = \"80 kt\"\nkind = \"check\"\ndone = \"airspeed > 80 kt\"\n");
    Bench bench(flow, noisy("thrust_lever_1", 50.0));
    bench.begin("airspeed = 0 kt");
    bench.play("1 airspeed = 80.0001 kt\n2 wait");
    QVERIFY(bench.session.results()[0].state == StepState::Done);
}

void TestVerdicts::suspendedTimeComesOffTheResponse() {
    const Flow flow = flowOf(kTurn);
    Bench bench(flow, onScreen());
    bench.begin("turn_ahead = on");
    // 5 s, 2 s run, 10 s, 3 s run: 5 s of 20 count, 1 s over.
    bench.play("5 turn_ahead = off\n7 turn_ahead = on\n17 turn_ahead = off\n20 taxi_light = on\n22 wait");
    QCOMPARE(bench.session.score().late[0], Duration(1'000'000'000));
    QCOMPARE(bench.session.results()[0].suspended, Duration(15'000'000'000));
}

void TestVerdicts::expiredCriticalStepDoesNotPass() {
    Flow flow = flowOf(kThrust);
    flow.target = 0.0;
    Bench bench(flow, onScreen());
    bench.begin();
    bench.play("1 thrust_lever_1 = 90 %\n3 flap_lever = 12\n5 wait");
    QVERIFY(!bench.session.score().isPassed);
    QVERIFY(bench.session.score().whyNotPassed.english().find("Flap lever to 12") != std::string::npos);
}

void TestVerdicts::twelveTillerCorrectionsCostNothing() {
    const Flow flow = flowOf(kFlapLight);
    Bench bench(flow, onScreen());
    bench.begin();
    std::string script;
    for (int i = 1; i <= 12; ++i)
        script += std::to_string(i * 0.2) + " tiller = " + std::to_string(i % 2 == 0 ? 0 : 12 + i) + " deg\n";
    bench.play(script + "3 flap_lever = 12\n5 taxi_light = on\n8 wait");
    QCOMPARE(bench.session.score().milliPoints, std::int64_t(100'000));
    QVERIFY(bench.session.phase() == SessionPhase::Ended);
}

void TestVerdicts::tableThroughTheWholeJudge_data() {
    QTest::addColumn<QString>("script");
    QTest::addColumn<qint64>("milliPoints");
    // The steps' own times are those of the contacts, so that each comes 1 s after the one before.
    const QString all = "1 flap_lever = 4\n2 taxi_light = on\n3 parking_brake = on\n4 gear_lever = up\n"
                        "5 pitch_trim = 5 deg\n";
    const auto without = [&](const QString& line) {
        return QString(all).remove(line + "\n");
    };
    QTest::newRow("perfect") << all << qint64(100'000);
    QTest::newRow("step 4 omitted") << without("4 gear_lever = up") << qint64(90'000);
    QTest::newRow("critical step 5 omitted") << without("5 pitch_trim = 5 deg") << qint64(70'000);
    QTest::newRow("steps 2 and 3 swapped")
        << QString(all)
               .replace("2 taxi_light", "2 x")
               .replace("3 parking", "3 y")
               .replace("2 x", "2 parking_brake")
               .replace("parking_brake = on\n3 y_brake = on", "parking_brake = on\n3 taxi_light = on")
        << qint64(92'000);
    QTest::newRow("step 3 at 7 s") << "1 flap_lever = 4\n2 taxi_light = on\n9 parking_brake = on\n10 gear_lever = up\n"
                                      "11 pitch_trim = 5 deg\n"
                                   << qint64(97'000);
    QTest::newRow("a wrong control, put back after more than 2 s, then step 2 at 6 s")
        << "1 flap_lever = 4\n2 takeoff_button = on\n5 takeoff_button = off\n7 taxi_light = on\n"
           "8 parking_brake = on\n9 gear_lever = up\n10 pitch_trim = 5 deg\n"
        << qint64(95'500);
    QTest::newRow("a wrong control, step 2 never done")
        << "1 flap_lever = 4\n2 takeoff_button = on\n3 parking_brake = on\n4 gear_lever = up\n5 pitch_trim = 5 deg\n"
        << qint64(77'500);
    QTest::newRow("step 4 omitted, 2 and 3 swapped, step 5 13 s after the last done step")
        << "1 flap_lever = 4\n2 parking_brake = on\n3 taxi_light = on\n16 pitch_trim = 5 deg\n"
        << qint64(73'000);
}

void TestVerdicts::tableThroughTheWholeJudge() {
    QFETCH(QString, script);
    QFETCH(qint64, milliPoints);
    std::string text;
    const std::pair<const char*, int> steps[] = {{"flap_lever == 4", 2},
                                                 {"taxi_light", 2},
                                                 {"parking_brake", 2},
                                                 {"gear_lever == up", 1},
                                                 {"pitch_trim > 3 deg", 3}};
    int number = 0;
    for (const auto& [done, weight] : steps) {
        const std::string id = "s" + std::to_string(++number);
        text += "[[step]]\nid = \"" + id + "\"\ntitle = \"" + id +
                "\"\nwithin = \"4 s\"\nlate = \"10 s\"\nweight = " + std::to_string(weight) + "\ndone = \"" + done +
                "\"\n";
    }
    const Flow flow = flowOf(text);
    Bench bench(flow, onScreen());
    bench.begin();
    bench.play(script.toStdString() + "100 wait");
    QVERIFY(bench.session.phase() == SessionPhase::Ended);
    QCOMPARE(qint64(bench.session.score().milliPoints), milliPoints);
}

void TestVerdicts::verdictsInWords() {
    const Flow flow = flowOf(kFlapLight);
    Bench bench(flow, onScreen());
    bench.begin();
    bench.play("1 flap_lever = 22\n2 wait");
    QCOMPARE(bench.session.view().steps[0].verdict.english(), std::string("Flap lever at 22, wanted 12"));
    bench.play("4.3 flap_lever = 12\n4.4 wait");
    QCOMPARE(bench.session.view().steps[0].verdict.english(), std::string("seen"));
    bench.play("5 wait");
    QCOMPARE(bench.session.view().steps[0].verdict.english(), std::string("done, 0.3 s late"));
    QVERIFY(bench.session.view().steps[0].isLate);
    bench.play("60 wait");
    QCOMPARE(bench.session.view().steps[1].verdict.english(), std::string("not done"));
}

void TestVerdicts::liveScoreLiesBetweenFloorAndCeiling() {
    const Flow flow = flowOf(kFlapLight);
    Bench bench(flow, onScreen());
    bench.begin();
    QCOMPARE(bench.session.view().scoreFloor, std::int64_t(0));
    QCOMPARE(bench.session.view().scoreCeiling, std::int64_t(100'000));
    bench.play("1 taxi_light = on\n2 wait");
    QCOMPARE(bench.session.view().scoreFloor, std::int64_t(50'000));
    QCOMPARE(bench.session.view().scoreCeiling, std::int64_t(80'000)); // out of order, whatever comes
    bench.play("3 flap_lever = 12\n5 wait");
    QCOMPARE(bench.session.view().scoreFloor, std::int64_t(80'000));
    QCOMPARE(bench.session.view().scoreCeiling, std::int64_t(80'000));
}

QTEST_APPLESS_MAIN(TestVerdicts)
#include "test_verdicts.moc"
