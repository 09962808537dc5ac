#include <filesystem>

#include <QSignalSpy>
#include <QTemporaryDir>
#include <QtTest>

#include "aircraft/practice.h"
#include "fakevoice.h"
#include "liveshelf.h"
#include "paint/timeruler.h"
#include "presenter/heldground.h"
#include "presenter/reviewfacts.h"
#include "presenter/reviewvoice.h"
#include "presenter/runnote.h"
#include "presenter/runplayer.h"
#include "presenter/stepfacts.h"
#include "presenter/timewindow.h"
#include "presenter/verdict.h"
#include "procedure/library.h"
#include "stubreview.h"

using namespace flowhand;
using namespace std::chrono_literals;

namespace {

/// The Review place over a shelf of its own, with one sample run open.
struct OpenedRun {
    explicit OpenedRun(const std::string& name) {
        const std::int64_t id = shelf.add(name);
        review.enter();
        review.openRun(static_cast<int>(id));
    }
    [[nodiscard]] RunReview& run() { return *review.run(); }
    [[nodiscard]] ReviewTimeline& timeline() { return *review.run()->timeline(); }

    test::StubShelf shelf;
    ReviewPresenter review{shelf};
};

void everySampleRun() {
    QTest::addColumn<QString>("name");
    for (const auto& entry : std::filesystem::directory_iterator(ASSETS "/runs"))
        if (entry.path().extension() == ".flowrun")
            QTest::newRow(entry.path().stem().c_str()) << QString::fromStdString(entry.path().stem());
}

QString roleOf(const RowModel& rows, int row, const char* role) {
    return rows.data(rows.index(row), rows.roleNames().key(role)).toString();
}

} // namespace

class TestReviewPlace : public QObject {
    Q_OBJECT

private Q_SLOTS:
    void sampleRunsAreTakenInOnce();
    void simulatedInputIsMarked();
    void windowKeepsWhatIsAtThePointer();
    void windowStaysInsideTheRun();
    void playingHasPaces();
    void playingEndsOrBeginsAgain();
    void rulerHasRoomForItsFigures_data();
    void rulerHasRoomForItsFigures();
    void figuresLeadToEachDeviation_data();
    void figuresLeadToEachDeviation();
    void opensOnTheWorst_data() { everySampleRun(); }
    void opensOnTheWorst();
    void stepsHaveTheirSeparateTimes();
    void evidenceOfEveryStep_data() { everySampleRun(); }
    void evidenceOfEveryStep();
    void oneHeldTimeForAllLanes();
    void jumpsGoAndComeBack();
    void marksTellTheDifference();
    void chosenStepBringsItsSignals();
    void barsOfALineLieApart_data() { everySampleRun(); }
    void barsOfALineLieApart();
    void guardsHaveEvidence();
    void accountComesBeforeTheInstructor();
    void notesOutlastTheWindow();
    void noteDuringARunStaysAtItsMoment();
    void noteNeedsAStoredRun();
    void groundIsWhereTheRunWas();
    void recordWithoutPositionsHasNoGround();
    void rulingStandsBesideItsFinding();
    void comparesWithTheReferenceFirst();
    void comparisonOfOneRunAlone();
    void writesTheRunDown_data();
    void writesTheRunDown();
    void listTellsTheMarks();
    void wordsAreSpokenAgain();
    void newRunIsChosen();
    void lossesHaveKinds();
    void searchFindsByTag();
    void deletionIsTakenBack();
    void referenceIsOneAFlow();
    void refusalIsTold();
    void damagedRunOpensWithWhatIsLeft();
    void frozenDatabasesAreListed();
    void liveShelfAnswersInOrder();
};

void TestReviewPlace::sampleRunsAreTakenInOnce() {
    test::StubShelf shelf;
    ReviewPresenter review{shelf};
    review.enter();
    QVERIFY(!review.areSamplesOffered()); // nobody said where they are
    review.setSampleFolder(ASSETS "/runs");
    QVERIFY(review.areSamplesOffered());
    review.takeInSamples();
    QCOMPARE(review.failure(), QString());
    const int count = review.runs()->count();
    QCOMPARE(count, QDir(ASSETS "/runs").entryList({"*.flowrun"}).size());
    for (int row = 0; row < count; ++row) {
        QCOMPARE(roleOf(*review.runs(), row, "tags"), QString("sample"));
        QVERIFY(roleOf(*review.runs(), row, "marks").contains("simulated input"));
    }
    QVERIFY(!review.areSamplesOffered());
    review.takeInSamples();
    QCOMPARE(review.failure(), QString());
    QCOMPARE(review.runs()->count(), count);
    review.setSampleFolder("no/such/folder");
    review.takeInSamples();
    QVERIFY2(review.failure().contains("no/such/folder"), qPrintable(review.failure()));
}

