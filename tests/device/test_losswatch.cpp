// What may have been lost in the kernel's queue, over a queue of 64 slots that the test fills and a reader that now and
// then stands still.

#include <QtTest>

#include <deque>

#include "device/losswatch.h"

using namespace flowhand;
using namespace std::chrono_literals;

namespace {

/// A device that sends every `period`, the kernel's queue, and a reader: a read takes 2 us, a waiting reader has a
/// report 30 us after it came.
class Line {
public:
    explicit Line(Duration period) : m_period(period) {}

    /// The reader reads until `end`.
    void readUntil(Time end) {
        while (m_now < end) {
            send();
            if (!m_queue.empty()) {
                m_queue.pop_front();
                m_now += 2us;
                m_watch.took(m_now);
            } else if (m_watch.isBehind()) {
                m_now += 1us;
                m_watch.sawEmpty(m_now);
            } else {
                const Time waited = std::min(m_next, m_now + 100ms);
                m_now = std::min(waited, end);
                if (m_now == m_next)
                    m_now += 30us;
                else if (m_now == waited)
                    m_watch.sawEmpty(m_now);
            }
        }
    }
    /// The reader stands still.
    void stand(Duration duration) { m_now += duration; }
    /// The device says nothing until then.
    void silence(Time until) { m_next = until; }
    void setPeriod(Duration period) { m_period = period; }

    [[nodiscard]] Time now() const { return m_now; }
    [[nodiscard]] std::uint64_t lost() const { return m_lost; }
    [[nodiscard]] const LossWatch& watch() const { return m_watch; }

private:
    void send() {
        for (; m_next <= m_now; m_next += m_period) {
            if (m_queue.size() < LossWatch::kKept)
                m_queue.push_back(m_next);
            else
                ++m_lost;
        }
    }

    Duration m_period;
    Time m_now{};
    Time m_next{};
    std::deque<Time> m_queue;
    std::uint64_t m_lost = 0;
    LossWatch m_watch;
};

} // namespace

class TestLossWatch : public QObject {
    Q_OBJECT

private Q_SLOTS:
    void stalls_data();
    void stalls();
    void withoutARateOneIsCounted();
    void silenceIsNoLoss();
    void steadyOverloadIsCounted();
    void lateSenderIsNoLoss_data();
    void lateSenderIsNoLoss();
};

void TestLossWatch::stalls_data() {
    QTest::addColumn<int>("periodMicros");
    QTest::addColumn<int>("stallMicros");
    QTest::newRow("1 kHz, short") << 1000 << 5'000;
    QTest::newRow("1 kHz, all but full") << 1000 << 62'000;
    QTest::newRow("1 kHz, ten lost") << 1000 << 73'000;
    QTest::newRow("1 kHz, most lost") << 1000 << 700'000;
    QTest::newRow("8 kHz, short") << 125 << 3'000;
    QTest::newRow("8 kHz, some lost") << 125 << 12'000;
    QTest::newRow("8 kHz, most lost") << 125 << 700'000;
    QTest::newRow("125 Hz, some lost") << 8000 << 700'000;
}

void TestLossWatch::stalls() {
    QFETCH(int, periodMicros);
    QFETCH(int, stallMicros);
    Line line{std::chrono::microseconds(periodMicros)};
    line.readUntil(5s);
    QCOMPARE(line.watch().suspected(), std::uint64_t(0));
    QVERIFY(std::chrono::abs(line.watch().period() - std::chrono::microseconds(periodMicros)) < 1us);
    for (std::uint64_t stall = 1; stall <= 3; ++stall) {
        line.stand(std::chrono::microseconds(stallMicros));
        line.readUntil(line.now() + 5s);
        const auto difference = std::int64_t(line.watch().suspected()) - std::int64_t(line.lost());
        QVERIFY2(std::abs(difference) <= std::int64_t(stall), // the ends of a stall are good to one report
                 qPrintable(QString("%1 suspected, %2 lost").arg(line.watch().suspected()).arg(line.lost())));
        QCOMPARE(line.watch().suspected() > 0, line.lost() > 0);
    }
}

/// A device that begins to send while nobody reads: how many it sent nobody knows, but the queue was full.
void TestLossWatch::withoutARateOneIsCounted() {
    Line line(1ms);
    line.stand(200ms);
    line.readUntil(210ms);
    QVERIFY(line.lost() > 100);
    QCOMPARE(line.watch().suspected(), std::uint64_t(1));
}

/// A device that only reports what moves: its pauses and its short reports in a row are no loss.
void TestLossWatch::silenceIsNoLoss() {
    Line line(1ms);
    for (int turn = 0; turn < 20; ++turn) {
        line.readUntil(line.now() + 400ms);
        line.silence(line.now() + 3s);
        line.readUntil(line.now() + 3s);
    }
    line.setPeriod(125us); // and then faster than ever before
    line.stand(4ms);
    line.readUntil(line.now() + 1s);
    QCOMPARE(line.lost(), std::uint64_t(0));
    QCOMPARE(line.watch().suspected(), std::uint64_t(0));
}

/// The reader never comes to the end of the queue.
void TestLossWatch::steadyOverloadIsCounted() {
    Line line(125us);
    line.readUntil(5s);
    for (int turn = 0; turn < 200; ++turn) {
        line.stand(12ms);
        line.readUntil(line.now() + 20us); // ten reports
    }
    line.readUntil(line.now() + 5s);
    QVERIFY(line.lost() > 10'000);
    const double share = double(line.watch().suspected()) / double(line.lost());
    QVERIFY2(share > 0.9 && share < 1.1, qPrintable(QString::number(share)));
}

void TestLossWatch::lateSenderIsNoLoss_data() {
    QTest::addColumn<int>("firstBurst");
    QTest::addColumn<int>("secondBurst");
    QTest::addColumn<int>("left"); // suspected in the end
    QTest::newRow("all at once") << 80 << 5 << 0;
    QTest::newRow("the rest later") << 64 << 21 << 0;
    QTest::newRow("the rest later, and much") << 70 << 135 << 0;
    QTest::newRow("the rest never") << 64 << 5 << 16;
}

/// A sender that was late for 80 ms catches up in two bursts with 5 ms (or 125 ms) between them; each report is read as
/// it comes.
void TestLossWatch::lateSenderIsNoLoss() {
    QFETCH(int, firstBurst);
    QFETCH(int, secondBurst);
    QFETCH(int, left);
    LossWatch watch;
    Time time{};
    const auto send = [&](Duration pause, int reports, Duration period) {
        time += pause;
        for (int report = 0; report < reports; ++report) {
            watch.took(time);
            time += period;
        }
        watch.sawEmpty(time);
    };
    for (int report = 0; report < 1000; ++report)
        send(1ms - 10us, 1, 10us);
    send(80ms, firstBurst, 10us);
    QCOMPARE(watch.suspected() > 0, firstBurst < 75);
    send(secondBurst > 100 ? 125ms : 5ms, secondBurst, 10us);
    for (int report = 0; report < 1000; ++report)
        send(1ms - 10us, 1, 10us);
    QCOMPARE(watch.suspected(), std::uint64_t(left));
}

QTEST_APPLESS_MAIN(TestLossWatch)
#include "test_losswatch.moc"
