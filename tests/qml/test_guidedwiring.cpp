// The bench asks for a basic set of controls, one after the other.

#include <QQuickItem>
#include <QQuickView>
#include <QtTest>

#include "presenter/phrasetext.h"
#include "shown.h"
#include "window.h"

using namespace flowhand;

namespace {

/// A new rig on the bench, with a device connected.
struct NewRig {
    NewRig() { stage.bench().enter(); }

    [[nodiscard]] BenchPresenter& bench() { return stage.bench(); }
    [[nodiscard]] const std::vector<BenchWish>& begun() { return stage.benchMaker().told->begun; }
    [[nodiscard]] QString asked() {
        return QString::fromStdString(stage.aircraft().signals[begun().back().signal].name);
    }

    /// The task that was begun last goes on.
    void start() {
        BenchTaskView task;
        task.task = BenchTask::Wire;
        task.signal = begun().back().signal;
        task.ask = std::string("Move it.");
        stage.benchMaker().snapshot.task = task;
        bench().refresh();
    }
    void succeed() {
        stage.benchMaker().snapshot.task.isOver = true;
        stage.benchMaker().snapshot.task.isGood = true;
        Coverage wired = *stage.benchMaker().snapshot.coverage;
        for (CoveredControl& control : wired.controls)
            if (control.signal == begun().back().signal)
                control.proof = Proof::Wired;
        stage.benchMaker().snapshot.coverage = std::make_shared<const Coverage>(wired);
        bench().refresh();
    }
    /// What is cancelled is gone.
    void vanish() {
        stage.benchMaker().snapshot.task = {};
        bench().refresh();
    }
    void fail() {
        stage.benchMaker().snapshot.task.isOver = true;
        stage.benchMaker().snapshot.task.outcome = {std::string("Nothing moved.")};
        bench().refresh();
    }

    test::Stage stage{"bench-new-rig"};
};

} // namespace

class TestGuidedWiring : public QObject {
    Q_OBJECT

private Q_SLOTS:
    void asksForOneAfterTheOther();
    void goesOnWithoutWhatIsNotThere();
    void endsWhenStopped();
    void waitsForADevice();
    void basicsOfShippedAircraft_data();
    void basicsOfShippedAircraft();
    void stageStandsBesideTheTitle();
    void longNoticesAreWhole();
};

void TestGuidedWiring::asksForOneAfterTheOther() {
    NewRig rig;
    int left = rig.bench().basicsLeft();
    QVERIFY(left > 3);
    rig.bench().guide();
    QStringList asked;
    for (; left > 0; --left) {
        QVERIFY(rig.bench().isGuided());
        QCOMPARE(rig.bench().basicsLeft(), left);
        QVERIFY(rig.begun().back().task == BenchTask::Wire);
        asked << rig.asked();
        rig.start();
        rig.succeed();
    }
    QVERIFY(!rig.bench().isGuided());
    QCOMPARE(asked.removeDuplicates(), 0);
    QCOMPARE(asked.first(), QString("tiller"));
    QVERIFY(asked.contains("thrust_lever_1") && asked.contains("flap_lever") && asked.contains("gear_lever"));
    QCOMPARE(rig.begun().size(), static_cast<std::size_t>(asked.size()));
}

void TestGuidedWiring::goesOnWithoutWhatIsNotThere() {
    NewRig rig;
    rig.bench().guide();
    rig.start();
    const QString first = rig.asked();
    const int left = rig.bench().basicsLeft();
    rig.bench().leaveOut();
    QCOMPARE(rig.stage.benchMaker().told->cancels, 1);
    rig.vanish();
    QVERIFY(rig.bench().isGuided());
    QVERIFY(rig.asked() != first);
    QCOMPARE(rig.bench().basicsLeft(), left - 1);
}

void TestGuidedWiring::endsWhenStopped() {
    NewRig rig;
    rig.bench().guide();
    rig.start();
    rig.bench().cancel();
    rig.vanish();
    QVERIFY(!rig.bench().isGuided());
    QCOMPARE(rig.begun().size(), std::size_t(1));
    rig.bench().guide(); // on with what is still to be wired
    QCOMPARE(rig.begun().size(), std::size_t(2));
    rig.start();
    rig.fail(); // what went wrong stays to be read
    QVERIFY(!rig.bench().isGuided());
    QCOMPARE(rig.begun().size(), std::size_t(2));
}

