// Steps that a hand acts out for the Library's editor, on the screen and on a rig.

#include <QTemporaryDir>
#include <QtTest>

#include "base/textfile.h"
#include "device/fakehid.h"
#include "device/hidtext.h"
#include "livebench.h"
#include "presenter/actedstep.h"
#include "stubbench.h"
#include "stublibrary.h"

using namespace flowhand;

namespace {

/// A bench that shows the twin jet's controls.
struct Acting {
    Acting() : aircraft(std::move(*loadAircraftFolder(PROCEDURES "/twin_jet", problems)->aircraft)) {
        rigs.snapshot.now = fromSeconds(1.0);
        rigs.snapshot.rigTitle = std::string("Desk quadrant");
        rigs.snapshot.devices = {{"quadrant", true, {}}};
        rigs.snapshot.values.assign(aircraft.controls.size(), Value::unknown());
    }
    void open() { step.open(PROCEDURES "/twin_jet/taxi_out.toml"); }
    [[nodiscard]] SignalId signal(const char* name) const { return *aircraft.signals.find(name); }
    void say(const char* control, Value value) {
        rigs.snapshot.now += fromSeconds(1.0); // what moved before has come to rest
        rigs.snapshot.values[indexOf(signal(control))] = value;
        step.refresh();
    }

    Problems problems;
    Aircraft aircraft;
    test::StubDesk desk;
    test::StubBenchMaker rigs;
    ActedStep step{desk, rigs};
};

constexpr const char* kTwoAxes = "05 01 09 04 A1 01 09 30 09 31 15 00 27 FF FF 00 00 75 10 95 02 81 02 C0";
constexpr const char* kRig = R"(format = 1
title = "Desk quadrant"
[[device]]
name = "quadrant"
id = "1209:0001"
[[control]]
signal = "thrust_lever_1"
wiring = "axis"
input = "X"
range = [0, 65535]
)";

} // namespace

class TestActedStep : public QObject {
    Q_OBJECT

private Q_SLOTS:
    void theScreenAloneWritesAStep();
    void theRigWritesAStep();
    void noiseIsNoMovement();
    void betweenTwoGatesThereIsNoStep();
    void whatTheRigHasIsMovedThere();
    void aRigThatIsRefusedLeavesTheScreen();
    void realDevicesAreRead();
};

void TestActedStep::theScreenAloneWritesAStep() {
    Acting now;
    now.rigs.title.clear(); // nobody has wired anything
    now.open();
    QVERIFY(now.step.isOpen() && now.step.rigTitle().isEmpty() && now.step.rigFailure().isEmpty());
    now.step.panel()->put(now.step.panel()->controls()->find(now.signal("taxi_light")), 1.0);
    QCOMPARE(now.step.title(), QString("Taxi light on"));
}

void TestActedStep::theRigWritesAStep() {
    Acting now;
    now.open();
    QCOMPARE(now.step.rigTitle(), QString("Desk quadrant"));
    now.say("flap_lever", Value::position(0));
    QVERIFY2(now.step.title().isEmpty(), "where a control was found is no movement");
    now.say("flap_lever", Value::position(2));
    QCOMPARE(now.step.title(), QString("Flap lever to 12"));
    now.say("parking_brake", Value::onOff(true));
    now.say("parking_brake", Value::onOff(false));
    QCOMPARE(now.step.title(), QString("Parking brake off"));
    QVERIFY(now.step.stepFor("").contains("done = \"not parking_brake\""));
    now.step.close();
    QVERIFY(!now.step.isOpen() && now.step.rigTitle().isEmpty());
    now.say("parking_brake", Value::onOff(true));
    QVERIFY(now.step.title().isEmpty());
}

void TestActedStep::noiseIsNoMovement() {
    Acting now;
    now.open();
    now.say("thrust_lever_1", Value::number(40.0));
    now.say("flap_lever", Value::position(0));
    now.say("flap_lever", Value::position(1));
    const QString flap = now.step.title();
    for (const double jitter : {40.4, 39.7, 40.9})
        now.say("thrust_lever_1", Value::number(jitter));
    QCOMPARE(now.step.title(), flap);
    now.say("thrust_lever_1", Value::number(55.0));
    QVERIFY2(now.step.title().startsWith("Thrust lever 1 to 55"), qPrintable(now.step.title()));
    now.say("thrust_lever_1", Value::number(56.0));
    QVERIFY2(now.step.title().startsWith("Thrust lever 1 to 56"), "the step is for where it stands");
}

void TestActedStep::betweenTwoGatesThereIsNoStep() {
    Acting now;
    now.open();
    now.say("flap_lever", Value::position(0));
    now.say("flap_lever", Value::between());
    QVERIFY(now.step.title().isEmpty() && now.step.stepFor("").isEmpty());
    now.say("flap_lever", Value::position(1));
    QCOMPARE(now.step.title(), QString("Flap lever to 4"));
}

void TestActedStep::whatTheRigHasIsMovedThere() {
    Acting now;
    now.open();
    const ControlState* const flap = now.step.panel()->controls()->find(now.signal("flap_lever"));
    const ControlState* const light = now.step.panel()->controls()->find(now.signal("taxi_light"));
    QVERIFY(flap->isMovable() && light->isMovable());
    now.say("flap_lever", Value::position(1));
    QVERIFY(!flap->isMovable() && light->isMovable());
    QCOMPARE(flap->raw(), Value::position(1));
    now.say("flap_lever", Value::unknown()); // unplugged
    QVERIFY(flap->isMovable());
    QCOMPARE(flap->raw(), Value::position(1));
}

void TestActedStep::aRigThatIsRefusedLeavesTheScreen() {
    Acting now;
    now.rigs.refusal = "this aircraft has no control 'flap_levr'";
    now.open();
    QVERIFY(now.step.isOpen());
    QVERIFY2(now.step.rigFailure().contains("flap_levr"), qPrintable(now.step.rigFailure()));
    now.step.panel()->put(now.step.panel()->controls()->find(now.signal("taxi_light")), 1.0);
    QCOMPARE(now.step.title(), QString("Taxi light on"));
}

void TestActedStep::realDevicesAreRead() {
    const QTemporaryDir folder;
    const std::string rigFile = folder.filePath("rig.toml").toStdString();
    QVERIFY(writeFile(rigFile, kRig));
    FakeHid hid;
    hid.plug(quadrantInfo(), bytesOf(kTwoAxes));
    LiveBenches benches(
        [] {
            return LibraryPtr();
        },
        rigFile, hid);
    test::StubDesk desk;
    ActedStep step(desk, benches);
    step.open(PROCEDURES "/twin_jet/taxi_out.toml");
    QTRY_COMPARE(step.rigTitle(), QString("Desk quadrant"));
    const auto lever = [&](int raw) {
        hid.send("q", {static_cast<std::uint8_t>(raw & 0xFF), static_cast<std::uint8_t>(raw >> 8), 0, 0});
    };
    lever(0);
    hid.waitUntilRead("q");
    const auto isFound = [&] {
        for (const ControlState* control : step.panel()->controls()->all())
            if (control->name() == "thrust_lever_1")
                return !control->isMovable();
        return false;
    };
    QTRY_VERIFY(isFound());
    lever(32768);
    QTRY_VERIFY2(step.title().startsWith("Thrust lever 1 to 50"), qPrintable(step.title()));
    QVERIFY(step.stepFor("").contains("done = \"thrust_lever_1 > "));
    step.close();
    QCOMPARE(hid.opens("q"), 1);
}

QTEST_MAIN(TestActedStep)
#include "test_actedstep.moc"
