#include <QtTest>

#include "device/report.h"
#include "hidtext.h"
#include "publisheddevices.h"

using namespace flowhand;

class TestReport : public QObject {
    Q_OBJECT

private slots:
    void onlyChangesTravel_data();
    void onlyChangesTravel();
    void othersAreNotDecoded();
    void lengthsAreTold_data();
    void lengthsAreTold();
    void valuesDoNotDisturbTotals();
};

void TestReport::onlyChangesTravel_data() {
    QTest::addColumn<QString>("descriptor");
    QTest::addColumn<QStringList>("reports");
    QTest::addColumn<QStringList>("changes");
    QTest::newRow("the first report tells all, then only what changed")
        << published::kJoystick << QStringList{"00 01 02 1F", "00 01 02 1F", "00 01 03 1F", "00 01 03 12"}
        << QStringList{"Throttle=0 X=1 Y=2 hat 1=null button 1=1 button 2=0 button 3=0 button 4=0", "", "Y=3",
                       "hat 1=2"};
    QTest::newRow("5.10 a null hat stays null whatever is sent")
        << "05 01 09 39 15 00 25 07 75 08 95 01 81 42" << QStringList{"08", "0F", "03", "FF"}
        << QStringList{"hat 1=null", "", "hat 1=3", "hat 1=null"};
    QTest::newRow("5.10 a null axis changes nothing")
        << "05 01 09 30 15 00 25 64 75 08 95 01 81 42" << QStringList{"65", "10", "FF", "11"}
        << QStringList{"", "X=16", "", "X=17"};
    QTest::newRow("practice: clamped values change only once")
        << "05 01 09 30 15 00 25 64 75 08 95 01 81 02" << QStringList{"64", "65", "FF", "63"}
        << QStringList{"X=100", "", "", "X=99"};
    QTest::newRow("6.2.2.5 relative adds to a total, nothing when 0")
        << "05 01 09 38 15 81 25 7F 75 08 95 01 81 06" << QStringList{"00", "01", "01", "FE", "00"}
        << QStringList{"", "Wheel=1", "Wheel=2", "Wheel=0", ""};
    QTest::newRow("6.2.2.5 array: pressed and released")
        << "05 09 15 01 25 03 19 01 29 03 75 08 95 02 81 00" << QStringList{"00 00", "02 00", "03 02", "00 03", "00 00"}
        << QStringList{"button 1=0 button 2=0 button 3=0", "button 2=1", "button 3=1", "button 2=0", "button 3=0"};
    QTest::newRow("5.6 each report id has its own state")
        << "05 01 25 7F 75 08 95 01 85 01 09 30 81 02 85 02 09 31 81 02"
        << QStringList{"01 05", "02 05", "01 05", "02 06"} << QStringList{"X=5", "Y=5", "", "Y=6"};
    QTest::newRow("fields that share a byte: either may be what changed in it")
        << "05 01 26 FF 0F 75 0C 95 02 09 30 09 31 81 02" << QStringList{"01 20 03", "01 30 03", "01 31 03", "02 31 03"}
        << QStringList{"X=1 Y=50", "Y=51", "X=257", "X=258"};
    QTest::newRow("6.2.2.5 relative adds again though the bytes are the same")
        << "05 01 25 7F 75 08 95 01 09 30 81 02 15 81 09 38 81 06" << QStringList{"05 01", "05 01", "06 01"}
        << QStringList{"X=5 Wheel=1", "Wheel=2", "X=6 Wheel=3"};
    QTest::newRow("truncated: what is missing changes nothing")
        << "05 01 25 7F 75 08 95 02 09 30 09 31 81 02" << QStringList{"05 06", "07", "07 08"}
        << QStringList{"X=5 Y=6", "X=7", "Y=8"};
    QTest::newRow("truncated array: a missing slot may hold anything")
        << "05 09 15 01 25 03 19 01 29 03 75 08 95 02 81 00" << QStringList{"01 02", "01", "01 00"}
        << QStringList{"button 1=1 button 2=1 button 3=0", "", "button 2=0"};
}

void TestReport::onlyChangesTravel() {
    QFETCH(QString, descriptor);
    QFETCH(QStringList, reports);
    QFETCH(QStringList, changes);
    const auto parsed = parseDescriptor(bytesOf(descriptor));
    QVERIFY(parsed);
    ReportDecoder decoder(*parsed);
    QStringList found;
    for (const QString& report : reports) {
        std::vector<InputChange> changed;
        decoder.decode(bytesOf(report), changed);
        found << textOf(decoder, changed);
    }
    QCOMPARE(found, changes);
}

void TestReport::othersAreNotDecoded() {
    const auto parsed = parseDescriptor(bytesOf(published::kJoystick));
    QVERIFY(parsed);
    ReportDecoder decoder(*parsed);
    std::vector<bool> wanted;
    for (const InputInfo& input : decoder.inputs())
        wanted.push_back(input.name == "Y" || input.name == "button 2");
    decoder.listenOnlyTo(wanted);
    QStringList found;
    for (const char* report : {"00 01 02 1F", "7F 7F 02 2F", "00 01 03 0F", "00 01 04 1F"}) {
        std::vector<InputChange> changed;
        decoder.decode(bytesOf(report), changed);
        found << textOf(decoder, changed);
    }
    QCOMPARE(found, (QStringList{"Y=2 button 2=0", "button 2=1", "Y=3 button 2=0", "Y=4"}));
    QCOMPARE(decoder.values(bytesOf("05 01 04 1F")).elements.size(), parsed->elements.size());
}

void TestReport::lengthsAreTold_data() {
    QTest::addColumn<QString>("report");
    QTest::addColumn<int>("fit");
    QTest::newRow("exact") << "01 05 06" << int(ReportFit::Exact);
    QTest::newRow("truncated") << "01 05" << int(ReportFit::Truncated);
    QTest::newRow("the id alone") << "01" << int(ReportFit::Truncated);
    QTest::newRow("longer") << "01 05 06 00" << int(ReportFit::Overlong);
    QTest::newRow("unknown id") << "02 05 06" << int(ReportFit::UnknownId);
    QTest::newRow("not even an id") << "" << int(ReportFit::UnknownId);
}

void TestReport::lengthsAreTold() {
    QFETCH(QString, report);
    QFETCH(int, fit);
    const auto parsed = parseDescriptor(bytesOf("05 01 85 01 25 7F 75 08 95 02 09 30 09 31 81 02"));
    QVERIFY(parsed);
    ReportDecoder decoder(*parsed);
    std::vector<InputChange> changes;
    QCOMPARE(int(decoder.decode(bytesOf(report), changes)), fit);
    QCOMPARE(int(decoder.values(bytesOf(report)).fit), fit);
}

void TestReport::valuesDoNotDisturbTotals() {
    const auto parsed = parseDescriptor(bytesOf(published::kMouse));
    QVERIFY(parsed);
    ReportDecoder decoder(*parsed);
    std::vector<InputChange> changes;
    decoder.decode(bytesOf("00 05 00"), changes);
    QCOMPARE(textOf(decoder.descriptor(), decoder.values(bytesOf("00 05 00"))),
             QString("button 1=0 button 2=0 button 3=0 X=5 Y=0"));
    changes.clear();
    decoder.decode(bytesOf("00 05 00"), changes);
    QCOMPARE(textOf(decoder, changes), QString("X=10"));
}

QTEST_APPLESS_MAIN(TestReport)
#include "test_report.moc"
