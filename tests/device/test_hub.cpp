#include <QtTest>

#include "device/hub.h"
#include "fakehid.h"
#include "hidtext.h"
#include "publisheddevices.h"

using namespace flowhand;
using namespace std::chrono_literals;

namespace {

/// Two axes of 8 bits, without ids.
constexpr const char* kTwoAxes = "05 01 09 04 A1 01 09 30 09 31 15 00 26 FF 00 75 08 95 02 81 02 C0";

DeviceInfo unit(const std::string& path, const std::string& port, const std::string& serial = {}) {
    DeviceInfo info;
    info.path = path;
    info.vendor = 0x1209;
    info.product = 0x0001;
    info.port = port;
    info.serial = serial;
    info.readable = true;
    info.whyNot = "no right to read it";
    return info;
}

DeviceWish wish(const std::string& name, const std::string& port = {}, const std::string& serial = {}) {
    return {name, 0x1209, 0x0001, serial, port, {"rig.toml", 3, 1}};
}

/// A hub over devices in memory, and what it handed out so far.
struct Bench {
    static constexpr Time kOrigin = 1000s;
    FakeHid hid;
    FakeClock clock;
    std::unique_ptr<DeviceHub> hub;
    std::vector<Reading> readings;
    std::vector<DeviceNotice> notices;

    Bench() { clock.set(kOrigin); }
    /// A report every millisecond, read before the next.
    void sendSteadily(const std::string& path, int count, const std::vector<std::uint8_t>& report) {
        for (int i = 0; i < count; ++i) {
            clock.set(clock.now() + 1ms);
            hid.send(path, report);
            hid.waitUntilRead(path);
        }
    }
    bool open(std::vector<DeviceWish> wishes, std::size_t queueLength = DeviceHub::kQueueLength) {
        auto opened = DeviceHub::open(hid, clock, kOrigin, std::move(wishes), queueLength);
        if (opened)
            hub = std::move(*opened);
        return opened.has_value();
    }
    /// Drains until there are as many in all, while the watch's time passes; a test that waits longer has failed.
    bool wait(std::size_t readingCount, std::size_t noticeCount) {
        const auto giveUp = std::chrono::steady_clock::now() + 20s;
        for (;;) {
            hub->drain(readings, notices);
            if (readings.size() >= readingCount && notices.size() >= noticeCount)
                return true;
            if (std::chrono::steady_clock::now() > giveUp)
                return false;
            hid.pass();
            hub->waitUntil(hub->now() + 20ms);
        }
    }
    QString text(std::size_t index) const {
        const DeviceNotice& notice = notices.at(index);
        static const QStringList changes{"connected", "lost", "remark"};
        return QString("%1 %2 ").arg(notice.device).arg(changes[int(notice.change)]) +
               QString::fromStdString(notice.message.english());
    }
};

} // namespace

class TestHub : public QObject {
    Q_OBJECT

private slots:
    void readingsAreStampedFromTheRunsStart();
    void devicesMergeInOrderOfTime();
    void noticesHaveTimesOfTheirOwn();
    void replugIsTheSameUnit();
    void unitsAtWishedPortsKeepApart();
    void equalUnitsAreAsked();
    void missingDeviceIsWaitedFor();
    void unreadableDeviceSaysTheWayOut();
    void rightsThatComeLateAreNotMentioned();
    void unusableDevices_data();
    void unusableDevices();
    void failedReadIsTriedAgain();
    void dropsAreCountedAndTheLastStateArrives();
    void equalReportsAreSeenAndCostNothing();
    void reportsBeforeTheFirstReadAreNoLoss();
    void lossesAreSuspectedAndSaidOnce();
    void onlyWhatIsListenedToIsHandedOn();
    void whatIsNotAttendedToWakesLater();
    void oddReportsAreCountedAndSaidOnce();
    void unwishedDevicesAreNotOpened();
    void privateDevicesOpenWhenNamed_data();
    void privateDevicesOpenWhenNamed();
    void wakeEndsAWait();
};

