// Feeds from end to end: a flow flown by datagrams on loopback, in real time, and what the command shows of a feed.

#include <arpa/inet.h>
#include <netinet/in.h>
#include <sys/socket.h>
#include <unistd.h>

#include <QJsonDocument>
#include <QJsonObject>
#include <QTemporaryDir>
#include <QtTest>

#include "command/assembly.h"
#include "command/flyrun.h"
#include "command/printed.h"
#include "report/storeddebrief.h"

using namespace flowhand;

namespace {

constexpr const char* kFlow = R"(
format = 1
title = "Roll"
phases = ["take_off"]
seat = "captain"
[start]
place = "line_up"
[[step]]
id = "light"
title = "Taxi light on"
when = "ground_speed > 10 kt"
done = "taxi_light"
within = "60 s"
[[step]]
id = "flap"
title = "Flap lever to 4"
when = "ground_speed > 50 kt"
done = "flap_lever == 4"
within = "60 s"
)";

constexpr const char* kHands = "due light: taxi_light on\ndue flap, 0.2 s later: flap_lever 4\n";

/// Sends to a port of this computer; the port was free a moment ago.
class Sender {
public:
    Sender() : m_socket(::socket(AF_INET, SOCK_DGRAM, 0)) {
        const int listener = ::socket(AF_INET, SOCK_DGRAM, 0);
        sockaddr_in address = loopback(0);
        socklen_t length = sizeof address;
        if (::bind(listener, reinterpret_cast<sockaddr*>(&address), length) != 0 ||
            ::getsockname(listener, reinterpret_cast<sockaddr*>(&address), &length) != 0)
            qFatal("no socket on loopback");
        ::close(listener);
        port = ntohs(address.sin_port);
    }
    ~Sender() { ::close(m_socket); }
    Sender(const Sender&) = delete;
    Sender& operator=(const Sender&) = delete;

    void send(const std::string& bytes) const {
        const sockaddr_in address = loopback(port);
        ::sendto(m_socket, bytes.data(), bytes.size(), 0, reinterpret_cast<const sockaddr*>(&address), sizeof address);
    }
    void speed(int knots) const { send(R"({"ground_speed": ")" + std::to_string(knots) + R"( kt"})"); }

    std::uint16_t port = 0;

private:
    static sockaddr_in loopback(std::uint16_t port) {
        sockaddr_in address{};
        address.sin_family = AF_INET;
        address.sin_addr.s_addr = htonl(INADDR_LOOPBACK);
        address.sin_port = htons(port);
        return address;
    }
    int m_socket;
};

bool has(const std::vector<std::string>& lines, const std::string& words) {
    return std::any_of(lines.begin(), lines.end(), [&](const std::string& line) {
        return line.find(words) != std::string::npos;
    });
}

} // namespace

class TestFeeds : public QObject {
    Q_OBJECT

private Q_SLOTS:
    void initTestCase() {
        Problems problems;
        m_folder = loadAircraftFolder(PROCEDURES "/twin_jet", problems);
        QVERIFY(!problems.hasErrors());
        m_flow = parseFlow(kFlow, "roll.toml", *m_folder->aircraft, problems);
        QVERIFY(m_flow);
    }

