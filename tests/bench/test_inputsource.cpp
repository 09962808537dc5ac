// Where the bench's readings come from: devices that come and go, and recordings of them.

#include <chrono>

#include <QTemporaryDir>
#include <QtTest>

#include "bench/inputsource.h"
#include "device/fakehid.h"
#include "device/hidtext.h"
#include "device/wishes.h"

using namespace flowhand;

namespace {

/// Two axes of 8 bits, without ids.
constexpr const char* kTwoAxes = "05 01 09 04 A1 01 09 30 09 31 15 00 26 FF 00 75 08 95 02 81 02 C0";

DeviceInfo unit(const std::string& path, std::uint16_t product, const std::string& port) {
    DeviceInfo info;
    info.path = path;
    info.vendor = 0x1209;
    info.product = product;
    info.port = port;
    info.name = "Unit " + path;
    info.readable = true;
    return info;
}

DeviceWish wish(const std::string& name, std::uint16_t product, const std::string& port = {}) {
    return {name, 0x1209, product, {}, port, {}};
}

bool never() {
    return false;
}

/// Asks until `isEnough`; a test that waits longer has failed.
template <class Enough>
bool waitFor(InputSource& source, InputNews& all, Enough isEnough) {
    const auto giveUp = std::chrono::steady_clock::now() + std::chrono::seconds(20);
    while (!isEnough(all)) {
        if (std::chrono::steady_clock::now() > giveUp)
            return false;
        std::optional<InputNews> news = source.next();
        if (!news)
            return false;
        all.readings.insert(all.readings.end(), news->readings.begin(), news->readings.end());
        all.connected.insert(all.connected.end(), news->connected.begin(), news->connected.end());
        all.messages.insert(all.messages.end(), news->messages.begin(), news->messages.end());
    }
    return true;
}

} // namespace

class TestInputSource : public QObject {
    Q_OBJECT

private Q_SLOTS:
    void liveDevicesAreReadAndMissed();
    void keyboardsStayClosed();
    void equalUnitsByTheirPort();
    void recordingsSideBySide();
    void recordingsByPortAndStart();
};

void TestInputSource::liveDevicesAreReadAndMissed() {
    FakeHid hid;
    const SteadyClock clock;
    hid.plug(unit("a", 1, "port 1"), bytesOf(kTwoAxes));
    auto source = liveSource(hid, clock, {}, never);
    QVERIFY(source);
    InputNews all;
    QVERIFY(waitFor(**source, all, [](const InputNews& news) {
        return !news.connected.empty();
    }));
    QCOMPARE((*source)->inputs(0).size(), std::size_t(2));
    hid.send("a", {10, 20});
    hid.send("a", {10, 30});
    hid.send("a", {10, 30});
    QVERIFY(waitFor(**source, all, [](const InputNews& news) {
        return news.readings.size() >= 3;
    }));
    QCOMPARE(all.readings.back().raw, 30);
    hid.waitUntilRead("a");
    QCOMPARE((*source)->reports(0), std::uint64_t(3)); // one said nothing new
    hid.unplug("a");
    QVERIFY(waitFor(**source, all, [](const InputNews& news) {
        return !news.messages.empty();
    }));
    QVERIFY(!(*source)->isRecorded());
}

void TestInputSource::keyboardsStayClosed() {
    FakeHid hid;
    const SteadyClock clock;
    DeviceInfo keyboard = unit("k", 2, "port 2");
    keyboard.deviceClass = DeviceClass::Keyboard;
    hid.plug(keyboard, bytesOf(kTwoAxes));
    const auto none = liveSource(hid, clock, {}, never);
    QVERIFY(!none);
    QCOMPARE(none.error().code, std::string("no-device"));
    hid.plug(unit("a", 1, "port 1"), bytesOf(kTwoAxes));
    const auto controls = liveSource(hid, clock, {wish("desk", 1)}, never);
    QVERIFY(controls);
    QCOMPARE((*controls)->devices().size(), std::size_t(1));
    QCOMPARE(hid.opens("k"), 0);
    const auto named = liveSource(hid, clock, {wish("desk", 1), wish("keys", 2)}, never); // the rig names it
    QVERIFY(named);
    QCOMPARE((*named)->devices().size(), std::size_t(2));
}

