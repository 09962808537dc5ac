#include <QtTest>

#include <limits>

#include "cockpit.h"
#include "condition/monitor.h"

using namespace flowhand;
using namespace std::chrono_literals;

namespace {

constexpr double kInfinity = std::numeric_limits<double>::infinity();

/// One condition in a cockpit that is watched from time 0 on.
struct Watching {
    explicit Watching(const std::string& text) : monitor(cockpit.table), id(monitor.add(cockpit.condition(text))) {
        for (const SignalId lever : {cockpit.lever1, cockpit.lever2, cockpit.tiller, cockpit.speed, cockpit.airspeed})
            monitor.set(lever, Value::number(0));
        for (const SignalId lever : {cockpit.brake, cockpit.light})
            monitor.set(lever, Value::onOff(false));
        monitor.set(cockpit.flap, Value::position(0));
        settle(0s);
    }
    void settle(Time time) {
        changes.clear();
        monitor.settle(time, changes);
    }
    void set(SignalId signal, Value value, Time time) {
        monitor.set(signal, value);
        settle(time);
    }
    Truth truth() const { return monitor.truth(id); }

    Cockpit cockpit;
    Monitor monitor;
    MonitorId id;
    std::vector<TruthChange> changes;
};

} // namespace

class TestMonitor : public QObject {
    Q_OBJECT
private Q_SLOTS:
    void isUnknownUntilSettled() {
        Cockpit cockpit;
        Monitor monitor(cockpit.table);
        const MonitorId id = monitor.add(cockpit.condition("taxi_light"));
        monitor.set(cockpit.light, Value::onOff(true));
        QVERIFY(monitor.truth(id) == Truth::Unknown);
        std::vector<TruthChange> changes;
        monitor.settle(5s, changes);
        QVERIFY(monitor.truth(id) == Truth::True);
        QCOMPARE(changes.size(), std::size_t{1});
        QVERIFY(changes[0].time == 5s);
    }

    void changesByTimeAlone() {
        Watching watching("held(taxi_light, 2 s)");
        watching.set(watching.cockpit.light, Value::onOff(true), 1s);
        QVERIFY(watching.monitor.nextTimer() == 3s);
        watching.settle(10s);
        QCOMPARE(watching.changes.size(), std::size_t{1});
        QVERIFY(watching.changes[0].time == 3s);
        QVERIFY(watching.changes[0].truth == Truth::True);
        QVERIFY(watching.monitor.nextTimer() == kForever);
    }

    void servesTimersBeforeLaterSamples() {
        Watching watching("held(taxi_light, 2 s)");
        watching.set(watching.cockpit.light, Value::onOff(true), 1s);
        watching.set(watching.cockpit.light, Value::onOff(false), 3s + 1ns);
        QCOMPARE(watching.changes.size(), std::size_t{2});
        QVERIFY(watching.changes[0].time == 3s);
        QVERIFY(watching.changes[1].time == 3s + 1ns);
    }

    void tellsInstants() {
        Watching watching("rise(taxi_light)");
        watching.set(watching.cockpit.light, Value::onOff(true), 1s);
        QCOMPARE(watching.changes.size(), std::size_t{1});
        QVERIFY(watching.changes[0].isPoint);
        QVERIFY(watching.changes[0].truth == Truth::True);
        QVERIFY(watching.truth() == Truth::True);
        QVERIFY(watching.monitor.nextTimer() == kForever);
        watching.settle(2s);
        QVERIFY(watching.changes.empty());
        QVERIFY(watching.truth() == Truth::False);
    }

    void tellsClosedEnds() {
        Watching watching("once(rise(taxi_light), 1 s .. 2 s)");
        watching.set(watching.cockpit.light, Value::onOff(true), 1s);
        watching.settle(3s);
        QVERIFY(watching.truth() == Truth::True); // the end belongs to the window
        QCOMPARE(watching.changes.size(), std::size_t{2});
        QVERIFY(watching.changes[0].time == 2s && !watching.changes[0].isAfter);
        QVERIFY(watching.changes[1].time == 3s && watching.changes[1].isAfter);
        watching.settle(3s + 1ns);
        QVERIFY(watching.truth() == Truth::False);
    }

