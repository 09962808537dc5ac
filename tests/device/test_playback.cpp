#include <QtTest>

#include "device/playback.h"
#include "hidtext.h"
#include "publisheddevices.h"

using namespace flowhand;
using namespace std::chrono_literals;

namespace {

/// One axis of 8 bits and eight buttons.
constexpr const char* kBox = "05 01 09 04 A1 01 09 30 15 00 26 FF 00 75 08 95 01 81 02 "
                             "05 09 19 01 29 08 25 01 75 01 95 08 81 02 C0";

NamedRecording recording(const std::string& file, const QString& text) {
    const auto parsed = parseRecording(text.toStdString(), file);
    return {file, parsed ? *parsed : Recording{}};
}

NamedRecording box(const std::string& file, const QString& lines) {
    return recording(file, QString("device: 1209:0001 Box\ndescriptor: ") + kBox + "\n" + lines);
}

DeviceWish wish(const std::string& name, const std::string& port = {}) {
    return {name, 0x1209, 0x0001, {}, port, {"rig.toml", 3, 1}};
}

/// "0.5 0 X=12" a reading, with its time, device and input.
QStringList readingsOf(const Playback& playback) {
    QStringList all;
    for (const Reading& reading : playback.readings)
        all << QString("%1 %2 %3=%4")
                   .arg(seconds(reading.time))
                   .arg(reading.device)
                   .arg(QString::fromStdString(playback.inputs[reading.device][reading.input].name))
                   .arg(reading.raw);
    return all;
}

} // namespace

class TestPlayback : public QObject {
    Q_OBJECT

private slots:
    void onlyChangesArePlayed();
    void recordingsMadeSideBySideAreFlownSo();
    void withoutAStartAllBeginTogether();
    void unitsAreToldApartByPort();
    void aDeviceWithoutRecordingIsLost();
    void oddReportsAreSaidOnce();
    void badRecordingsAreRefused_data();
    void badRecordingsAreRefused();
};

void TestPlayback::onlyChangesArePlayed() {
    const auto playback = playBack({wish("box")}, {box("a", "0: 05 00\n0.25: 05 00\n0.5: 06 00\n0.5: 06 01\n")});
    QVERIFY2(playback, playback ? "" : describe(playback.error()).c_str());
    QCOMPARE(playback->inputs.at(0).size(), std::size_t(9));
    QCOMPARE(playback->notices.at(0).change, DeviceChange::Connected);
    QCOMPARE(playback->notices.size(), std::size_t(1));
    const QStringList readings = readingsOf(*playback);
    QCOMPARE(readings.size(), 11);                    // all nine inputs, then two changes
    QCOMPARE(readings.at(0), QString("1e-06 0 X=5")); // behind the connection, which has time 0 to itself
    QCOMPARE(readings.mid(9), (QStringList{"0.5 0 X=6", "0.5 0 button 1=1"}));
}

void TestPlayback::recordingsMadeSideBySideAreFlownSo() {
    DeviceWish other = wish("other");
    other.product = 0x0002;
    NamedRecording late = box("late", "started: 1790000002.5\n0.5: 01 00\n0.75: 02 00\n");
    late.recording.device = "1209:0002 Other";
    const auto playback =
        playBack({wish("box"), other}, {late, box("a", "started: 1790000000\n1: 05 00\n3.1: 06 00\n")});
    QVERIFY2(playback, playback ? "" : describe(playback.error()).c_str());
    QCOMPARE(readingsOf(*playback).filter("X="), (QStringList{"1 0 X=5", "3 1 X=1", "3.1 0 X=6", "3.25 1 X=2"}));
}

void TestPlayback::withoutAStartAllBeginTogether() {
    DeviceWish other = wish("other");
    other.product = 0x0002;
    NamedRecording second = box("b", "started: 1790000002.5\n2: 01 00\n");
    second.recording.device = "1209:0002 Other";
    const auto playback = playBack({wish("box"), other}, {box("a", "1: 05 00\n"), second});
    QVERIFY2(playback, playback ? "" : describe(playback.error()).c_str());
    QCOMPARE(readingsOf(*playback).filter("X="), (QStringList{"1 0 X=5", "2 1 X=1"}));
}