void TestGuidedWiring::waitsForADevice() {
    test::Stage stage("bench-no-device");
    stage.bench().enter();
    stage.bench().guide();
    QVERIFY(!stage.bench().isGuided());
    QVERIFY(stage.benchMaker().told->begun.empty());
    BenchDevice device;
    device.name = "quadrant";
    device.isConnected = true;
    stage.benchMaker().snapshot.devices = {device};
    stage.bench().refresh();
    QVERIFY(stage.bench().isGuided());
    QCOMPARE(stage.benchMaker().told->begun.size(), std::size_t(1));
}

void TestGuidedWiring::basicsOfShippedAircraft_data() {
    QTest::addColumn<QStringList>("basics");
    const QStringList steering{"tiller", "rudder_pedals", "toe_brake_left", "toe_brake_right", "parking_brake"};
    QTest::newRow("twin_jet") << steering + QStringList{"thrust_lever_1",  "thrust_lever_2", "reverse_lever_1",
                                                        "reverse_lever_2", "flap_lever",     "gear_lever"};
    QTest::newRow("twin_turboprop") << steering +
                                           QStringList{"power_lever_1", "power_lever_2", "flap_lever", "gear_lever"};
    QTest::newRow("light_single") << steering.mid(1) + QStringList{"throttle", "flap_lever"};
}

void TestGuidedWiring::basicsOfShippedAircraft() {
    QFETCH(QStringList, basics);
    Problems problems;
    const std::vector<AircraftFolder> library = loadLibrary(PROCEDURES, problems);
    QCOMPARE(library.size(), std::size_t(3)); // each has a row
    const auto folder = std::find_if(library.begin(), library.end(), [](const AircraftFolder& each) {
        return each.aircraft->folder == QTest::currentDataTag();
    });
    QVERIFY(folder != library.end());
    test::Stage stage("choosing");
    test::StubBenchMaker maker;
    maker.show("bench-new-rig", *folder);
    Coverage unwired = *maker.snapshot.coverage;
    for (CoveredControl& control : unwired.controls)
        control.proof = Proof::Unwired;
    maker.snapshot.coverage = std::make_shared<const Coverage>(unwired);
    BenchPresenter bench(maker, stage.sound());
    bench.enter();
    QStringList asked;
    for (bench.guide(); bench.isGuided(); bench.refresh()) {
        const BenchWish& begun = maker.told->begun.back();
        asked << QString::fromStdString(folder->aircraft->signals[begun.signal].name);
        maker.snapshot.task.task = BenchTask::Wire;
        maker.snapshot.task.signal = begun.signal;
        bench.refresh();
        bench.leaveOut();
        maker.snapshot.task = {};
    }
    QCOMPARE(asked, basics);
}

/// Which stage it is was written over the task's title.
void TestGuidedWiring::stageStandsBesideTheTitle() {
    registerQmlTypes();
    test::Shown shown("bench-wiring");
    (void)shown.view.grabWindow();
    const QQuickItem* title = shown.find(shown.stage.bench().taskTitle(), "QQuickText");
    const QQuickItem* stage = shown.find(shown.stage.bench().stageWords(), "QQuickText");
    QVERIFY(title != nullptr && stage != nullptr);
    QVERIFY(stage->mapToScene({0, 0}).x() >= title->mapToScene({title->width(), 0}).x());
}

/// The first of the notice's lines stood above its top, where the list cuts it off.
void TestGuidedWiring::longNoticesAreWhole() {
    registerQmlTypes();
    test::Shown shown("bench-long-names");
    (void)shown.view.grabWindow();
    const QQuickItem* words = shown.find(textOf(shown.stage.benchMaker().snapshot.notices.front()), "QQuickText");
    QVERIFY(words != nullptr);
    QVERIFY(words->property("lineCount").toInt() > 1);
    QVERIFY2(words->y() >= 0, qPrintable(QString::number(words->y())));
}

QTEST_MAIN(TestGuidedWiring)
#include "test_guidedwiring.moc"
