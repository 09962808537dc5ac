// What a run says of reports that are missing or late.

#include <QtTest>

#include "session/losses.h"

using namespace flowhand;
using namespace std::chrono_literals;

class TestLosses : public QObject {
    Q_OBJECT

private Q_SLOTS:
    void words_data();
    void words();
};

void TestLosses::words_data() {
    QTest::addColumn<int>("suspected");
    QTest::addColumn<int>("replaced");
    QTest::addColumn<int>("late");
    QTest::addColumn<QStringList>("remarks");
    QTest::newRow("nothing") << 0 << 0 << 0 << QStringList{};
    QTest::newRow("lost") << 12 << 0 << 0
                          << QStringList{"12 reports may have been lost from quadrant: the computer was too busy to "
                                         "read them in time."};
    QTest::newRow("one of each")
        << 1 << 1 << 1
        << QStringList{"1 report may have been lost from quadrant: the computer was too busy to read them in time.",
                       "1 change of quadrant gave way to newer ones before they could be taken.",
                       "1 change of the controls came in late, by at most 2.5 ms."};
    QTest::newRow("late") << 0 << 0 << 3 << QStringList{"3 changes of the controls came in late, by at most 2.5 ms."};
}

void TestLosses::words() {
    QFETCH(int, suspected);
    QFETCH(int, replaced);
    QFETCH(int, late);
    QFETCH(QStringList, remarks);
    RunLosses losses;
    losses.lateChanges = static_cast<std::uint64_t>(late);
    losses.latest = 2500us;
    losses.devices = {{"quadrant", static_cast<std::uint64_t>(suspected), static_cast<std::uint64_t>(replaced)}};
    QStringList told;
    for (const Phrase& remark : lossRemarks(losses))
        told << QString::fromStdString(remark.english());
    QCOMPARE(told, remarks);
}

QTEST_APPLESS_MAIN(TestLosses)
#include "test_losses.moc"
