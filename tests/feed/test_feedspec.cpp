#include <QtTest>

#include "feed/feedspec.h"

using namespace flowhand;

class TestFeedSpec : public QObject {
    Q_OBJECT

private Q_SLOTS:
    void soundOnes_data();
    void soundOnes();
    void wrongOnesSayWhat_data();
    void wrongOnesSayWhat();
};

void TestFeedSpec::soundOnes_data() {
    QTest::addColumn<QString>("text");
    QTest::addColumn<QString>("title");
    QTest::addColumn<bool>("isOpenToAll");
    QTest::newRow("port alone") << "gdl90:4000"
                                << "GDL 90 on UDP 127.0.0.1:4000" << false;
    QTest::newRow("loopback") << "json:127.0.0.1:49100"
                              << "JSON lines on UDP 127.0.0.1:49100" << false;
    QTest::newRow("all") << "json:0.0.0.0:49100"
                         << "JSON lines on UDP 0.0.0.0:49100" << true;
    QTest::newRow("from one") << "json:0.0.0.0:49100:from:192.0.2.7"
                              << "JSON lines on UDP 0.0.0.0:49100 from 192.0.2.7" << false;
    QTest::newRow("IPv6") << "nmea:[::1]:10110"
                          << "NMEA 0183 on UDP [::1]:10110" << false;
    QTest::newRow("IPv6, all") << "nmea:[::]:10110:from:[2001:db8::7]"
                               << "NMEA 0183 on UDP [::]:10110 from 2001:db8::7" << false;
    QTest::newRow("TCP") << "nmea:tcp:localhost:10110"
                         << "NMEA 0183 over TCP from localhost:10110" << false;
    QTest::newRow("serial") << "nmea:serial:/dev/ttyUSB0:4800"
                            << "NMEA 0183 on the serial line /dev/ttyUSB0 at 4800 baud" << false;
    QTest::newRow("serial by its place") << "nmea:serial:/dev/serial/by-path/pci-0:14.0-usb-0:1:1.0:38400"
                                         << "NMEA 0183 on the serial line /dev/serial/by-path/pci-0:14.0-usb-0:1:1.0 "
                                            "at 38400 baud"
                                         << false;
}

void TestFeedSpec::soundOnes() {
    QFETCH(QString, text);
    const Result<FeedSpec> spec = FeedSpec::parse(text.toStdString());
    QVERIFY2(spec, spec ? "" : spec.error().message.c_str());
    QTEST(QString::fromStdString(spec->title()), "title");
    QTEST(spec->isOpenToAll(), "isOpenToAll");
}

void TestFeedSpec::wrongOnesSayWhat_data() {
    QTest::addColumn<QString>("text");
    QTest::addColumn<QString>("words");
    QTest::newRow("nothing") << ""
                             << "begins with its format";
    QTest::newRow("format") << "gdl:4000"
                            << "did you mean 'gdl90'?";
    QTest::newRow("way") << "json"
                         << "where to listen";
    QTest::newRow("port") << "json:udp"
                          << "'udp' is no port";
    QTest::newRow("port 0") << "json:0"
                            << "'0' is no port";
    QTest::newRow("port too high") << "json:127.0.0.1:65536"
                                   << "'65536' is no port";
    QTest::newRow("address") << "json::49100"
                             << "an address is empty";
    QTest::newRow("sender") << "json:0.0.0.0:49100:from:"
                            << "an address is empty";
    QTest::newRow("too much") << "json:0.0.0.0:49100:4"
                              << "too much";
    QTest::newRow("IPv6 without brackets") << "json:::1:49100"
                                           << "brackets";
    QTest::newRow("TCP without port") << "nmea:tcp:localhost"
                                      << "the host and the port";
    QTest::newRow("serial without speed") << "nmea:serial:/dev/ttyUSB0"
                                          << "its speed in baud";
}

void TestFeedSpec::wrongOnesSayWhat() {
    QFETCH(QString, text);
    QFETCH(QString, words);
    const Result<FeedSpec> spec = FeedSpec::parse(text.toStdString());
    QVERIFY(!spec);
    QCOMPARE(spec.error().code, std::string("bad-feed"));
    QVERIFY2(spec.error().message.find(words.toStdString()) != std::string::npos, spec.error().message.c_str());
    QVERIFY(spec.error().message.find("json:127.0.0.1:49100") != std::string::npos);
}

QTEST_APPLESS_MAIN(TestFeedSpec)
#include "test_feedspec.moc"
