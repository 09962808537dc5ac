// What a feed's messages become on their way to the session, told the time.

#include <QtTest>
#include <rapidcheck.h>

#include "feed/feedsignals.h"
#include "feed/intake.h"

using namespace flowhand;
using namespace std::chrono_literals;

namespace {

SignalId id(const char* name) {
    return *signalTable().find(name);
}

struct Feeding {
    FeedIntake intake{feedSignals()};
    FeedTally tally;
    std::vector<FeedChange> changes;
    std::vector<FeedNotice> notices;

    void say(Time now, const char* name, Value value, std::optional<Duration> own = std::nullopt,
             bool isTimeOfDay = false) {
        intake.take(now, {{{id(name), value}}, own, isTimeOfDay}, tally, changes, notices);
    }
    void say(Time now, const char* name, double number, std::optional<Duration> own = std::nullopt) {
        say(now, name, Value::number(number), own);
    }
    void pass(Time now) { intake.pass(now, changes, notices); }
    Value value(const char* name) const { return intake.values()[indexOf(id(name))]; }
};

} // namespace

class TestIntake : public QObject {
    Q_OBJECT

private Q_SLOTS:
    void valuesAreFittedOrRefused_data();
    void valuesAreFittedOrRefused();
    void changesComeNoFasterThanTheyAreUsed();
    void whatIsNotSaidAnyMoreIsUnknown();
    void aSilentFeedIsLostOnce();
    void itIsHeardAgainWhenAllIsSaidAgain();
    void aFeedThatOnlyStirsIsNotHeard();
    void clocks_data();
    void clocks();
    void aNewClockIsTakenOver();
    void oneForgedTimeKeepsNoneOut();
    void delayIsMeasuredFromTheQuickest();
    void rateIsOfTheLastSeconds();
    void anyMessagesKeepTheBounds();
};

void TestIntake::valuesAreFittedOrRefused_data() {
    QTest::addColumn<QString>("signal");
    QTest::addColumn<double>("said");
    QTest::addColumn<double>("taken"); // NaN: refused
    const double none = std::numeric_limits<double>::quiet_NaN();
    const double infinity = std::numeric_limits<double>::infinity();
    QTest::newRow("rounded to a thousandth of the scale") << "airspeed" << 82.4499 << 82.4;
    QTest::newRow("feet") << "altitude" << 1789.37 << 1789.0;
    QTest::newRow("no negative zero") << "vertical_speed" << -0.3 << 0.0;
    QTest::newRow("a little below the range") << "airspeed" << -0.2 << 0.0;
    QTest::newRow("a little above it") << "airspeed" << 504.0 << 500.0;
    QTest::newRow("far below") << "airspeed" << -6.0 << none;
    QTest::newRow("far above") << "ground_speed" << 2016.0 << none;
    QTest::newRow("infinite") << "airspeed" << infinity << none;
    QTest::newRow("minus infinite") << "airspeed" << -infinity << none;
    QTest::newRow("huge") << "altitude" << 1e300 << none;
    QTest::newRow("north") << "heading" << 360.0 << 0.0;
    QTest::newRow("nearly north") << "heading" << 359.999 << 0.0;
    QTest::newRow("west") << "heading" << -90.0 << 270.0;
    QTest::newRow("more than a turn") << "heading" << 361.0 << 360.0;
    QTest::newRow("turned too often") << "heading" << 400.0 << none;
}

void TestIntake::valuesAreFittedOrRefused() {
    QFETCH(QString, signal);
    QFETCH(double, said);
    QFETCH(double, taken);
    Feeding feeding;
    const QByteArray name = signal.toUtf8();
    feeding.say(1s, name.constData(), said);
    QCOMPARE(feeding.tally.refused, std::uint64_t(std::isnan(taken) ? 1 : 0));
    QCOMPARE(feeding.changes.size(), std::size_t(std::isnan(taken) ? 0 : 1));
    if (std::isnan(taken))
        return;
    QCOMPARE(feeding.changes[0].value.number(), taken);
    QVERIFY(!std::signbit(feeding.changes[0].value.number()));
}

/// A flood of changes: one each 20 ms, and the last one in any case.
void TestIntake::changesComeNoFasterThanTheyAreUsed() {
    Feeding feeding;
    for (int i = 0; i < 1000; ++i) // a second, at 1 kHz
        feeding.say(1s + i * 1ms, "altitude", double(i));
    QCOMPARE(feeding.changes.size(), std::size_t(50));
    feeding.pass(2s);
    QCOMPARE(feeding.changes.back().value, Value::number(999.0));
    const std::size_t before = feeding.changes.size();
    for (int i = 0; i < 100; ++i)
        feeding.say(2s + i * 10ms, "altitude", 999.0);
    QCOMPARE(feeding.changes.size(), before);
}

