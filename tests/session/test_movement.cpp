#include <QtTest>
#include <rapidcheck.h>

#include <cmath>

#include "session/bench.h"
#include "session/holdclock.h"
#include "session/movement.h"

using namespace flowhand;
using namespace flowhand::test;
using namespace std::chrono_literals;

namespace {

SignalId id(const char* name) {
    return *cockpit().signals.find(name);
}

/// One control's changes and what settles, as "BEGAN-ARRIVED:FROM>TO@SETTLED" in milliseconds.
class Watch {
public:
    explicit Watch(const char* control, Value rest, std::vector<ControlFacts> facts = {})
        : m_control(id(control)), m_detector(cockpit(), facts, 1.0) {
        m_detector.restAt(m_control, rest);
    }
    void at(int millis, Value value, Actor actor = Actor::Hand) {
        until(millis);
        (void)m_detector.take(millis * 1ms, m_control, value, actor, kNoControl);
        settle(millis * 1ms);
    }
    std::string until(int millis) {
        while (m_detector.nextTimer() < millis * 1ms)
            settle(m_detector.nextTimer());
        return m_text;
    }
    MovementDetector& detector() { return m_detector; }
    [[nodiscard]] SignalId control() const { return m_control; }

private:
    static std::string millis(Time time) { return std::to_string(time / 1ms); }
    void settle(Time time) {
        std::vector<ControlMovement> settled;
        m_detector.settle(time, settled);
        const Signal& signal = cockpit().signals[m_control];
        for (const ControlMovement& movement : settled)
            m_text += (m_text.empty() ? "" : " ") + millis(movement.began) + "-" + millis(movement.arrived) + ":" +
                      valueText(signal, movement.from) + ">" + valueText(signal, movement.to) + "@" + millis(time);
    }
    SignalId m_control;
    MovementDetector m_detector;
    std::string m_text;
};

std::vector<ControlFacts> noisy(double sigma, double range) {
    std::vector<ControlFacts> facts(cockpit().controls.size());
    for (ControlFacts& fact : facts) {
        fact.sigma = sigma;
        fact.range = range;
    }
    return facts;
}

Value number(double value) {
    return Value::number(value);
}

} // namespace

/// The cases are those of the table in session/movement.h.
class TestMovement : public QObject {
    Q_OBJECT

private Q_SLOTS:
    void case1WithinTheThresholdIsRest();
    void case2And4LeavesRestAndSettles();
    void case3GoesOn();
    void case5ContactsSettleAfterTheirLastChange();
    void case6GatesAreSelectedByDwelling();
    void case7BetweenGatesNothingSettles();
    void case8And9Buttons();
    void case10FirstReport();
    void case11OtherActor();
    void case12Machine();
    void noiseSetsTheThreshold();
    void noiseAtRestIsNoMovement();
    void rangeAndInversionChangeNothing();
    void heldClockStands();
};

void TestMovement::case1WithinTheThresholdIsRest() {
    Watch watch("thrust_lever_1", number(50));
    watch.at(100, number(51));
    watch.at(200, number(49));
    QCOMPARE(watch.until(5000), std::string());
    QVERIFY(watch.detector().nextTimer() == kForever);
}

void TestMovement::case2And4LeavesRestAndSettles() {
    Watch watch("thrust_lever_1", number(50));
    watch.at(100, number(51.5));
    QVERIFY(watch.detector().moving(watch.control()) != nullptr);
    QCOMPARE(watch.until(400), std::string());
    QCOMPARE(watch.until(401), std::string("100-100:50 %>52 %@400"));
    QVERIFY(watch.detector().moving(watch.control()) == nullptr);
}

void TestMovement::case3GoesOn() {
    Watch watch("thrust_lever_1", number(0));
    for (int i = 1; i <= 10; ++i)
        watch.at(i * 100, number(i * 5));
    watch.at(1100, number(50.4)); // within 1 % of where it arrived
    QCOMPARE(watch.until(5000), std::string("100-1000:0 %>50 %@1300"));
}

void TestMovement::case5ContactsSettleAfterTheirLastChange() {
    Watch watch("taxi_light", Value::onOff(false));
    watch.at(100, Value::onOff(true));
    watch.at(110, Value::onOff(false));
    watch.at(120, Value::onOff(true));
    QCOMPARE(watch.until(5000), std::string("100-120:off>on@420"));
}

void TestMovement::case6GatesAreSelectedByDwelling() {
    Watch watch("flap_lever", Value::position(0));
    watch.at(100, Value::between());
    watch.at(200, Value::position(1));
    watch.at(600, Value::between());
    watch.at(700, Value::position(2));
    QCOMPARE(watch.until(5000), std::string("100-700:up>12@1200"));
}

