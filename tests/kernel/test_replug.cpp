// A thousand times unplugged and plugged in again, through a real kernel: see README.md here.

#include <QJsonArray>
#include <QJsonDocument>
#include <QJsonObject>
#include <QtTest>

#include <algorithm>

#include "guestrun.h"

namespace {

constexpr int kCycles = 1000;
constexpr int kMostSeconds = 900; // 100 s of work, on a computer with much else to do
/// The heap of 1000 cycles may differ by what buffers happen to hold; a leak of one small block a cycle is 16,000 or
/// more.
constexpr double kHeapPlay = 8192;
constexpr double kResidentPlay = 1024.0 * 1024.0;
constexpr double kFoundWithin = 1000; // milliseconds
/// What a cycle takes where nothing else runs is 80 ms; where it takes longer, the computer is busy.
constexpr double kUnhurriedCycle = 100;

} // namespace

class TestReplug : public QObject {
    Q_OBJECT

private Q_SLOTS:
    void initTestCase();
    void everyUnitIsKnownAgain();
    void unitsAreFoundByNotice();
    void unitsAreFoundWithinASecond();
    void nothingLeaks_data();
    void nothingLeaks();

private:
    QJsonObject m_result;
};

void TestReplug::initTestCase() {
    SKIP_WITHOUT_GUEST();
    // Without the C library's caches of freed blocks, which would count as in use.
    const guest::Outcome outcome =
        guest::run(kMostSeconds, {"--processors", "1"},
                   {"env", "GLIBC_TUNABLES=glibc.malloc.tcache_count=0", REPLUG, QString::number(kCycles)});
    SKIP_WITHOUT_KERNEL(outcome);
    QVERIFY2(outcome.status == 0, qPrintable(outcome.errors));
    m_result = QJsonDocument::fromJson(outcome.output.toUtf8()).object();
    QVERIFY2(!m_result.isEmpty(), qPrintable(outcome.output));
    qInfo().noquote() << outcome.output;
}

/// By serial at whichever port, else by port; the kernel gives a node's name to the other unit of the pair.
void TestReplug::everyUnitIsKnownAgain() {
    QCOMPARE(m_result["wrong"].toArray(), QJsonArray());
    QCOMPARE(m_result["cycles"].toInt(), kCycles);
}

void TestReplug::unitsAreFoundByNotice() {
    const int polled = m_result["scans_by_polling"].toInt();
    QVERIFY2(
        polled <= m_result["seconds"].toDouble() + 1.0,
        qPrintable(QString("the bus was polled %1 times in %2 s").arg(polled).arg(m_result["seconds"].toDouble())));
    QVERIFY2(m_result["scans_by_notice"].toInt() >= kCycles / 2, "the hub was not told of what came and went");
    QVERIFY2(m_result["still_scans"].toInt() <= m_result["still_seconds"].toDouble() + 1.0,
             "with a device missing the bus was polled more than once a second");
}

/// On a busy computer the emulated machine stands still for up to seconds, which is not the hub's doing: then the
/// slowest of a hundred has as much longer as the cycles take, but half of them still have to be in time.
void TestReplug::unitsAreFoundWithinASecond() {
    const QJsonObject found = m_result["found_ms"].toObject();
    const double cycle = 1000.0 * m_result["seconds"].toDouble() / m_result["cycles"].toDouble();
    const double allowed = kFoundWithin * std::max(1.0, cycle / kUnhurriedCycle);
    const QString text = QString("found after %1 ms (median), %2 ms (99 of 100), %3 ms (the most); %4 ms a cycle")
                             .arg(found["median"].toDouble())
                             .arg(found["p99"].toDouble())
                             .arg(found["most"].toDouble())
                             .arg(cycle);
    QVERIFY2(found["median"].toDouble() > 0.0 && found["median"].toDouble() <= kFoundWithin, qPrintable(text));
    QVERIFY2(found["p99"].toDouble() <= allowed, qPrintable(text));
}

void TestReplug::nothingLeaks_data() {
    QTest::addColumn<QString>("what");
    QTest::addColumn<double>("play");
    QTest::newRow("file descriptors") << "files" << 0.0;
    QTest::newRow("threads") << "threads" << 0.0;
    QTest::newRow("heap") << "heap_bytes" << kHeapPlay;
    QTest::newRow("resident memory") << "resident_bytes" << kResidentPlay;
}

void TestReplug::nothingLeaks() {
    QFETCH(QString, what);
    QFETCH(double, play);
    const double before = m_result["before"].toObject()[what].toDouble();
    const double after = m_result["after"].toObject()[what].toDouble();
    QVERIFY(before > 0.0);
    QVERIFY2(
        after <= before + play,
        qPrintable(QString("%1 before, %2 after %3 cycles").arg(before, 0, 'f', 0).arg(after, 0, 'f', 0).arg(kCycles)));
}

QTEST_GUILESS_MAIN(TestReplug)
#include "test_replug.moc"
