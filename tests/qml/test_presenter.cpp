#include <QSignalSpy>
#include <QTemporaryDir>
#include <QtTest>

#include "liveruns.h"
#include "presenter/benchrows.h"
#include "presenter/ribbon.h"
#include "presenter/stepfacts.h"
#include "presenter/verdict.h"
#include "stubcockpit.h"
#include "stubrun.h"

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
    void aScenarioIsChosen();
    void ribbonRisesWhereTheAircraftFlies();
    void benchAdvisesWhatIsNext_data();
    void benchAdvisesWhatIsNext();
    void benchTellsWhatTheRigConfirms();
    void benchSaysWhyItCannotOpen();
    void benchSaysWhereItWrote();
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
    QCOMPARE(pointsText(milliPoints), text);
}

void TestPresenter::ledgerIsWorstFirst() {
    Score score;
    score.ledger = {{1'000, 0, -1, "late", "a"}, {20'000, 1, -1, "not done", "b"}, {-500, -1, -1, "floor", "c"}};
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
    for (const Qt::Key general : {Qt::Key_Return, Qt::Key_F1, Qt::Key_F2, Qt::Key_F3, Qt::Key_F4, Qt::Key_F8})
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

void TestPresenter::aScenarioIsChosen() {
    test::Stage stage("choosing-many");
    FlyPresenter& fly = stage.fly();
    fly.look(3); // the first behind the three flows of the first aircraft
    QCOMPARE(fly.preview()->rowCount(), 3 * static_cast<int>(stage.flow().steps.size()));
    fly.startFlow(3);
    const FlightChoice choice = stage.maker().last;
    QVERIFY(choice.scenario != nullptr);
    QCOMPARE(choice.scenario->title, std::string("Engine failure before V1"));
    QCOMPARE(choice.flow->id, std::string("taxi_out"));
    fly.startFlow(5); // the next aircraft's first flow
    QVERIFY(stage.maker().last.scenario == nullptr);
    QVERIFY(stage.maker().last.folder != choice.folder);
    QCOMPARE(stage.maker().last.flow->id, std::string("taxi_out"));
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
    QCOMPARE(static_cast<int>(stage.benchMaker().told->begun.back().first), advice);
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

void TestPresenter::shippedFlowsStart_data() {
    QTest::addColumn<int>("row");
    Problems problems;
    int row = 0;
    for (const AircraftFolder& folder : loadLibrary(PROCEDURES, problems))
        for (const Flow& flow : folder.flows)
            QTest::newRow(flow.id.c_str()) << row++;
    QVERIFY(row > 0);
}

void TestPresenter::shippedFlowsStart() {
    QFETCH(int, row);
    const QTemporaryDir folder;
    Problems problems;
    const std::vector<AircraftFolder> library = loadLibrary(PROCEDURES, problems);
    const std::unique_ptr<HidSystem> devices = systemDevices();
    LiveRuns runs({}, folder.filePath("runs.sqlite").toStdString(), *devices);
    FlyPresenter fly(library, problems, runs);
    QCOMPARE(fly.problems()->count(), 0);
    QVERIFY(fly.flows()->row<FlowRow>(row).demonstrated);
    fly.startFlow(row);
    QVERIFY2(fly.failure().isEmpty(), qPrintable(fly.failure()));
    QCOMPARE(fly.stage(), FlyPresenter::SetUp);
    QCOMPARE(fly.run()->setUp()->count(), 0);
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
