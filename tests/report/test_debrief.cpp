#include <QtTest>
#include <cstdlib>
#include <ctime>
#include <nlohmann/json.hpp>
#include <rapidcheck.h>

#include "report/debrief.h"
#include "report/eventlines.h"
#include "report/findings.h"
#include "report/texttable.h"

using namespace flowhand;
using namespace std::chrono_literals;

namespace {

constexpr char kAircraft[] = R"(format = 1
title = "Bench"
engines = 1
seats = ["pilot", "copilot"]

[[control]]
name = "thrust_lever_1"
label = "Thrust lever"
panel = "THRUST"
area = "pedestal"
kind = "lever"
unit = "%"
range = [0, 100]
scale = 100
continuous = true

[[control]]
name = "flap_lever"
label = "Flap lever"
panel = "FLAP"
area = "pedestal"
kind = "gated lever"
positions = ["up", "4", "12"]

[[control]]
name = "taxi_light"
label = "Taxi light"
panel = "TAXI"
area = "overhead"
kind = "switch"
)";

constexpr char kFlow[] = R"(format = 1
title = "Light, flap and thrust"
phases = ["taxi_out"]
seat = "pilot"

[[step]]
id = "taxi_light"
title = "Taxi light on"
done = "taxi_light"

[[step]]
id = "flap_12"
title = "Flap lever to 12"
done = "flap_lever == 12"
weight = 3

[[step]]
id = "thrust"
title = "Thrust lever a little forward, no more than taxiing needs"
done = "thrust_lever_1 > 10 %"

[[step]]
id = "light_off"
title = "Taxi light off"
seat = "copilot"
done = "not taxi_light"

[[guard]]
id = "too_much"
title = "More thrust than taxiing needs"
never = "thrust_lever_1 > 40 %"

[[guard]]
id = "flap_early"
title = "Flap with the lever forward"
never = "thrust_lever_1 > 10 % and flap_lever == 4"
)";

Event eventOf(EventKind kind, Time time, int step = -1) {
    Event event;
    event.kind = kind;
    event.time = time;
    event.step = step;
    return event;
}

/// A run with one of everything: late, not done, a guard broken, a wrong control put back, the partner's step.
struct TestRun {
    TestRun() {
        Problems problems;
        aircraft.emplace(*parseAircraft(kAircraft, "bench/aircraft.toml", problems));
        flow.emplace(*parseFlow(kFlow, "bench/light_flap_thrust.toml", *aircraft, problems));
        header.startedUnixMillis = 1'700'000'000'000;
        header.pilot = "Kim";
        header.programVersion = "0.1.0";
        header.aircraftFolder = "bench";
        header.rigTitle = "One quadrant";
        header.controlNames = {"", "axis 1", "button 3"};
        header.setup.controls.resize(3);
        header.setup.controls[0].isSimulated = true;
        makeResults();
        makeEvents();
        makeScore();
    }

