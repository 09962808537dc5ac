// A jump takes the practice aircraft along.

#include <QtTest>

#include "session/onscreenflight.h"

using namespace flowhand;
using namespace flowhand::test;
using namespace std::chrono_literals;

namespace {

const char* const kFlow = R"toml(
format = 1
title = "Take-off"
phases = ["take_off"]
seat = "captain"
[start]
place = "line_up"
[start.controls]
thrust_lever_1 = "0 %"
thrust_lever_2 = "0 %"
flap_lever = "12"
gear_lever = "down"
fuel_lever_1 = "run"
fuel_lever_2 = "run"
parking_brake = "off"
[[step]]
id = "thrust"
title = "Take-off thrust"
done = "thrust_lever_1 > 84 % and thrust_lever_1 < 96 % and thrust_lever_2 > 84 % and thrust_lever_2 < 96 %"
within = "60 s"
[[step]]
id = "light"
title = "Landing lights on"
after = []
done = "landing_lights"
within = "60 s"
[[step]]
id = "rotate"
title = "Pull the yoke"
after = ["thrust"]
when = "airspeed > aircraft.vr - 1 kt"
done = "yoke_pitch > 12 %"
within = "20 s"
place = "v1"
[[step]]
id = "gear"
title = "Gear lever up"
when = "height > 35 ft"
done = "gear_lever == up"
within = "60 s"
place = "thousand_feet"
)toml";

const char* const kScenario = R"toml(
format = 1
title = "Failure"
flows = ["flow"]
[[event]]
id = "fails"
title = "Engine 2 fails"
when = "on_ground and airspeed > 60 kt"
failure = "engine_out"
engine = 2
)toml";

} // namespace

class TestPlace : public QObject {
    Q_OBJECT

    const Flow m_flow = jetFlow(kFlow);

private Q_SLOTS:
    void theAircraftGoesAlong() {
        OnScreenFlight flight(m_flow);
        flight.loop->command(CommandKind::Start);
        flight.goOn(2s);
        QCOMPARE(flight["ground_speed"], 0.0);
        flight.loop->jump("rotate");
        flight.goOn(100ms);
        QVERIFY(flight.loop->phase() == SessionPhase::Running);
        QVERIFY(std::fabs(flight["airspeed"] - 124.0) < 1.0);
        QVERIFY(flight["engine_power_1"] > 85.0); // at rest where the levers of the step before stand
        QVERIFY(flight.state("thrust") == StepState::Void);
        flight.goOn(10s);
        QVERIFY(flight.state("rotate") == StepState::Due);
        QVERIFY(flight.told(EventKind::Placed) < flight.told(EventKind::Jumped));
        QVERIFY(flight.isJudgedTheSame());
    }

    void onAndBackToTheStart() {
        OnScreenFlight flight(m_flow);
        flight.loop->command(CommandKind::Start);
        flight.goOn(1s);
        flight.loop->jump("gear");
        flight.goOn(2s);
        QVERIFY(flight["height"] > 900.0);
        QCOMPARE(flight["on_ground"], 0.0);
        flight.loop->jump("thrust"); // the first step: where the flow starts
        flight.goOn(2s);
        QCOMPARE(flight["height"], 0.0);
        QCOMPARE(flight["ground_speed"], 0.0);
        QVERIFY(flight["engine_power_1"] < 10.0);
        QVERIFY(flight.state("thrust") == StepState::Due);
        QVERIFY(flight.isJudgedTheSame());
    }

    void staysWhereTheStepNamesNoPlace() {
        OnScreenFlight flight(m_flow);
        flight.loop->command(CommandKind::Start);
        flight.goOn(1s);
        flight.loop->jump("gear");
        flight.goOn(1s);
        flight.loop->jump("light");
        flight.goOn(1s);
        QVERIFY(flight["height"] > 900.0);
        QCOMPARE(flight.count(EventKind::Placed), 1);
        QCOMPARE(flight.count(EventKind::Jumped), 2);
    }

    void mayBeginTheRun() {
        OnScreenFlight flight(m_flow);
        flight.loop->jump("gear");
        flight.goOn(100ms);
        QVERIFY(flight.loop->phase() == SessionPhase::Running);
        QVERIFY(flight["height"] > 900.0);
        QVERIFY(flight.isJudgedTheSame());
    }

    void aCommandAloneLeavesItWhereItIs() {
        OnScreenFlight flight(m_flow);
        flight.loop->command(CommandKind::Jump, "gear");
        flight.goOn(1s);
        QCOMPARE(flight["height"], 0.0);
    }

