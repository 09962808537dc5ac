#include <QtTest>
#include <rapidcheck.h>

#include <set>

#include "session/bench.h"
#include "session/property.h"
#include "session/replay.h"

using namespace flowhand;
using namespace flowhand::test;
using namespace std::chrono_literals;

namespace {

const char* const kFlow = R"toml(
[start]
place = "stand"
[start.controls]
parking_brake = "off"
[[step]]
id = "flap"
title = "Flap lever to 12"
done = "flap_lever == 12"
[[step]]
id = "call"
title = "Call"
kind = "say"
seat = "first_officer"
cue = { by = "first_officer", text = "Ready" }
when = "once(ground_speed > 10 kt, 3 s)"
[[step]]
id = "reply"
title = "Reply"
kind = "reply"
[[step]]
id = "gear"
title = "Gear lever up"
seat = "first_officer"
done = "gear_lever == up"
[[step]]
id = "idle"
title = "Thrust levers closed"
group = "after"
done = "held(thrust_lever_1 < 5 %, 1 s)"
suspend = "turn_ahead"
[[step]]
id = "turn"
title = "Turn the tiller"
group = "after"
done = "moved(tiller, 20 deg)"
band = { signal = "ground_speed", from = "0 kt", to = "20 kt" }
[[step]]
id = "light"
title = "Taxi light on"
done = "taxi_light"
expires = "ground_speed > 40 kt"
[[guard]]
id = "fast"
title = "Fast in a turn"
never = "held(ground_speed > 30 kt and turn_ahead, 1 s)"
[[outcome]]
id = "off"
title = "Off the ground"
when = "not on_ground and ground_speed > 60 kt"
)toml";

const Flow& flow() {
    static const Flow loaded = flowOf(kFlow);
    return loaded;
}

std::string pickOf(std::initializer_list<const char*> values) {
    return *rc::gen::elementOf(std::vector<const char*>(values));
}

std::string someChange() {
    switch (*rc::gen::inRange(0, 11)) {
    case 0:
        return "flap_lever = " + pickOf({"up", "4", "12", "22", "between"});
    case 1:
        return "gear_lever = " + pickOf({"up", "down", "between"});
    case 2:
        return "taxi_light = " + pickOf({"on", "off"});
    case 3:
        return "thrust_lever_1 = " + std::to_string(*rc::gen::inRange(0, 101)) + " %";
    case 4:
        return "tiller = " + std::to_string(*rc::gen::inRange(-70, 71)) + " deg";
    case 5:
        return "reply_button = " + pickOf({"on", "off"});
    case 6:
        return "ground_speed = " + std::to_string(*rc::gen::inRange(0, 80)) + " kt";
    case 7:
        return "turn_ahead = " + pickOf({"on", "off"});
    case 8:
        return "parking_brake = " + pickOf({"on", "off"});
    case 9:
        return "on_ground = " + pickOf({"on", "on", "on", "off"});
    default:
        return "pitch_trim = " + std::to_string(*rc::gen::inRange(-10, 11)) + " deg";
    }
}

std::string someScript() {
    std::string script;
    std::int64_t millis = 0;
    const int count = *rc::gen::inRange(5, 80);
    for (int i = 0; i < count; ++i) {
        millis += *rc::gen::inRange(1, 1500);
        std::string what = (*rc::gen::inRange(0, 8) == 0 ? "found " : "") + someChange();
        const int luck = *rc::gen::inRange(0, 60);
        if (luck == 0)
            what = pickOf({"hold a moment", "gap a lever"});
        else if (luck == 1)
            what = "jump " + pickOf({"flap", "call", "reply", "gear", "idle", "turn", "light"});
        else if (luck < 5)
            what = "resume";
        else if (luck == 5)
            what = "repeat";
        else if (luck < 9)
            what = "waive";
        else if (luck < 15)
            what += "; " + someChange();
        else if (luck < 20)
            what = "wait";
        script += std::to_string(static_cast<double>(millis) / 1000.0) + " " + what + "\n";
    }
    return script;
}

SessionSetup someSetup() {
    SessionSetup setup = onScreen();
    setup.seed = *rc::gen::arbitrary<std::uint64_t>();
    setup.isSolo = *rc::gen::inRange(0, 4) == 0;
    setup.partnerErrorRate = *rc::gen::element(0.0, 0.5);
    setup.latency = *rc::gen::inRange(0, 200) * 1ms;
    for (ControlFacts& facts : setup.controls) {
        facts.isWired = *rc::gen::inRange(0, 2) == 0;
        facts.isSimulated = !facts.isWired;
        facts.sigma = *rc::gen::element(0.0, 0.5);
    }
    return setup;
}

bool ledgerIsExact(const Score& score) {
    std::int64_t sum = score.milliPoints;
    for (const LedgerLine& line : score.ledger)
        sum += line.milliPoints;
    return !score.isScored || sum == 100'000;
}

std::vector<std::string> lines(const std::vector<Event>& events) {
    std::vector<std::string> ids;
    for (const Step& step : flow().steps)
        ids.push_back(step.id);
    std::vector<std::string> all;
    for (const Event& event : events)
        all.push_back(toJson(event, cockpit().signals, ids));
    return all;
}

} // namespace

class TestReplay : public QObject {
    Q_OBJECT

private Q_SLOTS:
    void judgedAgainGivesTheSameToTheByte();
    void neverBreaksItsOwnRules();
    void eventsHaveOneCanonicalForm();
    void eventKindsHaveTheirNames();
    void tenThousandStepsAreJudged();
    void nonsenseIsSurvived();
};

