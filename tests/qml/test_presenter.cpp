#include <filesystem>
#include <fstream>

#include <QSignalSpy>
#include <QTemporaryDir>
#include <QtTest>

#include "liveruns.h"
#include "presenter/benchrows.h"
#include "presenter/flightlist.h"
#include "presenter/ribbon.h"
#include "presenter/stepfacts.h"
#include "presenter/verdict.h"
#include "stubcockpit.h"
#include "stubrun.h"
#include "voice/silentvoice.h"

using namespace flowhand;

namespace {

/// Hands on the stub cockpit, and what they moved.
struct HandsFixture {
    HandsFixture() {
        controls.setAircraft(folder.aircraft.get());
        controls.setValues(test::stubValues(*folder.aircraft, 0));
    }

    [[nodiscard]] ControlState& control(const char* name) const {
        return *controls.find(*folder.aircraft->signals.find(name));
    }
    [[nodiscard]] double last(const char* name) const {
        double value = -999;
        for (const auto& [signal, moved] : moves)
            if (signal == *folder.aircraft->signals.find(name))
                value = moved.number();
        return value;
    }

    AircraftFolder folder = test::stubFolder();
    ControlModel controls;
    std::vector<std::pair<SignalId, Value>> moves;
    ScreenHands hands{controls, [this](SignalId signal, Value value) {
                          moves.emplace_back(signal, value);
                      }};
};

std::vector<NoticeRow> rowsOf(std::initializer_list<int> ids) {
    std::vector<NoticeRow> rows;
    for (int id : ids)
        rows.push_back({id, QString::number(id)});
    return rows;
}

} // namespace

class TestPresenter : public QObject {
    Q_OBJECT

private Q_SLOTS:
    void rowsChangeOnlyWhereTheyDiffer();
    void verdictHasWordAndSymbol_data();
    void verdictHasWordAndSymbol();
    void targetsOfAStep_data();
    void targetsOfAStep();
    void onlyTheFlowsControlsAreShown();
    void pointsAreShort_data();
    void pointsAreShort();
    void ledgerIsWorstFirst();
    void keysPushAndLetGo();
    void springsGoBack();
    void pairsMoveTogether();
    void discreteControlsStep();
    void unknownControlStartsAtRest();
    void demonstrationLetsNobodyInterfere();
    void everyKeyIsUsedOnce();
    void putsAllOnScreenControls();
    void hardwareStartsAtOnce();
    void aFeedIsChosenForTheRuns();
    void aFeedIsTried();
    void aFlightGoesOnWithAnotherFlow();
    void aStoredFlightGoesOn();
    void aScenarioIsChosen();
    void aScenarioIsBriefedWithoutGivingItAway();
    void surprisesAreDrawnAnew();
    void aFlightBeginsWhereThePilotPicks();
    void aFeedSaysWhereItBegins();
    void aRunJumpsWhereThePilotPicks();
    void wheelsLeaveTheirTrail();
    void theGroundIsShownWhereItMatters_data();
    void theGroundIsShownWhereItMatters();
    void theDebriefNamesWhatHappened();
    void noticesGiveTheirRoomBack();
    void ribbonRisesWhereTheAircraftFlies();
    void benchAdvisesWhatIsNext_data();
    void benchAdvisesWhatIsNext();
    void benchTellsWhatTheRigConfirms();
    void benchSaysWhyItCannotOpen();
    void benchSaysWhereItWrote();
    void benchOffersWaysOfWiring_data();
    void benchOffersWaysOfWiring();
    void benchPlotsGatesOnTheTravel();
    void benchShowsChecksAndSharing();
    void shippedFlowsStart_data();
    void shippedFlowsStart();
};

void TestPresenter::rowsChangeOnlyWhereTheyDiffer() {
    RowModel model(NoticeRow::staticMetaObject, nullptr);
    model.setRows(rowsOf({1, 2, 3}));
    const QSignalSpy inserted(&model, &QAbstractItemModel::rowsInserted);
    const QSignalSpy removed(&model, &QAbstractItemModel::rowsRemoved);
    const QSignalSpy changed(&model, &QAbstractItemModel::dataChanged);
    model.setRows(rowsOf({0, 1, 2, 3}));
    QCOMPARE(inserted.count(), 1);
    QCOMPARE(inserted.last().at(1).toInt(), 0);
    model.setRows(rowsOf({0, 1, 3}));
    QCOMPARE(removed.count(), 1);
    QCOMPARE(removed.last().at(1).toInt(), 2);
    QCOMPARE(changed.count(), 0);
    std::vector<NoticeRow> rows = rowsOf({0, 1, 3});
    rows[1].words = "other";
    model.setRows(rows);
    QCOMPARE(changed.count(), 1);
    QCOMPARE(model.data(model.index(1), model.roleNames().key("words")).toString(), QString("other"));
}

