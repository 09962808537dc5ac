// What is made of bytes: published sentences and messages, right and wrong ones, and noise.

#include <QtTest>
#include <rapidcheck.h>

#include "feed/feedsignals.h"
#include "feed/gdl90.h"
#include "feed/jsonlines.h"
#include "feed/nmea.h"

using namespace flowhand;

Q_DECLARE_METATYPE(FeedFormat)

namespace {

constexpr FeedFormat kFormats[] = {FeedFormat::JsonLines, FeedFormat::Nmea, FeedFormat::Gdl90};

const std::string kHeartbeat = fromHex("7E 00 81 41 DB D0 08 02 B3 8B 7E");
const std::string kTraffic = fromHex("7E 14 00 AB 45 49 1F EF 15 A8 89 78 0F 09 A9 07 B0 01 20 01 4E 38 32 35 56 20 "
                                     "20 20 00 57 D6 7E");
const std::string kOwnship = fromHex("7E 0A 00 AB 45 49 1F EF 15 A8 89 78 0F 09 A9 07 B0 01 20 01 4E 38 32 35 56 20 "
                                     "20 20 00 85 5B 7E");

std::string sentence(const std::string& body) {
    char end[8];
    std::snprintf(end, sizeof end, "*%02X\r\n", nmeaChecksum(body));
    return "$" + body + end;
}

/// An ownship report with some bytes changed, flags and checksum added.
std::string ownshipWith(std::map<std::size_t, std::uint8_t> changed) {
    std::string content = kOwnship.substr(1, 28);
    for (const auto& [at, byte] : changed)
        content[at] = static_cast<char>(byte);
    const auto* const data = reinterpret_cast<const std::uint8_t*>(content.data());
    const std::uint16_t sum = gdl90Checksum({data, content.size()});
    content += static_cast<char>(sum & 0xFF);
    content += static_cast<char>(sum >> 8);
    std::string frame = "\x7E";
    for (const char byte : content) {
        if (byte == '\x7E' || byte == '\x7D') {
            frame += '\x7D';
            frame += static_cast<char>(byte ^ 0x20);
        } else {
            frame += byte;
        }
    }
    return frame + "\x7E";
}

} // namespace

class TestFeedParsers : public QObject {
    Q_OBJECT

private Q_SLOTS:
    void soundMessages_data();
    void soundMessages();
    void clocks_data();
    void clocks();
    void wrongOnesOnlyCount_data();
    void wrongOnesOnlyCount();
    void unknownNamesAreKeptWithinBounds();
    void noiseBetweenMessagesIsPassedOver_data();
    void noiseBetweenMessagesIsPassedOver();
    void anOverlongMessageIsSkippedToItsEnd_data();
    void anOverlongMessageIsSkippedToItsEnd();
    void anyCutGivesTheSame();
    void noiseSaysNothing();
    void aChangedByteIsFound();
    void jsonGivesBackWhatWasSaid();
    void gdl90GivesBackWhatWasSaid();
};

