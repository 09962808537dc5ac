// What there is to fly, for the whole program: who hears of a change, and what stays as it was.

#include <QDir>
#include <QSignalSpy>
#include <QtTest>

#include "stubcockpit.h"
#include "stublibrary.h"
#include "stubrun.h"

using namespace flowhand;

namespace {

QStringList titlesOf(RowModel* flows) {
    QStringList titles;
    for (int row = 0; row < flows->count(); ++row)
        titles << flows->row<FlowRow>(row).title;
    return titles;
}

/// Another library of the same aircraft; its files have the same names as those of the stage.
LibraryPtr withFirstFlowLeftOut() {
    auto library = std::make_shared<LoadedLibrary>();
    library->aircraft.push_back(test::withScenarios(test::stubFolder()));
    library->aircraft.front().flows.erase(library->aircraft.front().flows.begin());
    return library;
}

} // namespace

class TestCurrentLibrary : public QObject {
    Q_OBJECT

private Q_SLOTS:
    void anAircraftFromOutsideIsOfferedAtOnce();
    void whatChangesMeanwhileIsReadAfterwards();
    void flyOffersWhatThereIs();
    void flyKeepsThePlaceOfWhatWasLookedAt();
    void whatIsFlownStaysAsItWas();
    void nothingIsLeft();
    void theBenchIsOpenedAnew();
    void theBenchFinishesItsTask();
};

void TestCurrentLibrary::anAircraftFromOutsideIsOfferedAtOnce() {
    test::StubDesk desk;
    const QTemporaryDir folder;
    const QString own = folder.filePath("procedures"); // is not there yet
    CurrentLibrary files(desk, {PROCEDURES, own.toStdString()});
    const std::size_t before = files.now()->aircraft.size();
    QVERIFY(QDir().mkpath(own + "/my_jet"));
    for (const char* name : {"aircraft.toml", "taxi_out.toml"})
        QVERIFY(QFile::copy(QStringLiteral(PROCEDURES "/twin_jet/") + name, own + "/my_jet/" + name));
    QTRY_COMPARE(files.now()->aircraft.size(), before + 1);
    QTRY_COMPARE(files.now()->aircraft.back().flows.size(), std::size_t(1));
    QVERIFY(QFile::remove(own + "/my_jet/taxi_out.toml"));
    QTRY_VERIFY(files.now()->aircraft.back().flows.empty());
}

void TestCurrentLibrary::whatChangesMeanwhileIsReadAfterwards() {
    test::StubDesk desk;
    CurrentLibrary files(desk, desk.folders());
    const std::size_t before = files.now()->aircraft.size();
    QSignalSpy changes(&files, &CurrentLibrary::changed);
    desk.isHolding = true;
    files.reload();
    const QTemporaryDir own;
    QVERIFY(QDir().mkpath(own.filePath("my_jet")));
    QVERIFY(QFile::copy(QStringLiteral(PROCEDURES "/twin_jet/aircraft.toml"), own.filePath("my_jet/aircraft.toml")));
    files.useOwn(own.path().toStdString());
    QCOMPARE(changes.count(), 0);
    desk.answer();
    QCOMPARE(changes.count(), 2);
    QCOMPARE(files.now()->aircraft.size(), before + 1);
}

void TestCurrentLibrary::flyOffersWhatThereIs() {
    test::Stage stage("choosing-scenario");
    FlyPresenter& fly = stage.fly();
    QCOMPARE(fly.group(), 1);
    auto library = std::make_shared<LoadedLibrary>();
    library->problems.error("bad-toml", "it is not closed", {"procedures/x.toml", 1, 1});
    AircraftFolder other = test::stubFolder();
    other.aircraft->file = "procedures/other/aircraft.toml";
    library->aircraft.push_back(std::move(other));
    library->aircraft.push_back(test::withScenarios(test::stubFolder()));
    fly.offer(library);
    QCOMPARE(fly.groups()->count(), 3);
    QCOMPARE(fly.group(), 2); // the same aircraft's scenarios
    QCOMPARE(fly.problems()->count(), 1);
}

void TestCurrentLibrary::flyKeepsThePlaceOfWhatWasLookedAt() {
    test::Stage stage("choosing");
    FlyPresenter& fly = stage.fly();
    fly.look(2);
    const QString title = titlesOf(fly.flows()).at(2);
    QSignalSpy offered(&fly, &FlyPresenter::offered);
    fly.offer(withFirstFlowLeftOut());
    QCOMPARE(offered.count(), 1);
    const int row = offered.front().front().toInt();
    QCOMPARE(row, 1);
    QCOMPARE(titlesOf(fly.flows()).at(row), title);
    fly.look(0);
    fly.offer(withFirstFlowLeftOut());
    QCOMPARE(offered.back().front().toInt(), 0);
}

void TestCurrentLibrary::whatIsFlownStaysAsItWas() {
    test::Stage stage("choosing");
    FlyPresenter& fly = stage.fly();
    fly.startFlow(1);
    const QString title = fly.flowTitle();
    const int steps = fly.run()->stepsAll();
    fly.offer(withFirstFlowLeftOut());
    fly.refresh();
    QCOMPARE(fly.flowTitle(), title);
    QCOMPARE(fly.run()->stepsAll(), steps);
    QCOMPARE(fly.flowRow(), 0); // where it is offered now
    fly.again();
    QCOMPARE(fly.flowTitle(), title);
    QCOMPARE(static_cast<int>(stage.maker().last.folder->flows.size()), fly.flows()->count());
}

void TestCurrentLibrary::nothingIsLeft() {
    test::Stage stage("choosing");
    stage.fly().look(1);
    stage.fly().offer(std::make_shared<LoadedLibrary>());
    QCOMPARE(stage.fly().flows()->count(), 0);
    QCOMPARE(stage.fly().groups()->count(), 0);
    QCOMPARE(stage.fly().preview()->count(), 0);
    stage.fly().startFlow(0);
    QCOMPARE(stage.fly().stage(), FlyPresenter::Choosing);
}

void TestCurrentLibrary::theBenchIsOpenedAnew() {
    test::Stage stage("bench");
    BenchPresenter& bench = stage.bench();
    bench.lookAgain();
    QVERIFY(!bench.isOpen()); // it is not shown
    bench.enter();
    bench.choose(3);
    QSignalSpy opened(&bench, &BenchPresenter::openChanged);
    bench.lookAgain();
    QCOMPARE(opened.count(), 2);
    QVERIFY(bench.isOpen());
    QCOMPARE(bench.chosen(), 3);
}

void TestCurrentLibrary::theBenchFinishesItsTask() {
    test::Stage stage("bench");
    BenchPresenter& bench = stage.bench();
    BenchTaskView& task = stage.benchMaker().snapshot.task;
    task = {};
    task.task = BenchTask::Calibrate;
    bench.enter();
    QSignalSpy opened(&bench, &BenchPresenter::openChanged);
    bench.lookAgain();
    bench.refresh();
    QCOMPARE(opened.count(), 0);
    task.isOver = true;
    bench.refresh();
    QCOMPARE(opened.count(), 2);
    QVERIFY(bench.isOpen());
    bench.refresh();
    QCOMPARE(opened.count(), 2);
}

QTEST_MAIN(TestCurrentLibrary)
#include "test_currentlibrary.moc"
