// What the window says aloud and when, with a voice that writes down; and the real voice where nothing can be heard.

#include <algorithm>
#include <cmath>

#include <QSignalSpy>
#include <QtTest>

#include "fakevoice.h"
#include "presenter/benchvoice.h"
#include "presenter/language.h"
#include "stubcockpit.h"
#include "stubrun.h"
#include "voice/spokenvoice.h"

using namespace flowhand;
using namespace std::chrono_literals;

namespace {

QString tone(Earcon earcon) {
    return QStringLiteral("play %1").arg(static_cast<int>(earcon));
}

/// A flow under way on the stub cockpit.
struct Flight : test::Stage {
    Flight() : test::Stage("due-gate") { heard().take(); }

    [[nodiscard]] SessionView& session() { return maker().snapshot.session; }
    void begin(const char* words, const char* by = "first_officer") {
        session().saying = words;
        session().sayingBy = by;
        ++session().wordsBegun;
    }
    /// What is heard of the snapshot as it is now.
    QStringList refresh() {
        fly().refresh();
        return heard().take();
    }
};

BenchTaskView walkOf(std::size_t stage, const char* ask, std::size_t good) {
    BenchTaskView task;
    task.task = BenchTask::Walk;
    task.signal = SignalId(static_cast<std::uint32_t>(stage));
    task.ask = std::string(ask);
    task.stage = stage;
    task.stageCount = 3;
    task.goodCount = good;
    return task;
}

} // namespace

class TestVoice : public QObject {
    Q_OBJECT

private Q_SLOTS:
    void wordsAreSaidOnce();
    void newWordsCutOffThoseBefore();
    void wordsThatAreOverAreLeftOut();
    void aHoldCutsOffAndSpeaksAgain();
    void nothingIsSaidAfterStop();
    void leavingIsSilent();
    void anotherRunSpeaksFromTheStart();
    void stepsHaveTones_data();
    void stepsHaveTones();
    void aGuardGoesFirst();
    void partnersStepsHaveNoTone();
    void benchAsksAtOnce();
    void benchSpeaksTheWindowsLanguage();
    void benchRemindsWhoRests();
    void benchTellsEnds();
    void benchFallsSilent();
    void offHoldsNoVoice();
    void soundIsKept();
    void unheardIsToldOnce();
    void tonesAreClean_data();
    void tonesAreClean();
    void goesOnWithoutASoundServer();
};

void TestVoice::wordsAreSaidOnce() {
    Flight flight;
    QCOMPARE(flight.refresh(), QStringList());
    flight.begin("Eighty.");
    QCOMPARE(flight.refresh(), QStringList{"say first_officer: Eighty."});
    QCOMPARE(flight.refresh(), QStringList());
    flight.session().saying.clear();
    QCOMPARE(flight.refresh(), QStringList());
    flight.begin("Eighty."); // repeated: begun anew
    QCOMPARE(flight.refresh(), QStringList{"say first_officer: Eighty."});
}

void TestVoice::newWordsCutOffThoseBefore() {
    Flight flight;
    flight.begin("Taxi to the holding point.", "ground");
    flight.refresh();
    flight.begin("Thirty.", "cockpit");
    // say() itself cuts off; nothing waits its turn.
    QCOMPARE(flight.refresh(), QStringList{"say cockpit: Thirty."});
}

void TestVoice::wordsThatAreOverAreLeftOut() {
    Flight flight;
    flight.begin("Rotate.");
    flight.session().saying.clear();
    QCOMPARE(flight.refresh(), QStringList());
}

void TestVoice::aHoldCutsOffAndSpeaksAgain() {
    Flight flight;
    flight.begin("Positive climb.");
    flight.refresh();
    flight.session().phase = SessionPhase::Held; // the words stay those that were broken off
    QCOMPARE(flight.refresh(), QStringList{"hush"});
    QCOMPARE(flight.refresh(), QStringList());
    flight.session().phase = SessionPhase::SetUp;
    QCOMPARE(flight.refresh(), QStringList());
    flight.session().phase = SessionPhase::Running;
    ++flight.session().wordsBegun;
    QCOMPARE(flight.refresh(), QStringList{"say first_officer: Positive climb."});
}