void TestPresenter::verdictHasWordAndSymbol_data() {
    QTest::addColumn<int>("state");
    QTest::addColumn<bool>("late");
    QTest::addColumn<bool>("outOfOrder");
    QTest::addColumn<int>("kind");
    QTest::addColumn<QString>("word");
    const auto add = [](const char* name, StepState state, bool late, bool order, Verdict::Kind kind,
                        const char* word) {
        QTest::newRow(name) << static_cast<int>(state) << late << order << static_cast<int>(kind) << QString(word);
    };
    add("done", StepState::Done, false, false, Verdict::Done, "done");
    add("late", StepState::Done, true, false, Verdict::Late, "late");
    add("out of order", StepState::Done, true, true, Verdict::OutOfOrder, "out of order");
    add("omitted", StepState::Omitted, false, false, Verdict::Wrong, "not done");
    add("found set", StepState::FoundSet, false, false, Verdict::Info, "already set");
    add("too early", StepState::TooEarly, false, false, Verdict::OutOfOrder, "too early");
    add("uncertain", StepState::Uncertain, false, false, Verdict::Unsure, "not certain");
    add("void", StepState::Void, false, false, Verdict::LeftOut, "no longer needed");
    add("left out", StepState::LeftOut, false, false, Verdict::LeftOut, "left out");
}

void TestPresenter::verdictHasWordAndSymbol() {
    QFETCH(int, state);
    QFETCH(bool, late);
    QFETCH(bool, outOfOrder);
    QFETCH(int, kind);
    QFETCH(QString, word);
    StepView view;
    view.state = static_cast<StepState>(state);
    view.isLate = late;
    view.isOutOfOrder = outOfOrder;
    QCOMPARE(static_cast<int>(verdictOf(view)), kind);
    QCOMPARE(verdictWord(view), word);
    QVERIFY(isClosed(view.state));
}

void TestPresenter::targetsOfAStep_data() {
    QTest::addColumn<int>("step");
    QTest::addColumn<QString>("wanted");
    QTest::newRow("switch") << 0 << "on";
    QTest::newRow("gate") << 1 << "12";
    QTest::newRow("lever") << 2 << "88 % or more";
    QTest::newRow("button") << 3 << "on";
    QTest::newRow("selector") << 4 << "medium";
    QTest::newRow("wheel") << 5 << QString(QChar(0x2212)) + "5 to 5°";
    QTest::newRow("pedals") << 6 << "90 % or more";
}

void TestPresenter::onlyTheFlowsControlsAreShown() {
    const AircraftFolder folder = test::stubFolder();
    ControlModel controls;
    controls.setAircraft(folder.aircraft.get());
    const int all = controls.count();
    QCOMPARE(all, static_cast<int>(folder.aircraft->controls.size()));
    Problems problems;
    const std::optional<Flow> lights =
        parseFlow("format = 1\ntitle = \"Lights\"\nphases = [\"taxi_out\"]\nseat = \"captain\"\n"
                  "[start]\nplace = \"stand\"\n[start.controls]\ntaxi_light = \"off\"\n"
                  "[[step]]\nid = \"light\"\ntitle = \"Taxi light on\"\ndone = \"taxi_light\"\n"
                  "[[guard]]\nid = \"brake\"\ntitle = \"Brake off\"\nnever = \"not parking_brake\"\n",
                  "lights.toml", *folder.aircraft, problems);
    QVERIFY(lights);
    controls.setAircraft(folder.aircraft.get(), &*lights);
    QStringList shown;
    for (const ControlState* control : controls.shown())
        shown << QString::fromStdString(control->signal().name);
    shown.sort();
    QCOMPARE(shown, (QStringList{"parking_brake", "taxi_light"}));
    QCOMPARE(controls.rowCount(), 2);
    QVERIFY(controls.find(*folder.aircraft->signals.find("flap_lever")) != nullptr); // a target may still be drawn
}

void TestPresenter::targetsOfAStep() {
    QFETCH(int, step);
    QFETCH(QString, wanted);
    const AircraftFolder folder = test::stubFolder();
    ControlModel controls;
    controls.setAircraft(folder.aircraft.get());
    RunSnapshot snapshot;
    snapshot.values = test::stubValues(*folder.aircraft, 0);
    const auto& steps = folder.flows.front().steps;
    const std::vector<TargetRow> rows = targetRows(steps[static_cast<std::size_t>(step)], snapshot, controls);
    QVERIFY(!rows.empty());
    QVERIFY(rows.front().wanted);
    QCOMPARE(rows.front().wantedText, wanted);
}

void TestPresenter::pointsAreShort_data() {
    QTest::addColumn<qlonglong>("milliPoints");
    QTest::addColumn<QString>("text");
    QTest::newRow("whole") << 100'000LL << "100";
    QTest::newRow("half") << 95'500LL << "95.5";
    QTest::newRow("thirds") << 66'667LL << "66.7";
    QTest::newRow("nothing") << 0LL << "0";
}

void TestPresenter::pointsAreShort() {
    QFETCH(qlonglong, milliPoints);
    QFETCH(QString, text);
    QCOMPARE(shownPoints(milliPoints), text);
}