void TestIntake::whatIsNotSaidAnyMoreIsUnknown() {
    Feeding feeding;
    feeding.say(1s, "airspeed", 80.0);
    for (int i = 0; i < 40; ++i)
        feeding.say(1s + i * 100ms, "altitude", 500.0);
    QVERIFY(!feeding.value("airspeed").isKnown());
    QVERIFY(feeding.value("altitude").isKnown());
    QCOMPARE(feeding.changes.back().signal, id("airspeed"));
    QVERIFY(!feeding.changes.back().value.isKnown());
    QCOMPARE(feeding.changes.back().time, Time(1s + FeedIntake::kLostAfter));
    feeding.say(5s, "altitude", Value::unknown());
    QVERIFY(!feeding.value("altitude").isKnown());
}

void TestIntake::aSilentFeedIsLostOnce() {
    Feeding feeding;
    for (Time time = 1s; time <= 4s; time += 1s)
        feeding.say(time, "airspeed", 80.0);
    QCOMPARE(feeding.notices.size(), std::size_t(1));
    QVERIFY(feeding.notices[0].news == FeedNews::Heard);
    QCOMPARE(feeding.notices[0].time, Time(1s + FeedIntake::kListenFor));
    feeding.pass(4s + FeedIntake::kLostAfter - kTick);
    QVERIFY(feeding.intake.isHeard());
    for (int i = 0; i < 100; ++i) {
        feeding.pass(4s + FeedIntake::kLostAfter + i * 100ms);
        feeding.intake.take(8s + i * 100ms, {{}, std::nullopt, false}, feeding.tally, feeding.changes,
                            feeding.notices); // speaks, but not of motion
    }
    QCOMPARE(feeding.notices.size(), std::size_t(2));
    QVERIFY(feeding.notices[1].news == FeedNews::Lost);
    QCOMPARE(feeding.notices[1].time, Time(4s + FeedIntake::kLostAfter));
    QVERIFY(!feeding.value("airspeed").isKnown());
}

void TestIntake::itIsHeardAgainWhenAllIsSaidAgain() {
    Feeding feeding;
    for (Time time = 1s; time <= 4s; time += 1s) {
        feeding.say(time, "airspeed", 80.0);
        feeding.say(time, "altitude", 100.0);
    }
    feeding.pass(10s);
    feeding.notices.clear();
    feeding.changes.clear();
    feeding.say(11s, "airspeed", 80.0); // the same as before the loss, and news again
    QCOMPARE(feeding.changes.size(), std::size_t(1));
    QVERIFY(feeding.notices.empty());
    feeding.say(11s + 200ms, "altitude", 100.0);
    QCOMPARE(feeding.notices.size(), std::size_t(1));
    QCOMPARE(feeding.notices[0].time, Time(11s + 200ms));

    feeding.pass(20s);
    feeding.notices.clear();
    for (Time time = 21s; time <= 23s; time += 500ms) // one signal for good
        feeding.say(time, "airspeed", 80.0);
    QCOMPARE(feeding.notices.size(), std::size_t(1));
    QCOMPARE(feeding.notices[0].time, Time(21s + FeedIntake::kListenFor));
}

void TestIntake::aFeedThatOnlyStirsIsNotHeard() {
    Feeding feeding;
    for (int i = 0; i < 10; ++i)
        feeding.say(1s + i * 10s, "airspeed", 80.0);
    feeding.pass(200s);
    QVERIFY(feeding.notices.empty());
    QVERIFY(!feeding.changes.back().value.isKnown());
}

void TestIntake::clocks_data() {
    QTest::addColumn<bool>("isTimeOfDay");
    QTest::addColumn<QList<double>>("own"); // one a second
    QTest::addColumn<int>("refused");
    QTest::newRow("goes on") << false << QList<double>{5, 6, 7, 8} << 0;
    QTest::newRow("stands") << false << QList<double>{5, 5, 5, 5} << 0;
    QTest::newRow("overtaken") << false << QList<double>{5, 7, 6, 8} << 1;
    QTest::newRow("ahead by a second") << false << QList<double>{5, 7, 8, 10} << 0;
    QTest::newRow("ahead beyond reason, once") << false << QList<double>{5, 1000, 7, 8} << 1;
    QTest::newRow("midnight") << true << QList<double>{86398, 86399, 0, 1} << 0;
    QTest::newRow("overtaken at midnight") << true << QList<double>{86399, 0, 86399.5, 1} << 1;
    QTest::newRow("midnight without time of day") << false << QList<double>{86398, 86399, 0, 86401} << 1;
}

void TestIntake::clocks() {
    QFETCH(bool, isTimeOfDay);
    QFETCH(QList<double>, own);
    Feeding feeding;
    for (int i = 0; i < own.size(); ++i)
        feeding.say(100s + i * 1s, "airspeed", Value::number(i), fromSeconds(own[i]), isTimeOfDay);
    QTEST(int(feeding.tally.backwards), "refused");
    QCOMPARE(int(feeding.tally.messages), int(own.size() - feeding.tally.backwards));
}