void TestVoice::nothingIsSaidAfterStop() {
    Flight flight;
    flight.begin("Eighty.");
    flight.refresh();
    flight.fly().stop();
    QCOMPARE(flight.heard().take(), QStringList{"hush"});
    flight.begin("V one.");
    QCOMPARE(flight.refresh(), QStringList());
    flight.session().phase = SessionPhase::Ended;
    for (StepView& step : flight.session().steps)
        step.state = StepState::Omitted;
    QCOMPARE(flight.refresh(), QStringList());
}

void TestVoice::leavingIsSilent() {
    Flight flight;
    flight.begin("Eighty.");
    flight.refresh();
    flight.fly().leave();
    QCOMPARE(flight.heard().take(), QStringList{"hush"});
    flight.fly().leave();
    QCOMPARE(flight.heard().take(), QStringList());
}

void TestVoice::anotherRunSpeaksFromTheStart() {
    Flight flight;
    flight.begin("Eighty.");
    flight.refresh();
    flight.fly().again(); // the stub shows the same snapshot: words number 1 of another run
    QCOMPARE(flight.heard().take(), (QStringList{"hush", "say first_officer: Eighty."}));
}

void TestVoice::stepsHaveTones_data() {
    QTest::addColumn<int>("state");
    QTest::addColumn<bool>("late");
    QTest::addColumn<bool>("outOfOrder");
    QTest::addColumn<QString>("heard");
    const auto add = [](const char* name, StepState state, bool late, bool order, const QString& heard) {
        QTest::newRow(name) << static_cast<int>(state) << late << order << heard;
    };
    add("done", StepState::Done, false, false, tone(Earcon::Done));
    add("late", StepState::Done, true, false, tone(Earcon::Late));
    add("out of order", StepState::Done, false, true, tone(Earcon::Wrong));
    add("omitted", StepState::Omitted, false, false, tone(Earcon::Wrong));
    add("too early", StepState::TooEarly, false, false, tone(Earcon::Wrong));
    add("uncertain", StepState::Uncertain, false, false, tone(Earcon::Unsure));
    add("found set", StepState::FoundSet, false, false, {});
    add("left out", StepState::LeftOut, false, false, {});
    add("seen", StepState::Seen, false, false, {});
}

void TestVoice::stepsHaveTones() {
    QFETCH(int, state);
    QFETCH(bool, late);
    QFETCH(bool, outOfOrder);
    QFETCH(QString, heard);
    Flight flight;
    StepView& step = flight.session().steps[1];
    step.state = static_cast<StepState>(state);
    step.isLate = late;
    step.isOutOfOrder = outOfOrder;
    QCOMPARE(flight.refresh(), heard.isEmpty() ? QStringList() : QStringList{heard});
    QCOMPARE(flight.refresh(), QStringList());
}

void TestVoice::aGuardGoesFirst() {
    Flight flight;
    flight.session().steps[1].state = StepState::Omitted;
    flight.session().openGuards = flight.session().brokenGuards = {0};
    QCOMPARE(flight.refresh(), QStringList{tone(Earcon::Guard)});
    QCOMPARE(flight.refresh(), QStringList());
}

void TestVoice::partnersStepsHaveNoTone() {
    Flight flight;
    flight.session().steps[7].state = StepState::Done; // the gear, which the partner moves
    QCOMPARE(flight.refresh(), QStringList());
}

