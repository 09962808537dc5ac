#include <QtTest>

#include "procedure/flow.h"
#include "session/hands.h"

using namespace flowhand;
using namespace std::chrono_literals;

namespace {

constexpr const char* kFlow = R"(
format = 1
title = "Lights and brakes"
phases = ["taxi_out"]
[start]
place = "stand"
[[step]]
id = "light"
title = "Taxi light on"
seat = "captain"
done = "taxi_light"
[[step]]
id = "flap"
title = "Flap lever to 12"
seat = "captain"
done = "flap_lever == 12"
)";

} // namespace

/// The hands alone: told values and due steps, asked for movements.
class TestHands : public QObject {
    Q_OBJECT

private Q_SLOTS:
    void initTestCase();
    void errorsNameTheirPlace_data();
    void errorsNameTheirPlace();
    void aStepIsWaitedFor();
    void aStepThatIsOverIsNotWaitedFor();
    void aConditionIsWaitedFor();
    void aGatedLeverGoesThroughItsGates();
    void aNumberMovesEvenly();
    void withBeginsTogether();
    void aPressIsLetGo();
    void aJumpIsAskedForOnce();
    void sameScriptSameMoves();

private:
    struct Moved {
        Time time;
        std::string what;
        bool operator==(const Moved&) const = default;
    };
    Hands hands(const char* script) const;
    std::vector<Moved> movesUpTo(Hands& hands, Time from, Time to);
    SignalId signal(const char* name) const { return *m_aircraft->signals.find(name); }

    std::unique_ptr<Aircraft> m_aircraft;
    std::optional<Flow> m_flow;
    std::vector<Value> m_values;
    std::vector<StepTurn> m_steps;
};

void TestHands::initTestCase() {
    Problems problems;
    std::optional<Aircraft> aircraft = loadAircraft(PROCEDURES "/twin_jet/aircraft.toml", problems);
    QVERIFY(aircraft);
    m_aircraft = std::make_unique<Aircraft>(std::move(*aircraft));
    m_flow = parseFlow(kFlow, "flow.toml", *m_aircraft, problems);
    QVERIFY2(m_flow, problems.all().empty() ? "" : describe(problems.all().front().error).c_str());
}

Hands TestHands::hands(const char* script) const {
    Problems problems;
    std::optional<Hands> parsed = Hands::parse(script, "test.hands", *m_aircraft, *m_flow, problems);
    if (!parsed)
        qFatal("%s", describe(problems.firstError()).c_str());
    return std::move(*parsed);
}

/// Shows the hands the present values at `from`, then lets them move until `to`; their movements change the values.
std::vector<TestHands::Moved> TestHands::movesUpTo(Hands& hands, Time from, Time to) {
    std::vector<Moved> moved;
    hands.see(from, m_values, m_steps);
    while (hands.nextMove() <= to) {
        const Time time = hands.nextMove();
        std::vector<Sample> samples;
        hands.move(time, samples);
        for (const Sample& sample : samples) {
            const Signal& moving = m_aircraft->signals[sample.signal];
            moved.push_back({time, moving.name + " " + valueText(moving, sample.value)});
            m_values[indexOf(sample.signal)] = sample.value;
        }
        hands.see(time, m_values, m_steps);
    }
    return moved;
}

void TestHands::errorsNameTheirPlace_data() {
    QTest::addColumn<QString>("script");
    QTest::addColumn<QString>("message");
    QTest::newRow("no colon") << "after 1 s taxi_light on"
                              << "test.hands:1:1: a line of hands is";
    QTest::newRow("trigger") << "# first\nlater: taxi_light on"
                             << "test.hands:2:1: a line of hands begins with";
    QTest::newRow("control") << "after 1 s: taxi_ligt on"
                             << "test.hands:1:12: there is no control 'taxi_ligt'; did you mean 'taxi_light'?";
    QTest::newRow("value") << "after 1 s: flap_lever 13"
                           << "test.hands:1:23: '13' is not a position";
    QTest::newRow("unit") << "after 1 s: tiller 10 kt"
                          << "test.hands:1:19: '10 kt' is not a value of tiller";
    QTest::newRow("time") << "after soon: taxi_light on"
                          << "test.hands:1:7: 'soon' is not a length of time";
    QTest::newRow("step") << "due lihgt: taxi_light on"
                          << "test.hands:1:5: the flow has no step 'lihgt'; did you mean 'light'?";
    QTest::newRow("condition") << "when airspeed > 80 deg: taxi_light on"
                               << "test.hands:1:";
    QTest::newRow("press a lever") << "after 1 s: press flap_lever"
                                   << "test.hands:1:18: only a button";
    QTest::newRow("jump") << "after 1 s: jump to flpa"
                          << "test.hands:1:20: the flow has no step 'flpa'; did you mean 'flap'?";
    QTest::newRow("too long") << "after 1 s: thrust_lever_1 50 % over 100 h"
                              << "test.hands:1:37: no run is longer";
    QTest::newRow("out of range") << "after 1 s: thrust_lever_1 500 %"
                                  << "test.hands:1:27: Thrust lever 1 goes from 0 % to 100 %";
    QTest::newRow("empty") << "# nothing\n"
                           << "test.hands:1:1: there is no line";
}

void TestHands::errorsNameTheirPlace() {
    QFETCH(QString, script);
    QFETCH(QString, message);
    Problems problems;
    QVERIFY(!Hands::parse(script.toStdString(), "test.hands", *m_aircraft, *m_flow, problems));
    const QString text = QString::fromStdString(describe(problems.firstError()));
    QVERIFY2(text.startsWith(message), qPrintable(text));
}

