#include <QtTest>

#include "session/bench.h"

using namespace flowhand;
using namespace flowhand::test;

namespace {

const char* const kFlow = R"toml(
[start]
place = "stand"
[start.controls]
flap_lever = "up"
taxi_light = "off"
thrust_lever_1 = "0 %"
[[step]]
id = "light"
title = "Taxi light on"
done = "taxi_light"
[[step]]
id = "flap"
title = "Flap lever to 12"
done = "flap_lever == 12"
weight = 3
[[step]]
id = "thrust"
title = "Thrust above idle"
done = "thrust_lever_1 > 20 %"
[[step]]
id = "gear"
title = "Gear lever up"
done = "gear_lever == up"
[[step]]
id = "clean"
title = "Flap lever up"
done = "flap_lever == up"
[[guard]]
id = "brake"
title = "Brake set"
never = "parking_brake"
from = "flap"
to = "thrust"
)toml";

const char* const kPartner = R"toml(
[[step]]
id = "light"
title = "Taxi light on"
done = "taxi_light"
[[step]]
id = "gear"
title = "Gear lever up"
seat = "first_officer"
done = "gear_lever == up"
[[step]]
id = "flap"
title = "Flap lever to 4"
cue = { by = "ground", text = "Clear" }
done = "flap_lever == 4"
)toml";

const char* const kBranches = R"toml(
[[step]]
id = "light"
title = "Taxi light on"
done = "taxi_light"
[[step]]
id = "flap"
title = "Flap lever to 12"
done = "flap_lever == 12"
after = ["light"]
[[step]]
id = "trim"
title = "Trim to 5"
done = "pitch_trim > 4 deg"
after = ["light"]
[[step]]
id = "gear"
title = "Gear lever up"
done = "gear_lever == up"
after = ["flap"]
)toml";

const char* const kLookingBack = R"toml(
[[step]]
id = "light"
title = "Taxi light on"
done = "taxi_light"
[[step]]
id = "flap"
title = "Flap lever to 12"
done = "flap_lever == 12"
[[step]]
id = "trim"
title = "Trim to 5"
done = "pitch_trim > 4 deg"
[[guard]]
id = "fast"
title = "Was just fast"
never = "on_ground and once(ground_speed > 60 kt, 0 s .. 10 s)"
[[outcome]]
id = "slow"
title = "Slow"
when = "ground_speed < 1 kt"
)toml";

} // namespace

class TestJump : public QObject {
    Q_OBJECT

private Q_SLOTS:
    void stepsJumpedOverAreVoid();
    void waitsForTheControls();
    void mayBeWaived();
    void aFittingLeverMayStay();
    void jumpsBack();
    void mayBeginTheRun();
    void jumpsOutOfAHold();
    void leavesOtherBranchesAlone();
    void guardsFollow();
    void nothingLooksBackOverIt();
    void thePartnerBeginsAnew();
    void wordsOfWhatIsJumpedOverEnd();
    void whereThereIsNoSuchStepNothingHappens();
    void doesNotPass();
};

