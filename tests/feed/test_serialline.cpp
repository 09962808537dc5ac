// Runs under umockdev-run (see umockdev.sh), which shows a USB serial adapter that says what
// tests/data/feed/umockdev/ttyUSB0.script holds: published sentences, one of them with a wrong checksum, in pieces.

#include <cstdarg>
#include <dlfcn.h>
#include <sys/ioctl.h>

#include <QtTest>

#include "base/doorbell.h"
#include "feed/feed.h"
#include "feed/feedsignals.h"
#include "feed/serialline.h"

using namespace flowhand;
using namespace std::chrono_literals;

/// What plays the adapter is a pseudo terminal, which has no modem lines; libserialport asks for them as it opens one.
/// All else goes on to the system.
extern "C" int ioctl(int handle, unsigned long request, ...) noexcept {
    std::va_list arguments;
    va_start(arguments, request);
    void* const argument = va_arg(arguments, void*);
    va_end(arguments);
    if (request == TIOCMGET || request == TIOCMSET || request == TIOCMBIS || request == TIOCMBIC)
        return 0;
    static const auto next = reinterpret_cast<int (*)(int, unsigned long, void*)>(dlsym(RTLD_NEXT, "ioctl"));
    return next(handle, request, argument);
}

class TestSerialLine : public QObject {
    Q_OBJECT

private Q_SLOTS:
    void itIsListed();
    void itIsHeard();
};

void TestSerialLine::itIsListed() {
    const std::vector<SerialLineInfo> lines = serialLines();
    QCOMPARE(lines.size(), std::size_t(1));
    QCOMPARE(lines[0].path, std::string("/dev/ttyUSB0"));
    QVERIFY2(lines[0].description.find("Receiver") != std::string::npos, lines[0].description.c_str());
}

void TestSerialLine::itIsHeard() {
    const SteadyClock clock;
    Doorbell bell;
    const Result<FeedSpec> spec = FeedSpec::parse("nmea:serial:/dev/ttyUSB0:4800");
    QVERIFY(spec);
    auto feed = Feed::open(*spec, feedSignals(), {clock, clock.now()}, [&] {
        bell.ring();
    });
    QVERIFY(feed);
    const auto value = [&](const char* name) {
        return (*feed)->status().values[indexOf(*signalTable().find(name))];
    };
    for (int turn = 0; turn < 1000 && !value("altitude").isKnown(); ++turn)
        bell.wait(10ms);
    QVERIFY2((*feed)->status().problem.empty(), (*feed)->status().problem.c_str());
    QCOMPARE(value("ground_speed"), Value::number(8.0)); // 8.04 kt
    QCOMPARE(value("track"), Value::number(140.88));
    QCOMPARE(value("altitude"), Value::number(1789.0)); // 545.4 m
    QCOMPARE((*feed)->status().tally.badChecksum, std::uint64_t(1));
    QCOMPARE((*feed)->status().tally.messages, std::uint64_t(2));
}

QTEST_APPLESS_MAIN(TestSerialLine)
#include "test_serialline.moc"
