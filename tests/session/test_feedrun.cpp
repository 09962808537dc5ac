// A run whose motion comes from outside: a feed over a line in memory, on a clock that the test sets.

#include <QtTest>

#include "base/fakeclock.h"
#include "feed/fakefeed.h"
#include "procedure/library.h"
#include "session/keepingrecorder.h"
#include "session/onscreenfacts.h"
#include "session/replay.h"
#include "session/runloop.h"

using namespace flowhand;
using namespace std::chrono_literals;

namespace {

constexpr const char* kFlow = R"(
format = 1
title = "Roll"
phases = ["take_off"]
seat = "captain"
[start]
place = "line_up"
[[step]]
id = "light"
title = "Taxi light on"
when = "ground_speed > 10 kt"
done = "taxi_light"
within = "10 s"
[[step]]
id = "flap"
title = "Flap lever to 4 at speed"
when = "airspeed > 60 kt"
done = "flap_lever == 4"
within = "10 s"
[[step]]
id = "gear"
title = "Gear lever up"
after = ["light"]
done = "gear_lever == up"
needs = ["height"]
within = "10 s"
[[step]]
id = "parking"
title = "Parking brake on"
after = ["light"]
done = "parking_brake"
within = "10 s"
expires = "airspeed > 100 kt"
[[guard]]
id = "fast"
title = "Too fast"
never = "airspeed > 90 kt"
)";

/// A run by a feed of JSON lines. Each call leaves the feed's thread idle, so nothing depends on how fast it is.
struct Fed {
    Fed(const Aircraft& of, const Flow& flown, const std::vector<std::string>& choices = {}, bool hasPractice = false)
        : aircraft(of), flow(flown) {
        feed = std::make_unique<Feed>(line.transport(), FeedFormat::JsonLines, "The line",
                                      FeedSignals{&aircraft.signals, aircraft.controls.size()}, RunClock{clock, Time{}},
                                      [] {});
        RunParts parts;
        parts.aircraft = &aircraft;
        parts.flow = &flow;
        parts.feed = feed.get();
        parts.sources = *MotionSources::choose(aircraft, true, choices);
        parts.recorder = &memory;
        setup.controls = onScreenFacts(aircraft);
        parts.header.setup = setup;
        if (hasPractice)
            parts.practice.emplace(*PracticeAircraft::create(aircraft, flow.startPlace));
        loop.emplace(std::move(parts));
    }

    /// Time goes on by a tenth of a second at a turn; with `words` the sender says them at every turn.
    void goOn(Duration duration, const std::string& words = {}) {
        for (const Time end = clock.now() + duration; clock.now() < end;) {
            clock.set(clock.now() + 100ms);
            if (words.empty())
                line.pass();
            else
                line.send(words);
            loop->advance(clock.now());
        }
    }
    /// All that the flow needs, at this speed.
    static std::string moving(int knots) {
        const std::string speed = std::to_string(knots) + " kt";
        return R"({"airspeed": ")" + speed + R"(", "ground_speed": ")" + speed + R"(", "height": "0 ft"})";
    }
    void hand(const char* control, const char* value) {
        const SignalId id = *aircraft.signals.find(control);
        loop->moveOnScreen(id, *parseValue(aircraft.signals[id], value));
    }
    bool start() {
        loop->command(CommandKind::Start);
        goOn(3s, moving(0));
        return loop->phase() == SessionPhase::Running;
    }
    StepState state(std::size_t step) const { return loop->snapshot().session.steps[step].state; }
    Value now(const char* signal) const { return loop->snapshot().values[indexOf(*aircraft.signals.find(signal))]; }
    bool isTold(const std::string& words) const {
        for (const Phrase& notice : loop->notices())
            if (notice.english().find(words) != std::string::npos)
                return true;
        return false;
    }
    bool isJudgedAlike() {
        if (loop->phase() != SessionPhase::Ended) {
            loop->command(CommandKind::Stop);
            goOn(1s);
        }
        const JudgedRun again = judgeAgain(aircraft, flow, setup, memory.allSamples, memory.commands, memory.end);
        return again.events == memory.allEvents && !again.events.empty();
    }

    const Aircraft& aircraft;
    const Flow& flow;
    FakeClock clock;
    FakeLine line;
    KeepingRecorder memory;
    SessionSetup setup;
    std::unique_ptr<Feed> feed;
    std::optional<RunLoop> loop;
};

} // namespace

class TestFeedRun : public QObject {
    Q_OBJECT

private Q_SLOTS:
    void initTestCase() {
        Problems problems;
        m_folder = loadAircraftFolder(PROCEDURES "/twin_jet", problems);
        QVERIFY(!problems.hasErrors());
        m_flow = parseFlow(kFlow, "roll.toml", aircraft(), problems);
        QVERIFY2(m_flow, problems.hasErrors() ? describe(problems.firstError()).c_str() : "");
    }