void TestInputSource::equalUnitsByTheirPort() {
    FakeHid hid;
    const SteadyClock clock;
    hid.plug(unit("a", 1, "port 1"), bytesOf(kTwoAxes));
    hid.plug(unit("b", 1, "port 2"), bytesOf(kTwoAxes));
    const auto source = liveSource(hid, clock, {}, never);
    QVERIFY(source);
    const auto matches =
        matchSource(**source, {wish("right", 1, "port 2"), wish("left", 1, "port 1"), wish("other", 7)});
    QCOMPARE((*source)->devices()[*matches[0].device].port, std::string("port 2"));
    QCOMPARE((*source)->devices()[*matches[1].device].port, std::string("port 1"));
    QVERIFY(!matches[2].device && matches[2].why == notPluggedIn(wish("other", 7)));
}

void TestInputSource::recordingsSideBySide() {
    QTemporaryDir folder;
    std::vector<std::string> files;
    for (const char* name : {"left", "right"}) {
        QFile file(folder.filePath(name));
        QVERIFY(file.open(QFile::WriteOnly));
        file.write(QByteArray("device: 1209:0001 ") + name + "\ndescriptor: " + kTwoAxes +
                   (files.empty() ? "\n0.010000: 01 00\n0.100000: 02 00\n" : "\n0.050000: 03 00\n"));
        files.push_back(file.fileName().toStdString());
    }
    auto source = recordedSource(files);
    QVERIFY(source);
    const auto matches = matchSource(**source, {wish("first", 1), wish("second", 1), wish("third", 1)});
    QCOMPARE((*source)->devices()[*matches[0].device].name, std::string("left"));
    QCOMPARE((*source)->devices()[*matches[1].device].name, std::string("right"));
    QVERIFY(!matches[2].device && !matches[2].why.isEmpty());
    InputNews all;
    QVERIFY(!waitFor(**source, all, [](const InputNews&) { // to the end
        return false;
    }));
    QCOMPARE(all.connected.size(), std::size_t(2));
    QVector<qint64> raws;
    for (const Reading& reading : all.readings)
        if (reading.input == 0)
            raws << reading.raw;
    QCOMPARE(raws, (QVector<qint64>{1, 3, 2})); // by time
    QCOMPARE((*source)->reports(0), std::uint64_t(2));
}

void TestInputSource::recordingsByPortAndStart() {
    QTemporaryDir folder;
    std::vector<std::string> files;
    for (const char* port : {"port 1", "port 2"}) {
        QFile file(folder.filePath(port));
        QVERIFY(file.open(QFile::WriteOnly));
        file.write(QByteArray("device: 1209:0001 Unit\nport: ") + port +
                   "\nstarted: " + (files.empty() ? "1790000001.5" : "1790000000.0") + "\ndescriptor: " + kTwoAxes +
                   "\n0.010000: 01 00\n");
        files.push_back(file.fileName().toStdString());
    }
    auto source = recordedSource(files);
    QVERIFY(source);
    const auto matches = matchSource(**source, {wish("right", 1, "port 2"), wish("left", 1, "port 1")});
    QCOMPARE((*source)->devices()[*matches[0].device].port, std::string("port 2"));
    QCOMPARE((*source)->devices()[*matches[1].device].port, std::string("port 1"));
    InputNews all;
    QVERIFY(!waitFor(**source, all, [](const InputNews&) { // to the end
        return false;
    }));
    QVERIFY(all.readings.front().time == std::chrono::milliseconds(10));
    QCOMPARE(all.readings.front().device, DeviceIndex(1)); // it was started first
    QVERIFY(all.readings.back().time == std::chrono::milliseconds(1510));
}

QTEST_APPLESS_MAIN(TestInputSource)
#include "test_inputsource.moc"