void TestHub::readingsAreStampedFromTheRunsStart() {
    Bench bench;
    bench.hid.plug(unit("a", "p1"), bytesOf(kTwoAxes));
    QVERIFY(bench.open({wish("left unit")}));
    QVERIFY(bench.wait(0, 1));
    QCOMPARE(bench.text(0), QString("0 connected "));
    QCOMPARE(bench.hub->inputs(0).size(), std::size_t(2));
    QCOMPARE(bench.hub->connected(0)->port, std::string("p1"));

    bench.clock.set(Bench::kOrigin + 2s + 1234567ns);
    bench.hid.send("a", {5, 6});
    QVERIFY(bench.wait(2, 1));
    QCOMPARE(bench.readings[0].time, Time(2s + 1234us)); // whole ticks
    QCOMPARE(bench.readings[1].time, bench.readings[0].time);
    QCOMPARE(bench.readings[1].input, 1);
    QCOMPARE(bench.readings[1].raw, 6);

    bench.hid.send("a", {5, 6});
    bench.hid.send("a", {5, 7});
    QVERIFY(bench.wait(3, 1));
    QCOMPARE(bench.readings.size(), std::size_t(3));
    QCOMPARE(bench.readings[2].raw, 7);
    QCOMPARE(bench.hub->counters(0).reports, std::uint64_t(3));
}

void TestHub::devicesMergeInOrderOfTime() {
    Bench bench;
    bench.hid.plug(unit("a", "p1"), bytesOf(kTwoAxes));
    bench.hid.plug(unit("b", "p2"), bytesOf(kTwoAxes));
    QVERIFY(bench.open({wish("left unit", "p1"), wish("right unit", "p2")}));
    QVERIFY(bench.wait(0, 2));
    for (int i = 1; i <= 6; ++i) {
        bench.clock.set(Bench::kOrigin + i * 1s);
        const std::string path = i % 2 ? "b" : "a";
        bench.hid.send(path, {std::uint8_t(i), 0});
        bench.hid.waitUntilRead(path);
    }
    QVERIFY(bench.wait(8, 2));
    std::vector<int> axisX;
    for (const Reading& reading : bench.readings)
        if (reading.input == 0)
            axisX.push_back(int(reading.raw));
    QCOMPARE(axisX, (std::vector<int>{1, 2, 3, 4, 5, 6}));
    QCOMPARE(bench.readings[0].device, DeviceIndex(1));
}

void TestHub::noticesHaveTimesOfTheirOwn() {
    Bench bench; // the clock stands
    bench.hid.plug(unit("a", "p1"), bytesOf(kTwoAxes));
    QVERIFY(bench.open({wish("left unit")}));
    bench.hid.send("a", {1, 2});
    QVERIFY(bench.wait(2, 1));
    bench.hid.unplug("a");
    QVERIFY(bench.wait(2, 2));
    bench.hid.plug(unit("b", "p1"), bytesOf(kTwoAxes));
    QVERIFY(bench.wait(2, 3));
    bench.hid.send("b", {1, 2});
    QVERIFY(bench.wait(4, 3));
    QVERIFY(bench.notices[0].time < bench.readings[0].time);
    QVERIFY(bench.readings[1].time < bench.notices[1].time);
    QVERIFY(bench.notices[1].time < bench.notices[2].time);
    QVERIFY(bench.notices[2].time < bench.readings[2].time);
}

void TestHub::replugIsTheSameUnit() {
    Bench bench;
    bench.hid.plug(unit("a", "p1"), bytesOf(kTwoAxes));
    QVERIFY(bench.open({wish("left unit")}));
    bench.hid.send("a", {1, 2});
    QVERIFY(bench.wait(2, 1));
    bench.hid.unplug("a");
    QVERIFY(bench.wait(2, 2));
    QCOMPARE(bench.text(1), QString("0 lost 'left unit' (1209:0001) was unplugged: plug it in again"));
    QVERIFY(!bench.hub->connected(0));
    QCOMPARE(bench.hub->inputs(0).size(), std::size_t(2));

    // An equal unit at another socket beside it: the one at the port it had
    bench.hid.plug(unit("b", "p2"), bytesOf(kTwoAxes));
    QVERIFY(bench.wait(2, 3));
    QCOMPARE(bench.hub->connected(0)->port, std::string("p2")); // alone it answers to the wish
    bench.hid.plug(unit("c", "p1"), bytesOf(kTwoAxes));
    bench.hid.unplug("b");
    QVERIFY(bench.wait(2, 4));
    QVERIFY(bench.wait(2, 5));
    QCOMPARE(bench.hub->connected(0)->path, std::string("c"));
    bench.hid.send("c", {1, 2}); // all values are told again
    QVERIFY(bench.wait(4, 5));
    QCOMPARE(bench.notices.size(), std::size_t(5));
}

