#include <QtTest>
#include <rapidcheck.h>

#include "device/descriptor.h"
#include "device/inputs.h"
#include "device/usagenames.h"
#include "hidtext.h"
#include "publisheddevices.h"

using namespace flowhand;

// Section numbers are those of the USB Device Class Definition for HID 1.11; HUT is HID Usage Tables. 'practice' marks
// what the text leaves open, where the Linux kernel's reading is taken.
class TestDescriptor : public QObject {
    Q_OBJECT

private slots:
    void fieldsDecode_data();
    void fieldsDecode();
    void malformedIsRefused_data();
    void malformedIsRefused();
    void rangesAreRead_data();
    void rangesAreRead();
    void physicalValues_data();
    void physicalValues();
    void publishedLengths();
    void publishedReports_data();
    void publishedReports();
    void inputsAreNamed_data();
    void inputsAreNamed();
    void hatAngles_data();
    void hatAngles();
    void usagesHaveTheirNames_data();
    void usagesHaveTheirNames();
    void applicationsAreKept();
    void hugeRangesStayRanges();
    void hostileDescriptorIsBounded();
    void anyBytesAreParsedOrRefused();
    void anyItemsAreParsedOrRefused();
};

void TestDescriptor::fieldsDecode_data() {
    QTest::addColumn<QString>("descriptor");
    QTest::addColumn<QString>("report");
    QTest::addColumn<QString>("values");
    const auto row = [](const char* name, const char* descriptor, const char* report, const char* values) {
        QTest::newRow(name) << descriptor << report << values;
    };
    // 1
    row("5.8 negative minimum is signed", "05 01 09 30 15 81 25 7F 75 08 95 01 81 02", "FF", "X=-1");
    row("5.8 minimum 0 is unsigned", "05 01 09 30 15 00 26 FF 00 75 08 95 01 81 02", "FF", "X=255");
    row("5.8 sign of 10 bits", "05 01 09 30 16 00 FE 26 FF 01 75 0A 95 01 81 02", "FF 03", "X=-1");
    // 2
    row("practice: 25 FF means 255", "05 01 09 30 15 00 25 FF 75 08 95 01 81 02", "FF", "X=255");
    row("practice: 26 FF FF means 65535", "05 01 09 30 15 00 26 FF FF 75 10 95 01 81 02", "FF FF", "X=65535");
    row("practice: maximum first", "05 01 09 30 25 FF 15 00 75 08 95 01 81 02", "FE", "X=254");
    row("6.2.2.7 both negative stay signed", "05 01 09 30 15 80 25 FF 75 08 95 01 81 02", "80", "X=-128");
    // 3
    row("6.2.2.2 size code 3 is four bytes", "05 01 09 30 15 00 27 FF FF 00 00 75 10 95 01 81 02", "FF FF", "X=65535");
    row("6.2.2.2 four bytes unsigned", "05 01 09 30 15 00 27 FF FF FF FF 75 20 95 01 81 02", "FF FF FF FF",
        "X=4294967295");
    row("6.2.2.2 four bytes signed", "05 01 09 30 17 00 00 00 80 27 FF FF FF 7F 75 20 95 01 81 02", "00 00 00 80",
        "X=-2147483648");
    // 4
    row("6.2.2.2 minimum of no bytes is 0", "05 01 09 30 14 26 FF 00 75 08 95 01 81 02", "FF", "X=255");
    row("6.2.2.2 usage minimum of no bytes is 0", "05 07 18 29 04 15 00 25 04 75 08 95 01 81 00", "04", "[0007:0004]");
    row("6.2.2.2 Input of no bytes is an array", "05 09 19 01 29 08 15 01 25 08 75 08 95 01 80", "03", "[button 3]");
    // 5
    row("8.4 fields back to back", "05 01 09 30 09 31 15 00 26 FF 03 75 0A 95 02 81 02", "01 08 00", "X=1 Y=2");
    // 6
    row("practice: 17 bits from bit 17 on", "05 01 09 30 09 31 15 00 27 FF FF 01 00 75 11 95 02 81 02",
        "00 00 02 00 00", "X=0 Y=1");
    row("practice: over 32 bits the position stays right",
        "06 00 FF 09 01 15 00 26 FF 00 75 40 95 01 81 02 05 01 09 30 75 08 81 02", "07 00 00 00 FF FF FF FF 2A",
        "X=42");
    row("practice: array slots over 32 bits say nothing", "05 09 19 01 29 08 15 01 25 08 75 28 95 01 81 00",
        "03 00 00 00 00", "");
    // 8
    row("6.2.2.8 four-byte usage has its own page", "05 09 0B 30 00 01 00 15 00 26 FF 00 75 08 95 01 81 02", "05",
        "X=5");
    row("6.2.2.8 four-byte usage range", "05 01 1B 01 00 09 00 2B 08 00 09 00 15 00 25 01 75 01 95 08 81 02", "04",
        "button 1=0 button 2=0 button 3=1 button 4=0 button 5=0 button 6=0 button 7=0 button 8=0");
    row("5.5 both bounds of a range may be written with a page of their own",
        "05 01 1B 01 00 09 00 2B 01 00 09 00 09 30 15 00 25 01 75 01 95 02 81 02", "02", "button 1=0 X=1");
    // 9
    row("practice: page at the main item", "05 01 09 31 05 02 15 00 25 7F 75 08 95 01 81 02", "01", "0002:0031=1");
    row("practice: page used by the last usage", "05 01 09 30 05 02 09 BB 15 00 25 7F 75 08 95 02 81 02", "01 02",
        "X=1 Throttle=2");
    row("practice: a range takes the page at the main item", "05 01 19 01 29 02 05 09 15 00 25 01 75 01 95 02 81 02",
        "02", "button 1=0 button 2=1");
    // 10
    row("5.4 locals end at Collection", "05 01 09 04 A1 01 75 08 95 01 15 00 25 7F 81 02 C0", "01", "");
    row("5.4 locals end at End Collection", "05 01 A1 00 09 30 C0 75 08 95 01 15 00 25 7F 81 02", "01", "");
    row("5.4 locals end at Output", "05 01 09 30 75 08 95 01 91 02 09 31 25 7F 81 02", "01", "Y=1");
    // 11
    row("6.2.2.8 the last usage repeats", "05 01 09 30 15 00 25 7F 75 08 95 03 81 02", "01 02 03", "X=1 X=2 X=3");
    row("6.2.2.8 unused usages", "05 01 09 30 09 31 09 32 15 00 25 7F 75 08 95 01 81 02", "01", "X=1");
    row("6.2.2.8 the last of a range repeats", "05 09 19 01 29 02 15 00 25 01 75 01 95 03 81 02", "07",
        "button 1=1 button 2=1 button 2=1");
    // 13
    row("6.2.2.8 minimum above maximum: no usages", "05 09 19 08 29 01 15 00 25 01 75 01 95 08 81 02", "FF", "");
    row("6.2.2.8 minimum alone: no usages", "05 09 19 01 15 00 25 01 75 01 95 08 81 02", "FF", "");
    row("6.2.2.8 maximum alone: no usages", "05 09 29 08 15 00 25 01 75 01 95 08 81 02", "FF", "");
    // 14
    row("6.2.2.8 delimiter: the first is preferred", "05 01 A9 01 09 30 09 31 A9 00 15 00 25 7F 75 08 95 01 81 02",
        "05", "X=5");
    row("HUT B two delimited controls",
        "05 01 A9 01 09 30 09 31 A9 00 A9 01 09 32 09 35 A9 00 15 00 25 7F 75 08 95 02 81 02", "05 06", "X=5 Z=6");
    row("6.2.2.8 of delimited ranges the first is preferred",
        "05 09 A9 01 19 01 29 02 19 03 29 04 A9 00 15 00 25 01 75 01 95 02 81 02", "02", "button 1=0 button 2=1");
    row("6.2.2.8 delimiter before a collection inside another",
        "05 01 09 04 A1 01 A9 01 09 01 09 02 A9 00 A1 00 09 30 25 7F 75 08 95 01 81 02 C0 C0", "05", "X=5");
    // 15
    row("6.2.2.5 array", "05 09 15 01 25 08 19 01 29 08 75 04 95 01 81 00", "03", "[button 3]");
    row("6.2.2.5 array 0: none asserted", "05 09 15 01 25 08 19 01 29 08 75 04 95 01 81 00", "00", "[]");
    row("6.2.2.5 array 9: none asserted", "05 09 15 01 25 08 19 01 29 08 75 04 95 01 81 00", "09", "[]");
    row("6.2.2.5 array 0 is the first position", "05 09 15 00 25 03 19 01 29 04 75 08 95 01 81 00", "00", "[button 1]");
    row("6.2.2.5 array: more range than usages", "05 09 15 01 25 08 19 01 29 04 75 08 95 01 81 00", "05", "[]");
    row("6.2.2.5 array: more usages than range", "05 09 15 01 25 02 19 01 29 08 75 08 95 01 81 00", "03", "[]");
    row("6.2.2.5 array of several slots", "05 09 15 01 25 08 19 01 29 08 75 04 95 02 81 00", "52",
        "[button 2, button 5]");
    row("6.2.2.5 signed array", "05 09 15 FF 25 01 19 01 29 03 75 08 95 01 81 00", "FF", "[button 1]");
    row("6.2.2.5 array of single usages", "05 01 09 90 09 93 15 00 25 01 75 08 95 01 81 00", "01", "[D-pad Left]");
    // 16
    row("5.10 null hat", "05 01 09 39 15 00 25 07 75 04 95 01 81 42", "08", "Hat switch=8>null");
    row("5.10 null hat, the last of its bits", "05 01 09 39 15 00 25 07 75 04 95 01 81 42", "0F", "Hat switch=15>null");
    row("5.10 hat from 1: 0 is released", "05 01 09 39 15 01 25 08 75 04 95 01 81 42", "00", "Hat switch=0>null");
    row("5.10 hat from 1: 1 is up", "05 01 09 39 15 01 25 08 75 04 95 01 81 42", "01", "Hat switch=1");
    row("practice: hat without the flag", "05 01 09 39 15 00 25 07 75 04 95 01 81 02", "0F", "Hat switch=15>null");
    row("practice: hat without the flag sends 8", "05 01 09 39 15 00 25 07 75 04 95 01 81 02", "08",
        "Hat switch=8>null");
    row("5.10 null axis", "05 01 09 30 15 00 25 64 75 08 95 01 81 42", "65", "X=101>null");
    row("practice: axis out of range is clamped", "05 01 09 30 15 0A 25 64 75 08 95 02 09 31 81 02", "65 09",
        "X=101>100 Y=9>10");
    row("no range given: nothing to clamp", "05 01 09 30 75 08 95 01 81 02", "FE", "X=254");
    // 17
    row("6.2.2.9 constant padding", "75 04 95 01 81 03 05 01 09 30 25 0F 81 02", "5A", "X=5");
    row("practice: constant with a usage", "05 01 09 31 75 08 95 01 81 03 09 30 25 7F 81 02", "01 02", "X=2");
    row("6.2.2.9 constant as array", "75 04 95 01 81 01 05 01 09 30 25 0F 81 02", "5A", "X=5");
    row("data without a usage counts bits", "75 04 95 01 81 02 05 01 09 30 25 0F 81 02", "5A", "X=5");
    // 18
    row("6.2.2.5 relative", "05 01 09 38 15 81 25 7F 75 08 95 01 81 06", "FF", "Wheel=-1");
    // 19
    row("6.2.2.5 flags of two bytes", "05 01 09 30 15 00 26 FF 00 75 08 95 01 82 02 01", "FF", "X=255");
    // 20
    row("practice: report size 0", "05 01 09 30 75 00 95 01 81 02 09 31 75 08 25 7F 81 02", "05", "Y=5");
    row("practice: report count 0", "05 01 09 30 75 08 95 00 81 02 09 31 95 01 25 7F 81 02", "05", "Y=5");
    // 23, 24, 25
    row("5.6 id byte", "05 01 25 7F 75 08 95 01 85 01 09 30 81 02 85 02 09 31 81 02", "02 05", "Y=5");
    row("5.6 each id has its own position",
        "05 01 25 7F 75 08 95 01 85 01 09 30 81 02 85 02 09 31 81 02 85 01 09 32 81 02", "01 05 06", "X=5 Z=6");
    row("5.6 input, output and feature apart", "05 01 25 7F 75 08 95 01 09 40 91 02 09 41 B1 02 09 30 81 02", "05",
        "X=5");
    row("unknown id is ignored", "05 01 25 7F 75 08 95 01 85 01 09 30 81 02", "03 05", "");
    row("id 0 is never a report", "05 01 25 7F 75 08 95 01 09 32 81 02 85 01 09 30 81 02", "00 05", "");
    row("truncated: nothing from the missing part", "05 01 09 30 09 31 15 00 26 FF 03 75 0A 95 02 81 02", "01 08",
        "X=1");
    row("empty report", "05 01 09 30 25 7F 75 08 95 01 81 02", "", "");
    row("empty report with ids", "05 01 85 01 09 30 25 7F 75 08 95 01 81 02", "", "");
    row("longer: the rest is ignored", "05 01 09 30 25 7F 75 08 95 01 81 02", "05 06 07", "X=5");
    // 26
    row("5.4 Pop brings the globals back", "05 01 15 00 25 7F 75 08 95 01 A4 05 09 15 81 75 10 95 02 B4 09 30 81 02",
        "7F", "X=127");
    row("5.4 Push saves the report id", "05 01 25 7F 75 08 95 01 85 01 A4 85 02 09 30 81 02 B4 09 31 81 02", "01 05",
        "Y=5");
    row("5.4 Push leaves usages alone", "05 01 25 7F 75 08 95 01 09 30 A4 B4 81 02", "05", "X=5");
    row("5.4 Pop leaves positions alone", "05 01 25 7F 75 08 95 01 A4 09 30 81 02 B4 09 31 81 02", "05 06", "X=5 Y=6");
    row("5.4 Usage Page between Push and Pop", "05 01 25 7F 75 08 95 01 A4 05 02 09 BB 81 02 B4 09 30 81 02", "05 06",
        "Throttle=5 X=6");
    // 27
    row("6.2.2.3 long item is skipped", "FE 03 F0 81 02 C0 05 01 09 30 25 7F 75 08 95 01 81 02", "05", "X=5");
    row("reserved type is skipped by size", "0D 55 0F 01 02 03 04 05 01 09 30 25 7F 75 08 95 01 81 02", "05", "X=5");
    row("reserved global tag is skipped by size", "C6 55 AA 05 01 09 30 25 7F 75 08 95 01 81 02", "05", "X=5");
    // 28, 29
    row("zero bytes after the end", "05 01 09 04 A1 01 09 30 25 7F 75 08 95 01 81 02 C0 00 00", "05", "X=5");
    row("6.2.2.6 collection without a usage", "05 01 09 04 A1 01 A1 00 09 30 25 7F 75 08 95 01 81 02 C0 C0", "05",
        "X=5");
}