void TestReviewPlace::simulatedInputIsMarked() {
    OpenedRun opened("take_off_good");
    QVERIFY2(opened.run().subtitle().endsWith("simulated input"), qPrintable(opened.run().subtitle()));
}

void TestReviewPlace::windowKeepsWhatIsAtThePointer() {
    TimeWindow window;
    window.begin(100s);
    for (const double share : {0.0, 0.25, 0.5, 0.9, 1.0}) {
        window.fit();
        const Time at = window.at(share);
        window.zoom(4.0, share);
        QCOMPARE(window.to() - window.from(), Duration(25s));
        QVERIFY(std::chrono::abs(window.at(share) - at) <= 1us);
        QVERIFY(std::abs(window.shareOf(at) - share) < 1e-6);
    }
}

void TestReviewPlace::windowStaysInsideTheRun() {
    TimeWindow window;
    window.begin(100s);
    window.zoom(1e9, 0.5);
    QCOMPARE(window.to() - window.from(), TimeWindow::kNarrowest);
    window.pan(1e6);
    QCOMPARE(window.to(), Time(100s));
    window.pan(-1e9);
    QCOMPARE(window.from(), Time(0s));
    window.reveal(50s);
    QVERIFY(window.from() < 50s && window.to() > 50s);
    window.zoom(1e-9, 0.5);
    QCOMPARE(window.from(), Time(0s));
    QCOMPARE(window.to(), Time(100s));
    window.begin(0s); // an empty run still has a width to divide by
    QVERIFY(window.to() > window.from());
}

void TestReviewPlace::playingHasPaces() {
    RunPlayer player;
    QCOMPARE(player.advance(5s, 1s, 60s, {}), Time(5s)); // it stands
    player.setPlaying(true);
    QCOMPARE(player.advance(5s, 1s, 60s, {}), Time(6s));
    for (int i = 0; i < 10; ++i)
        player.slower();
    QCOMPARE(player.advance(5s, 1s, 60s, {}), Time(5100ms));
    for (int i = 0; i < 10; ++i)
        player.faster();
    QCOMPARE(player.advance(5s, 1s, 60s, {}), Time(15s));
}

void TestReviewPlace::playingEndsOrBeginsAgain() {
    RunPlayer player;
    player.setPlaying(true);
    QCOMPARE(player.advance(9s, 3s, 10s, {}), Time(10s));
    QVERIFY(!player.isPlaying());
    player.setPlaying(true);
    const LoopStretch loop{2s, 4s};
    QCOMPARE(player.advance(3500ms, 1s, 10s, loop), Time(2500ms));
    QCOMPARE(player.advance(8s, 1s, 10s, loop), Time(2s));
    QVERIFY(player.isPlaying());
}

void TestReviewPlace::rulerHasRoomForItsFigures_data() {
    QTest::addColumn<double>("width");
    for (const double width : {0.2, 1.0, 7.0, 61.0, 600.0, 3600.0, 4 * 3600.0, 48 * 3600.0})
        QTest::newRow(qPrintable(QString::number(width))) << width;
}

void TestReviewPlace::rulerHasRoomForItsFigures() {
    QFETCH(double, width);
    const Duration period = TimeRuler::periodFor(fromSeconds(width), 8);
    QVERIFY(fromSeconds(width) / period <= 8);
    QVERIFY(width < 1.0 || fromSeconds(width) / period >= 1);
}

void TestReviewPlace::figuresLeadToEachDeviation_data() {
    QTest::addColumn<int>("count");
    for (const int count : {1, 9, 10, 37})
        QTest::newRow(qPrintable(QString::number(count))) << count;
}

void TestReviewPlace::figuresLeadToEachDeviation() {
    QFETCH(int, count);
    const int digits = count > 9 ? 2 : 1;
    for (int row = 0; row < count; ++row)
        QCOMPARE(deviationOfKeys(QStringLiteral("%1").arg(row + 1, digits, 10, QLatin1Char('0')), count), row);
    QCOMPARE(deviationOfKeys("0", count), -1);
}

