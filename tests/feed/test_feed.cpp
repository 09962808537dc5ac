// A feed's thread, and the ways that bytes come by: real sockets on loopback, a line in memory.

#include <arpa/inet.h>
#include <netinet/in.h>
#include <poll.h>

#include <QtTest>

#include "base/doorbell.h"
#include "base/fakeclock.h"
#include "feed/fakefeed.h"
#include "feed/feed.h"
#include "feed/feedsignals.h"
#include "feed/socket.h"

using namespace flowhand;
using namespace std::chrono_literals;

namespace {

const std::string kLine = R"({"airspeed": "80 kt"})";
const std::string kSentence = "$GPVTG,140.88,T,,M,8.04,N,14.89,K,D*05\r\n";

/// A socket of this computer's, with a port that the system chooses.
struct Loopback {
    explicit Loopback(int type) : socket(::socket(AF_INET, type, 0)) {
        sockaddr_in address{};
        address.sin_family = AF_INET;
        address.sin_addr.s_addr = htonl(INADDR_LOOPBACK);
        socklen_t length = sizeof address;
        if (::bind(socket.handle(), reinterpret_cast<sockaddr*>(&address), length) != 0 ||
            ::getsockname(socket.handle(), reinterpret_cast<sockaddr*>(&address), &length) != 0)
            qFatal("no socket on loopback");
        port = ntohs(address.sin_port);
    }
    void sendTo(std::uint16_t to, const std::string& bytes) const {
        sockaddr_in address{};
        address.sin_family = AF_INET;
        address.sin_addr.s_addr = htonl(INADDR_LOOPBACK);
        address.sin_port = htons(to);
        ::sendto(socket.handle(), bytes.data(), bytes.size(), 0, reinterpret_cast<sockaddr*>(&address), sizeof address);
    }
    Socket socket;
    std::uint16_t port = 0;
};

/// A port that nobody has, a moment ago at least.
std::uint16_t freePort() {
    return Loopback(SOCK_DGRAM).port;
}

FeedSpec specOf(const std::string& text) {
    const Result<FeedSpec> spec = FeedSpec::parse(text);
    if (!spec)
        qFatal("%s", spec.error().message.c_str());
    return *spec;
}

/// A feed, and what it said.
struct Listening {
    explicit Listening(const std::string& spec) {
        Result<std::unique_ptr<Feed>> opened = Feed::open(specOf(spec), feedSignals(), {clock, Time{}}, [this] {
            bell.ring();
        });
        if (!opened)
            qFatal("%s", opened.error().message.c_str());
        feed = std::move(*opened);
    }
    explicit Listening(FakeLine& line, std::size_t queueLength = Feed::kQueueLength) {
        feed = std::make_unique<Feed>(
            line.transport(), FeedFormat::JsonLines, "the line", feedSignals(), RunClock{clock, Time{}},
            [this] {
                bell.ring();
            },
            queueLength);
    }
    /// True as soon as it is so; false when it is not after some ten seconds.
    template <class Wanted>
    bool waitUntil(Wanted isSo) {
        for (int turn = 0; turn < 1000 && !isSo(); ++turn) {
            bell.wait(10ms);
            feed->drain(changes, notices);
        }
        return isSo();
    }

    FakeClock clock;
    Doorbell bell;
    std::vector<FeedChange> changes;
    std::vector<FeedNotice> notices;
    std::unique_ptr<Feed> feed;
};

} // namespace

class TestFeed : public QObject {
    Q_OBJECT

private Q_SLOTS:
    void datagramsAreHeard_data();
    void datagramsAreHeard();
    void aTakenPortIsSaid();
    void aNameIsNoAddressToListenOn();
    void othersAreOnlyCounted();
    void aFloodOfJunkChangesNothing();
    void aProgramIsCalledAndCalledAgain();
    void aProgramThatIsNotThereIsSaid();
    void aSerialLineThatIsNotThereIsSaid();
    void aMessageIsStampedAsItIsRead();
    void aSilentFeedIsLostAndHeardAgain();
    void aBrokenLineIsOpenedAgain();
    void whatNobodyTakesIsDroppedAndCounted();
    void statusTellsClockDelayAndRate();
};

void TestFeed::datagramsAreHeard_data() {
    QTest::addColumn<QString>("format");
    QTest::addColumn<QByteArray>("datagram");
    QTest::newRow("JSON") << "json" << QByteArray::fromStdString(kLine);
    QTest::newRow("NMEA") << "nmea" << QByteArray::fromStdString(kSentence);
    // GDL 90 Public ICD Rev A, 3.5.2, under the ownship's id.
    QTest::newRow("GDL 90") << "gdl90"
                            << QByteArray::fromHex("7E0A00AB45491FEF15A889780F09A907B00120014E38323556202020"
                                                   "00855B7E");
}

