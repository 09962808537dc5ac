#include <QtTest>
#include <rapidcheck.h>

#include "device/deviceclass.h"
#include "device/explain.h"
#include "device/recording.h"
#include "device/udevrule.h"
#include "device/unitname.h"
#include "hidtext.h"
#include "publisheddevices.h"

using namespace flowhand;
using namespace std::chrono_literals;

class TestRecording : public QObject {
    Q_OBJECT

private slots:
    void recordingsAreRead();
    void hexIsReadAsPeopleWriteIt_data();
    void hexIsReadAsPeopleWriteIt();
    void badRecordingsNameTheLine_data();
    void badRecordingsNameTheLine();
    void recordingsComeBack();
    void descriptorsAreExplained_data();
    void descriptorsAreExplained();
    void unitsAreNamed_data();
    void unitsAreNamed();
    void explanationGoesToTheCut();
    void classesAreTold_data();
    void classesAreTold();
    void rulesNameDevices();
};

void TestRecording::recordingsAreRead() {
    const auto recording = parseRecording("# Flowhand recording\n"
                                          "device: 1209:F110 Lever box\n"
                                          "descriptor: 05 01 09 30\n"
                                          "\n"
                                          "0.001234: 01 7F\n"
                                          "12: 017e\r\n"
                                          "// also a comment\n"
                                          "01 7d # the last",
                                          "levers.txt");
    QVERIFY(recording);
    QCOMPARE(recording->device, std::string("1209:F110 Lever box"));
    QCOMPARE(recording->descriptor, (std::vector<std::uint8_t>{5, 1, 9, 0x30}));
    QCOMPARE(recording->reports.size(), std::size_t(3));
    QCOMPARE(*recording->reports[0].time, Time(1234us));
    QCOMPARE(*recording->reports[1].time, Time(12s));
    QCOMPARE(recording->reports[1].bytes, (std::vector<std::uint8_t>{1, 0x7E}));
    QVERIFY(!recording->reports[2].time);
}

void TestRecording::hexIsReadAsPeopleWriteIt_data() {
    QTest::addColumn<QString>("text");
    QTest::addColumn<QString>("bytes"); // "none": not hexadecimal
    QTest::newRow("spaced") << "05 01 a1 01"
                            << "05 01 A1 01";
    QTest::newRow("run together") << "0501A101"
                                  << "05 01 A1 01";
    QTest::newRow("as C writes it") << "0x05, 0x01, 0XA1,0x1,"
                                    << "05 01 A1 01";
    QTest::newRow("in lines") << "05 01\r\n\tA1 01\n"
                              << "05 01 A1 01";
    QTest::newRow("nothing") << ""
                             << "";
    QTest::newRow("0 alone is half a byte") << "05 0"
                                            << "none";
    QTest::newRow("a digit split from its byte") << "0 5 01"
                                                 << "none";
    QTest::newRow("0x alone") << "0x"
                              << "none";
    QTest::newRow("three digits behind 0x") << "0x123"
                                            << "none";
    QTest::newRow("words") << "joystick"
                           << "none";
}

void TestRecording::hexIsReadAsPeopleWriteIt() {
    QFETCH(QString, text);
    QFETCH(QString, bytes);
    const auto parsed = parseHex(text.toStdString());
    QCOMPARE(parsed ? QString::fromStdString(hexText(*parsed)) : QString("none"), bytes);
}

void TestRecording::badRecordingsNameTheLine_data() {
    QTest::addColumn<QString>("line");
    QTest::newRow("no hexadecimal") << "0.5: 01 7G";
    QTest::newRow("half a byte") << "01 7";
    QTest::newRow("no time") << "soon: 01 7F";
    QTest::newRow("no descriptor") << "descriptor: none";
}

void TestRecording::badRecordingsNameTheLine() {
    QFETCH(QString, line);
    const auto recording = parseRecording(("01 02\n\n" + line + "\n").toStdString(), "levers.txt");
    QVERIFY(!recording);
    QCOMPARE(recording.error().code, std::string("bad-recording"));
    QCOMPARE(recording.error().place.line, 3);
    QVERIFY(QString::fromStdString(describe(recording.error())).startsWith("levers.txt:3:1: '" + line + "' is not "));
}