void TestReviewPlace::opensOnTheWorst() {
    QFETCH(QString, name);
    OpenedRun opened(name.toStdString());
    QCOMPARE(int(opened.review.stage()), int(ReviewPresenter::Reviewing));
    QVERIFY(!opened.run().wentWell().isEmpty());
    const std::vector<Deviation>& deviations = opened.run().debrief().timeline().deviations();
    QCOMPARE(opened.run().deviations()->count(), int(deviations.size()));
    if (deviations.empty()) {
        QCOMPARE(opened.run().chosenDeviation(), -1);
        return;
    }
    QCOMPARE(opened.run().chosenDeviation(), 0);
    QCOMPARE(opened.timeline().heldTime(), deviations.front().time);
    QVERIFY(opened.timeline().from() <= seconds(deviations.front().time));
    QVERIFY(!opened.run().chosenTitle().isEmpty());
}

void TestReviewPlace::stepsHaveTheirSeparateTimes() {
    OpenedRun opened("take_off_faulty");
    QSet<QString> labels;
    for (int step = 0; step < opened.run().steps()->count(); ++step) {
        opened.run().chooseStep(step);
        for (int row = 0; row < opened.run().evidence()->count(); ++row)
            labels.insert(roleOf(*opened.run().evidence(), row, "label"));
    }
    // The run's script does each of these on purpose (assets/runs/README.md).
    for (const char* label : {"Cue sounded", "Cue ended", "Due", "First movement", "Hesitation", "Overshoot",
                              "Wrong reach", "Done", "Meanwhile"})
        QVERIFY2(labels.contains(label), label);
}

void TestReviewPlace::evidenceOfEveryStep() {
    QFETCH(QString, name);
    OpenedRun opened(name.toStdString());
    const Timeline& timeline = opened.run().debrief().timeline();
    for (int step = 0; step < opened.run().steps()->count(); ++step) {
        opened.run().chooseStep(step);
        const StepTimes& times = timeline.steps()[static_cast<std::size_t>(step)];
        QStringList shown;
        for (int row = 0; row < opened.run().evidence()->count(); ++row)
            shown << roleOf(*opened.run().evidence(), row, "value");
        if (times.due)
            QVERIFY(shown.contains(QString::fromStdString(clockText(*times.due))));
        if (times.done)
            QVERIFY(shown.contains(QString::fromStdString(clockText(*times.done))));
    }
}

void TestReviewPlace::oneHeldTimeForAllLanes() {
    OpenedRun opened("take_off_good");
    ReviewTimeline& timeline = opened.timeline();
    const Timeline& core = opened.run().debrief().timeline();
    for (const double time : {0.0, 12.5, 33.0, timeline.length()}) {
        timeline.hold(time);
        const std::vector<Value> values = core.valuesAt(timeline.heldTime());
        for (int row = 0; row < timeline.lanes()->count(); ++row) {
            const auto lane = timeline.lanes()->row<LaneRow>(row);
            if (lane.kind == ReviewTimeline::SignalLane && values[std::size_t(lane.rowId)].isKnown())
                QCOMPARE(lane.value, shownValue(core.run().aircraft.signals.all()[std::size_t(lane.rowId)],
                                                values[std::size_t(lane.rowId)]));
        }
        for (const ControlState* control : opened.run().controls()->shown())
            QVERIFY(control->raw() == values[indexOf(control->id())]);
    }
}

void TestReviewPlace::jumpsGoAndComeBack() {
    OpenedRun opened("take_off_faulty");
    ReviewTimeline& timeline = opened.timeline();
    const auto walk = [&](void (ReviewTimeline::*on)(), void (ReviewTimeline::*back)()) {
        timeline.hold(0);
        std::vector<double> there;
        for (double before = -1; timeline.now() > before;) {
            before = timeline.now();
            (timeline.*on)();
            if (timeline.now() > before)
                there.push_back(timeline.now());
        }
        timeline.hold(timeline.length());
        std::vector<double> returned;
        for (double before = timeline.length() + 1; timeline.now() < before;) {
            before = timeline.now();
            (timeline.*back)();
            if (timeline.now() < before)
                returned.push_back(timeline.now());
        }
        return std::pair(there.size(), returned.size());
    };
    const auto deviations = walk(&ReviewTimeline::nextDeviation, &ReviewTimeline::previousDeviation);
    QVERIFY(deviations.first >= 3);
    QVERIFY(deviations.second >= deviations.first);
    const auto steps = walk(&ReviewTimeline::nextStep, &ReviewTimeline::previousStep);
    QVERIFY(steps.first >= 5);
    const auto changes = walk(&ReviewTimeline::nextChange, &ReviewTimeline::previousChange);
    QVERIFY(changes.first > steps.first);
    QVERIFY(changes.second > steps.second);
}

