// The first start: what somebody is led to who has controls, and who has none.

#include <QQuickItem>
#include <QQuickView>
#include <QtTest>

#include "presenter/rows.h"
#include "shown.h"
#include "window.h"

using namespace flowhand;

class TestFirstStart : public QObject {
    Q_OBJECT

private Q_SLOTS:
    void initTestCase();
    void whoHasNoControlsWatchesFirst();
    void whoHasFlownIsNotMadeToWatch();
    void whoHasARigFlies();
    void whoHasNoRigIsLedToTheBench();
    void whatIsConnectedIsOfferedFirst_data();
    void whatIsConnectedIsOfferedFirst();
    void sampleRunsAreThereToLookAt();
    void aDemonstrationIsNotYours();
};

void TestFirstStart::initTestCase() {
    registerQmlTypes();
}

void TestFirstStart::whoHasNoControlsWatchesFirst() {
    test::Shown shown("first-start");
    QVERIFY(shown.click("Use the screen"));
    QTest::keyClick(&shown.view, Qt::Key_Return);
    QVERIFY(shown.stage.maker().last.flow != nullptr);
    QVERIFY(shown.stage.maker().last.hands == HandsChoice::Demonstration);
    shown.stage.fly().leave();
    QCoreApplication::processEvents();
    QTest::keyClick(&shown.view, Qt::Key_Return);
    QVERIFY(shown.stage.maker().last.hands == HandsChoice::Screen);
}

void TestFirstStart::whoHasFlownIsNotMadeToWatch() {
    test::Shown shown("choosing");
    QTest::keyClick(&shown.view, Qt::Key_Return);
    QVERIFY(shown.stage.maker().last.hands == HandsChoice::Screen);
    shown.stage.fly().leave();
    shown.stage.fly().askHands();
    QCoreApplication::processEvents();
    QVERIFY(shown.click("Use the screen"));
    QVERIFY(!shown.stage.fly().isDemonstrationFirst());
}

void TestFirstStart::whoHasARigFlies() {
    test::Shown shown("first-start-with-rig");
    QVERIFY(shown.click("Use my controls"));
    QCOMPARE(shown.place(), 0);
    QVERIFY(shown.stage.fly().isWithRig());
    QTest::keyClick(&shown.view, Qt::Key_Return);
    QVERIFY(shown.stage.maker().last.hands == HandsChoice::Rig);
}

void TestFirstStart::whoHasNoRigIsLedToTheBench() {
    test::Shown shown("first-start");
    QVERIFY(shown.click("Wire my controls"));
    QVERIFY(shown.stage.fly().isWithRig());
    QCOMPARE(shown.place(), 1);
    QVERIFY(shown.stage.bench().isGuided());
}

void TestFirstStart::whatIsConnectedIsOfferedFirst_data() {
    QTest::addColumn<QString>("state");
    QTest::addColumn<int>("place");
    QTest::addColumn<bool>("withRig");
    QTest::newRow("a rig") << "first-start-with-rig" << 0 << true;
    QTest::newRow("devices, to be wired") << "first-start" << 1 << true;
    QTest::newRow("nothing") << "first-start-without" << 0 << false;
}

/// By the key alone.
void TestFirstStart::whatIsConnectedIsOfferedFirst() {
    QFETCH(QString, state);
    QFETCH(int, place);
    QFETCH(bool, withRig);
    test::Shown shown(state);
    QTest::keyClick(&shown.view, Qt::Key_Return);
    QVERIFY(shown.stage.fly().stage() == FlyPresenter::Choosing);
    QCOMPARE(shown.stage.fly().isWithRig(), withRig);
    QCOMPARE(shown.place(), place);
}

void TestFirstStart::sampleRunsAreThereToLookAt() {
    test::Shown shown("first-start");
    QVERIFY(shown.click("First look at sample runs, flown well and badly"));
    QCOMPARE(shown.place(), 2);
    QVERIFY(shown.stage.review().runs()->count() >= 4);
    QVERIFY(shown.stage.fly().stage() == FlyPresenter::FirstStart); // still to be answered
}

void TestFirstStart::aDemonstrationIsNotYours() {
    test::Stage stage("passed");
    const RowModel& steps = *stage.fly().debrief()->steps();
    QCOMPARE(steps.row<StepRow>(0).who, QString("you"));
    QCOMPARE(steps.row<StepRow>(7).who, QString("partner"));
    stage.fly().demonstrate(0); // the stub shows the same end
    QCOMPARE(steps.row<StepRow>(0).who, QString("script"));
    QVERIFY(steps.row<StepRow>(0).own);
    QCOMPARE(steps.row<StepRow>(7).who, QString("partner"));
}

QTEST_MAIN(TestFirstStart)
#include "test_firststart.moc"
