#include <QtTest>

#include "session/cases.h"

using namespace flowhand;
using namespace flowhand::test;

namespace {

const char* const kSteps = R"toml(
[[step]]
id = "light"
title = "Taxi light on"
done = "taxi_light"
[[step]]
id = "flap"
title = "Flap lever to 4"
done = "flap_lever == 4"
[[step]]
id = "brake"
title = "Parking brake on"
done = "parking_brake"
)toml";

std::string with(const std::string& tables) {
    return kSteps + tables;
}

const std::string kTiller = with(R"toml(
[[guard]]
id = "tiller"
title = "Tiller above 80 kt"
never = "abs(tiller) > 5 deg and ground_speed > 80 kt"
)toml");

const std::string kScoped = with(R"toml(
[[guard]]
id = "thrust"
title = "Thrust while the flap is set"
never = "thrust_lever_1 > 50 %"
from = "flap"
to = "flap"
)toml");

const std::string kHeld = with(R"toml(
[[guard]]
id = "fast"
title = "Fast for 3 s"
never = "held(ground_speed > 30 kt, 3 s)"
from = "flap"
)toml");

const std::string kInstant = with(R"toml(
[[guard]]
id = "touch"
title = "Touched"
never = "rise(on_ground)"
)toml");

const std::string kOutcome = with(R"toml(
[[outcome]]
id = "rejected"
title = "Take-off rejected"
when = "thrust_lever_1 < 5 % and toe_brake > 50 %"
)toml");

struct WatchCase {
    const char* name;
    const std::string& flow;
    const char* start;
    const char* script;
    const char* events;
};

const std::vector<WatchCase> kCases{
    {"each episode of a guard is told", kTiller, "ground_speed = 90 kt",
     "1 tiller = 10 deg\n2 tiller = 2 deg\n3 tiller = -12 deg\n4 ground_speed = 70 kt\n5 wait",
     "0 due light, 1 guard-broken tiller, 2 guard-over tiller, 3 guard-broken tiller, 4 guard-over tiller"},
    {"an unknown guard is not broken", kTiller, "", "1 tiller = 10 deg\n2 wait", "0 due light"},
    {"broken already at the start of its stretch", kTiller, "ground_speed = 90 kt; tiller = 20 deg", "1 wait",
     "0 due light, 0 guard-broken tiller"},
    {"a guard watches from its first step's cue to its last step's end", kScoped, "",
     "1 thrust_lever_1 = 60 %\n2 thrust_lever_1 = 0 %\n3 taxi_light = on\n4 thrust_lever_1 = 60 %\n"
     "5 flap_lever = 4\n6 thrust_lever_1 = 0 %\n7 thrust_lever_1 = 60 %\n8 wait",
     "0 due light, 3.3 done light, 3.3 due flap, 4 guard-broken thrust, 5.5 done flap, 5.5 due brake, "
     "5.5 guard-over thrust"},
    {"held in a guard counts from the start of its stretch", kHeld, "ground_speed = 40 kt", "2 taxi_light = on\n9 wait",
     "0 due light, 2.3 done light, 2.3 due flap, 5.3 guard-broken fast"},
    {"a guard broken at a single instant", kInstant, "on_ground = off", "2 on_ground = on\n3 wait",
     "0 due light, 2 guard-broken touch, 2 guard-over touch"},
    {"an episode ends with the run", kTiller, "ground_speed = 90 kt", "1 tiller = 10 deg\n2 stop",
     "0 due light, 1 guard-broken tiller, 2 omitted light, 2 omitted flap, 2 omitted brake, 2 guard-over tiller, "
     "2 run-ended stopped"},
    {"an outcome voids the open steps", kOutcome, "thrust_lever_1 = 90 %",
     "1 taxi_light = on\n2 thrust_lever_1 = 0 %\n2.1 toe_brake = 80 %\n3 wait",
     "0 due light, 1.3 done light, 1.3 due flap, 2.1 outcome-reached rejected, 2.1 void flap, 2.1 void brake, "
     "2.1 run-ended rejected"},
    {"what is so at the start is no outcome", kOutcome, "toe_brake = 80 %", "1 wait", "0 due light"},
};

} // namespace

class TestWatch : public QObject {
    Q_OBJECT

private Q_SLOTS:
    void cases_data();
    void cases();
    void guardCostsOnceAFlow();
    void criticalGuardKeepsFromPassing();
    void voidStepsLeaveTheWeight();
};

void TestWatch::cases_data() {
    QTest::addColumn<int>("index");
    for (std::size_t i = 0; i < kCases.size(); ++i)
        QTest::newRow(kCases[i].name) << static_cast<int>(i);
}

void TestWatch::cases() {
    QFETCH(int, index);
    const WatchCase& given = kCases[static_cast<std::size_t>(index)];
    QCOMPARE(eventsOf({given.name, given.flow.c_str(), given.start, given.script, given.events}),
             QString(given.events));
}

void TestWatch::guardCostsOnceAFlow() {
    const Flow flow = flowOf(kTiller);
    Bench bench(flow, onScreen());
    bench.begin("ground_speed = 90 kt");
    bench.play("0.1 tiller = 10 deg\n0.2 tiller = 0 deg\n0.3 tiller = 10 deg\n0.4 tiller = 0 deg\n"
               "1 taxi_light = on\n2 flap_lever = 4\n3 parking_brake = on\n4 wait");
    const Score score = bench.session.score();
    QCOMPARE(score.ledger.size(), std::size_t(1));
    QVERIFY(score.ledger[0].what == LossKind::GuardBroken);
    QCOMPARE(score.ledger[0].guard, 0);
    QCOMPARE(score.weight, std::int64_t(3)); // steps only
    QCOMPARE(score.milliPoints, std::int64_t(66'667));
    QCOMPARE(bench.session.view().brokenGuards, std::vector<int>{0});
    QVERIFY(bench.session.view().openGuards.empty());
}

void TestWatch::criticalGuardKeepsFromPassing() {
    Flow flow = flowOf(kTiller);
    flow.target = 0.0;
    for (const bool isCritical : {false, true}) {
        flow.guards[0].isCritical = isCritical;
        Bench bench(flow, onScreen());
        bench.begin("ground_speed = 90 kt");
        bench.play("0.1 tiller = 10 deg\n1 taxi_light = on\n2 flap_lever = 4\n3 parking_brake = on\n4 wait");
        QCOMPARE(bench.session.score().isPassed, !isCritical);
        QCOMPARE(bench.session.score().ledger[0].guard, 0); // listed first
    }
}

void TestWatch::voidStepsLeaveTheWeight() {
    const Flow flow = flowOf(kOutcome);
    Bench bench(flow, onScreen());
    bench.begin("thrust_lever_1 = 90 %");
    bench.play("1 taxi_light = on\n2 thrust_lever_1 = 0 %\n2.1 toe_brake = 80 %\n3 wait");
    QCOMPARE(bench.session.score().weight, std::int64_t(1));
    QCOMPARE(bench.session.score().milliPoints, std::int64_t(100'000));
}

QTEST_APPLESS_MAIN(TestWatch)
#include "test_watch.moc"