void TestReviewPlace::marksTellTheDifference() {
    OpenedRun opened("take_off_good");
    ReviewTimeline& timeline = opened.timeline();
    const SignalId speed = *opened.run().debrief().timeline().run().aircraft.signals.find("ground_speed");
    timeline.hold(5);
    timeline.setA();
    timeline.hold(20);
    timeline.setB();
    QVERIFY2(timeline.marksText().contains("15.00 s"), qPrintable(timeline.marksText()));
    for (int row = 0; row < timeline.lanes()->count(); ++row)
        if (const auto lane = timeline.lanes()->row<LaneRow>(row); lane.rowId == int(speed))
            QVERIFY2(lane.marked.contains(QString::fromUtf8("Δ")) && lane.marked.contains("kt"),
                     qPrintable(lane.marked));
    timeline.toggleLoop();
    timeline.togglePlay();
    timeline.advance(100.0);
    QVERIFY(timeline.now() >= 5 && timeline.now() <= 20);
    timeline.clearMarks();
    QCOMPARE(timeline.marksText(), QString());
}

void TestReviewPlace::chosenStepBringsItsSignals() {
    OpenedRun opened("take_off_faulty");
    ReviewTimeline& timeline = opened.timeline();
    for (int step = 0; step < opened.run().steps()->count(); ++step) {
        opened.run().chooseStep(step);
        QSet<int> shown;
        for (int row = 0; row < timeline.lanes()->count(); ++row)
            shown.insert(timeline.lanes()->row<LaneRow>(row).rowId);
        if (opened.run().debrief().timeline().openStretch(std::size_t(step)))
            for (const SignalLimits& limits : opened.run().debrief().timeline().limits(std::size_t(step)))
                QVERIFY(shown.contains(int(limits.signal)));
    }
}

void TestReviewPlace::barsOfALineLieApart() {
    QFETCH(QString, name);
    OpenedRun opened(name.toStdString());
    for (const int lane : {ReviewTimeline::Steps, ReviewTimeline::Guards, ReviewTimeline::Calls}) {
        const LaneBars& bars = opened.timeline().bars(lane);
        for (std::size_t i = 1; i < bars.bars.size(); ++i) {
            QVERIFY(bars.bars[i - 1].from <= bars.bars[i].from);
            QVERIFY(bars.bars[i].line < bars.lines);
            for (std::size_t j = 0; j < i; ++j)
                QVERIFY(bars.bars[j].line != bars.bars[i].line || bars.bars[j].to <= bars.bars[i].from);
        }
    }
}

void TestReviewPlace::guardsHaveEvidence() {
    OpenedRun opened("take_off_faulty");
    const std::vector<Deviation>& deviations = opened.run().debrief().timeline().deviations();
    int guards = 0;
    for (std::size_t i = 0; i < deviations.size(); ++i) {
        if (deviations[i].guard < 0)
            continue;
        ++guards;
        opened.run().chooseDeviation(int(i));
        QCOMPARE(roleOf(*opened.run().evidence(), 0, "label"), QString("Broken"));
        QVERIFY(opened.run().evidence()->count() > 1);
    }
    QVERIFY(guards > 0);
}

void TestReviewPlace::noteDuringARunStaysAtItsMoment() {
    OpenedRun opened("taxi_out_good");
    const ReviewedRun& flown = opened.run().debrief().timeline().run();
    RunSnapshot snapshot;
    snapshot.runId = opened.run().debrief().run().summary.id;
    snapshot.flow = &flown.flow;
    snapshot.results = flown.results;
    snapshot.session.time = flown.results[1].due + 1500ms;
    RunNote note(nullptr);
    note.setShelf(&opened.shelf);
    note.begin(snapshot);
    QVERIFY(note.isWriting());
    snapshot.session.time += 10s; // the run does not wait
    note.keep(" Late with the brakes ");
    QVERIFY(!note.isWriting());
    QCOMPARE(note.failure(), QString());
    QCOMPARE(note.kept(), 1);
    const Result<StoredRun> stored = opened.shelf.store().load(snapshot.runId);
    QVERIFY(stored);
    const Note& kept = stored->notes.back();
    QCOMPARE(kept.text, std::string("Late with the brakes"));
    QCOMPARE(kept.anchor, anchorAt(flown.flow, flown.results, flown.results[1].due + 1500ms));
    QVERIFY(!kept.anchor.step.empty());
}