    void startsAgainAtTheReferenceTime() {
        Watching watching("held(taxi_light, 2 s) and moved(tiller, 10 deg)");
        watching.monitor.set(watching.cockpit.tiller, Value::number(20));
        watching.set(watching.cockpit.light, Value::onOff(true), 1s);
        watching.settle(4s);
        QVERIFY(watching.truth() == Truth::True);
        watching.monitor.setReference(watching.id, 4s);
        watching.settle(4s);
        QVERIFY(watching.truth() == Truth::False);
        QVERIFY(watching.changes.back().time == 4s);
        watching.set(watching.cockpit.tiller, Value::number(29), 5s);
        watching.settle(6s);
        QVERIFY(watching.truth() == Truth::False);
        watching.set(watching.cockpit.tiller, Value::number(19), 7s); // 29 - 19 = 10
        QVERIFY(watching.truth() == Truth::True);
    }

    void takesAReferenceTimeToCome() {
        Watching watching("moved(tiller, 10 deg)");
        watching.monitor.setReference(watching.id, 5s);
        QVERIFY(watching.monitor.nextTimer() == 5s);
        watching.set(watching.cockpit.tiller, Value::number(20), 1s);
        QVERIFY(watching.truth() == Truth::True);
        watching.settle(8s);
        QVERIFY(watching.truth() == Truth::False);
        QVERIFY(watching.changes[0].time == 5s);
    }

    /// One row a condition: what it is when all begins anew at 4 s with the light off and the tiller at 30 deg, where
    /// the light was on until then and the tiller at 0. Each would be true if it looked back.
    void looksBackAtNothingAfterItBegins_data() {
        QTest::addColumn<QString>("text");
        QTest::newRow("once") << "once(taxi_light, 0 s .. 10 s)";
        QTest::newRow("rise") << "rise(not taxi_light)";
        QTest::newRow("moved") << "moved(tiller, 10 deg)";
        QTest::newRow("held") << "held(tiller < 40 deg, 2 s)";
        QTest::newRow("since") << "since(tiller > -5 deg, taxi_light)";
    }
    void looksBackAtNothingAfterItBegins() {
        QFETCH(QString, text);
        for (const bool isAnew : {true, false}) {
            Watching watching(text.toStdString());
            watching.set(watching.cockpit.light, Value::onOff(true), 1s);
            watching.settle(4s);
            if (isAnew)
                watching.monitor.beginAnew();
            watching.monitor.set(watching.cockpit.tiller, Value::number(30));
            watching.set(watching.cockpit.light, Value::onOff(false), 4s);
            QVERIFY(watching.truth() == (isAnew ? Truth::False : Truth::True));
        }
    }

    /// What was reported before is reported again only where it is no longer so.
    void reportsWhatIsNoLongerSoWhenItBeginsAnew() {
        Watching watching("tiller > 20 deg");
        watching.set(watching.cockpit.tiller, Value::number(30), 1s);
        watching.monitor.beginAnew();
        watching.settle(2s);
        QVERIFY(watching.changes.empty());
        watching.monitor.beginAnew();
        watching.set(watching.cockpit.tiller, Value::number(10), 2s);
        QCOMPARE(watching.changes.size(), std::size_t{1});
        QVERIFY(watching.changes[0].time == 2s && watching.changes[0].truth == Truth::False);
        watching.set(watching.cockpit.tiller, Value::number(25), 3s);
        QVERIFY(watching.truth() == Truth::True);
    }

    /// Just after 4 s the operand falls by itself and is true again through the new reference time: it never ended.
    void keepsAStretchThatOneInstantWouldEnd() {
        Watching watching("held(rise(parking_brake) or not held(taxi_light, 2 s), 1 s)");
        watching.set(watching.cockpit.light, Value::onOff(true), 2s);
        watching.set(watching.cockpit.brake, Value::onOff(true), 4s);
        watching.monitor.setReference(watching.id, 4s);
        watching.settle(4s);
        QVERIFY(watching.monitor.nextTimer() == 5s);
        watching.settle(5s);
        QVERIFY(watching.truth() == Truth::True);
    }