void TestDescriptor::fieldsDecode() {
    QFETCH(QString, descriptor);
    QFETCH(QString, report);
    QFETCH(QString, values);
    const auto parsed = parseDescriptor(bytesOf(descriptor));
    QVERIFY2(parsed, parsed ? "" : parsed.error().message.c_str());
    const ReportDecoder decoder(*parsed);
    QCOMPARE(textOf(decoder.descriptor(), decoder.values(bytesOf(report))), values);
}

void TestDescriptor::malformedIsRefused_data() {
    QTest::addColumn<QString>("descriptor");
    QTest::addColumn<int>("offset");
    QTest::addColumn<QString>("reason");
    const auto row = [](const char* name, const QString& descriptor, int offset, const char* reason) {
        QTest::newRow(name) << descriptor << offset << reason;
    };
    row("empty", "", 0, "empty");
    row("practice: count huge", "05 01 09 30 75 20 97 FF FF FF FF 81 02", 6, "Report Count 4294967295");
    row("practice: count over the kernel's", "96 01 30", 0, "12288");
    row("practice: size over the kernel's", "76 01 01", 0, "256");
    row("practice: report over the kernel's", "76 00 01 96 00 30 81 03", 6, "bits long");
    row("practice: the sum counts", "75 08 96 00 20 81 03 81 03", 7, "bits long");
    row("6.2.2.7 report id 0", "85 00", 0, "Report ID 0");
    row("6.2.2.7 report id of no bytes", "05 01 84", 2, "Report ID 0");
    row("6.2.2.7 report id of two bytes", "86 00 01", 0, "Report ID 256");
    row("5.4 Pop on an empty stack", "05 01 B4", 2, "Pop without a Push");
    row("practice: Push 5 deep", "A4 A4 A4 A4 A4", 4, "Push more than 4 deep");
    row("6.2.2.2 cut inside an item", "05 01 09 04 A1 01 26 FF", 6, "cut off");
    row("6.2.2.2 cut after a prefix", "05", 0, "cut off");
    row("6.2.2.3 long item cut", "05 01 FE 05 F0 01", 2, "cut off");
    row("6.2.2.3 long item without size", "FE", 0, "cut off");
    row("6.2.2.6 collection never ends", "05 01 09 04 A1 01", 6, "never end");
    row("6.2.2.6 end without collection", "05 01 C0", 2, "without a Collection");
    row("6.2.2.6 one end too many", "A1 01 C0 C0", 3, "without a Collection");
    row("6.2.2.8 delimiter inside a delimiter", "A9 01 A9 01", 2, "inside another");
    row("6.2.2.8 delimiter closes unopened", "A9 00", 0, "not opened");
    row("6.2.2.8 delimiter never closes", "05 01 A9 01 09 30", 6, "never closes");
    row("6.2.2.8 delimiter before an array", "05 09 A9 01 09 01 09 02 A9 00 15 01 25 02 75 08 95 01 81 00", 18,
        "before an array");
    row("6.2.2.8 delimiter before a top level collection", "05 01 A9 01 09 04 09 05 A9 00 A1 01 C0", 10,
        "before a top level Collection");
    row("practice: maximum below a negative minimum", "15 FF 25 FE 09 30 75 08 95 01 81 02", 10, "below");
    row("practice: maximum below a positive minimum", "15 0A 25 05 75 08 95 01 B1 02", 8, "below");
    row("6.2.1 longer than its length field can say", QString("05 01 ").repeated(32768), 65535, "longer");
}