void TestReviewPlace::noteNeedsAStoredRun() {
    test::StubShelf shelf;
    RunNote note(nullptr);
    note.setShelf(&shelf);
    RunSnapshot snapshot; // of a run that could not be stored
    note.begin(snapshot);
    QVERIFY(!note.isWriting());
    QVERIFY(note.failure().contains("not stored"));
    note.cancel();
    QCOMPARE(note.failure(), QString());
}

void TestReviewPlace::groundIsWhereTheRunWas() {
    OpenedRun opened("taxi_out_good");
    const Timeline& timeline = opened.run().debrief().timeline();
    const ReviewedRun& run = timeline.run();
    Problems problems;
    const std::optional<AircraftFolder> folder = loadAircraftFolder(PROCEDURES "/twin_jet", problems);
    QVERIFY(folder);
    const Result<GroundScene> scene = PracticeAircraft::sceneOf(*folder->aircraft);
    QVERIFY(scene);
    const SignalId offset = *run.aircraft.signals.find("centreline_offset");
    const SignalId speed = *run.aircraft.signals.find("ground_speed");
    double way = 0.0;
    std::optional<PlanPoint> before;
    for (Time time{}; time < run.length; time += 1s) {
        const std::vector<GroundPosition> held = groundWay(timeline, *scene, time);
        QVERIFY(!held.empty());
        const GroundPosition& now = held.back();
        // The nosewheel lies beside the line of its route as far as the record says: grain of 0.2 m in each direction.
        const Route* const route = scene->plan.route(now.route);
        QVERIFY(route != nullptr);
        const PlanPoint nose{now.mainWheels.x + scene->wheelbase * std::sin(now.heading),
                             now.mainWheels.y + scene->wheelbase * std::cos(now.heading)};
        const LinePoint near = route->line.pointAt(route->line.nearest(nose));
        const double beside = std::hypot(nose.x - near.at.x, nose.y - near.at.y);
        QVERIFY2(std::abs(beside - std::abs(timeline.signal(offset).at(time).number())) < 0.3,
                 qPrintable(QString("%1 s: %2 m").arg(seconds(time)).arg(beside)));
        if (before)
            way += std::hypot(now.mainWheels.x - before->x, now.mainWheels.y - before->y);
        before = now.mainWheels;
    }
    double rolled = 0.0; // m, by the recorded speed
    for (Time time{}; time < run.length; time += 1s)
        rolled += timeline.signal(speed).at(time).number() * 0.514444;
    QVERIFY2(std::abs(way / rolled - 1.0) < 0.03, qPrintable(QString("%1 m, %2 m").arg(way).arg(rolled)));
}

void TestReviewPlace::recordWithoutPositionsHasNoGround() {
    OpenedRun opened("taxi_out_good");
    const SignalTable& signals = opened.run().debrief().timeline().run().aircraft.signals;
    const SignalId east = *signals.find("position_east");
    const std::int64_t id = opened.shelf.add("taxi_out_good", [east](StoredRun& run) {
        std::erase_if(run.samples, [east](const Sample& sample) {
            return sample.signal == east;
        });
    });
    opened.review.openRun(static_cast<int>(id));
    QCOMPARE(opened.run().debrief().run().summary.id, id);
    QVERIFY(groundWay(opened.timeline().timeline(), GroundScene(), 5s).empty());
    QVERIFY(!opened.run().ground()->isShown());
}

void TestReviewPlace::accountComesBeforeTheInstructor() {
    OpenedRun opened("take_off_faulty");
    ReviewNotes& notes = *opened.review.notes();
    notes.mark(0, 3);
    QVERIFY2(notes.failure().contains("account"), qPrintable(notes.failure()));
    QVERIFY(notes.notes().empty());
    notes.begin(ReviewNotes::Account);
    notes.save("");
    QVERIFY(!notes.failure().isEmpty()); // it needs words
    QVERIFY(notes.isWriting());
    notes.save("I lost the order.");
    QCOMPARE(notes.failure(), QString());
    QVERIFY(!notes.isWriting());
    notes.mark(0, 3);
    notes.mark(0, 4);
    QCOMPARE(notes.marks()->row<PhaseMarkRow>(0).mark, 4);
    QCOMPARE(notes.notes().size(), std::size_t(2)); // one mark a phase
}