void TestHands::aStepIsWaitedFor() {
    m_values.assign(m_aircraft->signals.size(), Value());
    m_steps = {{}, {}};
    Hands script = hands("due light, 0.8 s later: taxi_light on");
    QCOMPARE(movesUpTo(script, 0s, 60s).size(), std::size_t(0));
    QVERIFY(!script.isDone());
    m_steps = {{true, false}, {}};
    const std::vector<Moved> expected{{70'800ms, "taxi_light on"}};
    QCOMPARE(movesUpTo(script, 70s, 100s), expected);
    QVERIFY(script.isDone());
}

void TestHands::aStepThatIsOverIsNotWaitedFor() {
    m_values.assign(m_aircraft->signals.size(), Value());
    m_steps = {{false, true}, {true, false}};
    Hands script =
        hands("due light: taxi_light on\nafter 1 s: landing_lights on\ndue flap, 1 s later: parking_brake on");
    const std::vector<Moved> expected{{6s, "parking_brake on"}};
    QCOMPARE(movesUpTo(script, 5s, 60s), expected);
    QVERIFY(script.isDone());
}

void TestHands::aConditionIsWaitedFor() {
    m_values.assign(m_aircraft->signals.size(), Value());
    m_steps = {{}, {}};
    Hands script = hands("when airspeed > 80 kt and taxi_light == false: taxi_light on");
    m_values[indexOf(signal("taxi_light"))] = Value::onOff(false);
    QCOMPARE(movesUpTo(script, 1s, 2s).size(), std::size_t(0)); // an unknown speed is not waited out
    m_values[indexOf(signal("airspeed"))] = Value::number(81);
    const std::vector<Moved> expected{{3s, "taxi_light on"}};
    QCOMPARE(movesUpTo(script, 3s, 9s), expected);
}

void TestHands::aGatedLeverGoesThroughItsGates() {
    m_values.assign(m_aircraft->signals.size(), Value());
    m_values[indexOf(signal("flap_lever"))] = Value::position(0);
    Hands script = hands("after 1 s: flap_lever 12 over 1 s");
    const std::vector<Moved> expected{{1s, "flap_lever between"},
                                      {1250ms, "flap_lever 4"},
                                      {1500ms, "flap_lever between"},
                                      {1750ms, "flap_lever 12"}};
    QCOMPARE(movesUpTo(script, 0s, 9s), expected);
}

void TestHands::aNumberMovesEvenly() {
    m_values.assign(m_aircraft->signals.size(), Value());
    m_values[indexOf(signal("thrust_lever_1"))] = Value::number(0);
    Hands script = hands("after 1 s: thrust_lever_1 40 % over 0.04 s");
    const std::vector<Moved> expected{{1020ms, "thrust_lever_1 20 %"}, {1040ms, "thrust_lever_1 40 %"}};
    QCOMPARE(movesUpTo(script, 0s, 9s), expected);
}

void TestHands::withBeginsTogether() {
    m_values.assign(m_aircraft->signals.size(), Value());
    Hands script = hands("after 2 s: taxi_light on\nwith: parking_brake off\nafter 1 s: landing_lights on");
    const std::vector<Moved> expected{{2s, "taxi_light on"}, {2s, "parking_brake off"}, {3s, "landing_lights on"}};
    QCOMPARE(movesUpTo(script, 0s, 9s), expected);
}

void TestHands::aPressIsLetGo() {
    m_values.assign(m_aircraft->signals.size(), Value());
    Hands script = hands("at 5 s: press reply_button for 0.5 s");
    const std::vector<Moved> expected{{5s, "reply_button on"}, {5500ms, "reply_button off"}};
    QCOMPARE(movesUpTo(script, 0s, 9s), expected);
}

void TestHands::aJumpIsAskedForOnce() {
    m_values.assign(m_aircraft->signals.size(), Value());
    Hands script = hands("after 2 s: jump to flap\nafter 1 s: taxi_light on");
    QCOMPARE(movesUpTo(script, 0s, 1s).size(), std::size_t(0));
    QVERIFY(script.takeJumps().empty());
    const std::vector<Moved> expected{{3s, "taxi_light on"}};
    QCOMPARE(movesUpTo(script, 1s, 9s), expected);
    QCOMPARE(script.takeJumps(), std::vector<std::size_t>{1});
    QVERIFY(script.takeJumps().empty());
}

void TestHands::sameScriptSameMoves() {
    const char* text = "after 1 s: follow the line with tiller\nafter 4 s: let go\nafter 1 s: taxi_light on";
    std::vector<std::vector<Moved>> runs;
    for (int i = 0; i < 2; ++i) {
        m_values.assign(m_aircraft->signals.size(), Value());
        m_values[indexOf(signal("centreline_offset"))] = Value::number(3.0);
        m_values[indexOf(signal("ground_speed"))] = Value::number(8.0);
        Hands script = hands(text);
        runs.push_back(movesUpTo(script, 0s, 20s));
    }
    QCOMPARE(runs[0], runs[1]);
    QVERIFY(runs[0].size() >= 2);
    QVERIFY(runs[0].front().what.starts_with("tiller -")); // right of the line: steered left
    QCOMPARE(runs[0].back().what, std::string("taxi_light on"));
}

QTEST_APPLESS_MAIN(TestHands)
#include "test_hands.moc"