void TestDescriptor::malformedIsRefused() {
    QFETCH(QString, descriptor);
    QFETCH(int, offset);
    QFETCH(QString, reason);
    const auto parsed = parseDescriptor(bytesOf(descriptor));
    QVERIFY(!parsed);
    QCOMPARE(QString::fromStdString(parsed.error().code), QString("bad-descriptor"));
    const QString message = QString::fromStdString(parsed.error().message);
    QVERIFY2(message.startsWith(QString("malformed report descriptor at byte %1: ").arg(offset)), qPrintable(message));
    QVERIFY2(message.contains(reason), qPrintable(message));
}

void TestDescriptor::rangesAreRead_data() {
    QTest::addColumn<QString>("items");
    QTest::addColumn<qint64>("lowest");
    QTest::addColumn<qint64>("highest");
    QTest::addColumn<qint64>("physicalLowest");
    QTest::addColumn<qint64>("physicalHighest");
    const auto row = [](const char* name, const char* items, qint64 a, qint64 b, qint64 c, qint64 d) {
        QTest::newRow(name) << items << a << b << c << d;
    };
    row("6.2.2.7 no physical range is the logical", "15 81 25 7F", -127, 127, -127, 127);
    row("6.2.2.7 physical 0..0 is the logical", "15 00 25 64 35 00 45 00", 0, 100, 0, 100);
    row("6.2.2.7 physical range", "15 00 25 07 35 00 46 3B 01", 0, 7, 0, 315);
    row("practice: physical 45 FF means 255", "15 00 25 07 35 00 45 FF", 0, 7, 0, 255);
    row("6.2.2.7 negative physical", "15 00 25 64 35 9C 45 64", 0, 100, -100, 100);
    row("four bytes", "17 00 00 00 80 27 FF FF FF 7F", INT32_MIN, INT32_MAX, INT32_MIN, INT32_MAX);
    row("four bytes unsigned", "15 00 27 FF FF FF FF", 0, 4294967295, 0, 4294967295);
    row("none", "", 0, 0, 0, 0);
}

