// The Progress place over stored runs.

#include <QDir>
#include <QSignalSpy>
#include <QTemporaryDir>
#include <QtTest>

#include "base/textfile.h"
#include "presenter/progresspresenter.h"
#include "presenter/progressrows.h"
#include "stubreview.h"

using namespace flowhand;

namespace {

struct Place {
    explicit Place(const QString& state) {
        shelf.fillProgress(state);
        progress.enter();
    }

    LibraryPtr library = loadLibraries({PROCEDURES, {}});
    test::StubShelf shelf;
    ProgressPresenter progress{shelf, shelf.file(), library, [] {
                                   return test::StubShelf::kNow;
                               }};
};

} // namespace

class TestProgressPlace : public QObject {
    Q_OBJECT

private Q_SLOTS:
    void thePlanHasItsReasons();
    void theChosenFlowHasItsCourse();
    void pilotsAreNotMixedUnlessAsked();
    void aPlannedFlowIsAskedFor();
    void flowsThatComeArePlanned();
    void nobodyHasFlown();
    void aStoreThatIsRefusedSaysSo();
};

void TestProgressPlace::thePlanHasItsReasons() {
    Place place("progress");
    QVERIFY(place.progress.isListed() && place.progress.failure().isEmpty());
    QCOMPARE(place.progress.whose(), QString("Ada, on Desk quadrant and pedals: 14 runs"));
    QVERIFY(place.progress.planned()->count() >= 2);
    for (int row = 0; row < place.progress.planned()->count(); ++row)
        QVERIFY(place.progress.planned()->row<PlannedRow>(row).reason.endsWith('.'));
    QCOMPARE(place.progress.ahead()->count(), 7);
    QCOMPARE(place.progress.ahead()->row<AheadRow>(0).day, QString("Today"));
    QVERIFY(place.progress.modelNote().contains("unproven"));
}

void TestProgressPlace::theChosenFlowHasItsCourse() {
    Place place("progress");
    QCOMPARE(place.progress.flows()->count(), 3);
    int takeOff = -1;
    for (int row = 0; row < 3; ++row)
        if (place.progress.flows()->row<FlownFlowRow>(row).last.startsWith("12 runs"))
            takeOff = row;
    place.progress.choose(takeOff);
    QCOMPARE(place.progress.runs(), 12);
    QCOMPARE(place.progress.scores().size(), 12);
    QCOMPARE(place.progress.passed().size(), 7);
    QVERIFY(place.progress.scoreTrend().contains("better a run"));
    QVERIFY2(place.progress.paceTrend().contains("quicker a run"), qPrintable(place.progress.paceTrend()));
    QVERIFY(place.progress.curve().contains("through"));
    QCOMPARE(place.progress.curveLine().size(), 13);
    QVERIFY(place.progress.steps()->count() > 0);
    QVERIFY(place.progress.steps()->row<StepRateRow>(0).rate.contains(" of "));
    place.progress.choose(99);
    QCOMPARE(place.progress.chosen(), 2);
}

void TestProgressPlace::pilotsAreNotMixedUnlessAsked() {
    Place place("progress");
    QCOMPARE(place.progress.lines(), 2);
    place.progress.nextLine();
    QCOMPARE(place.progress.whose(), QString("Kim, on on-screen controls: 1 run"));
    place.progress.nextLine();
    QVERIFY(place.progress.whose().startsWith("Ada"));
    place.progress.toggleMixed();
    QVERIFY(place.progress.isMixed());
    QCOMPARE(place.progress.whose(), QString("Every pilot, on every rig: 15 runs"));
    place.progress.toggleMixed();
    QVERIFY(!place.progress.isMixed());
}

void TestProgressPlace::aPlannedFlowIsAskedFor() {
    Place place("progress");
    QSignalSpy asked(&place.progress, &ProgressPresenter::flyAsked);
    place.progress.flyPlanned(0);
    QCOMPARE(asked.count(), 1);
    QCOMPARE(asked[0][0].toString(), QString("twin_jet"));
    place.progress.flyPlanned(99);
    QCOMPARE(asked.count(), 1);
    place.progress.flyChosen();
    QCOMPARE(asked.count(), 2);
}

void TestProgressPlace::flowsThatComeArePlanned() {
    Place place("progress");
    const auto isNewFlowPlanned = [&] {
        for (int row = 0; row < place.progress.planned()->count(); ++row)
            if (place.progress.planned()->row<PlannedRow>(row).title == "Taxi out, my way")
                return true;
        return false;
    };
    QVERIFY(!isNewFlowPlanned());
    const QTemporaryDir own;
    QVERIFY(QDir().mkpath(own.filePath("twin_jet")));
    QVERIFY(QFile::copy(PROCEDURES "/twin_jet/aircraft.toml", own.filePath("twin_jet/aircraft.toml")));
    QString text = QString::fromStdString(readFile(PROCEDURES "/twin_jet/taxi_out.toml").value_or(""));
    text.replace("\"Taxi out\"", "\"Taxi out, my way\"");
    QVERIFY(writeFile(own.filePath("twin_jet/my_taxi_out.toml").toStdString(), text.toStdString()));
    place.progress.offer(loadLibraries({own.path().toStdString(), {}}));
    QVERIFY(isNewFlowPlanned());
}

void TestProgressPlace::nobodyHasFlown() {
    Place place("progress-empty");
    QVERIFY(place.progress.isListed());
    QCOMPARE(place.progress.lines(), 0);
    QVERIFY(place.progress.whose().isEmpty() && place.progress.failure().isEmpty());
}

void TestProgressPlace::aStoreThatIsRefusedSaysSo() {
    Place place("progress-refused");
    QVERIFY(place.progress.failure().contains("another program"));
}

QTEST_MAIN(TestProgressPlace)
#include "test_progressplace.moc"