void TestRecording::recordingsComeBack() {
    QVERIFY(rc::check([](const std::vector<std::uint8_t>& bytes) {
        const Time time = std::chrono::microseconds(*rc::gen::inRange<std::int64_t>(0, 1'000'000'000'000));
        const std::vector<std::uint8_t> descriptor{5, 1};
        RC_PRE(!bytes.empty());
        const Time started = std::chrono::milliseconds(*rc::gen::inRange<std::int64_t>(0, 4'000'000'000'000));
        const Recording head{"1209:F110 Box", "usb-1/input0", "A: 7", started, descriptor, {}};
        const auto recording = parseRecording(
            recordingHead(head) + recordingLine({time, bytes}) + recordingLine({std::nullopt, bytes}), "memory");
        RC_ASSERT(recording.has_value());
        RC_ASSERT(recording->device == head.device);
        RC_ASSERT(recording->port == head.port);
        RC_ASSERT(recording->serial == head.serial);
        RC_ASSERT(recording->started == head.started);
        RC_ASSERT(recording->descriptor == descriptor);
        RC_ASSERT(recording->reports.size() == 2u);
        RC_ASSERT(recording->reports[0].time == std::optional(time));
        RC_ASSERT(recording->reports[0].bytes == bytes);
        RC_ASSERT(recording->reports[1].bytes == bytes);
    }));
}

void TestRecording::descriptorsAreExplained_data() {
    QTest::addColumn<QString>("descriptor");
    QTest::addColumn<QString>("words");
    // Wording of items: HID 1.11, 6.2.2 and the item text of its appendices
    QTest::newRow("D.1 beginning") << "05 01 09 04 A1 01 05 02 09 BB 15 81 C0"
                                   << "0 Usage Page (Generic Desktop); 2 Usage (Joystick); 4 Collection (Application); "
                                      "6 Usage Page (Simulation Controls); 8 Usage (Throttle); "
                                      "10 Logical Minimum (-127, or 129 unsigned); 12 End Collection";
    QTest::newRow("flags") << "81 42 82 02 01 91 83"
                           << "0 Input (Data, Variable, Absolute, Null State); "
                              "2 Input (Data, Variable, Absolute, Buffered Bytes); "
                              "5 Output (Constant, Variable, Absolute, Volatile)";
    QTest::newRow("usages with a page of their own")
        << "05 01 0B 03 00 09 00 09 30"
        << "0 Usage Page (Generic Desktop); 2 Usage (button 3); 7 Usage (X)";
    QTest::newRow("Pop brings the page back")
        << "05 01 A4 05 09 B4 09 30"
        << "0 Usage Page (Generic Desktop); 2 Push; 3 Usage Page (Button); 5 Pop; 6 Usage (X)";
    QTest::newRow("what is skipped") << "FE 01 F0 55 0D 01 F6 01 02"
                                     << "0 long item (skipped); 4 reserved item (skipped); 6 reserved global item "
                                        "(skipped)";
    QTest::newRow("delimiter") << "A9 01 A9 00"
                               << "0 Delimiter (open); 2 Delimiter (close)";
    QTest::newRow("exponents are nibbles") << "55 0E 55 0F 55 02 55 FE"
                                           << "0 Unit Exponent (-2); 2 Unit Exponent (-1); 4 Unit Exponent (2); "
                                              "6 Unit Exponent (-2)";
    QTest::newRow("degrees, in one byte or two") << "65 14 66 14 00"
                                                 << "0 Unit (degrees); 2 Unit (degrees)";
}

void TestRecording::descriptorsAreExplained() {
    QFETCH(QString, descriptor);
    QFETCH(QString, words);
    QStringList found;
    const auto bytes = bytesOf(descriptor);
    for (const ExplainedItem& item : explainDescriptor(bytes))
        found << QString("%1 ").arg(item.offset) + QString::fromStdString(item.text);
    QCOMPARE(found.join("; "), words);
}

void TestRecording::unitsAreNamed_data() {
    QTest::addColumn<quint32>("code");
    QTest::addColumn<QString>("name");
    // HID 1.11, 6.2.2.7: the table of common units, from memory
    QTest::newRow("none") << 0x0u << "none";
    QTest::newRow("distance") << 0x11u << "cm";
    QTest::newRow("mass") << 0x101u << "g";
    QTest::newRow("time") << 0x1001u << "s";
    QTest::newRow("velocity") << 0xF011u << "cm s^-1";
    QTest::newRow("momentum") << 0xF111u << "cm g s^-1";
    QTest::newRow("acceleration") << 0xE011u << "cm s^-2";
    QTest::newRow("force") << 0xE111u << "cm g s^-2";
    QTest::newRow("energy") << 0xE121u << "cm^2 g s^-2";
    QTest::newRow("angular acceleration") << 0xE012u << "radians s^-2";
    QTest::newRow("voltage") << 0x00F0D121u << "cm^2 g s^-3 A^-1";
    QTest::newRow("luminous intensity") << 0x01000001u << "cd";
    QTest::newRow("temperature, English") << 0x00010003u << "degrees Fahrenheit";
    QTest::newRow("degrees") << 0x14u << "degrees";
    QTest::newRow("inches") << 0x13u << "inches";
    QTest::newRow("a reserved system") << 0x15u << "vendor's";
    QTest::newRow("a vendor's system") << 0x1Fu << "vendor's";
}