void TestDescriptor::rangesAreRead() {
    QFETCH(QString, items);
    QFETCH(qint64, lowest);
    QFETCH(qint64, highest);
    QFETCH(qint64, physicalLowest);
    QFETCH(qint64, physicalHighest);
    const auto parsed = parseDescriptor(bytesOf("05 01 09 30 75 20 95 01 " + items + " 81 02"));
    QVERIFY(parsed);
    const InputElement& element = parsed->elements.at(0);
    QCOMPARE(qint64(element.lowest), lowest);
    QCOMPARE(qint64(element.highest), highest);
    QCOMPARE(qint64(element.physicalLowest), physicalLowest);
    QCOMPARE(qint64(element.physicalHighest), physicalHighest);
}

void TestDescriptor::physicalValues_data() {
    QTest::addColumn<QString>("items");
    QTest::addColumn<qint64>("raw");
    QTest::addColumn<double>("physical");
    QTest::newRow("6.2.2.7 linear") << "15 00 25 07 35 00 46 3B 01 65 14" << qint64(2) << 90.0;
    QTest::newRow("6.2.2.7 exponent nibble 55 0E is -2") << "15 00 25 64 55 0E" << qint64(50) << 0.5;
    QTest::newRow("6.2.2.7 exponent nibble 55 0F is -1") << "15 00 25 64 55 0F" << qint64(50) << 5.0;
    QTest::newRow("practice: exponent 55 FE is -2") << "15 00 25 64 55 FE" << qint64(50) << 0.5;
    QTest::newRow("6.2.2.7 exponent 55 02") << "15 00 25 64 55 02" << qint64(50) << 5000.0;
    QTest::newRow("no range: no division by zero") << "" << qint64(77) << 77.0;
    QTest::newRow("one value: no division by zero") << "15 05 25 05 35 01 45 02" << qint64(5) << 5.0;
    QTest::newRow("the widest") << "17 00 00 00 80 27 FF FF FF 7F 35 00 45 64" << qint64(INT32_MAX) << 100.0;
}