void TestFeedParsers::soundMessages_data() {
    QTest::addColumn<FeedFormat>("format");
    QTest::addColumn<QByteArray>("bytes");
    QTest::addColumn<QString>("values");
    const auto row = [](const char* name, FeedFormat format, const std::string& bytes, const char* values) {
        QTest::newRow(name) << format << QByteArray::fromStdString(bytes) << QString(values);
    };
    // Sentences of receivers' handbooks. 545.4 m = 1789.4 ft.
    row("GGA", FeedFormat::Nmea, "$GPGGA,123519,4807.038,N,01131.000,E,1,08,0.9,545.4,M,46.9,M,,*47\r\n",
        "altitude 1789 ft");
    row("RMC", FeedFormat::Nmea, "$GPRMC,024813.640,A,3158.4608,N,11848.3737,E,10.05,324.27,150706,,,A*50\r\n",
        "ground_speed 10.1 kt, track 324 deg");
    row("VTG", FeedFormat::Nmea, "$GPVTG,140.88,T,,M,8.04,N,14.89,K,D*05\r\n", "ground_speed 8 kt, track 141 deg");
    row("without CR LF at a datagram's end", FeedFormat::Nmea, "$GPVTG,140.88,T,,M,8.04,N,14.89,K,D*05",
        "ground_speed 8 kt, track 141 deg");
    // Made of the standard's fields. The mode N and the status V say 'not valid', quality 0 'no fix'.
    row("another talker", FeedFormat::Nmea, sentence("GNVTG,090.0,T,,M,,N,100.0,K,A"),
        "ground_speed 54 kt, track 90 deg");
    row("RMC not valid", FeedFormat::Nmea, sentence("GPRMC,000000,V,,,,,3.0,10.0,010120,,,N"),
        "ground_speed not known yet, track not known yet");
    row("RMC at rest", FeedFormat::Nmea, sentence("GPRMC,000000,A,,,,,0.0,,010120,,,S"),
        "ground_speed 0 kt, track not known yet");
    row("GGA without a fix", FeedFormat::Nmea, sentence("GPGGA,000000,,,,,0,00,,10.0,M,,M,,"),
        "altitude not known yet");
    row("GGA below the sea", FeedFormat::Nmea, sentence("GPGGA,000000,,,,,8,00,,-3.2,M,,M,,"), "altitude -10.5 ft");
    // GDL 90 Data Interface Specification, Public ICD, Rev A: sections 2.2.4 and 3.5.2; the ownship report is the
    // traffic report's content under its own id.
    row("heartbeat", FeedFormat::Gdl90, kHeartbeat, "");
    row("ownship", FeedFormat::Gdl90, kOwnship,
        "altitude 5000 ft, ground_speed 123 kt, vertical_speed 64 ft/min, track 45 deg, on_ground off");
    // The codes of 'not available' and of what the direction is: values from memory.
    row("on the ground, true heading", FeedFormat::Gdl90, ownshipWith({{12, 0x03}}),
        "altitude 5000 ft, ground_speed 123 kt, vertical_speed 64 ft/min, track not known yet, heading 45 deg, "
        "on_ground on");
    row("nothing available", FeedFormat::Gdl90,
        ownshipWith({{11, 0xFF}, {12, 0xF8}, {14, 0xFF}, {15, 0xF8}, {16, 0x00}}),
        "altitude not known yet, ground_speed not known yet, vertical_speed not known yet, track not known yet, "
        "on_ground off");
    row("descending", FeedFormat::Gdl90, ownshipWith({{15, 0xBF}, {16, 0xFF}}),
        "altitude 5000 ft, ground_speed 123 kt, vertical_speed -64 ft/min, track 45 deg, on_ground off");
    row("with escapes", FeedFormat::Gdl90, ownshipWith({{14, 0x7E}, {15, 0x00}, {5, 0x7D}}),
        "altitude 5000 ft, ground_speed 2016 kt, vertical_speed 64 ft/min, track 45 deg, on_ground off");
    // Our own format (core/feed/README.md). 10 m/s = 19.438 kt (BIPM, SI brochure, 9th edition: 1 kt = 1852 m / 3600
    // s).
    row("every kind", FeedFormat::JsonLines,
        R"({"airspeed": "82.4 kt", "on_ground": true, "reverser_1": "deployed", "line_curvature": 3.5})",
        "airspeed 82 kt, on_ground on, reverser_1 deployed, line_curvature 3.5");
    row("other units", FeedFormat::JsonLines, R"({"airspeed":"10 m/s","altitude":"1 km"})",
        "airspeed 19.4 kt, altitude 3281 ft");
    row("words and null", FeedFormat::JsonLines, R"({"on_ground": "off", "heading": null, "line_curvature": "-2"})",
        "on_ground off, heading not known yet, line_curvature -2");
    row("two lines", FeedFormat::JsonLines, "{\"airspeed\":\"1 kt\"}\r\n\n{\"airspeed\":\"2 kt\"}\n",
        "airspeed 1 kt, airspeed 2 kt");
    row("nothing said", FeedFormat::JsonLines, "{}", "");
}

void TestFeedParsers::soundMessages() {
    QFETCH(FeedFormat, format);
    QFETCH(QByteArray, bytes);
    const Parsed parsed = parse(format, bytes.toStdString());
    QCOMPARE(parsed.faults(), std::uint64_t(0));
    QVERIFY(!parsed.messages.empty());
    QTEST(QString::fromStdString(parsed.values()), "values");
}