    void takesSimultaneousChangesAsOne() {
        Watching watching("once(taxi_light) or rise(parking_brake and not taxi_light)");
        watching.monitor.set(watching.cockpit.light, Value::onOff(true)); // a pulse of no width
        watching.monitor.set(watching.cockpit.light, Value::onOff(false));
        watching.settle(1s);
        QVERIFY(watching.truth() == Truth::False);
    }

    void takesALateValueJustAfter() {
        Watching watching("rise(taxi_light)");
        watching.settle(1s);
        watching.set(watching.cockpit.light, Value::onOff(true), 1s);
        QVERIFY(watching.truth() == Truth::True);
        QVERIFY(watching.changes.at(0).time == 1s);
        watching.set(watching.cockpit.light, Value::onOff(false), 500ms); // an earlier time counts as the last one
        QVERIFY(watching.truth() == Truth::False);
        watching.set(watching.cockpit.light, Value::onOff(true), 2s);
        QVERIFY(watching.changes.at(0).time == 2s);
    }

    void takesNumbersThatAreNotFiniteAsUnknown() {
        Watching watching("airspeed > 30 kt");
        watching.set(watching.cockpit.airspeed, Value::number(kInfinity), 1s);
        QVERIFY(watching.truth() == Truth::Unknown);
        watching.set(watching.cockpit.airspeed, Value::number(40), 2s);
        QVERIFY(watching.truth() == Truth::True);
        watching.set(watching.cockpit.airspeed, Value::number(std::numeric_limits<double>::quiet_NaN()), 3s);
        QVERIFY(watching.truth() == Truth::Unknown);
    }

    void divisionByZeroIsUnknown() {
        Watching watching("airspeed / ground_speed > 2");
        QVERIFY(watching.truth() == Truth::Unknown);
        watching.set(watching.cockpit.speed, Value::number(10), 1s);
        QVERIFY(watching.truth() == Truth::False);
    }

    void betweenIsNoPositionAndHasNoOrder() {
        Watching watching("flap_lever == up");
        const auto add = [&](const char* text) {
            return watching.monitor.add(watching.cockpit.condition(text));
        };
        const MonitorId differs = add("flap_lever != 12");
        const MonitorId less = add("flap_lever < 34");
        const MonitorId more = add("flap_lever >= up");
        const MonitorId same = add("flap_lever == standby_flap_lever");
        watching.monitor.set(watching.cockpit.secondFlap, Value::between());
        watching.set(watching.cockpit.flap, Value::between(), 1s);
        QVERIFY(watching.truth() == Truth::False);
        QVERIFY(watching.monitor.truth(differs) == Truth::True);
        QVERIFY(watching.monitor.truth(less) == Truth::False);
        QVERIFY(watching.monitor.truth(more) == Truth::False);
        QVERIFY(watching.monitor.truth(same) == Truth::False);
    }

    /// At the constant itself the margin is 0 for both truths, and the truth decides.
    void marginIsZeroAtTheConstant() {
        for (const auto& [text, truth] : {std::pair("airspeed < 50 kt", Truth::False),
                                          {"airspeed <= 50 kt", Truth::True},
                                          {"airspeed == 50 kt", Truth::True},
                                          {"not (airspeed != 50 kt)", Truth::True},
                                          {"not (airspeed <= 50 kt)", Truth::False}}) {
            Watching watching(text);
            watching.set(watching.cockpit.airspeed, Value::number(50), 1s);
            QVERIFY(watching.truth() == truth);
            QCOMPARE(watching.monitor.margin(watching.id).value, 0.0);
            QVERIFY(!std::signbit(watching.monitor.margin(watching.id).value));
        }
    }

    void marginIsInTheUnitOfTheSignal() {
        Watching watching("airspeed < 10 m/s");
        watching.set(watching.cockpit.airspeed, Value::number(10), 1s);
        const Margin margin = watching.monitor.margin(watching.id);
        QVERIFY(margin.signal == watching.cockpit.airspeed);
        QCOMPARE(margin.value, 10 / (1852.0 / 3600) - 10);
    }