void TestIntake::aNewClockIsTakenOver() {
    Feeding feeding;
    feeding.say(100s, "airspeed", 80.0, 5000s);
    for (int i = 1; i <= 20; ++i) // the sender began again
        feeding.say(100s + i * 100ms, "airspeed", 80.0 + i, i * 100ms);
    QCOMPARE(feeding.tally.backwards, std::uint64_t(10)); // for kNewClockAfter
    QCOMPARE(feeding.value("airspeed"), Value::number(100.0));
    QCOMPARE(*feeding.intake.clock().own(), Duration(2s));
}

void TestIntake::oneForgedTimeKeepsNoneOut() {
    Feeding feeding;
    for (int i = 0; i < 100; ++i) {
        feeding.say(100s + i * 100ms, "airspeed", i, i * 100ms);
        feeding.say(100s + i * 100ms + 50ms, "airspeed", 499.0, 1'000'000s + i * 100ms);
    }
    QCOMPARE(feeding.tally.messages, std::uint64_t(100));
    QCOMPARE(feeding.tally.backwards, std::uint64_t(100));
    for (const FeedChange& change : feeding.changes)
        QVERIFY(change.value.number() < 100.0);
}

void TestIntake::delayIsMeasuredFromTheQuickest() {
    Feeding feeding;
    QVERIFY(!feeding.intake.clock().delay());
    for (int i = 0; i < 20; ++i)
        feeding.say(100s + i * 1s + (i % 2) * 30ms, "airspeed", 80.0, i * 1s);
    QCOMPARE(*feeding.intake.clock().delay(), Duration(30ms));
    for (int i = 20; i < 40; ++i)
        feeding.say(100s + i * 1s, "airspeed", 80.0, i * 1s);
    QCOMPARE(*feeding.intake.clock().delay(), Duration::zero());
    // A way that has become slower for good is the measure after a minute at the latest.
    for (int i = 40; i < 105; ++i)
        feeding.say(101s + i * 1s, "airspeed", 80.0, i * 1s);
    QCOMPARE(*feeding.intake.clock().delay(), Duration::zero());
}

void TestIntake::rateIsOfTheLastSeconds() {
    Feeding feeding;
    for (int i = 0; i < 200; ++i)
        feeding.say(10s + i * 50ms, "airspeed", i);
    QCOMPARE(feeding.intake.rate(20s), 20.0);
    QCOMPARE(feeding.intake.rate(22s), 12.0); // two of the five seconds were silent
    QCOMPARE(feeding.intake.rate(40s), 0.0);
}

void TestIntake::anyMessagesKeepTheBounds() {
    QVERIFY(rc::check("times never go back, values are in range and news, notices alternate", [] {
        Feeding feeding;
        Time now{};
        const int count = *rc::gen::inRange(1, 200);
        for (int i = 0; i < count; ++i) {
            now += Duration(*rc::gen::weightedOneOf<std::int64_t>({{20, rc::gen::inRange<std::int64_t>(0, 100'000'000)},
                                                                   {1, rc::gen::just<std::int64_t>(4'000'000'000)}}));
            const auto signal = SignalId(*rc::gen::inRange<std::uint32_t>(1, std::uint32_t(signalTable().size())));
            const bool isNumber = signalTable()[signal].kind == SignalKind::Number;
            const Value value = isNumber ? Value::number(*rc::gen::inRange(-50'000, 50'000)) : Value::onOff(true);
            const auto own = Duration(*rc::gen::inRange<std::int64_t>(0, 20'000'000'000));
            feeding.intake.take(now, {{{signal, value}}, own, false}, feeding.tally, feeding.changes, feeding.notices);
        }
        RC_ASSERT(feeding.tally.messages + feeding.tally.backwards == std::uint64_t(count));
        std::vector<Value> last(signalTable().size());
        std::vector<Time> at(signalTable().size(), Time(-1h));
        Time before{};
        bool isHeard = false;
        auto notice = feeding.notices.begin();
        for (const FeedChange& change : feeding.changes) {
            RC_ASSERT(change.time >= before);
            before = change.time;
            for (; notice != feeding.notices.end() && notice->time <= change.time; ++notice) {
                RC_ASSERT((notice->news == FeedNews::Heard) != isHeard);
                isHeard = !isHeard;
                if (!isHeard)
                    std::fill(last.begin(), last.end(), Value()); // what was known is forgotten
            }
            const std::size_t i = indexOf(change.signal);
            const Signal& signal = signalTable()[change.signal];
            RC_ASSERT(!(change.value == last[i]));
            last[i] = change.value;
            if (change.value.isKnown() && signal.kind == SignalKind::Number)
                RC_ASSERT(change.value.number() >= signal.lowest && change.value.number() <= signal.highest);
        }
    }));
}

QTEST_APPLESS_MAIN(TestIntake)
#include "test_intake.moc"