void TestFeedParsers::clocks_data() {
    QTest::addColumn<FeedFormat>("format");
    QTest::addColumn<QByteArray>("bytes");
    QTest::addColumn<double>("time");
    QTest::addColumn<bool>("isTimeOfDay");
    // 53467 s is 14:51:07 (Public ICD 2.2.4).
    QTest::newRow("heartbeat") << FeedFormat::Gdl90 << QByteArray::fromStdString(kHeartbeat)
                               << 14 * 3600.0 + 51 * 60 + 7 << true;
    QTest::newRow("RMC") << FeedFormat::Nmea
                         << QByteArray("$GPRMC,024813.640,A,3158.4608,N,11848.3737,E,10.05,324.27,150706,,,A*50")
                         << 2 * 3600.0 + 48 * 60 + 13.64 << true;
    QTest::newRow("GGA") << FeedFormat::Nmea
                         << QByteArray("$GPGGA,123519,4807.038,N,01131.000,E,1,08,0.9,545.4,M,46.9,M,,*47")
                         << 12 * 3600.0 + 35 * 60 + 19 << true;
    QTest::newRow("JSON") << FeedFormat::JsonLines << QByteArray(R"({"time": 1760000000.25})") << 1760000000.25
                          << false;
}

void TestFeedParsers::clocks() {
    QFETCH(FeedFormat, format);
    QFETCH(QByteArray, bytes);
    QFETCH(double, time);
    const Parsed parsed = parse(format, bytes.toStdString());
    QCOMPARE(parsed.messages.size(), std::size_t(1));
    QVERIFY(parsed.messages[0].time);
    QCOMPARE(seconds(*parsed.messages[0].time), time);
    QTEST(parsed.messages[0].isTimeOfDay, "isTimeOfDay");
}