    void theStartWaitsForTheFeed() {
        Fed run(aircraft(), *m_flow);
        run.loop->command(CommandKind::Start);
        run.goOn(5s);
        QCOMPARE(run.loop->phase(), SessionPhase::SetUp);
        QVERIFY(run.isTold("begins as soon as The line is heard"));
        run.goOn(3s, Fed::moving(0));
        QCOMPARE(run.loop->phase(), SessionPhase::Running);
        QVERIFY(run.isTold("The line is heard"));
    }

    void aFlowIsFlownByAFeed() {
        Fed run(aircraft(), *m_flow);
        QVERIFY(run.start());
        QCOMPARE(run.state(0), StepState::Waiting);
        run.goOn(1s, Fed::moving(20));
        QCOMPARE(run.state(0), StepState::Due);
        run.hand("taxi_light", "on");
        run.goOn(2s, Fed::moving(70));
        QCOMPARE(run.state(0), StepState::Done);
        QCOMPARE(run.state(1), StepState::Due);
        const Sample& sample =
            *std::find_if(run.memory.allSamples.begin(), run.memory.allSamples.end(), [&](auto& each) {
                return each.signal == *aircraft().signals.find("airspeed") && each.value.number() == 70.0;
            });
        QCOMPARE(sample.origin, Origin::Feed);
        QCOMPARE(sample.actor, Actor::Machine);
        QVERIFY(run.isJudgedAlike());
    }

    void silenceHoldsTheRunAndWordsLetItGoOn() {
        Fed run(aircraft(), *m_flow);
        QVERIFY(run.start());
        run.goOn(1s, Fed::moving(20));
        run.goOn(4s);
        QCOMPARE(run.loop->phase(), SessionPhase::Held);
        QVERIFY(run.isTold("The line has fallen silent"));
        QVERIFY(run.loop->snapshot().session.holdReason.english().find("The line is silent") != std::string::npos);
        QVERIFY(!run.now("ground_speed").isKnown()); // nobody knows how fast it is now
        QVERIFY(!run.loop->snapshot().feedStatus.isHeard);
        run.goOn(3s, Fed::moving(25));
        QCOMPARE(run.loop->phase(), SessionPhase::Running);
        QCOMPARE(run.now("ground_speed").number(), 25.0);
        QCOMPARE(run.state(0), StepState::Due);
        QVERIFY(run.isTold("The line speaks again"));
        QVERIFY(run.isJudgedAlike());
    }

    void aPilotMayGoOnWithoutIt() {
        Fed run(aircraft(), *m_flow);
        QVERIFY(run.start());
        run.goOn(4s);
        QCOMPARE(run.loop->phase(), SessionPhase::Held);
        run.loop->command(CommandKind::Resume);
        run.goOn(1s);
        QCOMPARE(run.loop->phase(), SessionPhase::Running);
        run.loop->command(CommandKind::Stop);
        run.goOn(1s);
        // What it needed was lost: nobody can say that it was forgotten.
        QCOMPARE(run.state(0), StepState::LeftOut);
        QCOMPARE(run.state(3), StepState::Omitted); // needs nothing that was lost
        QVERIFY(run.isJudgedAlike());
    }

    void withoutAirspeedItSaysWhatCannotBeJudged() {
        Fed run(aircraft(), *m_flow);
        const std::string words = R"({"ground_speed": "20 kt"})";
        run.goOn(3s, words);
        QVERIFY(run.isTold("Nothing tells: Airspeed, Height."));
        QVERIFY(
            run.isTold("2 of 4 steps cannot be judged without that and are left out: Flap lever to 4 at speed; Gear "
                       "lever up."));
        QVERIFY(run.isTold("Not watched without that: Too fast."));
        run.loop->command(CommandKind::Start); // all of it was said before the start
        run.goOn(1s, words);
        QCOMPARE(run.state(1), StepState::LeftOut);
        QCOMPARE(run.state(2), StepState::LeftOut);
        run.hand("taxi_light", "on");
        run.goOn(2s, words);
        QCOMPARE(run.state(0), StepState::Done);
        QCOMPARE(run.state(3), StepState::Due);
        run.hand("parking_brake", "on");
        run.goOn(2s, words);
        QCOMPARE(run.loop->phase(), SessionPhase::Ended); // nothing is waited for in vain
        const Score score = run.loop->snapshot().score;
        QCOMPARE(score.weight, 2); // the two that could be seen
        const auto isUnwatched = [](const Event& event) {
            return event.kind == EventKind::GuardLeftOut;
        };
        QCOMPARE(std::count_if(run.memory.allEvents.begin(), run.memory.allEvents.end(), isUnwatched), 1);
        QVERIFY(run.isJudgedAlike());
    }