void TestDescriptor::physicalValues() {
    QFETCH(QString, items);
    QFETCH(qint64, raw);
    QFETCH(double, physical);
    const auto parsed = parseDescriptor(bytesOf("05 01 09 30 75 20 95 01 " + items + " 81 02"));
    QVERIFY(parsed);
    QCOMPARE(parsed->elements.at(0).physical(raw), physical);
    const auto unit = parseDescriptor(bytesOf("05 01 09 30 75 20 95 01 66 14 00 81 02"));
    QVERIFY(unit);
    QCOMPARE(unit->elements.at(0).unit, 0x14u); // 65 14 and 66 14 00 are both degrees
}

void TestDescriptor::publishedLengths() {
    QCOMPARE(bytesOf(published::kKeyboard).size(), std::size_t(0x3F)); // HID 1.11, E.4 wDescriptorLength
    QCOMPARE(bytesOf(published::kMouse).size(), std::size_t(0x32));    // HID 1.11, E.8 wDescriptorLength
    const auto joystick = parseDescriptor(bytesOf(published::kJoystick));
    QVERIFY(joystick);
    QCOMPARE(joystick->reports.at(0).bytes(), std::size_t(4)); // HID 1.11, D.1
}

void TestDescriptor::publishedReports_data() {
    QTest::addColumn<QString>("descriptor");
    QTest::addColumn<QString>("report");
    QTest::addColumn<QString>("values");
    // What the Linux kernel 6.1 made of these reports by its evdev node.
    QTest::newRow("D.1 throttle back, stick right, button 3")
        << published::kJoystick << "81 7F 00 4F"
        << "Throttle=-127 X=127 Y=0 Hat switch=15>null button 1=0 button 2=0 button 3=1 button 4=0";
    QTest::newRow("D.1 hat down, button 4")
        << published::kJoystick << "7F 81 FF 82"
        << "Throttle=127 X=-127 Y=-1 Hat switch=2 button 1=0 button 2=0 button 3=0 button 4=1";
    QTest::newRow("E.10 buttons 1 and 3") << published::kMouse << "05 FF 02"
                                          << "button 1=1 button 2=0 button 3=1 X=-1 Y=2";
    QTest::newRow("E.6 left shift, A, B")
        << published::kKeyboard << "02 00 04 05 00 00 00 00"
        << "0007:00E0=0 0007:00E1=1 0007:00E2=0 0007:00E3=0 0007:00E4=0 0007:00E5=0 0007:00E6=0 0007:00E7=0 "
           "[0007:0004, 0007:0005]";
}