    /// While real levers are being put where they belong it has no time, and rests at what they ask for.
    void waitsForTheLeversAndFollowsThem() {
        OnScreenFlight flight(m_flow, {1, false});
        for (const char* lever : {"thrust_lever_1", "thrust_lever_2"})
            flight.move(lever, "0 %");
        for (const auto& [control, value] :
             {std::pair("flap_lever", "12"), std::pair("gear_lever", "down"), std::pair("parking_brake", "off"),
              std::pair("fuel_lever_1", "run"), std::pair("fuel_lever_2", "run")})
            flight.move(control, value);
        flight.goOn(100ms);
        flight.loop->command(CommandKind::Start);
        flight.goOn(1s);
        QVERIFY(flight.loop->phase() == SessionPhase::Running);
        flight.loop->jump("rotate");
        flight.goOn(1s);
        QVERIFY(flight.loop->phase() == SessionPhase::SetUp);
        const double airspeed = flight["airspeed"];
        QVERIFY(airspeed > 120.0);
        QVERIFY(flight["engine_power_1"] < 10.0);
        flight.move("thrust_lever_1", "90 %");
        flight.goOn(5s);
        QVERIFY(flight["engine_power_1"] > 85.0);
        QVERIFY(flight["engine_power_2"] < 10.0);
        QCOMPARE(flight["airspeed"], airspeed);
        flight.move("thrust_lever_2", "90 %");
        flight.goOn(2s);
        QVERIFY(flight.loop->phase() == SessionPhase::Running);
        QVERIFY(flight["airspeed"] > airspeed + 3.0);
        QVERIFY(flight.isJudgedTheSame());
    }

    void isWholeAgainAndMayFailAgain() {
        Problems problems;
        const std::optional<Scenario> scenario = parseScenario(kScenario, "s.toml", jet(), problems);
        QVERIFY(scenario);
        OnScreenFlight flight(m_flow, {1, true, &*scenario});
        flight.loop->command(CommandKind::Start);
        const auto fails = [&] {
            flight.move("thrust_lever_1", "90 %");
            flight.move("thrust_lever_2", "90 %");
            flight.goOn(30s);
            return flight["engine_power_1"] > 85.0 && flight["engine_power_2"] < 5.0;
        };
        QVERIFY(fails());
        flight.loop->jump("thrust");
        flight.goOn(1s);
        QCOMPARE(flight["engine_power_2"], flight["engine_power_1"]);
        QVERIFY(fails());
        QCOMPARE(flight.count(EventKind::ScenarioEvent), 2);
        QVERIFY(flight.isJudgedTheSame());
    }

    void scriptedHandsTakeItAlong() {
        OnScreenFlight flight(m_flow, {1, true, nullptr, "at 2 s: jump to rotate\n"});
        flight.loop->command(CommandKind::Start);
        flight.goOn(3s);
        QVERIFY(flight["airspeed"] > 120.0);
    }

    void aStepThatIsNotThereLeavesAllAsItIs() {
        OnScreenFlight flight(m_flow);
        flight.loop->command(CommandKind::Start);
        flight.goOn(1s);
        flight.loop->jump("rotat");
        flight.goOn(1s);
        QVERIFY(flight.loop->phase() == SessionPhase::Running);
        QCOMPARE(flight.count(EventKind::Placed), 0);
    }

    void aPlaceThatIsNotThereIsSaid() {
        Flow flow = jetFlow(kFlow);
        flow.steps[2].jumpPlace = "v2";
        OnScreenFlight flight(flow);
        flight.loop->command(CommandKind::Start);
        flight.goOn(1s);
        flight.loop->jump("rotate");
        flight.goOn(1s);
        QVERIFY(flight.loop->phase() == SessionPhase::Running);
        const std::vector<Phrase>& notices = flight.loop->notices();
        QVERIFY(std::any_of(notices.begin(), notices.end(), [](const Phrase& notice) {
            return notice.english().find("there is no place 'v2'") != std::string::npos;
        }));
    }

    /// By another flow, in which the step is not, the run goes on where it was put.
    void judgedByAnotherFlowItGoesOn() {
        OnScreenFlight flight(m_flow);
        flight.loop->command(CommandKind::Start);
        flight.goOn(1s);
        flight.loop->jump("rotate");
        flight.goOn(1s);
        flight.move("landing_lights", "on");
        flight.goOn(1s);
        QVERIFY(flight.isJudgedTheSame());
        Flow other = jetFlow(kFlow);
        other.steps[2].id = "pull";
        SessionSetup setup;
        setup.controls = onScreenFacts(jet());
        const JudgedRun again =
            judgeAgain(jet(), other, setup, flight.recorder.allSamples, flight.recorder.commands, flight.recorder.end);
        QVERIFY(std::any_of(again.events.begin(), again.events.end(), [](const Event& event) {
            return event.kind == EventKind::StepDone && event.step == 1;
        }));
    }
};

QTEST_APPLESS_MAIN(TestPlace)
#include "test_place.moc"