void TestReviewPlace::notesOutlastTheWindow() {
    OpenedRun opened("take_off_good");
    const auto run = static_cast<int>(opened.run().debrief().run().summary.id);
    opened.timeline().hold(20);
    opened.review.noteHere();
    opened.review.notes()->save("Look outside here.");
    QCOMPARE(opened.timeline().bars(ReviewTimeline::Notes).bars.size(), std::size_t(1));
    opened.review.close();
    opened.review.openRun(run);
    QCOMPARE(opened.review.notes()->lines()->count(), 1);
    QCOMPARE(opened.timeline().bars(ReviewTimeline::Notes).bars.front().from, Time(20s));
    opened.review.notes()->remove(0);
    QCOMPARE(opened.review.notes()->lines()->count(), 0);
    QVERIFY(opened.timeline().bars(ReviewTimeline::Notes).bars.empty());
}

void TestReviewPlace::rulingStandsBesideItsFinding() {
    OpenedRun opened("take_off_faulty");
    ReviewNotes& notes = *opened.review.notes();
    notes.begin(ReviewNotes::Account);
    notes.save("I lost the order.");
    for (int row = 0; row < opened.run().deviations()->count(); ++row) {
        opened.run().chooseDeviation(row);
        const QString score = opened.run().scoreText();
        opened.review.ruleOnChosen();
        notes.choose(1);
        notes.save(QStringLiteral("Reason %1.").arg(row));
        QVERIFY2(roleOf(*opened.run().deviations(), row, "ruling").contains(QStringLiteral("Reason %1.").arg(row)),
                 qPrintable(notes.failure()));
        QCOMPARE(opened.run().scoreText(), score);
    }
    opened.run().chooseDeviation(0);
    opened.review.causeOfChosen();
    QCOMPARE(notes.choices().size(), 4);
    notes.choose(3);
    notes.save("");
    QVERIFY(roleOf(*opened.run().deviations(), 0, "ruling").contains("rushed"));
}

void TestReviewPlace::comparesWithTheReferenceFirst() {
    test::StubShelf shelf;
    const std::int64_t older = shelf.add("take_off_good", [](StoredRun& run) {
        run.header.startedUnixMillis += 1;
    });
    const std::int64_t reference = shelf.add("take_off_good");
    const std::int64_t faulty = shelf.add("take_off_faulty");
    QVERIFY(shelf.store().setReference(reference));
    ReviewPresenter review(shelf);
    review.openRun(int(faulty));
    ReviewComparison& comparison = *review.comparison();
    comparison.enter();
    QCOMPARE(comparison.other(), int(reference));
    QCOMPARE(comparison.steps()->count(), review.run()->steps()->count());
    QStringList differences;
    for (int row = 0; row < comparison.steps()->count(); ++row)
        differences << roleOf(*comparison.steps(), row, "difference");
    QVERIFY2(differences.join(' ').contains("reached for"), qPrintable(differences.join(' ')));
    comparison.next();
    QCOMPARE(comparison.other(), int(older));
    comparison.next();
    QCOMPARE(comparison.other(), int(reference));
}

void TestReviewPlace::comparisonOfOneRunAlone() {
    OpenedRun opened("taxi_out_good");
    opened.review.comparison()->enter();
    QVERIFY(opened.review.comparison()->hasLooked());
    QCOMPARE(opened.review.comparison()->other(), 0);
    opened.review.comparison()->next();
    QCOMPARE(opened.review.comparison()->steps()->count(), 0);
}

void TestReviewPlace::writesTheRunDown_data() {
    QTest::addColumn<int>("what");
    QTest::addColumn<QString>("ending");
    QTest::newRow("page") << int(ReviewPresenter::Page) << ".html";
    QTest::newRow("events") << int(ReviewPresenter::Events) << "-events.csv";
    QTest::newRow("signals") << int(ReviewPresenter::Signals) << "-signals.csv";
    QTest::newRow("archive") << int(ReviewPresenter::Archive) << ".flowrun";
}

void TestReviewPlace::writesTheRunDown() {
    QFETCH(int, what);
    QFETCH(QString, ending);
    const QTemporaryDir folder;
    OpenedRun opened("take_off_faulty");
    opened.review.noteHere();
    opened.review.notes()->save("Written down with it.");
    opened.review.setExportFolder(folder.filePath("below/there"));
    opened.review.exportAs(what);
    const QString file = folder.filePath("below/there/run-1" + ending);
    QCOMPARE(opened.review.written(), "Written: " + file);
    QFile written(file);
    QVERIFY(written.open(QIODevice::ReadOnly));
    const QByteArray content = written.readAll();
    QVERIFY(content.size() > 1000);
    QVERIFY(what != ReviewPresenter::Page || content.contains("Written down with it."));
    opened.review.setExportFolder("/dev/null");
    opened.review.exportAs(what);
    QVERIFY2(!opened.review.written().startsWith("Written"), qPrintable(opened.review.written()));
}