void TestFeed::datagramsAreHeard() {
    QFETCH(QString, format);
    QFETCH(QByteArray, datagram);
    const std::uint16_t port = freePort();
    Listening listening(format.toStdString() + ":" + std::to_string(port));
    const Loopback sender(SOCK_DGRAM);
    sender.sendTo(port, datagram.toStdString());
    QVERIFY(listening.waitUntil([&] {
        return !listening.changes.empty();
    }));
    QCOMPARE(listening.feed->status().tally.messages, std::uint64_t(1));
    QCOMPARE(listening.feed->status().tally.bytes, std::uint64_t(datagram.size()));
}

void TestFeed::aTakenPortIsSaid() {
    const Loopback taken(SOCK_DGRAM);
    FakeClock clock;
    const auto opened = Feed::open(specOf("json:" + std::to_string(taken.port)), feedSignals(), {clock, Time{}}, {});
    QVERIFY(!opened);
    QCOMPARE(opened.error().code, std::string("cannot-listen"));
    QVERIFY(opened.error().message.find("another program listens there") != std::string::npos);
}

void TestFeed::aNameIsNoAddressToListenOn() {
    FakeClock clock;
    const auto opened = Feed::open(specOf("json:my-computer:49100"), feedSignals(), {clock, Time{}}, {});
    QVERIFY(!opened);
    QCOMPARE(opened.error().code, std::string("bad-address"));
}

void TestFeed::othersAreOnlyCounted() {
    const std::uint16_t port = freePort();
    // 192.0.2.0/24 is nobody's (RFC 5737): what this computer sends comes from another.
    Listening listening("json:127.0.0.1:" + std::to_string(port) + ":from:192.0.2.7");
    const Loopback sender(SOCK_DGRAM);
    sender.sendTo(port, kLine);
    QVERIFY(listening.waitUntil([&] {
        return listening.feed->status().tally.foreign == 1;
    }));
    QVERIFY(listening.changes.empty());
    QCOMPARE(listening.feed->status().tally.messages, std::uint64_t(0));
}

void TestFeed::aFloodOfJunkChangesNothing() {
    const std::uint16_t port = freePort();
    Listening listening("json:" + std::to_string(port));
    const Loopback sender(SOCK_DGRAM);
    for (int i = 0; i < 2000; ++i) // of up to the largest datagram
        sender.sendTo(port, std::string(i % 10 == 0 ? 65507 : i, 'x'));
    // What finds no room in the system's queue is lost, as datagrams are: the good one is sent until it is heard.
    QVERIFY(listening.waitUntil([&] {
        sender.sendTo(port, kLine);
        return !listening.changes.empty();
    }));
    for (const FeedChange& change : listening.changes)
        QCOMPARE(change.value, Value::number(80.0));
    const FeedTally tally = listening.feed->status().tally;
    QVERIFY(tally.malformed + tally.oversized > 0);
    QVERIFY(tally.names.empty());
}

void TestFeed::aProgramIsCalledAndCalledAgain() {
    Loopback server(SOCK_STREAM);
    QCOMPARE(::listen(server.socket.handle(), 1), 0);
    Listening listening("nmea:tcp:127.0.0.1:" + std::to_string(server.port));
    for (std::uint64_t call = 1; call <= 2; ++call) {
        QVERIFY(server.socket.waitFor(POLLIN, 10s));
        const Socket talk(::accept(server.socket.handle(), nullptr, nullptr));
        // In two pieces, and half a sentence that the end of the connection leaves behind.
        for (const std::string& piece : {kSentence.substr(0, 9), kSentence.substr(9), kSentence.substr(0, 20)})
            QCOMPARE(::send(talk.handle(), piece.data(), piece.size(), 0), ssize_t(piece.size()));
        QVERIFY(listening.waitUntil([&] {
            return listening.feed->status().tally.messages == call;
        }));
    }
    QVERIFY(listening.waitUntil([&] {
        return listening.feed->status().tally.malformed == 2;
    }));
    QVERIFY(listening.feed->status().problem.find("hung up") != std::string::npos);
}