void TestMovement::case7BetweenGatesNothingSettles() {
    Watch watch("flap_lever", Value::position(0));
    watch.at(100, Value::between());
    QCOMPARE(watch.until(60'000), std::string());
    watch.at(60'000, Value::position(0));
    QCOMPARE(watch.until(70'000), std::string("100-60000:up>up@60500"));
}

void TestMovement::case8And9Buttons() {
    Watch watch("reply_button", Value::onOff(false));
    watch.at(100, Value::onOff(true));
    watch.at(150, Value::onOff(false));
    watch.at(200, Value::onOff(true));
    QCOMPARE(watch.until(5000), std::string("100-100:off>on@100 200-200:off>on@200"));
}

void TestMovement::case10FirstReport() {
    Watch watch("taxi_light", Value::unknown());
    watch.at(100, Value::onOff(true));
    QCOMPARE(watch.until(5000), std::string("100-100:not known yet>on@400"));
}

void TestMovement::case11OtherActor() {
    Watch watch("thrust_lever_1", number(0));
    watch.at(100, number(50));
    watch.at(200, number(80), Actor::Partner);
    QVERIFY(watch.detector().moving(watch.control())->actor == Actor::Partner);
    QCOMPARE(watch.until(5000), std::string("200-200:0 %>80 %@500"));
}

void TestMovement::case12Machine() {
    Watch watch("thrust_lever_1", number(0));
    watch.at(100, number(50));
    watch.at(200, number(80), Actor::Machine);
    QCOMPARE(watch.until(5000), std::string());
    watch.at(6000, number(80.5));
    QCOMPARE(watch.until(7000), std::string()); // it rests there
}

void TestMovement::noiseSetsTheThreshold() {
    Watch watch("thrust_lever_1", number(50), noisy(0.5, 100)); // 6 sigmas are 3 %
    watch.at(100, number(53));
    QCOMPARE(watch.until(1000), std::string());
    watch.at(1000, number(53.01));
    QCOMPARE(watch.until(2000), std::string("1000-1000:50 %>53 %@1300"));
}

void TestMovement::noiseAtRestIsNoMovement() {
    const bool holds = rc::check("noise of 3 sigmas either way is no movement", [] {
        Watch watch("thrust_lever_1", number(50), noisy(0.4, 100));
        for (int i = 1; i <= 50; ++i)
            watch.at(i * 10, number(50.0 + *rc::gen::inRange(-12, 13) * 0.1));
        RC_ASSERT(watch.until(5000).empty());
    });
    QVERIFY(holds);
}

/// The same hand on an axis of another range, or wired the other way round, moves at the same times.
void TestMovement::rangeAndInversionChangeNothing() {
    const bool holds = rc::check("range and inversion change no movement", [] {
        const double scale = *rc::gen::element(1.0, -1.0, 1.4, 0.02);
        std::vector<ControlFacts> facts = noisy(0.0, 100);
        std::vector<ControlFacts> others = noisy(0.0, 100 * std::fabs(scale));
        Watch one("tiller", number(0), facts);
        Watch other("tiller", number(0), others);
        int time = 0;
        for (int i = 0; i < 30; ++i) {
            time += *rc::gen::inRange(1, 500);
            // Off the threshold itself, where the last digit would decide.
            const double place = *rc::gen::inRange(-40, 41) * 0.7 + 0.1;
            one.at(time, number(place));
            other.at(time, number(place * scale));
            RC_ASSERT((one.detector().moving(one.control()) == nullptr) ==
                      (other.detector().moving(other.control()) == nullptr));
            RC_ASSERT(one.detector().nextTimer() == other.detector().nextTimer());
        }
    });
    QVERIFY(holds);
}

void TestMovement::heldClockStands() {
    HoldClock clock;
    clock.hold(10s);
    QVERIFY(clock.isHeld());
    clock.resume(25s);
    QCOMPARE(clock.toRun(25s), Time(10s) + kTick);
    QCOMPARE(clock.fromRun(Time(10s)), Time(10s));
    QCOMPARE(clock.fromRun(Time(10s) + kTick), Time(25s));
    QCOMPARE(clock.fromRun(clock.toRun(40s)), Time(40s));
    clock.hold(30s);
    clock.resume(31s);
    QCOMPARE(clock.fromRun(clock.toRun(40s)), Time(40s));
    QCOMPARE(clock.fromRun(Time(5s)), Time(5s));
    QCOMPARE(clock.fromRun(kForever), kForever);
}

QTEST_APPLESS_MAIN(TestMovement)
#include "test_movement.moc"