void TestDescriptor::publishedReports() {
    fieldsDecode();
}

void TestDescriptor::inputsAreNamed_data() {
    QTest::addColumn<QString>("descriptor");
    QTest::addColumn<QString>("names");
    QTest::newRow("D.1") << published::kJoystick
                         << "axis Throttle -127..127, axis X -127..127, axis Y -127..127, hat hat 1 0..3, "
                            "button button 1 0..1, button button 2 0..1, button button 3 0..1, button button 4 0..1";
    QTest::newRow("E.10") << published::kMouse
                          << "button button 1 0..1, button button 2 0..1, button button 3 0..1, "
                             "relative X -127..127, relative Y -127..127";
    // 12
    QString sliders = "axis Slider 0..127";
    for (int nth = 2; nth <= 17; ++nth)
        sliders += QString(", axis Slider %1 0..127").arg(nth);
    QTest::newRow("6.2.2.8 the same usage written 17 times")
        << "05 01 15 00 25 7F 75 08 95 11 " + QString("09 36 ").repeated(17) + "81 02" << sliders;
    QTest::newRow("6.2.2.8 the same usage by repetition") << "05 01 09 36 15 00 25 7F 75 08 95 11 81 02" << sliders;
    QTest::newRow("6.2.2.8 four hats") << "05 01 09 39 09 39 09 39 09 39 15 00 25 07 75 04 95 04 81 42"
                                       << "hat hat 1 0..7, hat hat 2 0..7, hat hat 3 0..7, hat hat 4 0..7";
    // 29
    QTest::newRow("6.2.2.6 two applications")
        << "05 01 09 04 A1 01 09 30 15 00 25 7F 75 08 95 01 81 02 C0 09 05 A1 01 09 30 81 02 C0"
        << "axis X 0..127, axis X 2 0..127";
    QTest::newRow("6.2.2.5 an array is a button a usage")
        << "05 09 15 01 25 03 19 05 29 07 75 08 95 02 81 00"
        << "button button 5 0..1, button button 6 0..1, button button 7 0..1";
    QTest::newRow("6.2.2.5 an array reaches no further than its range")
        << "05 09 15 01 25 02 19 05 29 07 75 08 95 02 81 00"
        << "button button 5 0..1, button button 6 0..1";
    QTest::newRow("5.6 the same button in two reports") << "05 09 25 01 75 01 95 01 85 01 09 03 81 02 85 02 09 03 81 02"
                                                        << "button button 3 0..1, button button 3 (2) 0..1";
    QTest::newRow("no range given") << "05 01 09 30 75 0A 95 01 81 02 05 09 09 01 75 01 81 02"
                                    << "axis X 0..1023, button button 1 0..1";
    QTest::newRow("a button with a travel is an axis") << "05 09 09 01 15 00 26 FF 00 75 08 95 01 81 02"
                                                       << "axis button 1 0..255";
    QTest::newRow("6.2.2.9 padding is no control") << "05 01 09 31 75 08 95 01 81 03"
                                                   << "";
}

void TestDescriptor::inputsAreNamed() {
    QFETCH(QString, descriptor);
    QFETCH(QString, names);
    const auto parsed = parseDescriptor(bytesOf(descriptor));
    QVERIFY(parsed);
    static const QStringList kinds{"axis", "button", "hat", "relative"};
    QStringList found;
    for (const InputInfo& input : makeInputs(*parsed).inputs)
        found << QString("%1 %2 %3..%4")
                     .arg(kinds[int(input.kind)], QString::fromStdString(input.name))
                     .arg(input.lowest)
                     .arg(input.highest);
    QCOMPARE(found.join(", "), names);
}

void TestDescriptor::hatAngles_data() {
    QTest::addColumn<QString>("items");
    QTest::addColumn<double>("first");
    QTest::addColumn<double>("last");
    QTest::newRow("D.1 four ways by physical range") << "15 00 25 03 35 00 46 0E 01 65 14" << 0.0 << 270.0;
    QTest::newRow("eight ways by physical range") << "15 00 25 07 35 00 46 3B 01 65 14" << 0.0 << 315.0;
    QTest::newRow("physical range without a unit") << "15 01 25 08 35 00 46 3B 01" << 0.0 << 315.0;
    QTest::newRow("practice: no physical range") << "15 01 25 08" << 0.0 << 315.0;
    QTest::newRow("practice: a physical range left over") << "15 00 25 07 35 00 45 7F" << 0.0 << 315.0;
    QTest::newRow("16 bits of degrees") << "15 00 26 67 01 65 14" << 0.0 << 359.0;
    QTest::newRow("hundredths of degrees") << "15 00 27 9F 8C 00 00 65 14 55 0E" << 0.0 << 359.99;
}

void TestDescriptor::hatAngles() {
    QFETCH(QString, items);
    QFETCH(double, first);
    QFETCH(double, last);
    const auto parsed = parseDescriptor(bytesOf("05 01 09 39 75 10 95 01 " + items + " 81 42"));
    QVERIFY(parsed);
    const InputMap map = makeInputs(*parsed);
    QCOMPARE(map.inputs.at(0).firstAngle, first);
    QCOMPARE(map.inputs.at(0).lastAngle, last);
}