void TestReviewPlace::listTellsTheMarks() {
    test::StubShelf shelf;
    shelf.fill("review-list");
    ReviewPresenter review(shelf);
    review.enter();
    QVERIFY(review.isListed());
    QStringList words;
    int references = 0;
    QStringList tags;
    for (int row = 0; row < review.runs()->count(); ++row) {
        const auto run = review.runs()->row<StoredRunRow>(row);
        words << run.word;
        references += run.reference ? 1 : 0;
        tags << run.tags;
        QVERIFY2(run.marks.contains("simulated"), qPrintable(run.marks));
    }
    QVERIFY(words.contains("passed"));
    QVERIFY(words.contains("recovered"));
    QCOMPARE(references, 1);
    QVERIFY(tags.contains("check ride"));
}

void TestReviewPlace::wordsAreSpokenAgain() {
    OpenedRun opened("take_off_good");
    ReviewTimeline& timeline = opened.timeline();
    const QTemporaryDir folder;
    Settings settings(folder.filePath("settings.toml"));
    const auto heard = std::make_shared<test::Heard>();
    Sound sound(settings, [heard] {
        return std::make_unique<test::FakeVoice>(heard);
    });
    sound.start();
    const ReviewVoice voice(timeline, sound);
    QStringList calls;
    for (const Call& call : opened.run().debrief().timeline().calls())
        calls << QString::fromStdString("say " + call.by + ": " + call.text);
    QVERIFY(!calls.isEmpty());
    timeline.hold(0);
    heard->take();
    timeline.togglePlay();
    while (timeline.isPlaying())
        timeline.advance(0.05);
    QStringList said = heard->take();
    QCOMPARE(said.takeLast(), QString("hush")); // at its end
    QCOMPARE(said, calls);
    // What is looked for is not spoken, and neither is what goes by too fast.
    timeline.hold(timeline.length() / 2);
    timeline.faster();
    timeline.faster();
    timeline.togglePlay();
    timeline.advance(1.0);
    QCOMPARE(heard->take(), QStringList());
    timeline.slower();
    timeline.togglePlay();
    timeline.hold(0);
    timeline.togglePlay();
    timeline.advance(5.0);
    QVERIFY(!heard->take().isEmpty());
    timeline.togglePlay();
    QCOMPARE(heard->take(), QStringList("hush"));
}

void TestReviewPlace::newRunIsChosen() {
    test::StubShelf shelf;
    shelf.add("take_off_good");
    shelf.add("taxi_out_good", [](StoredRun& run) {
        run.header.startedUnixMillis -= 1;
    });
    ReviewPresenter review(shelf);
    review.enter();
    review.choose(1);
    review.enter();
    QCOMPARE(review.chosen(), 1);
    shelf.add("landing_roll_good", [](StoredRun& run) {
        run.header.startedUnixMillis += 60'000;
    });
    review.enter();
    QCOMPARE(review.chosen(), 0);
    QCOMPARE(review.runs()->count(), 3);
}

void TestReviewPlace::lossesHaveKinds() {
    QCOMPARE(int(lossKind(LossKind::NotDone)), int(Verdict::Wrong));
    QCOMPARE(int(lossKind(LossKind::OutOfOrder)), int(Verdict::OutOfOrder));
    QCOMPARE(int(lossKind(LossKind::Late)), int(Verdict::Late));
    QCOMPARE(int(lossKind(LossKind::SmallMargin)), int(Verdict::Info));
    QCOMPARE(int(lossKind(LossKind::WrongControl)), int(Verdict::Wrong));
}

void TestReviewPlace::searchFindsByTag() {
    test::StubShelf shelf;
    shelf.fill("review-list");
    ReviewPresenter review(shelf);
    review.enter();
    review.setSearch("CHECK");
    QCOMPARE(review.runs()->count(), 1);
    review.toggleTag("check ride");
    QCOMPARE(review.runs()->count(), 0);
    review.setSearch("");
    QVERIFY(review.runs()->count() > 1);
}