    // Datagrams fly it; they stop, and the run is held; they come again among junk, and it goes on to its end.
    void datagramsFlyARun() {
        const Sender sender;
        const QTemporaryDir folder;
        Result<Store> store = Store::open(folder.filePath("runs.sqlite").toStdString());
        QVERIFY(store);
        const QString hands = folder.filePath("roll.hands");
        QFile script(hands);
        QVERIFY(script.open(QIODevice::WriteOnly));
        script.write(kHands);
        script.close();
        RunWish wish;
        wish.aircraft = m_folder->aircraft.get();
        wish.flow = &*m_flow;
        wish.handsFile = hands.toStdString();
        wish.feed = "json:" + std::to_string(sender.port);
        const SteadyClock clock;
        const std::unique_ptr<HidSystem> devices = systemDevices();
        Result<AssembledRun> run = assembleRun(wish, &*store, *devices, clock);
        QVERIFY2(run, run ? "" : describe(run.error()).c_str());

        std::vector<std::string> said;
        std::vector<EventKind> kinds;
        const auto seen = [&](EventKind kind) {
            return std::find(kinds.begin(), kinds.end(), kind) != kinds.end();
        };
        const auto sends = [&] { // called again and again while it is flown
            if (!seen(EventKind::StepDone))
                sender.speed(20);
            else if (seen(EventKind::Gap)) {
                sender.send("no JSON at all");
                sender.send(std::string(20000, 'x'));
                sender.send(R"({"flap_lever": "up", "ground_speed": "1e9 kt"})");
                sender.speed(60);
            }
            return false;
        };
        const LiveFlight live{clock, run->origin, *run->bell, sends, [&](const std::string& text) {
                                  said.push_back(text);
                              }};
        const std::vector<FlownRun> flown =
            flyLive(std::move(run->parts), live, {}, [&](const Event& event, const Flow&) {
                kinds.push_back(event.kind);
            });
        QCOMPARE(flown.size(), std::size_t(1));
        const RunSnapshot& end = flown.front().snapshot;
        QVERIFY2(end.score.isPassed, end.score.whyNotPassed.english().c_str());
        QVERIFY(seen(EventKind::Gap));
        QVERIFY(seen(EventKind::Resumed));
        QVERIFY(has(said, "is heard"));
        QVERIFY(has(said, "has fallen silent"));
        QVERIFY(has(said, "speaks again"));
        QVERIFY(end.feedStatus.tally.malformed > 0);
        QVERIFY(end.feedStatus.tally.oversized > 0);
        QVERIFY(end.feedStatus.tally.unknownNames > 0);
        QVERIFY(end.feedStatus.tally.refused > 0);

        const Result<StoredRun> stored = store->load(end.runId);
        QVERIFY2(stored, stored ? "" : describe(stored.error()).c_str());
        QVERIFY(stored->header.motionSource.find("JSON lines on UDP 127.0.0.1") != std::string::npos);
        QVERIFY(std::any_of(stored->samples.begin(), stored->samples.end(), [](const Sample& sample) {
            return sample.origin == Origin::Feed;
        }));
        const Result<StoredDebrief> again = StoredDebrief::of(*stored, {"test", true});
        QVERIFY2(again, again ? "" : describe(again.error()).c_str());
        QVERIFY(again->input().rejudgement != nullptr && again->input().rejudgement->isSame);
    }

    void badFeedsAreSaid_data() {
        QTest::addColumn<QStringList>("arguments");
        QTest::addColumn<QString>("words");
        QTest::newRow("no format") << QStringList{"feeds", "--watch", "49100"} << "begins with its format";
        QTest::newRow("address") << QStringList{"feeds", "--watch", "json:localhost:49100"} << "flowhand:";
        QTest::newRow("practise") << QStringList{"practise",        "twin_jet/take_off",
                                                 "--demonstration", "--unstored",
                                                 "--feed",          "jsn:1"}
                                  << "json, nmea or gdl90";
        QTest::newRow("source") << QStringList{"practise",   "twin_jet/take_off", "--demonstration",
                                               "--unstored", "--source",          "airspeed=feed"}
                                << "name one with --feed";
    }
    void badFeedsAreSaid() {
        QFETCH(QStringList, arguments);
        QFETCH(QString, words);
        const Printed printed = flowhandWith(arguments);
        QCOMPARE(printed.status, std::optional(1));
        QVERIFY2(printed.err.contains(words), qPrintable(printed.err));
    }

    void theWaysAreListed() {
        const Printed printed = flowhandWith({"feeds"});
        QCOMPARE(printed.status, std::optional(0));
        for (const char* word : {"json", "nmea", "gdl90", "serial:PATH:BAUD", "--watch"})
            QVERIFY2(printed.out.contains(word), word);
    }

    void aSilentFeedIsSaid() {
        const Sender sender;
        const QString feed = "nmea:" + QString::number(sender.port);
        const Printed printed = flowhandWith({"feeds", "--watch", feed, "--for", "0.2"});
        QCOMPARE(printed.status, std::optional(1));
        QVERIFY2(printed.out.contains("nothing heard yet"), qPrintable(printed.out));
        QVERIFY(printed.out.contains("Nothing that tells of motion came."));
        const Printed json = flowhandWith({"feeds", "--watch", feed, "--for", "0.2", "--json"});
        const QJsonObject line = QJsonDocument::fromJson(json.out.split('\n').first().toUtf8()).object();
        QCOMPARE(line["heard"], QJsonValue(false));
        QCOMPARE(line["malformed"], QJsonValue(0));
    }

    // Without a feed: some of the motion left out by wish, and the run says what that costs.
    void aSignalMayBeLeftOut() {
        const Printed flown = flowhandWith(
            {"practise", "twin_jet/take_off", "--demonstration", "--unstored", "--source", "centreline_offset=none"});
        QVERIFY2(flown.out.contains(
                     "On the centreline, tiller in the middle - it cannot be judged: nothing tells Offset from "
                     "the line"),
                 qPrintable(flown.out));
        QVERIFY(flown.out.contains("'Left the centreline in the roll' was not watched"));
    }

private:
    std::optional<AircraftFolder> m_folder;
    std::optional<Flow> m_flow;
};

QTEST_APPLESS_MAIN(TestFeeds)
#include "test_feeds.moc"
