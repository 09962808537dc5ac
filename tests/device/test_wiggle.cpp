#include <QtTest>
#include <rapidcheck.h>

#include "device/wiggle.h"

using namespace flowhand;

namespace {

enum : std::uint16_t { kAxis, kButton, kHat, kWheel };

std::vector<InputInfo> inputs() {
    std::vector<InputInfo> all(4);
    all[kAxis] = {{}, InputKind::Axis, "X", 0, 1000};
    all[kButton] = {{}, InputKind::Button, "button 1", 0, 1};
    all[kHat] = {{}, InputKind::Hat, "hat 1", 0, 7, 0.0, 315.0};
    all[kWheel] = {{}, InputKind::Relative, "Wheel", -127, 127};
    return all;
}

Reading reading(DeviceIndex device, std::uint16_t input, std::int64_t raw, bool isNull = false) {
    return {{}, device, input, raw, isNull};
}

/// "none", or the device and its input.
QString movedText(const WiggleWatch& watch) {
    const auto moved = watch.moved();
    return moved ? QString("%1 %2").arg(moved->device).arg(QString::fromStdString(moved->input)) : QString("none");
}

} // namespace

class TestWiggle : public QObject {
    Q_OBJECT

private slots:
    void theMovedOneIsTold_data();
    void theMovedOneIsTold();
    void aDeviceThatCameAnewStartsAnew();
    void whoIsAtRestIsNeverNamed();
};

void TestWiggle::theMovedOneIsTold_data() {
    QTest::addColumn<std::vector<Reading>>("rest");
    QTest::addColumn<std::vector<Reading>>("wiggle");
    QTest::addColumn<QString>("moved");
    const std::vector<Reading> quiet{reading(0, kAxis, 500), reading(0, kButton, 0), reading(0, kHat, 8, true),
                                     reading(1, kAxis, 500), reading(1, kButton, 0), reading(1, kHat, 8, true)};
    const std::vector<Reading> noisy{reading(0, kAxis, 500), reading(0, kAxis, 600), reading(0, kAxis, 450),
                                     reading(1, kAxis, 500)};
    using Readings = std::vector<Reading>;
    QTest::newRow("nobody") << quiet << Readings{} << "none";
    QTest::newRow("an axis") << quiet << Readings{reading(1, kAxis, 750)} << "1 X";
    QTest::newRow("an axis and back") << quiet << Readings{reading(1, kAxis, 800), reading(1, kAxis, 500)} << "1 X";
    QTest::newRow("an axis touched only") << quiet << Readings{reading(1, kAxis, 550)} << "none";
    QTest::newRow("a button") << quiet << Readings{reading(0, kButton, 1)} << "0 button 1";
    QTest::newRow("a hat") << quiet << Readings{reading(0, kHat, 0)} << "0 hat 1";
    QTest::newRow("a wheel that never spoke") << quiet << Readings{reading(1, kWheel, 5)} << "1 Wheel";
    QTest::newRow("both alike: nobody can tell")
        << quiet << Readings{reading(0, kAxis, 900), reading(1, kAxis, 850)} << "none";
    QTest::newRow("a neighbour shaken along")
        << quiet << Readings{reading(0, kAxis, 560), reading(1, kAxis, 900)} << "1 X";
    QTest::newRow("a worn one is as restless as before")
        << noisy << Readings{reading(0, kAxis, 620), reading(0, kAxis, 440)} << "none";
    QTest::newRow("beside a worn one") << noisy << Readings{reading(0, kAxis, 620), reading(1, kAxis, 750)} << "1 X";
    QTest::newRow("silent until moved") << Readings{}
                                        << Readings{reading(1, kAxis, 200), reading(1, kAxis, 230),
                                                    reading(1, kAxis, 500)}
                                        << "1 X";
    QTest::newRow("silent until moved: the first report is where it stood")
        << Readings{} << Readings{reading(1, kAxis, 900)} << "none";
    QTest::newRow("of several inputs the one that moved most")
        << quiet << Readings{reading(0, kAxis, 750), reading(0, kButton, 1)} << "0 button 1";
    QTest::newRow("a device that is not there") << quiet << Readings{reading(7, kAxis, 900)} << "none";
    QTest::newRow("an input that is not there") << quiet << Readings{reading(0, 9, 900)} << "none";
}

void TestWiggle::theMovedOneIsTold() {
    QFETCH(std::vector<Reading>, rest);
    QFETCH(std::vector<Reading>, wiggle);
    QFETCH(QString, moved);
    WiggleWatch watch;
    watch.connect(0, inputs());
    watch.connect(1, inputs());
    for (const Reading& reading : rest)
        watch.take(reading);
    QCOMPARE(movedText(watch), QString("none"));
    watch.watch();
    for (const Reading& reading : wiggle)
        watch.take(reading);
    QCOMPARE(movedText(watch), moved);
}

void TestWiggle::aDeviceThatCameAnewStartsAnew() {
    WiggleWatch watch;
    watch.connect(0, inputs());
    watch.connect(1, inputs());
    watch.watch();
    watch.take(reading(0, kAxis, 100));
    watch.take(reading(0, kAxis, 900));
    QCOMPARE(movedText(watch), QString("0 X"));
    watch.lose(0);
    QCOMPARE(movedText(watch), QString("none"));
    watch.connect(0, inputs());
    watch.take(reading(0, kAxis, 100));
    QCOMPARE(movedText(watch), QString("none"));
}

void TestWiggle::whoIsAtRestIsNeverNamed() {
    QVERIFY(rc::check([] {
        WiggleWatch watch;
        watch.connect(0, inputs());
        watch.connect(1, inputs());
        const auto amplitude = *rc::gen::inRange<std::int64_t>(0, 300);
        const auto still = [&] {
            watch.take(reading(0, kAxis, 500 + *rc::gen::inRange<std::int64_t>(-amplitude, amplitude + 1)));
        };
        watch.take(reading(0, kAxis, 500));
        watch.take(reading(0, kAxis, 500 + amplitude));
        watch.take(reading(1, kAxis, 500));
        for (int i = *rc::gen::inRange(0, 20); i > 0; --i)
            still();
        watch.watch();
        for (int i = *rc::gen::inRange(0, 20); i > 0; --i) {
            still();
            watch.take(reading(1, kAxis, *rc::gen::inRange<std::int64_t>(0, 1001)));
            RC_ASSERT(!watch.moved() || watch.moved()->device == 1);
        }
    }));
}

QTEST_APPLESS_MAIN(TestWiggle)
#include "test_wiggle.moc"