void TestJump::stepsJumpedOverAreVoid() {
    const Flow flow = flowOf(kFlow);
    Bench bench(flow, onScreen());
    bench.begin();
    bench.play("1 taxi_light = on\n3 flap_lever = 12\n4 jump gear\n5 wait");
    QCOMPARE(bench.events(), std::string("0 due light, 1.3 done light, 1.3 due flap, 3.5 done flap, 3.5 due thrust, "
                                         "4 set-up-wanted thrust_lever_1 60 %"));
    QVERIFY(bench.session.phase() == SessionPhase::SetUp);
    bench.play("6 thrust_lever_1 = 30 %\n7 wait");
    QCOMPARE(bench.events(), std::string("6 jumped gear, 6 void thrust, 6 due gear"));
    QCOMPARE(bench.session.view().steps[2].verdict.english(), std::string("jumped over"));
    bench.play("8 gear_lever = up\n10 flap_lever = up\n11 wait");
    QCOMPARE(bench.events(), std::string("8.5 done gear, 8.5 due clean, 10.5 done clean, 10.5 run-ended completed"));
    QCOMPARE(bench.session.score().weight, std::int64_t(6)); // without the step that was jumped over
    QCOMPARE(bench.session.score().milliPoints, std::int64_t(100'000));
}

void TestJump::waitsForTheControls() {
    const Flow flow = flowOf(kFlow);
    Bench bench(flow, onScreen());
    bench.begin();
    bench.play("1 jump thrust\n2 wait");
    QCOMPARE(bench.events(), std::string("0 due light, 1 set-up-wanted flap_lever 12, 1 set-up-wanted taxi_light on"));
    bench.play("3 taxi_light = on\n40 flap_lever = 12\n41 thrust_lever_1 = 50 %\n42 wait");
    QCOMPARE(bench.events(), std::string("40 jumped thrust, 40 void light, 40 void flap, 40 due thrust, "
                                         "41.3 done thrust, 41.3 due gear"));
    QCOMPARE(bench.session.score().late[2], Duration(0));
}

void TestJump::mayBeWaived() {
    const Flow flow = flowOf(kFlow);
    Bench bench(flow, onScreen());
    bench.begin("taxi_light = on");
    bench.play("0.1 waive\n1 jump thrust\n2 waive");
    QCOMPARE(bench.events("run-started step-found-set"),
             std::string("0 set-up-wanted taxi_light off, 0.1 set-up-waived taxi_light on, 0.1 due light, "
                         "0.1 due flap, 1 set-up-wanted flap_lever 12, 2 set-up-waived flap_lever up, "
                         "2 jumped thrust, 2 void flap, 2 due thrust"));
}

void TestJump::aFittingLeverMayStay() {
    const Flow flow = flowOf(kFlow);
    Bench bench(flow, onScreen());
    bench.begin();
    bench.play("1 taxi_light = on\n2 flap_lever = 12\n3 thrust_lever_1 = 90 %\n5 jump gear");
    QCOMPARE(bench.events("step-due run-started step-moved step-seen"),
             std::string("1.3 done light, 2.5 done flap, 3.3 done thrust, 5 jumped gear"));
}

void TestJump::jumpsBack() {
    const Flow flow = flowOf(kFlow);
    Bench bench(flow, onScreen());
    bench.begin();
    bench.play("1 taxi_light = on\n2 flap_lever = 12\n3 thrust_lever_1 = 50 %\n4 jump flap");
    QCOMPARE(bench.events("step-due run-started step-moved step-seen"),
             std::string("1.3 done light, 2.5 done flap, 3.3 done thrust, 4 set-up-wanted flap_lever up, "
                         "4 set-up-wanted thrust_lever_1 0 %"));
    bench.play("5 thrust_lever_1 = 0 %\n6 flap_lever = up\n8 flap_lever = 12\n10 thrust_lever_1 = 50 %\n11 wait");
    QCOMPARE(bench.events(), std::string("6 jumped flap, 6 due flap, 8.5 done flap, 8.5 due thrust, "
                                         "10.3 done thrust, 10.3 due gear"));
    bench.play("12 stop");
    QCOMPARE(bench.events(), std::string("12 omitted gear, 12 omitted clean, 12 run-ended stopped"));
}

void TestJump::mayBeginTheRun() {
    const Flow flow = flowOf(kFlow);
    Bench bench(flow, onScreen());
    bench.begin("taxi_light = on; flap_lever = 4");
    bench.play("1 jump flap");
    QCOMPARE(bench.events(""), std::string("0 set-up-wanted flap_lever up, 0 set-up-wanted taxi_light off, "
                                           "1 set-up-wanted flap_lever up"));
    bench.play("2 flap_lever = up\n4 flap_lever = 12\n5 wait");
    QCOMPARE(bench.events(), std::string("2 jumped flap, 2 void light, 2 due flap, 4.5 done flap, 4.5 due thrust"));
}

void TestJump::jumpsOutOfAHold() {
    const Flow flow = flowOf(kFlow);
    Bench bench(flow, onScreen());
    bench.begin();
    bench.play("1 hold the telephone\n9 taxi_light = on\n10 jump flap\n12 flap_lever = 12\n13 wait");
    QCOMPARE(bench.events(), std::string("0 due light, 1 held the telephone, 10 jumped flap, 10 void light, "
                                         "10 due flap, 12.5 done flap, 12.5 due thrust"));
    QVERIFY(bench.session.view().holdReason.isEmpty());
}

void TestJump::leavesOtherBranchesAlone() {
    const Flow flow = flowOf(kBranches);
    Bench bench(flow, onScreen());
    bench.begin("taxi_light = on; flap_lever = 12");
    bench.play("1 jump gear\n2 pitch_trim = 5 deg\n3 gear_lever = up\n4 wait");
    QCOMPARE(bench.events("run-started step-moved step-seen step-found-set"),
             std::string("0 due light, 0 due flap, 0 due trim, 0 due gear, 1 jumped gear, 1 due gear, "
                         "2.3 done trim, 3.5 done gear, 3.5 run-ended completed"));
}

void TestJump::guardsFollow() {
    const Flow flow = flowOf(kFlow);
    Bench bench(flow, onScreen());
    bench.begin();
    bench.play("1 parking_brake = on\n2 taxi_light = on\n3 flap_lever = 12\n4 thrust_lever_1 = 50 %\n5 wait");
    QCOMPARE(bench.events("step-due run-started step-moved step-seen wrong-control"),
             std::string("2.3 done light, 2.3 guard-broken brake, 3.5 done flap, 4.3 done thrust, "
                         "4.3 guard-over brake"));
    bench.play("6 jump flap\n6.5 thrust_lever_1 = 1 %\n7 flap_lever = up\n8 wait");
    QCOMPARE(bench.events("step-due set-up-wanted"), std::string("7 jumped flap, 7 guard-broken brake"));
    bench.play("9 jump gear\n9.5 thrust_lever_1 = 80 %\n10 flap_lever = 12\n11 wait");
    QCOMPARE(bench.events("step-due set-up-wanted step-void"), std::string("10 jumped gear, 10 guard-over brake"));
}

/// In the air at 140 kt, then put on the ground at rest: neither was it fast on the ground, nor did it become slow.
void TestJump::nothingLooksBackOverIt() {
    const Flow flow = flowOf(kLookingBack);
    Bench bench(flow, onScreen());
    bench.begin("on_ground = off; ground_speed = 140 kt");
    bench.play("1 taxi_light = on\n2 place stand\n2.1 on_ground = on\n2.1 ground_speed = 0 kt\n2.2 jump trim\n"
               "2.3 waive\n3 wait");
    QCOMPARE(bench.events("run-started step-due step-moved step-seen set-up-wanted set-up-waived"),
             std::string("1.3 done light, 2 placed, 2.3 jumped trim, 2.3 void flap"));
    bench.play("4 ground_speed = 70 kt\n6 ground_speed = 10 kt\n8 wait\n17 wait");
    QCOMPARE(bench.events(), std::string("4 guard-broken fast, 16 guard-over fast"));
    bench.play("18 ground_speed = 0 kt");
    QCOMPARE(bench.events("step-omitted"), std::string("18 outcome-reached slow, 18 void trim, 18 run-ended slow"));
}

/// The hand that was on its way is called back, and takes its time once more.
void TestJump::thePartnerBeginsAnew() {
    const Flow flow = flowOf(kPartner);
    Duration way[2]{};
    for (const bool hasJump : {false, true}) {
        Bench bench(flow, onScreen());
        bench.begin();
        bench.play(std::string("1 taxi_light = on\n") + (hasJump ? "1.5 jump gear\n" : "") + "9 wait");
        Time due{};
        for (const Event& event : bench.all) {
            if (event.kind == EventKind::StepDue && event.step == 1)
                due = event.time;
            if (event.kind == EventKind::PartnerMoved)
                way[hasJump ? 1 : 0] += event.time - due;
        }
        QVERIFY(due == fromSeconds(hasJump ? 1.5 : 1.3));
    }
    QVERIFY(way[0] > Duration{});
    QCOMPARE(way[0], way[1]);
}

void TestJump::wordsOfWhatIsJumpedOverEnd() {
    const Flow flow = flowOf(std::string(kPartner) + "[[step]]\nid = \"trim\"\ntitle = \"Trim\"\n"
                                                     "done = \"pitch_trim > 4 deg\"\n");
    Bench bench(flow, onScreen());
    bench.begin("gear_lever = up; taxi_light = on");
    bench.play("0.2 jump trim\n0.3 waive\n0.4 wait");
    QCOMPARE(bench.events("run-started step-found-set step-due set-up-wanted set-up-waived"),
             std::string("0 words-began ground: Clear, 0.3 jumped trim, 0.3 void flap"));
    QVERIFY(bench.session.view().saying.empty());
    bench.play("2 jump flap\n3 wait");
    QCOMPARE(bench.session.view().wordsBegun, std::uint64_t(2)); // the same words, but spoken anew
    QCOMPARE(bench.events(), std::string("2 jumped flap, 2 words-began ground: Clear, 2.575 due flap"));
}

void TestJump::whereThereIsNoSuchStepNothingHappens() {
    const Flow flow = flowOf(kFlow);
    Bench bench(flow, onScreen());
    bench.begin();
    bench.play("1 jump flaps\n2 taxi_light = on\n3 stop\n4 jump light");
    QCOMPARE(bench.events("step-omitted run-started step-moved step-seen"),
             std::string("0 due light, 2.3 done light, 2.3 due flap, 3 run-ended stopped"));
}

void TestJump::doesNotPass() {
    const Flow flow = flowOf(kFlow);
    Bench bench(flow, onScreen());
    bench.begin("gear_lever = down");
    bench.play("1 jump clean\n1.1 waive\n2 flap_lever = 4\n3 flap_lever = up\n4 wait");
    QVERIFY(bench.session.phase() == SessionPhase::Ended);
    QVERIFY(!bench.session.score().isPassed);
}

QTEST_APPLESS_MAIN(TestJump)
#include "test_jump.moc"