    // A limit that nothing tells does not hold a step open for good.
    void aLimitThatNobodySeesGivesWayToTime() {
        Fed run(aircraft(), *m_flow);
        const std::string words = R"({"ground_speed": "20 kt"})";
        run.loop->command(CommandKind::Start);
        run.goOn(3s, words);
        run.hand("taxi_light", "on");
        run.goOn(80s, words); // three times its 'late', 2.5 times 10 s
        QCOMPARE(run.state(3), StepState::Omitted);
        QCOMPARE(run.loop->phase(), SessionPhase::Ended);
    }

    void eachSignalHasItsSource() {
        Fed run(aircraft(), *m_flow, {"airspeed=none", "height=practice"}, true);
        run.loop->command(CommandKind::Start);
        run.goOn(3s, Fed::moving(30));
        QCOMPARE(run.loop->phase(), SessionPhase::Running);
        QVERIFY(!run.now("airspeed").isKnown());
        QCOMPARE(run.now("ground_speed").number(), 30.0);
        QVERIFY(run.now("height").isKnown());
        QVERIFY(run.now("engine_power_1").isKnown()); // the practice aircraft's, until the feed says it
        QVERIFY(!run.now("pitch").isKnown());         // the practice aircraft stands elsewhere
        run.goOn(200ms, R"({"engine_power_1": "55 %", "ground_speed": "30 kt"})");
        QCOMPARE(run.now("engine_power_1").number(), 55.0);
        run.goOn(1s, R"({"engine_power_1": "55 %", "ground_speed": "30 kt"})");
        QCOMPARE(run.now("engine_power_1").number(), 55.0);
        QVERIFY(run.isJudgedAlike());
    }

    void wrongSourcesAreRefused_data() {
        QTest::addColumn<bool>("hasFeed");
        QTest::addColumn<QString>("choice");
        QTest::addColumn<QString>("code");
        QTest::newRow("no such signal") << true << "airspead=feed"
                                        << "unknown-signal";
        QTest::newRow("a control") << true << "flap_lever=feed"
                                   << "unknown-signal";
        QTest::newRow("no such source") << true << "airspeed=simulator"
                                        << "bad-source";
        QTest::newRow("no sign") << true << "airspeed"
                                 << "bad-source";
        QTest::newRow("no feed") << false << "airspeed=feed"
                                 << "bad-source";
    }
    void wrongSourcesAreRefused() {
        QFETCH(bool, hasFeed);
        QFETCH(QString, choice);
        QFETCH(QString, code);
        const Result<MotionSources> sources = MotionSources::choose(aircraft(), hasFeed, {choice.toStdString()});
        QVERIFY(!sources);
        QCOMPARE(QString::fromStdString(sources.error().code), code);
    }

    // Whatever else comes by the same way: nothing but a counter changes.
    void junkChangesNothingButACounter_data() {
        QTest::addColumn<QByteArray>("datagram");
        QTest::newRow("junk") << QByteArray("\x00\xFF\x7F{{{", 6);
        QTest::newRow("oversized") << QByteArray(60000, 'x');
        QTest::newRow("a control") << QByteArray(R"({"flap_lever": "up"})");
        QTest::newRow("nonsense") << QByteArray(R"({"airspeed": "1e400 kt", "height": "-900000 ft"})");
        QTest::newRow("an old clock") << QByteArray(R"({"time": -5, "airspeed": "400 kt"})");
    }
    void junkChangesNothingButACounter() {
        QFETCH(QByteArray, datagram);
        const auto fly = [&](bool isFlooded) {
            Fed run(aircraft(), *m_flow);
            (void)run.start();
            run.goOn(100ms, R"({"time": 100, "ground_speed": "20 kt"})");
            for (int i = 0; i < (isFlooded ? 300 : 0); ++i)
                run.line.send(datagram.toStdString());
            run.goOn(1s, Fed::moving(20));
            run.hand("taxi_light", "on");
            run.goOn(2s, Fed::moving(20));
            const FeedTally tally = run.feed->status().tally;
            const std::uint64_t counted =
                tally.malformed + tally.oversized + tally.unknownNames + tally.refused + tally.backwards;
            return std::tuple(run.memory.allSamples, run.memory.allEvents, counted);
        };
        const auto [quietSamples, quietEvents, quietCount] = fly(false);
        const auto [floodedSamples, floodedEvents, floodedCount] = fly(true);
        QVERIFY(quietSamples == floodedSamples);
        QVERIFY(quietEvents == floodedEvents);
        QCOMPARE(quietCount, std::uint64_t(0));
        QVERIFY(floodedCount >= 300);
    }

private:
    const Aircraft& aircraft() const { return *m_folder->aircraft; }

    std::optional<AircraftFolder> m_folder;
    std::optional<Flow> m_flow;
};

QTEST_APPLESS_MAIN(TestFeedRun)
#include "test_feedrun.moc"