void TestHub::unitsAtWishedPortsKeepApart() {
    Bench bench;
    bench.hid.plug(unit("a", "p1"), bytesOf(kTwoAxes));
    bench.hid.plug(unit("b", "p2"), bytesOf(kTwoAxes));
    QVERIFY(bench.open({wish("left unit", "p2"), wish("right unit", "p1")}));
    QVERIFY(bench.wait(0, 2));
    QCOMPARE(bench.hub->connected(0)->path, std::string("b"));
    QCOMPARE(bench.hub->connected(1)->path, std::string("a"));

    // Moved to another socket: asks, does not guess
    bench.hid.unplug("a");
    bench.hid.plug(unit("c", "p3"), bytesOf(kTwoAxes));
    QVERIFY(bench.wait(0, 3));
    QVERIFY(bench.wait(0, 4));
    QCOMPARE(bench.text(3), QString("1 lost 'right unit' (1209:0001) should be at port p1, but is at port p3: plug it "
                                    "back, or change the port in the rig file"));
    bench.hid.unplug("c");
    bench.hid.plug(unit("c", "p1"), bytesOf(kTwoAxes));
    QVERIFY(bench.wait(0, 5));
    QCOMPARE(bench.text(4), QString("1 connected "));
}

void TestHub::equalUnitsAreAsked() {
    Bench bench;
    bench.hid.plug(unit("a", "p1"), bytesOf(kTwoAxes));
    bench.hid.plug(unit("b", "p2"), bytesOf(kTwoAxes));
    const auto one = DeviceHub::open(bench.hid, bench.clock, Bench::kOrigin, {wish("left unit")});
    QVERIFY(!one);
    QCOMPARE(one.error().code, std::string("equal-units"));
    QCOMPARE(one.error().place.line, 3);
    QCOMPARE(one.error().message, std::string("2 equal units answer to 'left unit' (1209:0001): at port p1; at port "
                                              "p2; name the one you mean by 'port' or 'serial' in the rig file; "
                                              "'flowhand devices --identify' tells which is which"));
    const auto two = DeviceHub::open(bench.hid, bench.clock, Bench::kOrigin, {wish("left unit"), wish("right unit")});
    QVERIFY(!two);
    QCOMPARE(two.error().code, std::string("equal-units"));
    QCOMPARE(bench.hid.opens("a") + bench.hid.opens("b"), 0);
}

void TestHub::missingDeviceIsWaitedFor() {
    Bench bench;
    QVERIFY(bench.open({wish("left unit")}));
    QVERIFY(bench.wait(0, 1));
    QCOMPARE(bench.text(0), QString("0 lost 'left unit' (1209:0001) is not plugged in: plug it in"));
    QVERIFY(bench.hub->inputs(0).empty());
    bench.hid.plug(unit("a", "p1"), bytesOf(kTwoAxes));
    QVERIFY(bench.wait(0, 2));
    QCOMPARE(bench.text(1), QString("0 connected "));
}

void TestHub::unreadableDeviceSaysTheWayOut() {
    Bench bench;
    bench.hid.plug(unit("a", "p1"), bytesOf(kTwoAxes));
    bench.hid.setReadable("a", false);
    QVERIFY(bench.open({wish("left unit")}));
    QVERIFY(bench.wait(0, 1));
    QCOMPARE(bench.text(0), QString("0 lost 'left unit' (1209:0001): no right to read it"));
    bench.hid.setReadable("a", true);
    QVERIFY(bench.wait(0, 2));
    QCOMPARE(bench.text(1), QString("0 connected "));
}

void TestHub::rightsThatComeLateAreNotMentioned() {
    Bench bench;
    QVERIFY(bench.open({wish("left unit")}));
    DeviceInfo info = unit("a", "p1");
    info.readable = false;
    bench.hid.plug(info, bytesOf(kTwoAxes));
    bench.hid.setReadable("a", true);
    QVERIFY(bench.wait(0, 2));
    QCOMPARE(bench.text(1), QString("0 connected "));
    // but when they do not come, it is said
    bench.hid.unplug("a");
    QVERIFY(bench.wait(0, 3));
    bench.hid.plug(info, bytesOf(kTwoAxes));
    QVERIFY(bench.wait(0, 4));
    QCOMPARE(bench.text(3), QString("0 lost 'left unit' (1209:0001): no right to read it"));
}