void TestVoice::benchAsksAtOnce() {
    test::Stage stage("choosing");
    BenchVoice voice(stage.sound());
    voice.show(walkOf(0, "Flap lever: still to be seen: up, 4.", 0), 10s);
    QCOMPARE(stage.heard().take(), QStringList{"say cockpit: Flap lever: still to be seen: up, 4."});
    voice.show(walkOf(0, "Flap lever: still to be seen: up, 4.", 0), 20s);
    QCOMPARE(stage.heard().take(), QStringList());
    voice.show(walkOf(1, "Tiller: still to be seen: its low end.", 1), 21s);
    QCOMPARE(stage.heard().take(),
             (QStringList{tone(Earcon::Done), "say cockpit: Tiller: still to be seen: its low end."}));
}

void TestVoice::benchSpeaksTheWindowsLanguage() {
    test::Stage stage("choosing");
    stage.settings().setLanguage("de");
    const Language language(stage.settings());
    BenchVoice voice(stage.sound());
    BenchTaskView task = walkOf(0, "", 0);
    task.ask = phrase("Let go.");
    voice.show(task, 10s);
    QCOMPARE(stage.heard().take(), QStringList{"say cockpit in de: Loslassen."});
}

void TestVoice::benchRemindsWhoRests() {
    test::Stage stage("choosing");
    BenchVoice voice(stage.sound());
    voice.show(walkOf(0, "open: up, 4, 12", 0), 10s);
    stage.heard().take();
    voice.show(walkOf(0, "open: 4, 12", 0), 11s); // on its way
    voice.show(walkOf(0, "open: 12", 0), 12s);
    voice.show(walkOf(0, "open: 12", 0), 15900ms);
    QCOMPARE(stage.heard().take(), QStringList());
    voice.show(walkOf(0, "open: 12", 0), 16s);
    QCOMPARE(stage.heard().take(), QStringList{"say cockpit: open: 12"});
    voice.show(walkOf(0, "open: 12", 0), 30s);
    QCOMPARE(stage.heard().take(), QStringList());
}

void TestVoice::benchTellsEnds() {
    test::Stage stage("choosing");
    BenchVoice voice(stage.sound());
    voice.show(walkOf(0, "a", 0), 1s);
    voice.show(walkOf(1, "b", 0), 2s); // left out
    QCOMPARE(stage.heard().take(), (QStringList{"say cockpit: a", tone(Earcon::Wrong), "say cockpit: b"}));
    BenchTaskView over = walkOf(1, "", 1);
    over.isOver = true;
    over.outcome = {std::string("1 of 2 controls were confirmed."), std::string("a, not seen: all.")};
    voice.show(over, 3s);
    QCOMPARE(stage.heard().take(), (QStringList{tone(Earcon::Done), "say cockpit: 1 of 2 controls were confirmed."}));
    voice.show(over, 60s);
    QCOMPARE(stage.heard().take(), QStringList());
    voice.show(walkOf(0, "a", 0), 61s); // walked again
    QCOMPARE(stage.heard().take(), QStringList{"say cockpit: a"});
}

void TestVoice::benchFallsSilent() {
    test::Stage stage("bench-walking");
    stage.bench().enter();
    QCOMPARE(stage.heard().take().size(), 1);
    stage.benchMaker().snapshot.task = {};
    stage.bench().refresh();
    QCOMPARE(stage.heard().take(), QStringList{"hush"});
    stage.bench().leave();
    QVERIFY(!stage.heard().take().join(' ').contains("say"));
}

void TestVoice::offHoldsNoVoice() {
    const QTemporaryDir folder;
    Settings settings(folder.filePath("settings.toml"));
    const auto heard = std::make_shared<test::Heard>();
    Sound sound(settings, [heard] {
        return std::make_unique<test::FakeVoice>(heard);
    });
    sound.voice().say("not yet", "cockpit");
    QCOMPARE(heard->voices, 0);
    sound.start();
    sound.start();
    QCOMPARE(heard->voices, 1);
    QCOMPARE(heard->volume, 1.0);
    QCOMPARE(sound.words(), QString("Sound: on"));
    sound.change();
    QCOMPARE(heard->voices, 1);
    QVERIFY(heard->volume > 0.0 && heard->volume < 0.5);
    QCOMPARE(sound.words(), QString("Sound: quiet"));
    sound.change();
    QCOMPARE(sound.words(), QString("Sound: off"));
    sound.voice().say("off", "cockpit");
    QCOMPARE(heard->log, QStringList());
    sound.change();
    QCOMPARE(heard->voices, 2);
    sound.voice().say("on", "cockpit");
    QCOMPARE(heard->log, QStringList{"say cockpit: on"});
}