void TestReplay::judgedAgainGivesTheSameToTheByte() {
    const bool holds = holdsFor(5'000, "a recorded run judged again gives the same events", [] {
        const SessionSetup setup = someSetup();
        Bench bench(flow(), setup);
        bench.begin("ground_speed = 0 kt; on_ground = on; turn_ahead = off");
        bench.play(someScript());
        bench.until(400.0);
        const JudgedRun again = judgeAgain(cockpit(), flow(), setup, bench.samples, bench.commands, 400s);
        RC_ASSERT(again.lines == lines(bench.all));
        RC_ASSERT(again.score.milliPoints == bench.session.score().milliPoints);
    });
    QVERIFY(holds);
}

void TestReplay::neverBreaksItsOwnRules() {
    const bool holds = holdsFor(20'000, "events are in order, steps end once, the score lies between its bounds", [] {
        const SessionSetup setup = someSetup();
        Bench bench(flow(), setup);
        bench.begin("ground_speed = 0 kt; on_ground = on; turn_ahead = off");
        bench.play(someScript());
        const SessionView view = bench.session.view();
        RC_ASSERT(view.scoreFloor <= view.scoreCeiling || !bench.session.score().isScored);
        RC_ASSERT(ledgerIsExact(bench.session.score()));
        std::vector<int> ends(flow().steps.size());
        int broken = 0;
        Time last{-1};
        for (const Event& event : bench.all) {
            RC_ASSERT(event.time >= last);
            last = event.time;
            const bool isEnd = event.kind == EventKind::StepOmitted || event.kind == EventKind::StepFoundSet ||
                               event.kind == EventKind::StepTooEarly || event.kind == EventKind::StepUncertain ||
                               event.kind == EventKind::StepVoid || event.kind == EventKind::StepLeftOut;
            if (event.kind == EventKind::Jumped)
                std::fill(ends.begin(), ends.end(), 0); // what comes after it ends once more
            if (isEnd)
                ++ends[static_cast<std::size_t>(event.step)];
            broken += event.kind == EventKind::GuardBroken ? 1 : event.kind == EventKind::GuardOver ? -1 : 0;
            RC_ASSERT(broken == 0 || broken == 1);
        }
        for (const int count : ends)
            RC_ASSERT(count <= 1);
        for (const StepResult& result : bench.session.results())
            RC_ASSERT(result.suspended >= Duration{} && result.mu >= 0.0 && result.mu <= 1.0);
    });
    QVERIFY(holds);
}

void TestReplay::eventsHaveOneCanonicalForm() {
    Event event;
    event.time = 1500ms;
    event.kind = EventKind::StepDone;
    event.step = 0;
    event.signal = *cockpit().signals.find("flap_lever");
    event.value = Value::position(2);
    event.control = ControlId{3};
    event.margin = 0.25;
    event.marginSignal = *cockpit().signals.find("thrust_lever_1");
    event.by = "captain";
    event.text = std::string("a \"word\"\n\xff");
    QCOMPARE(toJson(event, cockpit().signals, {"flap"}),
             std::string("{\"time_ns\":1500000000,\"event\":\"step-done\",\"step\":\"flap\",\"signal\":\"flap_lever\","
                         "\"value\":\"12\",\"control\":3,\"margin\":0.25,\"margin_signal\":\"thrust_lever_1\","
                         "\"by\":\"captain\",\"text\":\"a \\\"word\\\"\\n\xef\xbf\xbd\"}"));
    QCOMPARE(toJson(Event{}, cockpit().signals, {}), std::string("{\"time_ns\":0,\"event\":\"run-started\"}"));
}

void TestReplay::eventKindsHaveTheirNames() {
    std::set<std::string_view> names;
    for (int kind = 0; kind <= static_cast<int>(EventKind::RunEnded); ++kind)
        names.insert(nameOf(static_cast<EventKind>(kind)));
    QCOMPARE(names.size(), std::size_t(EventKind::RunEnded) + 1);
    QVERIFY(nameOf(EventKind::StepUndone) == "step-undone");
    QVERIFY(nameOf(EventKind::Matched) == "matched");
    QVERIFY(nameOf(EventKind::RunEnded) == "run-ended");
}

void TestReplay::tenThousandStepsAreJudged() {
    std::string text;
    for (int i = 0; i < 10'000; ++i)
        text += "[[step]]\nid = \"s" + std::to_string(i) + "\"\ntitle = \"Light\"\ndone = \"" +
                std::string(i % 2 == 0 ? "taxi_light" : "not taxi_light") + "\"\n";
    const Flow big = flowOf(text);
    Bench bench(big, onScreen());
    bench.begin();
    bench.play("1 taxi_light = on\n2 taxi_light = off\n3 taxi_light = on\n4 wait");
    QCOMPARE(bench.events("run-started step-moved step-seen step-due"),
             std::string("1.3 done s0, 2.3 done s1, 3.3 done s2"));
    QVERIFY(bench.session.view().scoreFloor < 100);
}

void TestReplay::nonsenseIsSurvived() {
    Session session(cockpit(), flow(), {});
    session.waive(Time(1ms));
    session.resume(Time(2ms));
    session.hold(Time(3ms), Phrase("x"));
    session.repeat(Time(4ms));
    const Sample stranger{Time(5ms), SignalId{9999}, Value::onOff(true), Actor::Hand, Origin::Device, kNoControl};
    session.take(Time(5ms), std::span(&stranger, 1));
    session.start(Time(6ms));
    session.take(Time(7ms), std::span(&stranger, 1));
    session.start(Time(8ms));
    session.waive(Time(9ms));
    session.waive(Time(10ms));
    session.stop(Time(11ms));
    session.stop(Time(12ms));
    session.hold(Time(13ms), Phrase("x"));
    session.take(Time(14ms), std::span(&stranger, 1));
    QVERIFY(session.phase() == SessionPhase::Ended);
}

QTEST_APPLESS_MAIN(TestReplay)
#include "test_replay.moc"