void TestHub::unusableDevices_data() {
    QTest::addColumn<QString>("descriptor");
    QTest::addColumn<QString>("words");
    QTest::newRow("malformed descriptor") << "05 01 09 04 A1 01 26 FF"
                                          << "cannot be used: malformed report descriptor at byte 6: ";
    QTest::newRow("keyboard-emulating card") << published::kKeyboard << "types like a keyboard";
    QTest::newRow("no controls") << "06 00 FF 09 01 A1 01 75 08 95 08 09 02 91 02 C0"
                                 << "has no controls";
}

void TestHub::unusableDevices() {
    QFETCH(QString, descriptor);
    QFETCH(QString, words);
    Bench bench;
    bench.hid.plug(unit("a", "p1"), bytesOf(descriptor));
    QVERIFY(bench.open({wish("left unit")}));
    QVERIFY(bench.wait(0, 1));
    QVERIFY2(bench.text(0).startsWith("0 lost 'left unit' (1209:0001) " + words), qPrintable(bench.text(0)));
    QCOMPARE(bench.hid.opens("a"), 0); // its descriptor is enough
    bench.hid.unplug("a");
    bench.hid.plug(unit("a", "p1"), bytesOf(kTwoAxes));
    while (bench.notices.back().change != DeviceChange::Connected)
        QVERIFY(bench.wait(0, bench.notices.size() + 1));
}

void TestHub::failedReadIsTriedAgain() {
    Bench bench;
    bench.hid.plug(unit("a", "p1"), bytesOf(kTwoAxes));
    QVERIFY(bench.open({wish("left unit")}));
    QVERIFY(bench.wait(0, 1));
    bench.hid.breakReading("a");
    QVERIFY(bench.wait(0, 2));
    QVERIFY(bench.wait(0, 3));
    QCOMPARE(bench.text(2), QString("0 connected "));
    QCOMPARE(bench.hid.opens("a"), 2);
}

void TestHub::dropsAreCountedAndTheLastStateArrives() {
    Bench bench;
    bench.hid.plug(unit("a", "p1"), bytesOf(kTwoAxes));
    QVERIFY(bench.open({wish("left unit")}, 4));
    for (int i = 0; i < 100; ++i)
        bench.hid.send("a", {std::uint8_t(i), 7});
    bench.hid.waitUntilRead("a");
    QVERIFY(bench.wait(6, 2));
    // 101 readings: 4 fill the queue, one is kept as the remark comes, then the newest
    QCOMPARE(bench.readings.size(), std::size_t(6));
    QCOMPARE(bench.hub->counters(0).drops, std::uint64_t(95));
    QCOMPARE(bench.readings.back().raw, 99);
    QCOMPARE(bench.text(1), QString("0 remark 'left unit' (1209:0001) sent more than the program could take; short "
                                    "movements may be missing"));
    bench.hid.send("a", {100, 7});
    QVERIFY(bench.wait(7, 2));
    QCOMPARE(bench.hub->counters(0).drops, std::uint64_t(95));
}

void TestHub::equalReportsAreSeenAndCostNothing() {
    Bench bench;
    bench.hid.plug(unit("a", "p1"), bytesOf(kTwoAxes));
    QVERIFY(bench.open({wish("left unit")}));
    bench.sendSteadily("a", 1000, {5, 6});
    QVERIFY(bench.wait(2, 1));
    QCOMPARE(bench.hub->counters(0).reports, std::uint64_t(1000));
    QCOMPARE(bench.hub->counters(0).period, Duration(1ms));
    QCOMPARE(bench.readings.size(), std::size_t(2)); // behind the decoder nothing of the other 999
}