void TestVoice::soundIsKept() {
    const QTemporaryDir folder;
    const auto heard = std::make_shared<test::Heard>();
    const auto make = [heard] {
        return std::make_unique<test::FakeVoice>(heard);
    };
    {
        Settings settings(folder.filePath("settings.toml"));
        Sound sound(settings, make);
        sound.change();
        sound.change();
    }
    Settings settings(folder.filePath("settings.toml"));
    Sound sound(settings, make);
    sound.start();
    QCOMPARE(sound.words(), QString("Sound: off"));
    QCOMPARE(heard->voices, 0);
}

void TestVoice::unheardIsToldOnce() {
    test::Stage stage("choosing");
    const QSignalSpy notices(&stage.sound(), &Sound::noticeChanged);
    Q_EMIT stage.sound().voice().unheard("no server");
    QCOMPARE(stage.sound().notice(), QString("no server"));
    stage.sound().dismissNotice();
    QCOMPARE(stage.sound().notice(), QString());
    QCOMPARE(notices.count(), 2);
    Q_EMIT stage.sound().voice().unheard("no server");
    stage.sound().change();
    stage.sound().change(); // off: there is nothing to be told any more
    QCOMPARE(stage.sound().notice(), QString());
}

void TestVoice::tonesAreClean_data() {
    QTest::addColumn<int>("earcon");
    QTest::addColumn<int>("rate");
    for (int earcon = 0; earcon < kEarconCount; ++earcon)
        for (const int rate : {22050, 48000})
            QTest::addRow("%d at %d Hz", earcon, rate) << earcon << rate;
}

void TestVoice::tonesAreClean() {
    QFETCH(int, earcon);
    QFETCH(int, rate);
    const std::vector<float> samples = earconSamples(static_cast<Earcon>(earcon), rate);
    QVERIFY(samples.size() > static_cast<std::size_t>(rate) / 10);
    QVERIFY(samples.size() < static_cast<std::size_t>(rate) / 2);
    QVERIFY(std::fabs(samples.front()) < 1e-6F);
    QVERIFY(std::fabs(samples.back()) < 0.01F);
    float peak = 0.0F;
    double energy = 0.0;
    double sum = 0.0;
    for (const float sample : samples) {
        peak = std::max(peak, std::fabs(sample));
        energy += double(sample) * sample;
        sum += sample;
    }
    QVERIFY(peak > 0.1F && peak < 0.6F);
    QVERIFY(std::sqrt(energy / double(samples.size())) > 0.02);
    QVERIFY(std::fabs(sum / double(samples.size())) < 0.01); // nothing that pushes a loudspeaker to one side
    for (int other = 0; other < earcon; ++other)
        QVERIFY(earconSamples(static_cast<Earcon>(other), rate) != samples);
}

void TestVoice::goesOnWithoutASoundServer() {
    qputenv("PULSE_SERVER", "unix:/nonexistent/pulse");
    SpokenVoice voice;
    const QSignalSpy unheard(&voice, &Voice::unheard);
    voice.setVolume(0.5);
    voice.say("Eighty.", "first_officer");
    voice.play(Earcon::Done);
    QTRY_COMPARE_WITH_TIMEOUT(unheard.count(), 1, 60'000);
    voice.say("V one.", "first_officer");
    voice.play(Earcon::Wrong);
    voice.hush();
    QTest::qWait(0);
    QCOMPARE(unheard.count(), 1);
    QVERIFY(!unheard.first().first().toString().isEmpty());
}

QTEST_MAIN(TestVoice)
#include "test_voice.moc"
