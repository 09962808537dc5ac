#include <QtTest>

#include "device/hub.h"
#include "hidtext.h"

using namespace flowhand;
using namespace std::chrono_literals;

// Runs under umockdev-run (see umockdev.sh), which shows tests/data/device/umockdev as /sys and /dev: a stick, a lever
// box with two application collections in one node, a keyboard, and a device without a node whose descriptor is cut
// off.
class TestHidapi : public QObject {
    Q_OBJECT

private slots:
    void initTestCase();
    void listsEachNodeOnce();
    void descriptorsNeedNoRights();
    void goneDeviceIsNotOpened();
    void silentNodeIsNotOpened();
    void hubReadsOddReports();

private:
    std::unique_ptr<HidSystem> m_system = systemDevices();
    std::vector<DeviceInfo> m_devices;
};

void TestHidapi::initTestCase() {
    m_devices = m_system->list();
    QCOMPARE(m_devices.size(), std::size_t(4));
}

void TestHidapi::listsEachNodeOnce() {
    QStringList found;
    for (const DeviceInfo& device : m_devices)
        found << QString::asprintf("%04X:%04X %s|%s|%s|%d|%d", device.vendor, device.product, device.name.c_str(),
                                   device.port.c_str(), device.serial.c_str(), int(device.deviceClass),
                                   int(device.readable));
    QCOMPARE(
        found,
        (QStringList{
            QString("1209:F120 Home Stick|usb-0000:00:14.0-1/input0||%1|1").arg(int(DeviceClass::Controls)),
            QString("1209:F110 Home Lever box|usb-0000:00:14.0-2/input0|LB-7|%1|1").arg(int(DeviceClass::Controls)),
            QString("1209:F1FE Home Keyboard|usb-0000:00:14.0-3/input0||%1|1").arg(int(DeviceClass::Keyboard)),
            QString("1209:F1FF Home Broken|usb-0000:00:14.0-4/input0||%1|0").arg(int(DeviceClass::Other))}));
    const QString whyNot = QString::fromStdString(m_devices[3].whyNot);
    QVERIFY2(whyNot.contains("flowhand devices 1209:F1FF --rule"), qPrintable(whyNot));
}

void TestHidapi::descriptorsNeedNoRights() {
    const auto stick = m_system->descriptor(m_devices[0]);
    QVERIFY(stick);
    QCOMPARE(stick->size(), std::size_t(75));
    QVERIFY(m_system->descriptor(m_devices[3]));
    DeviceInfo gone;
    gone.path = "/dev/hidraw99";
    QCOMPARE(QString::fromStdString(m_system->descriptor(gone).error().code), QString("no-descriptor"));
}

void TestHidapi::goneDeviceIsNotOpened() {
    const auto opened = m_system->open(m_devices[3]);
    QVERIFY(!opened);
    QCOMPARE(QString::fromStdString(opened.error().code), QString("device-lost"));
}

/// It has a node, but nothing behind it answers any more.
void TestHidapi::silentNodeIsNotOpened() {
    const auto opened = m_system->open(m_devices[2]);
    QVERIFY(!opened);
    QCOMPARE(QString::fromStdString(opened.error().code), QString("device-lost"));
    QVERIFY(QString::fromStdString(opened.error().message).contains("does not answer"));
}

void TestHidapi::hubReadsOddReports() {
    const SteadyClock clock;
    std::vector<DeviceWish> wishes{{"stick", 0x1209, 0xF120, {}, "usb-0000:00:14.0-1/input0", {}},
                                   {"lever box", 0x1209, 0xF110, "LB-7", {}, {}},
                                   {"broken", 0x1209, 0xF1FF, {}, {}, {}}};
    auto hub = DeviceHub::open(*m_system, clock, clock.now(), wishes);
    QVERIFY(hub);
    std::vector<Reading> readings;
    std::vector<DeviceNotice> notices;
    // Connected twice, lost once, a remark on the short report and one on the long one
    for (const Time giveUp = (*hub)->now() + 60s; readings.size() < 3 || notices.size() < 5;) {
        QVERIFY((*hub)->now() < giveUp);
        (*hub)->waitUntil((*hub)->now() + 1s);
        (*hub)->drain(readings, notices);
    }
    QStringList found;
    for (const Reading& reading : readings)
        found << QString::fromStdString((*hub)->inputs(reading.device)[reading.input].name) +
                     QString(" %1").arg(reading.raw);
    found.sort();
    QCOMPARE(found, (QStringList{"Slider 261", "Throttle 127", "X 1"}));
    QCOMPARE((*hub)->counters(0).truncated, std::uint64_t(1));
    QCOMPARE((*hub)->counters(1).overlong, std::uint64_t(1));
    QVERIFY(!(*hub)->connected(2));
}

QTEST_APPLESS_MAIN(TestHidapi)
#include "test_hidapi.moc"