    /// Tiller: 14 of a scale of 140 deg; speed: 60 of 200 kt. The smaller share decides, in its own unit.
    void marginsOfDifferentUnitsAreComparedByScale() {
        Watching watching("abs(tiller) < 20 deg and ground_speed < 80 kt");
        watching.monitor.set(watching.cockpit.speed, Value::number(20));
        watching.set(watching.cockpit.tiller, Value::number(-6), 1s);
        QVERIFY(watching.monitor.margin(watching.id).signal == watching.cockpit.tiller);
        QCOMPARE(watching.monitor.margin(watching.id).value, 14.0);
        watching.set(watching.cockpit.speed, Value::number(78), 2s);
        QVERIFY(watching.monitor.margin(watching.id).signal == watching.cockpit.speed);
        QCOMPARE(watching.monitor.margin(watching.id).value, 2.0);
    }

    void onOffHasNoFiniteMargin() {
        Watching watching("taxi_light or flap_lever == 12");
        QCOMPARE(watching.monitor.margin(watching.id).value, -kInfinity);
        watching.set(watching.cockpit.light, Value::onOff(true), 1s);
        QCOMPARE(watching.monitor.margin(watching.id).value, kInfinity);
        QVERIFY(watching.monitor.margin(watching.id).signal == kNoSignal);
    }

    void marginOfHeldIsTheLeastOfItsTime() {
        Watching watching("held(airspeed > 100 kt, 2 s)");
        watching.set(watching.cockpit.airspeed, Value::number(103), 1s);
        watching.set(watching.cockpit.airspeed, Value::number(120), 2s);
        watching.settle(3s);
        QCOMPARE(watching.monitor.margin(watching.id).value, 3.0);
        watching.settle(4s);
        QCOMPARE(watching.monitor.margin(watching.id).value, 20.0);
    }

    void placesAreUsedAgain() {
        Watching watching("taxi_light");
        watching.monitor.remove(watching.id);
        const MonitorId held = watching.monitor.add(watching.cockpit.condition("held(parking_brake, 1 s)"));
        watching.set(watching.cockpit.brake, Value::onOff(true), 1s);
        watching.monitor.remove(held);
        QVERIFY(watching.monitor.nextTimer() == kForever);
        const MonitorId again = watching.monitor.add(watching.cockpit.condition("parking_brake"));
        QVERIFY(again == watching.id);
        watching.settle(9s);
        QCOMPARE(watching.changes.size(), std::size_t{1});
        QVERIFY(watching.changes[0].which == again && watching.changes[0].time == 1s);
    }

    /// What is added while the run goes on looks back no further than that.
    void watchesFromTheTimeReached() {
        Watching watching("taxi_light");
        watching.set(watching.cockpit.brake, Value::onOff(true), 1s);
        watching.set(watching.cockpit.brake, Value::onOff(false), 2s);
        const MonitorId once = watching.monitor.add(watching.cockpit.condition("once(parking_brake, 60 s)"));
        const MonitorId held = watching.monitor.add(watching.cockpit.condition("held(not parking_brake, 3 s)"));
        watching.settle(4s);
        QVERIFY(watching.monitor.truth(once) == Truth::False);
        QVERIFY(watching.monitor.truth(held) == Truth::False);
        watching.settle(5s);
        QVERIFY(watching.monitor.truth(held) == Truth::True);
    }

    void sequenceNeedsOneAfterTheOther() {
        Watching watching("sequence(taxi_light, parking_brake, 2 s)");
        watching.monitor.set(watching.cockpit.light, Value::onOff(true));
        watching.set(watching.cockpit.brake, Value::onOff(true), 1s); // at one moment there is no order
        QVERIFY(watching.truth() == Truth::False);
        watching.set(watching.cockpit.brake, Value::onOff(false), 2s);
        watching.set(watching.cockpit.brake, Value::onOff(true), 3s); // 2 s after the light: no later than the gap
        QVERIFY(watching.truth() == Truth::True);
        watching.set(watching.cockpit.brake, Value::onOff(false), 3s + 1us);
        watching.set(watching.cockpit.brake, Value::onOff(true), 3s + 2us);
        QVERIFY(watching.truth() == Truth::False);
    }
};

QTEST_APPLESS_MAIN(TestMonitor)
#include "test_monitor.moc"