void TestReviewPlace::deletionIsTakenBack() {
    test::StubShelf shelf;
    shelf.fill("review-list");
    ReviewPresenter review(shelf);
    review.enter();
    const int before = review.runs()->count();
    review.choose(1);
    review.remove();
    QCOMPARE(review.runs()->count(), before - 1);
    QVERIFY(!review.undoText().isEmpty());
    review.undo();
    QCOMPARE(review.runs()->count(), before);
    QCOMPARE(review.undoText(), QString());
    review.remove();
    review.toggleDeleted();
    QVERIFY(review.runs()->count() >= 1);
    const int deleted = review.runs()->count();
    review.remove(); // restores, where deleted ones are shown
    QCOMPARE(review.runs()->count(), deleted - 1);
}

void TestReviewPlace::referenceIsOneAFlow() {
    test::StubShelf shelf;
    shelf.fill("review-list");
    ReviewPresenter review(shelf);
    review.enter();
    const auto references = [&review] {
        QStringList flows;
        for (int row = 0; row < review.runs()->count(); ++row)
            if (review.runs()->row<StoredRunRow>(row).reference)
                flows << review.runs()->row<StoredRunRow>(row).flow;
        return flows;
    };
    for (int row = 0; row < review.runs()->count(); ++row) {
        review.choose(row);
        if (!review.runs()->row<StoredRunRow>(row).reference)
            review.toggleReference();
        QStringList flows = references();
        QVERIFY(flows.contains(review.runs()->row<StoredRunRow>(row).flow));
        QCOMPARE(flows.removeDuplicates(), 0);
    }
    review.toggleReference();
    QVERIFY(!review.runs()->row<StoredRunRow>(review.chosen()).reference);
}

void TestReviewPlace::refusalIsTold() {
    test::StubShelf shelf;
    shelf.isRefusing = true;
    ReviewPresenter review(shelf);
    review.enter();
    QVERIFY2(review.failure().contains("another program"), qPrintable(review.failure()));
    shelf.isRefusing = false;
    review.openRun(99);
    QCOMPARE(int(review.stage()), int(ReviewPresenter::Listing));
    QVERIFY2(review.failure().contains("99"), qPrintable(review.failure()));
}

void TestReviewPlace::damagedRunOpensWithWhatIsLeft() {
    test::StubShelf shelf;
    const std::int64_t damaged = shelf.fill("review-damaged");
    ReviewPresenter review(shelf);
    review.openRun(static_cast<int>(damaged));
    QCOMPARE(int(review.stage()), int(ReviewPresenter::Reviewing));
    QVERIFY(!review.run()->damage().isEmpty());
    QVERIFY(!review.run()->debrief().timeline().run().missing.empty());
}

void TestReviewPlace::frozenDatabasesAreListed() {
    for (const auto& entry : std::filesystem::directory_iterator(TEST_DATA "/store")) {
        if (entry.path().extension() != ".sqlite")
            continue;
        const QTemporaryDir folder;
        const std::string copy = folder.filePath("runs.sqlite").toStdString();
        std::filesystem::copy_file(entry.path(), copy);
        LiveShelf shelf(copy);
        ReviewPresenter review(shelf);
        review.enter();
        QTRY_VERIFY(review.isListed());
        QCOMPARE(review.runs()->count(), 2);
        QCOMPARE(review.runs()->row<StoredRunRow>(0).word, QString("recovered"));
        QCOMPARE(review.runs()->row<StoredRunRow>(1).score, QString("77.5"));
        // Its flow is not one of today's: it opens, or says why it cannot.
        review.open(1);
        QTRY_VERIFY(review.stage() != ReviewPresenter::Opening);
        QVERIFY(review.stage() == ReviewPresenter::Reviewing || !review.failure().isEmpty());
    }
}

void TestReviewPlace::liveShelfAnswersInOrder() {
    const QTemporaryDir folder;
    std::vector<int> answers;
    {
        LiveShelf shelf(folder.filePath("runs.sqlite").toStdString());
        for (int i = 0; i < 20; ++i)
            shelf.ask<int>(
                [i](Store&) -> Result<int> {
                    return i;
                },
                [&answers](Result<int> answer) {
                    answers.push_back(*answer);
                });
        QTRY_COMPARE(answers.size(), std::size_t(20));
    }
    QVERIFY(std::is_sorted(answers.begin(), answers.end()));
}

QTEST_MAIN(TestReviewPlace)
#include "test_reviewplace.moc"