void TestHub::reportsBeforeTheFirstReadAreNoLoss() {
    Bench bench; // the clock stands: nothing had the time to be lost
    bench.hid.plug(unit("a", "p1"), bytesOf(kTwoAxes));
    for (int i = 0; i < 100; ++i)
        bench.hid.send("a", {std::uint8_t(i), 7});
    QVERIFY(bench.open({wish("left unit")}));
    bench.hid.waitUntilRead("a");
    bench.hid.send("a", {100, 7}); // once it has come, what came before it has been thought about
    QVERIFY(bench.wait(102, 1));
    QCOMPARE(bench.hub->counters(0).suspected, std::uint64_t(0));
    QCOMPARE(bench.notices.size(), std::size_t(1));
}

/// The kernel keeps 63 reports while nobody reads, and says nothing of the rest.
void TestHub::lossesAreSuspectedAndSaidOnce() {
    Bench bench;
    bench.hid.plug(unit("a", "p1"), bytesOf(kTwoAxes));
    QVERIFY(bench.open({wish("left unit")}));
    bench.sendSteadily("a", 1000, {5, 6});
    for (int stall = 1; stall <= 2; ++stall) {
        bench.clock.set(bench.clock.now() + 100ms);
        bench.hid.sendAll("a", std::vector<std::vector<std::uint8_t>>(63, {5, 6}));
        bench.hid.waitUntilRead("a");
        bench.sendSteadily("a", 10, {5, 6});
        QCOMPARE(bench.hub->counters(0).suspected, std::uint64_t(37 * stall));
    }
    QVERIFY(bench.wait(2, 2));
    QCOMPARE(bench.notices.size(), std::size_t(2));
    QCOMPARE(bench.text(1), QString("0 remark 'left unit' (1209:0001) may have lost reports while the computer was "
                                    "busy; short movements may be missing"));
    bench.hid.unplug("a");
    QVERIFY(bench.wait(2, 3));
    bench.hid.plug(unit("a", "p1"), bytesOf(kTwoAxes));
    QVERIFY(bench.wait(2, 4));
    bench.hid.send("a", {5, 6});
    QVERIFY(bench.wait(4, 4));
    QCOMPARE(bench.hub->counters(0).suspected, std::uint64_t(74)); // a new connection forgets nothing
}

void TestHub::onlyWhatIsListenedToIsHandedOn() {
    Bench bench;
    bench.hid.plug(unit("a", "p1"), bytesOf(kTwoAxes));
    QVERIFY(bench.open({wish("left unit")}));
    QVERIFY(bench.wait(0, 1));
    bench.hub->listenOnlyTo(0, {false, true, true}); // of another device: not heeded
    bench.hid.send("a", {1, 1});
    QVERIFY(bench.wait(2, 1));
    bench.hub->listenOnlyTo(0, {false, true});
    bench.hid.send("a", {2, 1});
    bench.hid.send("a", {3, 2});
    QVERIFY(bench.wait(3, 1));
    QCOMPARE(bench.readings.size(), std::size_t(3));
    QCOMPARE(bench.readings[2].input, 1);
    QCOMPARE(bench.hub->counters(0).reports, std::uint64_t(3));
    bench.hid.unplug("a");
    QVERIFY(bench.wait(3, 2));
    bench.hid.plug(unit("a", "p1"), bytesOf(kTwoAxes));
    QVERIFY(bench.wait(3, 3));
    bench.hid.send("a", {4, 2}); // a new connection tells all again
    QVERIFY(bench.wait(5, 3));
}

void TestHub::whatIsNotAttendedToWakesLater() {
    Bench bench;
    bench.hid.plug(unit("a", "p1"), bytesOf(kTwoAxes));
    QVERIFY(bench.open({wish("left unit")}));
    QVERIFY(bench.wait(0, 1));
    bench.hid.send("a", {1, 1});
    QVERIFY(bench.wait(2, 1));
    bench.hub->attendTo(0, {true}); // of another device: not heeded
    bench.hub->attendTo(0, {false, true});
    const auto waited = [&](std::uint8_t first, std::uint8_t second) {
        bench.hid.send("a", {first, second});
        bench.hid.waitUntilRead("a");
        const auto begin = std::chrono::steady_clock::now();
        bench.hub->waitUntil(kForever);
        return std::chrono::steady_clock::now() - begin;
    };
    waited(1, 2);
    QVERIFY(waited(2, 2) >= DeviceHub::kLeisure);
    QVERIFY(bench.wait(4, 1));
}

