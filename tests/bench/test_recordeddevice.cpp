// Recordings as the bench reads them.

#include <QtTest>

#include "bench/recordeddevice.h"
#include "device/recordedunit.h"

using namespace flowhand;

namespace {

/// One axis X of 8 bits and two buttons with six bits of padding.
const std::string kHead =
    "device: 1209:F101 Quadrant\ndescriptor: 05 01 09 04 A1 01 09 30 15 00 26 FF 00 75 08 95 01 81 "
    "02 05 09 19 01 29 02 25 01 75 01 95 02 81 02 75 06 95 01 81 03 C0\n";

Result<RecordedDevice> read(const std::string& text) {
    const Result<Recording> recording = parseRecording(text, "desk.rec");
    if (!recording)
        return tl::unexpected<Error>(recording.error());
    return readRecordedDevice(*recording, "desk.rec", 3, {});
}

} // namespace

class TestRecordedDevice : public QObject {
    Q_OBJECT

private Q_SLOTS:
    void whatTheInputsSaid();
    void reportsWithoutTimes();
    void mistakesAreErrors_data();
    void mistakesAreErrors();
};

void TestRecordedDevice::whatTheInputsSaid() {
    const auto device = read(kHead + "0.100000: 10 01\n0.200000: 10 01\n0.300000: 20 01\n0.500000: 20 01\n");
    QVERIFY(device);
    QCOMPARE(device->unit.name, std::string("Quadrant"));
    QCOMPARE(device->unit.vendor, 0x1209);
    QCOMPARE(device->unit.product, 0xF101);
    QCOMPARE(device->inputs.size(), std::size_t(3));
    QCOMPARE(device->readings.size(), std::size_t(4)); // the first report says all three, the third one change
    QCOMPARE(device->readings.back().raw, 0x20);
    QVERIFY(device->readings.back().time == std::chrono::milliseconds(300));
    QCOMPARE(device->readings.back().device, 3);
    QCOMPARE(device->reports.size(), std::size_t(4)); // one said nothing new
    QVERIFY(device->reports.back() == std::chrono::milliseconds(500));
}

void TestRecordedDevice::reportsWithoutTimes() {
    const auto device = read(kHead + "10 00\n11 00\n12 00\n");
    QVERIFY(device);
    QVERIFY(device->readings.back().time == 2 * kUntimedPeriod);
}

void TestRecordedDevice::mistakesAreErrors_data() {
    QTest::addColumn<QString>("text");
    QTest::addColumn<QString>("code");
    QTest::newRow("no device") << "descriptor: 05 01\n"
                               << "bad-recording";
    QTest::newRow("no id") << "device: Quadrant\ndescriptor: 05 01\n"
                           << "bad-recording";
    QTest::newRow("no descriptor") << "device: 1209:F101 Quadrant\n0.1: 10 00\n"
                                   << "bad-recording";
    QTest::newRow("broken descriptor") << "device: 1209:F101 Quadrant\ndescriptor: 05\n"
                                       << "bad-descriptor";
    QTest::newRow("going back") << QString::fromStdString(kHead) + "2: 10 00\n1: 11 00\n"
                                << "bad-recording";
    QTest::newRow("no report") << QString::fromStdString(kHead) + "2: lever\n"
                               << "bad-recording";
}

void TestRecordedDevice::mistakesAreErrors() {
    QFETCH(QString, text);
    QFETCH(QString, code);
    const auto device = read(text.toStdString());
    QVERIFY(!device);
    QCOMPARE(QString::fromStdString(device.error().code), code);
    QCOMPARE(device.error().place.file, std::string("desk.rec"));
}

QTEST_APPLESS_MAIN(TestRecordedDevice)
#include "test_recordeddevice.moc"