void TestRecording::unitsAreNamed() {
    QFETCH(quint32, code);
    QFETCH(QString, name);
    QCOMPARE(QString::fromStdString(unitName(code)), name);
}

void TestRecording::explanationGoesToTheCut() {
    const auto bytes = bytesOf("05 01 26 FF");
    const auto items = explainDescriptor(bytes);
    QCOMPARE(items.size(), std::size_t(1));
    QVERIFY(rc::check([](const std::vector<std::uint8_t>& any) {
        std::size_t offset = 0;
        for (const ExplainedItem& item : explainDescriptor(any)) {
            RC_ASSERT(item.offset == offset);
            offset += item.bytes.size();
        }
        RC_ASSERT(offset <= any.size());
    }));
}

void TestRecording::classesAreTold_data() {
    QTest::addColumn<QString>("descriptor");
    QTest::addColumn<int>("deviceClass");
    QTest::addColumn<bool>("keyboardOnly");
    QTest::newRow("joystick") << published::kJoystick << int(DeviceClass::Controls) << false;
    QTest::newRow("keyboard") << published::kKeyboard << int(DeviceClass::Keyboard) << true;
    QTest::newRow("mouse") << published::kMouse << int(DeviceClass::Mouse) << false;
    QTest::newRow("keyboard with media keys")
        << QString(published::kKeyboard) + " 05 0C 09 01 A1 01 C0" << int(DeviceClass::Keyboard) << true;
    QTest::newRow("joystick and keyboard in one")
        << QString(published::kJoystick) + " " + published::kKeyboard << int(DeviceClass::Keyboard) << false;
    // FIDO Alliance, CTAP HID: usage page F1D0, usage 01
    QTest::newRow("security key") << "06 D0 F1 09 01 A1 01 09 20 15 00 26 FF 00 75 08 95 40 81 02 C0"
                                  << int(DeviceClass::SecurityKey) << false;
    QTest::newRow("lights") << "06 00 FF 09 01 A1 01 09 02 75 08 95 08 91 02 C0" << int(DeviceClass::Other) << false;
    QTest::newRow("selector by array") << "05 09 A1 01 19 01 29 04 15 01 25 04 75 08 95 01 81 00 C0"
                                       << int(DeviceClass::Controls) << false;
}

void TestRecording::classesAreTold() {
    QFETCH(QString, descriptor);
    QFETCH(int, deviceClass);
    QFETCH(bool, keyboardOnly);
    const auto parsed = parseDescriptor(bytesOf(descriptor));
    QVERIFY(parsed);
    QCOMPARE(int(classOf(*parsed)), deviceClass);
    QCOMPARE(isKeyboardOnly(*parsed), keyboardOnly);
    const DeviceClass told = classOf(*parsed);
    QCOMPARE(isPrivate(told), told != DeviceClass::Controls && told != DeviceClass::Other);
}

void TestRecording::rulesNameDevices() {
    const QString rule = QString::fromStdString(udevRule({{0x1209, 0xF110}, {0x1209, 0x000A}}));
    QVERIFY(rule.contains("\nSUBSYSTEM==\"hidraw\", KERNELS==\"*:1209:F110.*\", TAG+=\"uaccess\", MODE=\"0660\"\n"));
    QVERIFY(rule.contains("\nSUBSYSTEM==\"hidraw\", KERNELS==\"*:1209:000A.*\", TAG+=\"uaccess\", MODE=\"0660\"\n"));
    // Every rule that is shipped names a device: never all of hidraw
    QFile shipped(ASSETS "/70-flowhand.rules");
    QVERIFY(shipped.open(QFile::ReadOnly));
    int rules = 0;
    while (!shipped.atEnd()) {
        const QString line = QString::fromUtf8(shipped.readLine()).trimmed();
        if (line.isEmpty() || line.startsWith('#'))
            continue;
        static const QRegularExpression shape("^SUBSYSTEM==\"hidraw\", KERNELS==\"\\*:[0-9A-F]{4}:[0-9A-F]{4}\\.\\*\", "
                                              "TAG\\+=\"uaccess\", MODE=\"0660\"$");
        QVERIFY2(shape.match(line).hasMatch(), qPrintable(line));
        ++rules;
    }
    QVERIFY(rules > 0);
}

QTEST_APPLESS_MAIN(TestRecording)
#include "test_recording.moc"