void TestHub::oddReportsAreCountedAndSaidOnce() {
    Bench bench;
    bench.hid.plug(unit("a", "p1"), bytesOf("05 01 09 04 A1 01 85 01 09 30 09 31 25 7F 75 08 95 02 81 02 C0"));
    QVERIFY(bench.open({wish("left unit")}));
    for (int i = 0; i < 3; ++i) {
        bench.hid.send("a", {1, 5});       // truncated
        bench.hid.send("a", {1, 5, 6, 7}); // longer
        bench.hid.send("a", {2, 5, 6});    // unknown
    }
    bench.hid.waitUntilRead("a");
    QVERIFY(bench.wait(2, 4));
    const DeviceCounters counters = bench.hub->counters(0);
    QCOMPARE(counters.reports, std::uint64_t(9));
    QCOMPARE(counters.truncated, std::uint64_t(3));
    QCOMPARE(counters.overlong, std::uint64_t(3));
    QCOMPARE(counters.unknown, std::uint64_t(3));
    QCOMPARE(bench.notices.size(), std::size_t(4));
    QCOMPARE(bench.readings.size(), std::size_t(2));
}

void TestHub::unwishedDevicesAreNotOpened() {
    Bench bench;
    DeviceInfo keys = unit("a", "p1/input1");
    keys.deviceClass = DeviceClass::Keyboard; // the keyboard part of the same card
    bench.hid.plug(keys, bytesOf(published::kKeyboard));
    bench.hid.plug(unit("b", "p1/input0"), bytesOf(kTwoAxes));
    DeviceInfo other = unit("c", "p2");
    other.product = 0x0002;
    bench.hid.plug(other, bytesOf(kTwoAxes));
    QVERIFY(bench.open({wish("left unit")}));
    QVERIFY(bench.wait(0, 1));
    QCOMPARE(bench.hub->connected(0)->path, std::string("b"));
    QCOMPARE(bench.hid.opens("a"), 0);
    QCOMPARE(bench.hid.opens("c"), 0);
}

void TestHub::privateDevicesOpenWhenNamed_data() {
    QTest::addColumn<int>("deviceClass");
    QTest::addColumn<QString>("descriptor");
    QTest::addColumn<bool>("opens");
    QTest::newRow("mouse") << int(DeviceClass::Mouse) << published::kMouse << true;
    QTest::newRow("keyboard with controls in the same node")
        << int(DeviceClass::Keyboard) << QString("85 01 ") + published::kJoystick + " 85 02 " + published::kKeyboard
        << true;
    QTest::newRow("keyboard") << int(DeviceClass::Keyboard) << published::kKeyboard << false;
    // FIDO Alliance, CTAP HID: usage page F1D0, usage 01
    QTest::newRow("security key") << int(DeviceClass::SecurityKey)
                                  << "06 D0 F1 09 01 A1 01 09 20 15 00 26 FF 00 75 08 95 40 81 02 C0" << true;
}

void TestHub::privateDevicesOpenWhenNamed() {
    QFETCH(int, deviceClass);
    QFETCH(QString, descriptor);
    QFETCH(bool, opens);
    Bench bench;
    DeviceInfo info = unit("a", "p1");
    info.deviceClass = DeviceClass(deviceClass);
    bench.hid.plug(info, bytesOf(descriptor));
    DeviceWish another = wish("another");
    another.product = 0x0002;
    QVERIFY(bench.open({another}));
    QVERIFY(bench.wait(0, 1));
    QCOMPARE(bench.hid.opens("a"), 0); // not named
    bench.notices.clear();
    QVERIFY(bench.open({wish("left unit")}));
    QVERIFY(bench.wait(0, 1));
    QCOMPARE(bench.notices[0].change, opens ? DeviceChange::Connected : DeviceChange::Lost);
    QCOMPARE(bench.hid.opens("a"), opens ? 1 : 0);
}

void TestHub::wakeEndsAWait() {
    Bench bench;
    QVERIFY(bench.open({}));
    bench.hub->wake();
    bench.hub->waitUntil(kForever); // returns at once
    QCOMPARE(bench.hub->now(), Time(0));
    bench.hub->waitUntil(Time(0)); // the deadline has come
}

QTEST_APPLESS_MAIN(TestHub)
#include "test_hub.moc"