void TestFeed::aProgramThatIsNotThereIsSaid() {
    const std::uint16_t port = Loopback(SOCK_STREAM).port;
    Listening listening("nmea:tcp:127.0.0.1:" + std::to_string(port));
    QVERIFY(listening.waitUntil([&] {
        return !listening.feed->status().problem.empty();
    }));
    QVERIFY(listening.feed->status().problem.find("is the program that sends running?") != std::string::npos);
}

void TestFeed::aSerialLineThatIsNotThereIsSaid() {
    Listening listening("nmea:serial:/dev/ttyNone:4800");
    QVERIFY(listening.waitUntil([&] {
        return listening.feed->status().problem.find("no serial line /dev/ttyNone") != std::string::npos;
    }));
}

void TestFeed::aMessageIsStampedAsItIsRead() {
    FakeLine line;
    Listening listening(line);
    listening.clock.set(1234567us + 89ns);
    line.send(kLine);
    listening.feed->drain(listening.changes, listening.notices);
    QCOMPARE(listening.changes.size(), std::size_t(1));
    QCOMPARE(listening.changes[0].time, Time(1234567us));
    listening.clock.set(1s); // a clock that went back moves no stamp
    line.send(R"({"airspeed": "90 kt", "altitude": "1 ft"})");
    listening.feed->drain(listening.changes, listening.notices);
    QCOMPARE(listening.changes.size(), std::size_t(2)); // airspeed comes later: it had just changed
    QCOMPARE(listening.changes[1].time, Time(1234567us));
}

void TestFeed::aSilentFeedIsLostAndHeardAgain() {
    FakeLine line;
    Listening listening(line);
    for (Time time = 1s; time <= 4s; time += 1s) {
        listening.clock.set(time);
        line.send(kLine);
    }
    listening.clock.set(4s + FeedIntake::kLostAfter);
    line.pass();
    QVERIFY(!listening.feed->status().isHeard);
    listening.clock.set(9s);
    line.send(kLine);
    QVERIFY(listening.feed->status().isHeard);
    listening.feed->drain(listening.changes, listening.notices);
    QCOMPARE(listening.notices.size(), std::size_t(3));
    QVERIFY(listening.notices[0].news == FeedNews::Heard && listening.notices[1].news == FeedNews::Lost &&
            listening.notices[2].news == FeedNews::Heard);
    QCOMPARE(listening.changes.size(), std::size_t(2)); // before and after the loss
}

void TestFeed::aBrokenLineIsOpenedAgain() {
    FakeLine line;
    Listening listening(line);
    line.send(R"({"airspeed": )"); // cut off by the break
    line.breakOff();
    QVERIFY(listening.waitUntil([&] {
        return !listening.feed->status().problem.empty();
    }));
    line.mend();
    line.send(kLine);
    QVERIFY(listening.waitUntil([&] {
        return !listening.changes.empty();
    }));
    QCOMPARE(listening.feed->status().problem, std::string());
}

void TestFeed::whatNobodyTakesIsDroppedAndCounted() {
    FakeLine line;
    Listening listening(line, 10);
    for (int i = 0; i < 100; ++i) {
        listening.clock.set(1s + i * 20ms);
        line.send(R"({"airspeed": ")" + std::to_string(i) + R"( kt"})");
    }
    listening.feed->drain(listening.changes, listening.notices);
    QCOMPARE(listening.changes.size(), std::size_t(11));
    QCOMPARE(listening.changes.back().value, Value::number(99.0)); // the last state always arrives
    QCOMPARE(listening.feed->status().tally.dropped, std::uint64_t(89));
}

void TestFeed::statusTellsClockDelayAndRate() {
    FakeLine line;
    Listening listening(line);
    QVERIFY(!listening.feed->status().silent && !listening.feed->status().own);
    for (int i = 0; i <= 100; ++i) {
        listening.clock.set(10s + i * 100ms + (i == 100 ? 40ms : 0ms));
        line.send(R"({"time": )" + std::to_string(500.0 + i * 0.1) + R"(, "airspeed": "80 kt"})");
    }
    listening.clock.set(21s);
    line.pass();
    const FeedStatus status = listening.feed->status();
    QVERIFY(status.isHeard);
    QCOMPARE(status.rate, 8.2); // 41 in the five whole seconds before
    QCOMPARE(seconds(*status.own), 510.0);
    QVERIFY(std::abs(seconds(*status.delay) - 0.040) < 1e-6);
    QCOMPARE(*status.silent, Duration(960ms));
    QCOMPARE(status.values[indexOf(*signalTable().find("airspeed"))], Value::number(80.0));
}

QTEST_APPLESS_MAIN(TestFeed)
#include "test_feed.moc"