void TestPresenter::ledgerIsWorstFirst() {
    Score score;
    score.ledger = {{1'000, 0, -1, LossKind::Late, std::string("a")},
                    {20'000, 1, -1, LossKind::NotDone, std::string("b")},
                    {-500, -1, -1, LossKind::Floor, std::string("c")}};
    const std::vector<LedgerRow> rows = ledgerRows(score);
    QCOMPARE(rows.size(), std::size_t(3));
    QCOMPARE(rows[0].sentence, QString("b"));
    QCOMPARE(rows[0].points, QString(QChar(0x2212)) + "20");
    QCOMPARE(rows[1].verdict, static_cast<int>(Verdict::Late));
    QCOMPARE(rows[2].points, QString("+0.5"));
}

void TestPresenter::keysPushAndLetGo() {
    HandsFixture fixture;
    QVERIFY(fixture.hands.press(Qt::Key_Q));
    QVERIFY(fixture.hands.isMoving());
    fixture.hands.advance(0.5);
    QCOMPARE(fixture.last("thrust_lever_1"), 25.0);
    fixture.hands.advance(10.0);
    QCOMPARE(fixture.last("thrust_lever_1"), 100.0);
    QVERIFY(fixture.hands.release(Qt::Key_Q));
    QVERIFY(!fixture.hands.isMoving());
    QVERIFY(!fixture.hands.press(Qt::Key_AsciiTilde));
}

void TestPresenter::springsGoBack() {
    HandsFixture fixture;
    fixture.hands.put(fixture.control("tiller"), 42.0);
    QCOMPARE(fixture.last("tiller"), 42.0);
    QVERIFY(!fixture.hands.isMoving());
    fixture.hands.letGo(fixture.control("tiller"));
    fixture.hands.advance(0.1);
    QVERIFY(fixture.last("tiller") < 42.0 && fixture.last("tiller") > 0.0);
    fixture.hands.advance(10.0);
    QCOMPARE(fixture.last("tiller"), 0.0);
    QVERIFY(!fixture.hands.isMoving());
}

void TestPresenter::pairsMoveTogether() {
    HandsFixture fixture;
    fixture.hands.press(Qt::Key_B);
    fixture.hands.advance(0.2);
    QCOMPARE(fixture.last("toe_brake_left"), 10.0);
    QCOMPARE(fixture.last("toe_brake_right"), 10.0);
}

void TestPresenter::discreteControlsStep() {
    HandsFixture fixture;
    fixture.hands.press(Qt::Key_O);
    QCOMPARE(fixture.last("flap_lever"), 0.0);
    fixture.hands.press(Qt::Key_L);
    fixture.hands.press(Qt::Key_L);
    QCOMPARE(fixture.last("flap_lever"), 2.0);
    fixture.hands.press(Qt::Key_P);
    QCOMPARE(fixture.last("parking_brake"), 1.0);
    fixture.hands.press(Qt::Key_P);
    QCOMPARE(fixture.last("parking_brake"), 0.0);
    fixture.hands.nudge(fixture.control("autobrake"), 1);
    QCOMPARE(fixture.last("autobrake"), 1.0);
}

void TestPresenter::unknownControlStartsAtRest() {
    HandsFixture fixture;
    fixture.control("thrust_lever_1").setValue(Value::unknown());
    fixture.hands.put(fixture.control("thrust_lever_1"), 0.0);
    QCOMPARE(fixture.moves.size(), std::size_t(1));
    QCOMPARE(fixture.last("thrust_lever_1"), 0.0);
}

void TestPresenter::demonstrationLetsNobodyInterfere() {
    test::Stage stage("choosing");
    stage.maker().snapshot.values = test::stubValues(stage.aircraft(), 0);
    stage.fly().demonstrate(0);
    stage.fly().panel()->pressKey(Qt::Key_L);
    QVERIFY(stage.maker().told->moves.empty());
    stage.fly().startFlow(0);
    stage.fly().panel()->pressKey(Qt::Key_L);
    QCOMPARE(stage.maker().told->moves.size(), std::size_t(1));
}

void TestPresenter::everyKeyIsUsedOnce() {
    QSet<int> keys;
    for (const KeyBinding& binding : keyBindings()) {
        QVERIFY2(!keys.contains(binding.key), qPrintable(binding.shown));
        keys.insert(binding.key);
    }
    for (const Qt::Key general :
         {Qt::Key_Return, Qt::Key_F1, Qt::Key_F2, Qt::Key_F3, Qt::Key_F4, Qt::Key_F7, Qt::Key_F8, Qt::Key_F9})
        QVERIFY(!keys.contains(general));
}

void TestPresenter::putsAllOnScreenControls() {
    test::Stage stage("set-up");
    stage.fly().setAll();
    QCOMPARE(stage.maker().told->moves.size(), std::size_t(4));
    QVERIFY(stage.maker().told->moves.front().second == Value::position(0));
}

void TestPresenter::hardwareStartsAtOnce() {
    test::Stage stage("set-up-rig");
    QCOMPARE(stage.maker().last.hands, HandsChoice::Rig);
    QCOMPARE(stage.maker().told->commands, std::vector<CommandKind>{CommandKind::Start});
    test::Stage screen("set-up");
    QVERIFY(screen.maker().told->commands.empty());
}

void TestPresenter::aFeedIsChosenForTheRuns() {
    test::Stage stage("choosing");
    FeedPresenter& feed = *stage.fly().feed();
    QSignalSpy chosen(&feed, &FeedPresenter::chosenChanged);
    feed.setEditing(true);
    feed.choose("jason:49100");
    QVERIFY(feed.problem().contains("json, nmea or gdl90"));
    QVERIFY(feed.isEditing());
    QCOMPARE(chosen.count(), 0);
    feed.choose(" gdl90:4000 ");
    QCOMPARE(feed.title(), QString("GDL 90 on UDP 127.0.0.1:4000"));
    QVERIFY(!feed.isEditing() && feed.problem().isEmpty());
    stage.fly().startFlow(0);
    QCOMPARE(stage.maker().last.feed, std::string("gdl90:4000"));
    feed.choose("");
    stage.fly().again();
    QCOMPARE(stage.maker().last.feed, std::string());
    QCOMPARE(chosen.count(), 2);
}

void TestPresenter::aFeedIsTried() {
    const QTemporaryDir folder;
    test::Stage stage("choosing");
    FeedPresenter& feed = *stage.fly().feed();
    feed.listen("json:serial:" + folder.filePath("line") + ":4800"); // waited for
    QVERIFY(feed.isListening());
    QTRY_VERIFY(feed.heard().contains("nothing can come"));
    feed.listen("json:no-address:1");
    QVERIFY(!feed.isListening());
    QVERIFY(!feed.problem().isEmpty());
}

void TestPresenter::aFlightGoesOnWithAnotherFlow() {
    test::Stage stage("due-switch");
    Flow other = stage.flow();
    other.title = "Another";
    other.steps.resize(2);
    stage.maker().snapshot.flow = &other;
    stage.maker().snapshot.session.steps.resize(2);
    stage.maker().snapshot.session.due.clear();
    stage.fly().refresh();
    QCOMPARE(stage.fly().flowTitle(), QString("Another"));
    QCOMPARE(stage.fly().run()->stepsAll(), 2);
    stage.maker().snapshot.flow = nullptr;
    stage.fly().again(); // from the flow that was chosen
    QCOMPARE(stage.fly().flowTitle(), QString::fromStdString(stage.flow().title));
}

/// The store of a run was seen to be gone when the second flow began to write.
void TestPresenter::aStoredFlightGoesOn() {
    const QTemporaryDir folder;
    const std::filesystem::path own = folder.filePath("procedures").toStdString();
    std::filesystem::create_directories(own / "twin_jet" / "scenarios");
    std::filesystem::copy(std::filesystem::path(PROCEDURES) / "fenholt", own / "fenholt");
    for (const char* file : {"aircraft.toml", "practice.toml"})
        std::filesystem::copy(std::filesystem::path(PROCEDURES) / "twin_jet" / file, own / "twin_jet" / file);
    for (const char* control : {"taxi_light", "landing_lights"})
        std::ofstream(own / "twin_jet" / (std::string(control) + ".toml"))
            << "format = 1\ntitle = \"" << control << "\"\nphases = [\"taxi_out\"]\nseat = \"captain\"\n"
            << "[start]\nplace = \"stand\"\n[[step]]\nid = \"on\"\ntitle = \"On\"\ndone = \"" << control << "\"\n";
    std::ofstream(own / "twin_jet" / "scenarios" / "both.toml")
        << "format = 1\ntitle = \"Both\"\nsummary = \"One, then the other.\"\nflows = [\"taxi_light\", "
           "\"landing_lights\"]\n";
    const LibraryPtr library = loadLibraries({own.string(), {}});
    const std::unique_ptr<HidSystem> devices = systemDevices();
    LiveRuns runs({}, folder.filePath("runs.sqlite").toStdString(), *devices);
    Settings settings(folder.filePath("settings.toml"));
    Sound sound(settings, [] {
        return std::make_unique<SilentVoice>();
    });
    FlyPresenter fly(library, runs, sound);
    QCOMPARE(fly.problems()->count(), 0);
    fly.chooseGroup(1);
    fly.startFlow(0);
    QVERIFY2(fly.failure().isEmpty(), qPrintable(fly.failure()));
    fly.begin();
    QTRY_COMPARE(fly.stage(), FlyPresenter::Running);
    const auto switchOn = [&](const char* control) {
        fly.panel()->put(fly.panel()->controls()->find(*library->aircraft.front().aircraft->signals.find(control)),
                         1.0);
    };
    switchOn("taxi_light");
    QTRY_COMPARE(fly.flowTitle(), QString("landing_lights"));
    QTRY_COMPARE(fly.stage(), FlyPresenter::Running);
    switchOn("landing_lights");
    QTRY_COMPARE(fly.stage(), FlyPresenter::Ended);
    QCOMPARE(fly.debrief()->parts()->count(), 2);
    QVERIFY(fly.debrief()->isPassed());
    QVERIFY(fly.debrief()->storedText().contains("2"));
    fly.debrief()->choose(0);
    QVERIFY(fly.debrief()->storedText().contains("1"));
}

void TestPresenter::aScenarioIsChosen() {
    test::Stage stage("choosing-many");
    FlyPresenter& fly = stage.fly();
    QCOMPARE(fly.groups()->rowCount(), 6); // of three aircraft
    QCOMPARE(fly.flows()->rowCount(), 15);
    fly.chooseGroup(1);
    QCOMPARE(fly.flows()->rowCount(), 2);
    QVERIFY(fly.isWithScenarios());
    fly.look(0);
    QCOMPARE(fly.preview()->rowCount(), 3 * static_cast<int>(stage.flow().steps.size()));
    fly.startFlow(0);
    const FlightChoice choice = stage.maker().last;
    QVERIFY(choice.scenario != nullptr);
    QCOMPARE(choice.scenario->title, std::string("Engine failure before V1"));
    QCOMPARE(choice.flow->id, std::string("taxi_out"));
    fly.chooseGroup(2); // the next aircraft's flows
    fly.startFlow(0);
    QVERIFY(stage.maker().last.scenario == nullptr);
    QVERIFY(stage.maker().last.folder != choice.folder);
    QCOMPARE(stage.maker().last.flow->id, std::string("taxi_out"));
}

void TestPresenter::aScenarioIsBriefedWithoutGivingItAway() {
    test::Stage stage("choosing-scenario");
    QStringList words;
    for (int row = 0; row < stage.fly().briefing()->count(); ++row) {
        const auto fact = stage.fly().briefing()->row<FactRow>(row);
        words << fact.label + ": " + fact.value;
    }
    QCOMPARE(words, (QStringList{"Aircraft: Twin jet, 62.0 t", "Begins at: Line up", "Wind: from 120° at 8 kt",
                                 "Runway: standing water",
                                 "Flows: Taxi out, then Take-off to flap retraction, then Landing roll to taxi in",
                                 "On the way: Something unexpected may happen."}));
    stage.fly().chooseGroup(0);
    stage.fly().look(0);
    QCOMPARE(stage.fly().briefing()->count(), 0); // a flow alone
}

void TestPresenter::surprisesAreDrawnAnew() {
    test::Stage stage("choosing-scenario");
    QSet<quint64> seeds;
    for (int flight = 0; flight < 5; ++flight) {
        stage.fly().startFlow(0);
        seeds << stage.maker().last.seed;
    }
    QVERIFY(seeds.size() > 1);
    stage.fly().demonstrate(0);
    QCOMPARE(stage.maker().last.seed, std::uint64_t(1)); // that its hands know
}

void TestPresenter::aFlightBeginsWhereThePilotPicks() {
    test::Stage stage("choosing");
    StartPresenter& start = *stage.fly().start();
    stage.fly().look(0);
    QCOMPARE(start.places()->count(), 9);
    QCOMPARE(start.places()->row<PickRow>(4).title, QString("V1"));
    start.pickPlace(4);
    start.pickStep(3);
    start.pickPace(2);
    start.pickPace(99);
    QCOMPARE(start.words(), QString("V1, with “Thrust levers to take-off thrust”, 4 times slower"));
    stage.fly().startFlow(0);
    QCOMPARE(stage.maker().last.place, std::string("v1"));
    QCOMPARE(stage.maker().last.from, std::string("thrust"));
    QCOMPARE(stage.maker().last.slowness, 4);
    stage.fly().begin();
    QCOMPARE(stage.maker().told->commands, std::vector<CommandKind>{CommandKind::Jump});
    QCOMPARE(stage.maker().told->texts, std::vector<std::string>{"thrust"});
    stage.fly().demonstrate(0); // its hands begin at the beginning
    QVERIFY(stage.maker().last.place.empty() && stage.maker().last.from.empty());
    QCOMPARE(stage.maker().last.slowness, 1);
    stage.fly().startFlow(1); // another flow: from its own start, as slowly
    QVERIFY(stage.maker().last.place.empty() && stage.maker().last.from.empty());
    QCOMPARE(stage.maker().last.slowness, 4);
}

void TestPresenter::aFeedSaysWhereItBegins() {
    test::Stage stage("choosing");
    StartPresenter& start = *stage.fly().start();
    stage.fly().look(0);
    start.pickPlace(4);
    start.pickPace(2);
    stage.fly().feed()->choose("json:49100");
    QVERIFY(start.isFed());
    QCOMPARE(start.words(), QString("where the feed is"));
    stage.fly().startFlow(0);
    QVERIFY(stage.maker().last.place.empty());
    QCOMPARE(stage.maker().last.slowness, 1);
}

void TestPresenter::aRunJumpsWhereThePilotPicks() {
    test::Stage stage("due-gate");
    JumpPresenter& jump = *stage.fly().jump();
    stage.fly().jumpToPicked(); // nothing is offered yet
    QVERIFY(stage.maker().told->commands.empty());
    stage.fly().openJump();
    QVERIFY(jump.isOpen());
    QCOMPARE(jump.steps()->count(), 8);
    QVERIFY(jump.steps()->row<PickRow>(0).detail.isEmpty());
    QCOMPARE(jump.steps()->row<PickRow>(7).detail, QString("Holding point"));
    QCOMPARE(stage.fly().start()->steps()->row<PickRow>(8).detail, QString("Holding point")); // after 'The first step'
    jump.pick(5);
    jump.pick(8); // there is none
    stage.fly().jumpToPicked();
    QVERIFY(!jump.isOpen());
    QCOMPARE(stage.maker().told->commands, (std::vector<CommandKind>{CommandKind::Hold, CommandKind::Jump}));
    QCOMPARE(stage.maker().told->texts.back(), std::string("tiller"));
    stage.fly().openJump();
    stage.fly().closeJump();
    QCOMPARE(stage.maker().told->commands.size(), std::size_t(3)); // it stands until it is resumed
}

void TestPresenter::wheelsLeaveTheirTrail() {
    test::Stage stage("taxiing");
    GroundPresenter& ground = *stage.fly().ground();
    QVERIFY(ground.isShown());
    const auto rollTo = [&](double east, double heading) {
        stage.maker().snapshot.ground = GroundPosition{{east, 0.0}, heading, 0.0, "out", true};
        stage.fly().refresh();
    };
    rollTo(1000.0, 0.0);
    QCOMPARE(ground.trail().nose.size(), std::size_t(1)); // put there: the way before is not its way
    rollTo(1000.1, 0.0);
    QCOMPARE(ground.trail().nose.size(), std::size_t(1));
    rollTo(1010.0, 0.0);
    QCOMPARE(ground.trail().nose.size(), std::size_t(2));
    QCOMPARE(ground.trail().nose.back().x, 1010.0);
    QCOMPARE(ground.trail().nose.back().y, 15.0); // the wheelbase ahead
    QCOMPARE(ground.trail().left.back().x, 1006.5);
    QCOMPARE(ground.trail().right.back().x, 1013.5);
    for (int metre = 0; metre < 2000; ++metre)
        rollTo(1010.0 + metre, 0.0);
    QCOMPARE(ground.trail().nose.size(), std::size_t(400));
    QCOMPARE(ground.trail().nose.back().x, 3009.0);
    stage.maker().snapshot.ground->isOnGround = false;
    stage.fly().refresh();
    QVERIFY(!ground.isShown());
}

void TestPresenter::theGroundIsShownWhereItMatters_data() {
    QTest::addColumn<QString>("from");
    QTest::addColumn<QString>("to");
    QTest::addColumn<bool>("shown");
    QTest::newRow("at the gate") << "gate"
                                 << "" << false;
    QTest::newRow("out of the gate") << "gate"
                                     << "taxi_out" << true;
    QTest::newRow("taxi") << "taxi_in"
                          << "" << true;
    QTest::newRow("in the air") << "climb"
                                << "approach" << false;
    QTest::newRow("parked") << "gate_in"
                            << "gate_in" << false;
}

void TestPresenter::theGroundIsShownWhereItMatters() {
    QFETCH(QString, from);
    QFETCH(QString, to);
    QFETCH(bool, shown);
    Flow flow;
    flow.phaseFrom = from.toStdString();
    flow.phaseTo = to.toStdString();
    RunSnapshot snapshot;
    snapshot.ground = test::stubPosition();
    GroundPresenter ground(nullptr);
    ground.begin(nullptr, flow);
    ground.show(snapshot);
    QVERIFY(!ground.isShown()); // nothing to draw on
    ground.begin(std::make_shared<const GroundScene>(test::stubGround()), flow);
    ground.show(snapshot);
    QCOMPARE(ground.isShown(), shown);
    snapshot.ground.reset(); // a feed moves the aircraft
    ground.show(snapshot);
    QVERIFY(!ground.isShown());
}

void TestPresenter::theDebriefNamesWhatHappened() {
    test::Stage stage("flight-over");
    DebriefPresenter& debrief = *stage.fly().debrief();
    QCOMPARE(debrief.parts()->count(), 2);
    QCOMPARE(debrief.title(), QString("Take-off to flap retraction")); // the one that was not passed
    QVERIFY(!debrief.isPassed());
    QCOMPARE(debrief.parts()->row<PartRow>(0).score, QString("71.5"));
    QCOMPARE(debrief.happened()->count(), 1);
    QCOMPARE(debrief.happened()->row<FactRow>(0).label, QString("0:41.3"));
    QCOMPARE(debrief.happened()->row<FactRow>(0).value,
             QString("Engine 2 fails, before V1, in “Take-off to flap retraction”"));
    debrief.choose(1);
    QVERIFY(debrief.isPassed());
    QCOMPARE(debrief.happened()->count(), 1); // of the flight
    QVERIFY(debrief.parts()->row<PartRow>(1).chosen && !debrief.parts()->row<PartRow>(0).chosen);
    debrief.choose(2);
    QCOMPARE(debrief.title(), QString("Taxi out"));
}

void TestPresenter::noticesGiveTheirRoomBack() {
    test::Stage stage("due-switch");
    RunPresenter& run = *stage.fly().run();
    stage.maker().snapshot.notices = {std::string("one"), std::string("two")};
    stage.fly().refresh();
    QCOMPARE(run.freshNotices()->count(), 2);
    auto* timer = run.findChild<QTimer*>("notices");
    QVERIFY(timer != nullptr && timer->isActive());
    QMetaObject::invokeMethod(timer, "timeout");
    QCOMPARE(run.freshNotices()->count(), 0);
    QCOMPARE(run.notices()->count(), 2); // for the debrief
    Flow other = stage.flow();
    stage.maker().snapshot.flow = &other;
    stage.maker().snapshot.notices.emplace_back("The flight goes on.");
    stage.fly().refresh();
    QCOMPARE(run.freshNotices()->count(), 1);
    QCOMPARE(run.freshNotices()->row<NoticeRow>(0).words, QString("The flight goes on."));
    stage.maker().snapshot.session.phase = SessionPhase::Held;
    stage.fly().refresh();
    QCOMPARE(run.freshNotices()->count(), 3);
}

void TestPresenter::ribbonRisesWhereTheAircraftFlies() {
    const std::vector<PhaseRow> phases = phaseRows();
    QCOMPARE(ribbonHeight(0.0), 0.0);
    QCOMPARE(ribbonHeight(1.0), 0.0);
    for (const PhaseRow& phase : phases)
        QVERIFY(std::abs(ribbonHeight(phase.to) - phase.height) < 1e-9);
    double highest = 0;
    for (double across = 0; across <= 1; across += 0.01)
        highest = std::max(highest, ribbonHeight(across));
    QCOMPARE(highest, 1.0);
}

void TestPresenter::benchAdvisesWhatIsNext_data() {
    QTest::addColumn<QString>("state");
    QTest::addColumn<QString>("control");
    QTest::addColumn<int>("advice");
    QTest::newRow("not wired") << "bench-new-rig"
                               << "thrust_lever_1" << int(BenchPresenter::Wire);
    QTest::newRow("measured") << "bench"
                              << "thrust_lever_1" << int(BenchPresenter::Walk);
    QTest::newRow("calibrated, not measured") << "bench"
                                              << "reverse_lever_1" << int(BenchPresenter::Measure);
    QTest::newRow("contact, not measured") << "bench"
                                           << "flap_lever" << int(BenchPresenter::Measure);
}

void TestPresenter::benchAdvisesWhatIsNext() {
    QFETCH(QString, state);
    QFETCH(QString, control);
    QFETCH(int, advice);
    test::Stage stage(state);
    BenchPresenter& bench = stage.bench();
    bench.enter();
    bench.choose(static_cast<int>(indexOf(*stage.aircraft().signals.find(control.toStdString()))));
    QCOMPARE(bench.advice(), advice);
    bench.takeAdvice();
    QCOMPARE(static_cast<int>(stage.benchMaker().told->begun.back().task), advice);
}

void TestPresenter::benchTellsWhatTheRigConfirms() {
    test::Stage stage("bench-new-rig");
    stage.bench().enter();
    QVERIFY(stage.bench().coverageWords().startsWith("0 of 24 steps"));
    const auto row = stage.bench().coverage()->row<CoverageRow>(0);
    QCOMPARE(row.verdict, int(Verdict::Wrong));
    QVERIFY(row.why.contains("not wired"));
    stage.bench().setFlowFilter(1);
    QCOMPARE(stage.bench().coverage()->count(), 8);

    test::Stage wired("bench");
    wired.bench().enter();
    QVERIFY(wired.bench().orphanWords().contains("Pitch trim"));
    QCOMPARE(wired.bench().findings()->row<FindingRow>(0).verdict, int(Verdict::Wrong)); // what is bad comes first
}

void TestPresenter::benchSaysWhyItCannotOpen() {
    test::Stage stage("bench-refused");
    stage.bench().enter();
    QVERIFY(!stage.bench().isOpen());
    QVERIFY(stage.bench().failure().contains("did you mean 'flap_lever'?"));
    QVERIFY(stage.bench().failure().contains("desk.toml:14:10"));
}

void TestPresenter::benchSaysWhereItWrote() {
    test::Stage stage("bench");
    stage.bench().enter();
    stage.bench().writeSheet();
    QVERIFY(stage.bench().written().endsWith("rigs/desk.html"));
    stage.bench().writeCoverage();
    QVERIFY(stage.bench().written().contains("the disk is full"));
}

void TestPresenter::benchOffersWaysOfWiring_data() {
    QTest::addColumn<QString>("control");
    QTest::addColumn<QStringList>("wishes");
    QTest::newRow("lever") << "thrust_lever_1"
                           << QStringList{"thrust_lever_1+thrust_lever_2",
                                          "thrust_lever_1+thrust_lever_2=split_axis",
                                          "thrust_lever_1+thrust_lever_2=switched_axis",
                                          "thrust_lever_1=max",
                                          "thrust_lever_1=zones:0 %, 50 %, 100 %",
                                          "thrust_lever_1=encoder:1 %",
                                          "thrust_lever_1=step_buttons:1 %",
                                          "thrust_lever_1=relative_wheel:1 %"};
    QTest::newRow("selector") << "autobrake"
                              << QStringList{"autobrake=zones:off, low, medium, high, rejected", "autobrake=encoder",
                                             "autobrake=step_buttons", "autobrake=relative_wheel"};
    QTest::newRow("switch") << "parking_brake"
                            << QStringList{"parking_brake+taxi_light", "parking_brake=parking_latch"};
}

void TestPresenter::benchOffersWaysOfWiring() {
    QFETCH(QString, control);
    QFETCH(QStringList, wishes);
    const AircraftFolder folder = test::stubFolder();
    WiringChoice choice(nullptr);
    choice.begin(*folder.aircraft->signals.find(control.toStdString()), *folder.aircraft);
    QStringList offered;
    for (int row = 0; row < choice.offers()->count(); ++row) {
        choice.choose(row);
        offered << QString::fromStdString(choice.wish());
        QVERIFY2(parseWiringWish(choice.wish(), *folder.aircraft), choice.wish().c_str());
    }
    QCOMPARE(offered, wishes);
}

void TestPresenter::benchPlotsGatesOnTheTravel() {
    test::Stage stage("bench-gates");
    stage.bench().enter();
    stage.bench().choose(4);
    const BenchTrace& trace = *stage.bench().trace();
    QCOMPARE(trace.marks().size(), std::size_t(5));
    QCOMPARE(trace.marks()[1].name, QString("4"));
    QCOMPARE(trace.bands().size(), std::size_t(5));
    QVERIFY(trace.bands()[1].low < trace.marks()[1].at && trace.marks()[1].at < trace.bands()[1].high);
    stage.bench().choose(0); // a lever without gates: its own unit
    QCOMPARE(trace.highest(), 100.0);
    QCOMPARE(trace.marks().back().name, QString("100 %"));
}

void TestPresenter::benchShowsChecksAndSharing() {
    test::Stage stage("bench-gates");
    stage.bench().enter();
    QVERIFY(stage.bench().measuredWords().contains("checked again on 2026-03-20"));
    QStringList texts;
    for (int row = 0; row < stage.bench().findings()->count(); ++row)
        texts << stage.bench().findings()->row<FindingRow>(row).text;
    QVERIFY(texts.join(' ').contains("Low end: count 12"));
    QVERIFY(stage.bench().controls()->row<BenchControlRow>(1).detail.contains("shares its input"));
}

void TestPresenter::shippedFlowsStart_data() {
    QTest::addColumn<int>("group");
    QTest::addColumn<int>("row");
    Problems problems;
    const std::vector<AircraftFolder> library = loadLibrary(PROCEDURES, problems);
    int group = 0;
    for (const FlightGroup& each : flightGroups(library)) {
        int row = 0;
        for (const FlightChoice& choice : flightsOf(each)) {
            const std::string& id = choice.scenario != nullptr ? choice.scenario->id : choice.flow->id;
            QTest::newRow((each.folder->aircraft->folder + "/" + id).c_str()) << group << row++;
        }
        ++group;
    }
    QVERIFY(group > 3); // some of the aircraft have scenarios
}

void TestPresenter::shippedFlowsStart() {
    QFETCH(int, group);
    QFETCH(int, row);
    const QTemporaryDir folder;
    const LibraryPtr library = loadLibraries({PROCEDURES, {}});
    const std::unique_ptr<HidSystem> devices = systemDevices();
    LiveRuns runs({}, folder.filePath("runs.sqlite").toStdString(), *devices);
    Settings settings(folder.filePath("settings.toml"));
    Sound sound(settings, [] {
        return std::make_unique<SilentVoice>();
    });
    FlyPresenter fly(library, runs, sound);
    QCOMPARE(fly.problems()->count(), 0);
    fly.chooseGroup(group);
    QVERIFY(fly.flows()->row<FlowRow>(row).demonstrated);
    fly.startFlow(row);
    QVERIFY2(fly.failure().isEmpty(), qPrintable(fly.failure()));
    QCOMPARE(fly.stage(), FlyPresenter::SetUp);
    QCOMPARE(fly.run()->setUp()->count(), 0);
    if (!fly.isWithScenarios())
        QCOMPARE(fly.run()->stepsAll(), fly.flows()->row<FlowRow>(row).steps);
    for (const ControlState* control : fly.panel()->controls()->all())
        QVERIFY2(control->isKnown(), qPrintable(control->label()));
    fly.begin();
    QTRY_COMPARE(fly.stage(), FlyPresenter::Running);
    QVERIFY2(fly.run()->scoreText().endsWith("to 100"), qPrintable(fly.run()->scoreText()));
    fly.stop();
    QTRY_COMPARE(fly.stage(), FlyPresenter::Ended);
    QVERIFY(!fly.debrief()->isPassed());
    QCOMPARE(fly.debrief()->steps()->count(), fly.run()->stepsAll());
}

QTEST_MAIN(TestPresenter)
#include "test_presenter.moc"