void TestDescriptor::usagesHaveTheirNames_data() {
    QTest::addColumn<int>("usage");
    QTest::addColumn<QString>("name");
    const std::pair<int, const char*> names[] = {
        // HID Usage Tables 1.12, Generic Desktop page
        {0x010004, "Joystick"},
        {0x010005, "Game Pad"},
        {0x010030, "X"},
        {0x010031, "Y"},
        {0x010032, "Z"},
        {0x010033, "Rx"},
        {0x010034, "Ry"},
        {0x010035, "Rz"},
        {0x010036, "Slider"},
        {0x010037, "Dial"},
        {0x010038, "Wheel"},
        {0x010039, "Hat switch"},
        {0x010048, "Resolution Multiplier"},
        {0x010090, "D-pad Up"},
        {0x010091, "D-pad Down"},
        {0x010092, "D-pad Right"},
        {0x010093, "D-pad Left"},
        // The same, from memory
        {0x010001, "Pointer"},
        {0x010002, "Mouse"},
        {0x010006, "Keyboard"},
        {0x010007, "Keypad"},
        {0x010008, "Multi-axis Controller"},
        {0x010080, "System Control"},
        // HID Usage Tables 1.12, Simulation Controls page; devices 01 to 0C from memory
        {0x020001, "Flight Simulation Device"},
        {0x020002, "Automobile Simulation Device"},
        {0x020003, "Tank Simulation Device"},
        {0x020004, "Spaceship Simulation Device"},
        {0x020005, "Submarine Simulation Device"},
        {0x020006, "Sailing Simulation Device"},
        {0x020007, "Motorcycle Simulation Device"},
        {0x020008, "Sports Simulation Device"},
        {0x020009, "Airplane Simulation Device"},
        {0x02000A, "Helicopter Simulation Device"},
        {0x02000B, "Magic Carpet Simulation Device"},
        {0x02000C, "Bicycle Simulation Device"},
        {0x020020, "Flight Control Stick"},
        {0x020021, "Flight Stick"},
        {0x020022, "Cyclic Control"},
        {0x020023, "Cyclic Trim"},
        {0x020024, "Flight Yoke"},
        {0x020025, "Track Control"},
        {0x020026, "Driving Control"},
        {0x0200B0, "Aileron"},
        {0x0200B1, "Aileron Trim"},
        {0x0200B2, "Anti-Torque Control"},
        {0x0200B3, "Autopilot Enable"},
        {0x0200B4, "Chaff Release"},
        {0x0200B5, "Collective Control"},
        {0x0200B6, "Dive Brake"},
        {0x0200B7, "Electronic Countermeasures"},
        {0x0200B8, "Elevator"},
        {0x0200B9, "Elevator Trim"},
        {0x0200BA, "Rudder"},
        {0x0200BB, "Throttle"},
        {0x0200BC, "Flight Communications"},
        {0x0200BD, "Flare Release"},
        {0x0200BE, "Landing Gear"},
        {0x0200BF, "Toe Brake"},
        {0x0200C0, "Trigger"},
        {0x0200C1, "Weapons Arm"},
        {0x0200C2, "Weapons Select"},
        {0x0200C3, "Wing Flaps"},
        {0x0200C4, "Accelerator"},
        {0x0200C5, "Brake"},
        {0x0200C6, "Clutch"},
        {0x0200C7, "Shifter"},
        {0x0200C8, "Steering"},
        {0x0200C9, "Turret Direction"},
        {0x0200CA, "Barrel Elevation"},
        {0x0200CB, "Dive Plane"},
        {0x0200CC, "Ballast"},
        {0x0200CD, "Bicycle Crank"},
        {0x0200CE, "Handle Bars"},
        {0x0200CF, "Front Brake"},
        {0x0200D0, "Rear Brake"},
        // HID Usage Tables 1.12, Button page; and what has no name
        {0x090001, "button 1"},
        {0x090003, "button 3"},
        {0x09FFFF, "button 65535"},
        {0x0100FF, "0001:00FF"},
        {0x0C00E9, "000C:00E9"}};
    for (const auto& [usage, name] : names)
        QTest::newRow(name) << usage << name;
}

void TestDescriptor::usagesHaveTheirNames() {
    QFETCH(int, usage);
    QFETCH(QString, name);
    QCOMPARE(QString::fromStdString(usageName(Usage(usage))), name);
}

void TestDescriptor::applicationsAreKept() {
    // 6.2.2.6: depth 30 is legal, physical collections may have no usage
    const auto nested =
        parseDescriptor(bytesOf("05 01 09 04 " + QString("A1 01 ").repeated(30) + "09 30 25 7F 75 08 95 01 81 02" +
                                QString(" C0").repeated(30) + " 05 01 09 06 A1 01 C0"));
    QVERIFY(nested);
    QCOMPARE(nested->collections.size(), std::size_t(31));
    QCOMPARE(nested->elements.at(0).collection, 29);
    QCOMPARE(nested->applications(), (std::vector<Usage>{0x10004, usage::kKeyboard}));
}