    void makeResults() {
        results.resize(4);
        results[0] = {StepState::Done, true, 1s, 7'500ms, {}, 1.0, false, false};
        results[1] = {StepState::Omitted, true, 7'500ms, kForever, {}, 1.0, false, false};
        results[2] = {StepState::Done, true, 20s, 21s, {}, 1.0, false, false};
        results[3] = {StepState::Done, false, 21s, 23s, {}, 1.0, false, false};
    }

    void makeEvents() {
        const SignalId lever{0};
        const SignalId flap{1};
        const SignalId light{2};
        events.push_back(eventOf(EventKind::RunStarted, 0s));
        Event wrong = eventOf(EventKind::WrongControl, 5s, 0);
        wrong.signal = flap;
        wrong.value = Value::position(1);
        events.push_back(wrong);
        Event back = eventOf(EventKind::ExtraCancelled, 6s, 0);
        back.signal = flap;
        events.push_back(back);
        Event done = eventOf(EventKind::StepDone, 8s, 0);
        done.signal = light;
        done.value = Value::onOff(true);
        done.control = ControlId{2};
        events.push_back(done);
        Event broken = eventOf(EventKind::GuardBroken, 10s);
        broken.guard = 0;
        events.push_back(broken);
        broken.kind = EventKind::GuardOver;
        broken.time = 12'500ms;
        events.push_back(broken);
        events.push_back(eventOf(EventKind::StepOmitted, 20s, 1));
        done = eventOf(EventKind::StepDone, 22s, 2);
        done.signal = lever;
        done.value = Value::number(14.5);
        done.margin = 4.5;
        done.marginSignal = lever;
        events.push_back(done);
        events.push_back(eventOf(EventKind::StepDone, 23s, 3));
        Event held = eventOf(EventKind::Held, 25s);
        held.text = std::string("the device 'quadrant' is gone");
        events.push_back(held);
    }

    void makeScore() {
        score.isScored = true;
        score.weight = 5;
        score.whyNotPassed = phrase("a critical step was not surely done: {1}").with("Flap lever to 12");
        score.pace = 20s;
        score.late = {1500ms, 0ms, 0ms, 0ms};
        score.outOfOrder.resize(4);
        score.ledger = {
            {20'000, -1, 0, LossKind::GuardBroken, phrase("guard broken: {1}").with("More thrust than taxiing needs")},
            {1'200, 0, -1, LossKind::Late,
             phrase("{1}: {2} late ({3}, within {4})").with("Taxi light on", "1.5 s", "6.5 s", "5.0 s")},
            {60'000, 1, -1, LossKind::NotDone, phrase("{1}: not done").with("Flap lever to 12")}};
        score.milliPoints = score.upperMilliPoints = 18'800;
    }

    [[nodiscard]] DebriefInput input() const { return {*flow, *aircraft, header, score, results, events, 7}; }

    std::optional<Aircraft> aircraft;
    std::optional<Flow> flow;
    RunHeader header;
    Score score;
    std::vector<StepResult> results;
    std::vector<Event> events;
};

bool fits(const std::string& text, std::size_t width) {
    std::istringstream lines(text);
    for (std::string line; std::getline(lines, line);)
        if (textWidth(line) > width)
            return false;
    return true;
}

} // namespace

class TestDebrief : public QObject {
    Q_OBJECT

private Q_SLOTS:
    void initTestCase();
    void theTextReadsLikeThis();
    void noLineIsTooLong();
    void uncertainScoresShowBothEnds();
    void theJsonHasStableKeys();
    void remarksSayWhatWasNotReal();
    void leftOutStepsAreNamed();
    void eventsComeBackFromTheirLines();
    void strangeLinesAreNoEvents_data();
    void strangeLinesAreNoEvents();
    void wrappingLosesNothing();
    void pointsAreExact_data();
    void pointsAreExact();
};

void TestDebrief::initTestCase() {
    qputenv("TZ", "UTC");
    tzset();
}

void TestDebrief::theTextReadsLikeThis() {
    const TestRun run;
    const std::string expected = R"(Light, flap and thrust, Bench
Run 7, 2023-11-14 22:13, Kim, rig: One quadrant

NOT PASSED with 18.8 of 100 points: a critical step was not surely done: Flap lever to 12.
From the first step due to the last one done: 0:20.0.

What went wrong, worst first
  points
      20  guard broken: More thrust than taxiing needs
      60  Flap lever to 12: not done
     1.2  Taxi light on: 1.5 s late (6.5 s, within 5.0 s)

Steps
  step                            due    done  how         by              margin  lost
  Taxi light on                0:01.0  0:07.5  1.5 s late  button 3                 1.2
  Flap lever to 12             0:07.5       -  not done                              60
  Thrust lever a little        0:20.0  0:21.0  done        Thrust lever *   4.5 %
  forward, no more than
  taxiing needs
  Taxi light off               0:21.0  0:23.0  done        partner
  * simulated: on screen or by scripted hands

Guards
  - BROKEN: More thrust than taxiing needs, from 0:10.0 to 0:12.5
  - kept: Flap with the lever forward

Besides the steps
  - 0:05.0 wrong control: Flap lever moved to 4, in place of 'Taxi light on'; put back in time, no
    loss

Remarks
  - Simulated input, on screen or by scripted hands: Thrust lever a little forward, no more than
    taxiing needs.
  - Held at 0:25.0: the device 'quadrant' is gone.

Flowhand is a hobby trainer and is not for real-world flight training.
)";
    QCOMPARE(QString::fromStdString(debriefText(run.input())), QString::fromStdString(expected));
}

void TestDebrief::noLineIsTooLong() {
    QVERIFY(rc::check("at most 100 characters a line, whatever the words", [] {
        TestRun run;
        const auto words = [] {
            return *rc::gen::container<std::string>(rc::gen::element('a', 'W', 'i', ' ', '-', ','));
        };
        for (Step& step : run.flow->steps)
            step.title = words();
        run.flow->guards[0].title = words();
        run.header.pilot = words();
        run.header.controlNames = {"", words(), words()};
        run.score.whyNotPassed = words();
        run.score.ledger[0].text = words();
        run.score.ledger[2].milliPoints = *rc::gen::inRange(0, 100'000);
        run.events.back().text = words();
        RC_ASSERT(fits(debriefText(run.input()), 100));
    }));
}

void TestDebrief::uncertainScoresShowBothEnds() {
    TestRun run;
    run.score.upperMilliPoints = 38'800;
    run.results[1].state = StepState::Uncertain;
    const std::string text = debriefText(run.input());
    QVERIFY(text.find("18.8 to 38.8 of 100 points") != std::string::npos);
    QVERIFY(text.find("uncertain") != std::string::npos);
}

void TestDebrief::theJsonHasStableKeys() {
    const TestRun run;
    const nlohmann::ordered_json json = nlohmann::ordered_json::parse(debriefJson(run.input()));
    std::vector<std::string> keys;
    for (const auto& [key, value] : json.items())
        keys.push_back(key);
    const std::vector<std::string> expected = {"run",
                                               "started_unix_ms",
                                               "pilot",
                                               "program_version",
                                               "aircraft",
                                               "flow",
                                               "rig",
                                               "motion",
                                               "help",
                                               "time_scale",
                                               "seat",
                                               "solo",
                                               "cut_off",
                                               "simulated_input",
                                               "scored",
                                               "milli_points",
                                               "upper_milli_points",
                                               "passed",
                                               "why_not_passed",
                                               "weight",
                                               "pace_us",
                                               "ledger",
                                               "steps",
                                               "times",
                                               "guards",
                                               "extras",
                                               "repairs",
                                               "remarks",
                                               "notes",
                                               "rejudged",
                                               "damage",
                                               "note"};
    QCOMPARE(keys, expected);
    QCOMPARE(json["milli_points"].get<int>(), 18'800);
    QCOMPARE(json["steps"][0]["done_us"].get<int>(), 7'500'000);
    QVERIFY(json["steps"][1]["done_us"].is_null());
    QCOMPARE(json["steps"][2]["margin"]["unit"].get<std::string>(), std::string("%"));
    QCOMPARE(json["guards"][0]["episodes"][0]["to_us"].get<int>(), 12'500'000);
    QVERIFY(json["extras"][0]["put_back"].get<bool>());
    QCOMPARE(json["ledger"][0]["guard"].get<std::string>(), std::string("too_much"));
}

void TestDebrief::remarksSayWhatWasNotReal() {
    TestRun run;
    for (ControlFacts& facts : run.header.setup.controls)
        facts.isSimulated = true;
    run.header.setup.isSolo = true;
    DebriefInput input = run.input();
    input.isCutOff = true;
    input.damage = {"samples of the devices between 0:20.0 and 0:25.0 are damaged"};
    const std::string text = debriefText(input);
    QVERIFY(text.find("every step was done on screen or by scripted hands, none on a control") != std::string::npos);
    QVERIFY(text.find("without a partner") != std::string::npos);
    QVERIFY(text.find("ended in mid-run") != std::string::npos);
    QVERIFY(text.find("Damaged in the store: samples of the devices") != std::string::npos);
}

void TestDebrief::leftOutStepsAreNamed() {
    TestRun run;
    run.results[1].state = StepState::LeftOut;
    Event left = eventOf(EventKind::StepLeftOut, 0s, 1);
    left.text = std::string("the rig has no flap lever");
    run.events.push_back(left);
    const std::string text = debriefText(run.input());
    QVERIFY(text.find("This rig could not observe 'Flap lever to 12': the rig has no flap lever") != std::string::npos);
    QVERIFY(text.find("left out") != std::string::npos);
}

void TestDebrief::eventsComeBackFromTheirLines() {
    const TestRun run;
    const std::vector<std::string> ids = {"taxi_light", "flap_12", "thrust", "light_off"};
    QVERIFY(rc::check("a line gives back the event it was made of", [&] {
        Event event;
        event.time = Time(*rc::gen::inRange<std::int64_t>(0, 1'000'000'000'000));
        event.kind = EventKind(*rc::gen::inRange(0, int(EventKind::RunEnded) + 1));
        event.step = *rc::gen::inRange(-1, 4);
        event.guard = *rc::gen::inRange(-1, 2);
        event.control = ControlId{*rc::gen::inRange<std::uint16_t>(0, 3)};
        event.by = *rc::gen::element<std::string>("", "copilot", "cockpit");
        event.text = *rc::gen::element<Phrase>(Phrase(), std::string("Gear up."), std::string("\"quoted\"\n"),
                                               phrase("{1} at {2}").with("Flap \"lever\"", phrase("off")));
        if (*rc::gen::arbitrary<bool>()) {
            event.margin = *rc::gen::inRange(-1000, 1000) / 7.0;
            event.marginSignal = SignalId{0};
        }
        const std::vector<std::pair<SignalId, Value>> values = {
            {kNoSignal, {}},
            {SignalId{0}, Value::number(*rc::gen::inRange(0, 1000) / 7.0)},
            {SignalId{0}, Value::unknown()},
            {SignalId{1}, Value::position(2)},
            {SignalId{1}, Value::between()},
            {SignalId{1}, Value::unknown()},
            {SignalId{2}, Value::onOff(true)},
        };
        std::tie(event.signal, event.value) = *rc::gen::elementOf(values);
        const std::string line = toJson(event, run.aircraft->signals, ids);
        const std::optional<Event> back = parseEvent(line, *run.aircraft, *run.flow);
        RC_ASSERT(back.has_value());
        RC_ASSERT(*back == event);
        RC_ASSERT(toJson(*back, run.aircraft->signals, ids) == line);
    }));
}

void TestDebrief::strangeLinesAreNoEvents_data() {
    QTest::addColumn<QString>("line");
    QTest::newRow("nothing") << "";
    QTest::newRow("no object") << "[1]";
    QTest::newRow("no time") << R"({"event":"step-due"})";
    QTest::newRow("unknown kind") << R"({"time_ns":1,"event":"step-danced"})";
    QTest::newRow("unknown step") << R"({"time_ns":1,"event":"step-due","step":"x"})";
    QTest::newRow("unknown signal") << R"({"time_ns":1,"event":"matched","signal":"x","value":1})";
    QTest::newRow("unknown position") << R"({"time_ns":1,"event":"matched","signal":"flap_lever","value":"34"})";
    QTest::newRow("guard too high") << R"({"time_ns":1,"event":"guard-over","guard":2})";
    QTest::newRow("no words") << R"({"time_ns":1,"event":"held","text":[["x"]]})";
    QTest::newRow("wrong type") << R"({"time_ns":"soon","event":"step-due"})";
}

void TestDebrief::strangeLinesAreNoEvents() {
    QFETCH(QString, line);
    const TestRun run;
    QVERIFY(!parseEvent(line.toStdString(), *run.aircraft, *run.flow));
}

void TestDebrief::wrappingLosesNothing() {
    QVERIFY(rc::check("only blanks go, and lines fit", [] {
        const auto text = *rc::gen::container<std::string>(rc::gen::element('a', 'b', ' '));
        const auto width = *rc::gen::inRange<std::size_t>(1, 20);
        std::string joined;
        for (const std::string& line : wrapped(text, width)) {
            RC_ASSERT(textWidth(line) <= width);
            joined += line;
        }
        std::string letters = text;
        std::erase(letters, ' ');
        std::erase(joined, ' ');
        RC_ASSERT(joined == letters);
    }));
    QCOMPARE(wrapped("4.9°, 0.3 s", 5), (std::vector<std::string>{"4.9°,", "0.3 s"}));
}

void TestDebrief::pointsAreExact_data() {
    QTest::addColumn<qint64>("milliPoints");
    QTest::addColumn<QString>("text");
    QTest::newRow("whole") << qint64(92'000) << "92";
    QTest::newRow("tenths") << qint64(95'500) << "95.5";
    QTest::newRow("thousandths") << qint64(7) << "0.007";
    QTest::newRow("given back") << qint64(-1'250) << "-1.25";
    QTest::newRow("zero") << qint64(0) << "0";
    QTest::newRow("hundred") << qint64(100'000) << "100";
}

void TestDebrief::pointsAreExact() {
    QFETCH(qint64, milliPoints);
    QFETCH(QString, text);
    QCOMPARE(QString::fromStdString(pointsText(milliPoints)), text);
}

QTEST_APPLESS_MAIN(TestDebrief)
#include "test_debrief.moc"