void TestFeedParsers::wrongOnesOnlyCount_data() {
    QTest::addColumn<FeedFormat>("format");
    QTest::addColumn<QByteArray>("bytes");
    QTest::addColumn<QString>("counts");
    const auto row = [](const char* name, FeedFormat format, const std::string& bytes, const char* counts) {
        QTest::newRow(name) << format << QByteArray::fromStdString(bytes) << QString(counts);
    };
    // Published with wrong checksums: 22 and 75 would be right.
    row("HDT as published", FeedFormat::Nmea, "$HEHDT,178.3,T*1E\r\n", "checksum 1");
    row("GGA as published", FeedFormat::Nmea,
        "$GPGGA,121252.000,3937.3032,N,11611.6046,E,1,05,2.0,45.9,M,-5.7,M,,0000*77\r\n", "checksum 1");
    row("HDT put right", FeedFormat::Nmea, "$HEHDT,178.3,T*22\r\n", "other 1");
    row("no checksum", FeedFormat::Nmea, "$GPVTG,140.88,T,,M,8.04,N,14.89,K,D\r\n", "malformed 1");
    row("half a checksum", FeedFormat::Nmea, "$GPVTG,140.88,T,,M,8.04,N,14.89,K,D*0\r\n", "malformed 1");
    row("no dollar", FeedFormat::Nmea, "GPVTG,140.88,T,,M,8.04,N,14.89,K,D*05\r\n", "malformed 1");
    row("speed is no number", FeedFormat::Nmea, sentence("GPVTG,140.88,T,,M,inf,N,14.89,K,D"), "malformed 1");
    row("speed with an exponent", FeedFormat::Nmea, sentence("GPVTG,140.88,T,,M,1e9,N,14.89,K,D"), "malformed 1");
    row("speed in other units", FeedFormat::Nmea, sentence("GPVTG,140.88,T,,M,8.04,K,14.89,N,D"), "malformed 1");
    row("impossible time", FeedFormat::Nmea, sentence("GPRMC,246000,A,,,,,1.0,10.0,010120,,,A"), "malformed 1");
    row("fields without end", FeedFormat::Nmea, sentence("GPGGA" + std::string(60, ',')), "malformed 1");
    row("proprietary", FeedFormat::Nmea, sentence("PXYZ,1,2,3"), "other 1");
    row("bytes", FeedFormat::Nmea, std::string("$GP\0\xFF*00\n", 9), "malformed 1");

    row("traffic", FeedFormat::Gdl90, kTraffic, "other 1");
    row("CRC of another kind", FeedFormat::Gdl90, fromHex("7E 00 81 41 DB D0 08 02 8B B3 7E"), "checksum 1");
    row("heartbeat cut short", FeedFormat::Gdl90, fromHex("7E 00 81 41 DB D0 08 02 B3"), "malformed 1");
    row("escape before the flag", FeedFormat::Gdl90, fromHex("7E 00 81 7D 7E"), "malformed 1");
    row("too short", FeedFormat::Gdl90, fromHex("7E 00 7E"), "malformed 1");
    row("wrong length", FeedFormat::Gdl90, fromHex("7E 00 00 00 7E"), "malformed 1"); // the sum of nothing is nothing
    row("no frame", FeedFormat::Gdl90, "hello", "malformed 1");

    row("no JSON", FeedFormat::JsonLines, "airspeed 82 kt\n", "malformed 1");
    row("NaN", FeedFormat::JsonLines, R"({"line_curvature": NaN, "airspeed": "80 kt"})", "malformed 1");
    row("infinity", FeedFormat::JsonLines, R"({"line_curvature": 1e999})", "malformed 1");
    row("infinity in words", FeedFormat::JsonLines, R"({"airspeed": "inf kt"})", "message 1 refused 1");
    row("NaN in words", FeedFormat::JsonLines, R"({"airspeed": "nan kt"})", "message 1 refused 1");
    row("no unit", FeedFormat::JsonLines, R"({"airspeed": 82.4})", "message 1 refused 1");
    row("another measure", FeedFormat::JsonLines, R"({"airspeed": "82 deg"})", "message 1 refused 1");
    row("another kind", FeedFormat::JsonLines, R"({"airspeed": true, "on_ground": 1, "reverser_1": "up"})",
        "message 1 refused 3");
    row("no such signal", FeedFormat::JsonLines, R"({"ias": "82 kt"})", "message 1 unknown 1");
    row("a control", FeedFormat::JsonLines, R"({"thrust_lever_1": "50 %"})", "message 1 unknown 1");
    row("nested", FeedFormat::JsonLines, R"({"airspeed": {"value": 82}})", "malformed 1");
    row("a list", FeedFormat::JsonLines, R"([{"airspeed": "82 kt"}])", "malformed 1");
    row("a bare value", FeedFormat::JsonLines, "null\n12\n\"x\"\ntrue", "malformed 4");
    row("two objects in a line", FeedFormat::JsonLines, R"({"airspeed":"1 kt"}{"airspeed":"2 kt"})", "malformed 1");
    row("cut short", FeedFormat::JsonLines, R"({"airspeed":"1 kt")", "malformed 1");
    row("depth", FeedFormat::JsonLines, std::string(8000, '['), "malformed 1");
    row("time beyond reason", FeedFormat::JsonLines, R"({"time": 1e300})", "message 1 refused 1");
}

void TestFeedParsers::wrongOnesOnlyCount() {
    QFETCH(FeedFormat, format);
    QFETCH(QByteArray, bytes);
    const Parsed parsed = parse(format, bytes.toStdString());
    QCOMPARE(QString::fromStdString(parsed.values()), QString());
    QStringList counts;
    const auto add = [&](const char* name, std::uint64_t count) {
        if (count > 0)
            counts << QString("%1 %2").arg(name).arg(count);
    };
    add("message", parsed.messages.size());
    add("other", parsed.tally.others);
    add("malformed", parsed.tally.malformed);
    add("checksum", parsed.tally.badChecksum);
    add("oversized", parsed.tally.oversized);
    add("unknown", parsed.tally.unknownNames);
    add("refused", parsed.tally.refused);
    QTEST(counts.join(' '), "counts");
}