void TestDescriptor::hugeRangesStayRanges() {
    // 6.2.2.8: 2^32 usages, for an array and for variables
    const auto array = parseDescriptor(bytesOf("1B 00 00 00 00 2B FF FF FF FF 15 00 26 FF 00 75 08 95 01 81 00"));
    QVERIFY(array);
    QCOMPARE(array->elements.at(0).usages, (std::vector<UsageRange>{{0, 0xFFFFFFFF}}));
    QCOMPARE(array->elements.at(0).usageOfSlot(5), Usage(5));
    QCOMPARE(makeInputs(*array).inputs.size(), std::size_t(255)); // id 0 is none
    const auto wide = parseDescriptor(bytesOf("1B 00 00 00 00 2B FF FF FF FF 15 00 27 FF FF FF FF 75 20 95 01 81 00"));
    QVERIFY(wide);
    QCOMPARE(wide->elements.at(0).usageOfSlot(0xFFFFFFFF), Usage(0xFFFFFFFF));
    QVERIFY(makeInputs(*wide).inputs.empty()); // codes, not controls
    const auto variables = parseDescriptor(bytesOf("1B 00 00 00 00 2B FF FF FF FF 25 01 75 01 95 02 81 02"));
    QVERIFY(variables);
    QCOMPARE(variables->elements.at(1).usage, Usage(1));
}

void TestDescriptor::hostileDescriptorIsBounded() {
    // 255 reports of 12288 elements each would be 3 million
    QString hostile = "05 09 25 01 75 01 96 00 30 ";
    for (int id = 1; id <= 255; ++id)
        hostile += QString("85 %1 09 01 81 02 ").arg(id, 2, 16, QChar('0'));
    const auto parsed = parseDescriptor(bytesOf(hostile));
    QVERIFY(!parsed);
    QVERIFY(parsed.error().message.find("65536 data elements") != std::string::npos);
    // one report of 12288 buttons is legal, and only the first inputs of it are kept
    const auto many = parseDescriptor(bytesOf("05 09 09 01 25 01 75 01 96 00 30 81 02"));
    QVERIFY(many);
    QCOMPARE(makeInputs(*many).inputs.size(), kMostInputs);
}

namespace {

/// Parses, and where that succeeds decodes reports of every length; true for the property to hold.
void useWhatParses(const std::vector<std::uint8_t>& bytes, const std::vector<std::uint8_t>& report) {
    const auto parsed = parseDescriptor(bytes);
    if (!parsed) {
        RC_ASSERT(parsed.error().message.find(" at byte ") != std::string::npos);
        return;
    }
    ReportDecoder decoder(*parsed);
    std::vector<InputChange> changes;
    for (std::size_t length = 0; length <= report.size(); ++length) {
        const auto part = std::span(report).first(length);
        decoder.decode(part, changes);
        for (const ElementValue& value : decoder.values(part).elements)
            RC_ASSERT(parsed->elements[value.element].bit + parsed->elements[value.element].size <= 8 * length);
    }
    for (const InputChange& change : changes)
        RC_ASSERT(change.input < decoder.inputs().size());
}

} // namespace

void TestDescriptor::anyBytesAreParsedOrRefused() {
    QVERIFY(rc::check([](const std::vector<std::uint8_t>& bytes, const std::vector<std::uint8_t>& report) {
        useWhatParses(bytes, report);
    }));
}

void TestDescriptor::anyItemsAreParsedOrRefused() {
    // Whole items out of those that matter, so that most descriptors get far
    static const std::vector<std::vector<std::uint8_t>> items = {
        {0x05, 0x01}, {0x05, 0x09}, {0x09, 0x30}, {0x09, 0x39}, {0x19, 0x01}, {0x29, 0x08}, {0x15, 0x00}, {0x15, 0x81},
        {0x25, 0x7F}, {0x25, 0xFF}, {0x75, 0x01}, {0x75, 0x07}, {0x75, 0x21}, {0x95, 0x01}, {0x95, 0x05}, {0x81, 0x00},
        {0x81, 0x02}, {0x81, 0x06}, {0x81, 0x42}, {0x81, 0x03}, {0x91, 0x02}, {0x85, 0x01}, {0x85, 0x02}, {0xA4},
        {0xB4},       {0xA1, 0x01}, {0xC0},       {0xA9, 0x01}, {0xA9, 0x00}, {0x45, 0x64}};
    QVERIFY(rc::check([] {
        std::vector<std::uint8_t> bytes;
        for (const int index : *rc::gen::container<std::vector<int>>(rc::gen::inRange(0, int(items.size()))))
            bytes.insert(bytes.end(), items[std::size_t(index)].begin(), items[std::size_t(index)].end());
        useWhatParses(bytes, *rc::gen::arbitrary<std::vector<std::uint8_t>>());
    }));
}

QTEST_APPLESS_MAIN(TestDescriptor)
#include "test_descriptor.moc"