void TestPlayback::unitsAreToldApartByPort() {
    const auto playback = playBack({wish("left", "p2"), wish("right", "p1")},
                                   {box("a", "port: p1\n1: 05 00\n"), box("b", "port: p2\n1: 06 00\n")});
    QVERIFY2(playback, playback ? "" : describe(playback.error()).c_str());
    QCOMPARE(readingsOf(*playback).filter("X="), (QStringList{"1 0 X=6", "1 1 X=5"}));
}

void TestPlayback::aDeviceWithoutRecordingIsLost() {
    DeviceWish other = wish("other");
    other.product = 0x0002;
    const auto playback = playBack({wish("box"), other}, {box("a", "1: 05 00\n")});
    QVERIFY2(playback, playback ? "" : describe(playback.error()).c_str());
    QCOMPARE(playback->notices.at(1).change, DeviceChange::Lost);
    QCOMPARE(playback->notices.at(1).message.english(),
             std::string("there is no recording of 'other' (1209:0002): name it by --recording"));
}

void TestPlayback::oddReportsAreSaidOnce() {
    const auto playback = playBack({wish("box")}, {box("a", "1: 05\n2: 06\n3: 06 00 00\n4: 07 00 00\n")});
    QVERIFY2(playback, playback ? "" : describe(playback.error()).c_str());
    QCOMPARE(playback->notices.size(), std::size_t(3));
    QCOMPARE(playback->notices.at(1).time, Time(1s));
    QVERIFY(playback->notices.at(1).message.english().find("shorter than") != std::string::npos);
    QVERIFY(playback->notices.at(2).message.english().find("longer than") != std::string::npos);
}

void TestPlayback::badRecordingsAreRefused_data() {
    QTest::addColumn<QString>("text");
    QTest::addColumn<QString>("code");
    QTest::addColumn<QString>("words");
    const QString descriptor = QString("descriptor: ") + kBox + "\n";
    QTest::newRow("no device") << descriptor + "1: 05 00\n"
                               << "bad-recording"
                               << "device: 1209:0001 Quadrant";
    QTest::newRow("no id") << "device: Box\n" + descriptor << "bad-recording"
                           << "device: 1209:0001 Quadrant";
    QTest::newRow("no descriptor") << "device: 1209:0001 Box\n1: 05 00\n"
                                   << "bad-recording"
                                   << "descriptor:";
    QTest::newRow("malformed descriptor") << "device: 1209:0001 Box\ndescriptor: 05 01 26 FF\n"
                                          << "bad-descriptor"
                                          << "at byte 2";
    QTest::newRow("a card that types") << QString("device: 1209:0001 Box\ndescriptor: ") + published::kKeyboard
                                       << "keyboard-card"
                                       << "types like a keyboard";
    QTest::newRow("a report without time") << "device: 1209:0001 Box\n" + descriptor + "1: 05 00\n06 00\n"
                                           << "bad-recording"
                                           << "report 2 has no time";
    QTest::newRow("time goes back") << "device: 1209:0001 Box\n" + descriptor + "1: 05 00\n0.5: 06 00\n"
                                    << "bad-recording"
                                    << "report 2 is earlier";
    QTest::newRow("another device") << "device: 1209:0009 Fan\n" + descriptor + "1: 05 00\n"
                                    << "unused-recording"
                                    << "1209:0009 Fan";
}

void TestPlayback::badRecordingsAreRefused() {
    QFETCH(QString, text);
    QFETCH(QString, code);
    QFETCH(QString, words);
    const auto playback = playBack({wish("box")}, {recording("levers.txt", text)});
    QVERIFY(!playback);
    QCOMPARE(QString::fromStdString(playback.error().code), code);
    QVERIFY2(QString::fromStdString(describe(playback.error())).contains(words), describe(playback.error()).c_str());
    const auto twice = playBack({wish("box")}, {box("a", "1: 05 00\n"), box("a", "1: 05 00\n")});
    QVERIFY(!twice);
    const auto equal = playBack({wish("box")}, {box("a", "1: 05 00\n"), box("b", "1: 05 00\n")});
    QVERIFY(!equal);
    QCOMPARE(equal.error().code, std::string("equal-units"));
}

QTEST_APPLESS_MAIN(TestPlayback)
#include "test_playback.moc"