void TestFeedParsers::unknownNamesAreKeptWithinBounds() {
    std::string lines = R"({"ias":1,"\u001b[31m":2,"":3})"
                        "\n";
    for (int i = 0; i < 1000; ++i)
        lines += "{\"name" + std::to_string(i % 500) + "\":1}\n";
    const Parsed parsed = parse(FeedFormat::JsonLines, lines);
    QCOMPARE(parsed.tally.unknownNames, std::uint64_t(1003));
    QCOMPARE(parsed.tally.names.size(), FeedTally::kMostNames);
    QCOMPARE(parsed.tally.names.front(), std::string("ias"));
    QCOMPARE(parsed.tally.names[1], std::string("name0"));
}

void TestFeedParsers::noiseBetweenMessagesIsPassedOver_data() {
    QTest::addColumn<FeedFormat>("format");
    QTest::addColumn<QByteArray>("message");
    QTest::addColumn<QByteArray>("noise");
    QTest::newRow("JSON") << FeedFormat::JsonLines << QByteArray("{\"airspeed\":\"80 kt\"}\n") << QByteArray("}{,\n");
    QTest::newRow("NMEA") << FeedFormat::Nmea << QByteArray("$GPVTG,140.88,T,,M,8.04,N,14.89,K,D*05\r\n")
                          << QByteArray("$$*\r\n");
    QTest::newRow("GDL 90") << FeedFormat::Gdl90 << QByteArray::fromStdString(kOwnship) << QByteArray("\x01\x02\x03");
}

void TestFeedParsers::noiseBetweenMessagesIsPassedOver() {
    QFETCH(FeedFormat, format);
    QFETCH(QByteArray, message);
    QFETCH(QByteArray, noise);
    const Parsed parsed = parse(format, (noise + message + noise + message + message).toStdString());
    QCOMPARE(parsed.messages.size(), std::size_t(3));
    QCOMPARE(parsed.faults(), std::uint64_t(2));
}

void TestFeedParsers::anOverlongMessageIsSkippedToItsEnd_data() {
    QTest::addColumn<FeedFormat>("format");
    QTest::addColumn<QByteArray>("begin");
    QTest::addColumn<int>("longest");
    QTest::addColumn<QByteArray>("end");
    QTest::newRow("JSON") << FeedFormat::JsonLines << QByteArray("") << int(JsonLinesParser::kLongestLine)
                          << QByteArray("\n{\"airspeed\":\"80 kt\"}\n");
    QTest::newRow("NMEA") << FeedFormat::Nmea << QByteArray("") << int(NmeaParser::kLongestSentence)
                          << QByteArray("\n$GPVTG,140.88,T,,M,8.04,N,14.89,K,D*05\r\n");
    QTest::newRow("GDL 90") << FeedFormat::Gdl90 << QByteArray("\x7E") << int(Gdl90Parser::kLongestMessage)
                            << QByteArray::fromStdString(kOwnship);
}

void TestFeedParsers::anOverlongMessageIsSkippedToItsEnd() {
    QFETCH(FeedFormat, format);
    QFETCH(QByteArray, begin);
    QFETCH(int, longest);
    QFETCH(QByteArray, end);
    for (const int length : {longest + 1, 3 * longest, 1'000'000}) {
        const Parsed parsed = parse(format, (begin + QByteArray(length, 'x') + end).toStdString());
        QCOMPARE(parsed.tally.oversized, std::uint64_t(1));
        QCOMPARE(parsed.faults(), std::uint64_t(1));
        QCOMPARE(parsed.messages.size(), std::size_t(1));
    }
    const Parsed fits = parse(format, (begin + QByteArray(longest, 'x') + end).toStdString());
    QCOMPARE(fits.tally.oversized, std::uint64_t(0));
    QCOMPARE(fits.messages.size(), std::size_t(1));
}

void TestFeedParsers::anyCutGivesTheSame() {
    const std::map<FeedFormat, std::string> streams{
        {FeedFormat::JsonLines, "{\"airspeed\":\"80 kt\"}\nno\n{\"airspeed\":\"81 kt\"}\n"},
        {FeedFormat::Nmea, sentence("GNVTG,090.0,T,,M,,N,100.0,K,A") + "no\n" + sentence("GNVTG,,T,,M,5.0,N,,K,A")},
        {FeedFormat::Gdl90, kHeartbeat + ownshipWith({{14, 0x7E}}) + kOwnship + kTraffic}};
    for (const auto& [format, stream] : streams) {
        const Parsed whole = parse(format, stream);
        for (std::size_t piece = 1; piece < stream.size(); ++piece) {
            const Parsed cut = parse(format, stream, piece);
            QCOMPARE(cut.values(), whole.values());
            QCOMPARE(cut.faults(), whole.faults());
            QCOMPARE(cut.tally.others, whole.tally.others);
        }
    }
}

void TestFeedParsers::noiseSaysNothing() {
    QVERIFY(rc::check("random bytes never say anything", [] {
        const auto bytes = *rc::gen::container<std::string>(rc::gen::arbitrary<char>());
        for (const FeedFormat format : kFormats)
            RC_ASSERT(parse(format, bytes).values().empty());
    }));
}

/// One changed byte never passes for another message: 8 bits of exclusive or and 16 bits of CRC find every change of
/// one byte. (A byte that becomes or was a flag cuts the frame, which is found as well.)
void TestFeedParsers::aChangedByteIsFound() {
    const std::string vtg = "$GPVTG,140.88,T,,M,8.04,N,14.89,K,D*05\r\n";
    QVERIFY(rc::check([&] {
        const bool isNmea = *rc::gen::arbitrary<bool>();
        std::string bytes = isNmea ? vtg : kOwnship;
        // From behind the first byte to before the end marks.
        const auto at = *rc::gen::inRange<std::size_t>(1, bytes.size() - (isNmea ? 4 : 1));
        const auto byte = static_cast<char>(*rc::gen::inRange(0, 256));
        RC_PRE(byte != bytes[at]);
        bytes[at] = byte;
        const Parsed parsed = parse(isNmea ? FeedFormat::Nmea : FeedFormat::Gdl90, bytes);
        RC_ASSERT(parsed.messages.empty());
        RC_ASSERT(parsed.tally.others == 0U);
        RC_ASSERT(parsed.faults() > 0U);
    }));
}

void TestFeedParsers::jsonGivesBackWhatWasSaid() {
    QVERIFY(rc::check([] {
        const double number = *rc::gen::inRange(-2'000'000, 2'000'000) / 1000.0;
        char line[80];
        std::snprintf(line, sizeof line, R"({"airspeed": "%.3f kt", "line_curvature": %.3f})", number, number);
        const Parsed parsed = parse(FeedFormat::JsonLines, line);
        RC_ASSERT(parsed.messages.size() == 1U);
        RC_ASSERT(parsed.messages[0].values.size() == 2U);
        for (const FeedValue& value : parsed.messages[0].values)
            RC_ASSERT(value.value == Value::number(number));
    }));
}

void TestFeedParsers::gdl90GivesBackWhatWasSaid() {
    QVERIFY(rc::check([] {
        const unsigned altitude = *rc::gen::inRange(0U, 0xFFFU);
        const unsigned speed = *rc::gen::inRange(0U, 0xFFFU);
        const int climb = *rc::gen::inRange(-0x7FF, 0x800);
        const auto track = *rc::gen::arbitrary<std::uint8_t>();
        const auto climbBits = static_cast<unsigned>(climb) & 0xFFFU;
        const Parsed parsed =
            parse(FeedFormat::Gdl90, ownshipWith({{11, std::uint8_t(altitude >> 4)},
                                                  {12, std::uint8_t((altitude & 15U) << 4 | 9U)},
                                                  {14, std::uint8_t(speed >> 4)},
                                                  {15, std::uint8_t((speed & 15U) << 4 | climbBits >> 8)},
                                                  {16, std::uint8_t(climbBits & 0xFFU)},
                                                  {17, track}}));
        RC_ASSERT(parsed.messages.size() == 1U);
        const std::vector<FeedValue>& values = parsed.messages[0].values;
        RC_ASSERT(values[0].value == Value::number(25.0 * altitude - 1000.0));
        RC_ASSERT(values[1].value == Value::number(speed));
        RC_ASSERT(values[2].value == Value::number(64.0 * climb));
        RC_ASSERT(values[3].value == Value::number(track * 360.0 / 256.0));
    }));
}

QTEST_APPLESS_MAIN(TestFeedParsers)
#include "test_feedparsers.moc"
