#include <QtTest>

#include "rig/axissmoother.h"
#include "twinjet.h"

using namespace flowhand;

class TestRigAxes : public QObject {
    Q_OBJECT

private Q_SLOTS:
    void rangeCentreAndBands_data();
    void rangeCentreAndBands();
    void pointsReadTheTrueAngle_data();
    void pointsReadTheTrueAngle();
    void pointsAnswerWishes();
    void crosstalkCoversPoints();
    void partOfThePotIsTheWholeLever();
    void oneAxisForTwoSignals();
    void noiseDoesNotTravel();
    void endsAlwaysTravel();
    void sigmaIsInTheSignalsUnit();
    void spikesOfAWornPot();
    void aJumpThatLastsIsReal();
    void theMedianIsLateByHalfItsWindow();
    void theMedianTakesTheMiddle();
    void theMedianIsThatOfEvenSamples();
    void theLowPassFollowsItsFormula();
    void theLowPassIsLateByItsTimeConstant();
    void theLowPassReachesTheEnd();
    void theLowPassQuietsNoiseByItsFormula();
    void medianThenLowPass();
    void sweepIsAskedFor();
    void restEndIsChecked();
    void springBackIsNotTheHand();
    void slowReturnIsTheHand();
    void crosstalkWidensTheDeadBand();
    void gatesWithHysteresis_data();
    void gatesWithHysteresis();
};

namespace {

const std::string kTiller = "[[control]]\nsignal = \"tiller\"\nwiring = \"axis\"\ninput = \"X\"\n";
const std::string kThrust = "[[control]]\nsignal = \"thrust_lever_1\"\nwiring = \"axis\"\ninput = \"X\"\n";

} // namespace

void TestRigAxes::rangeCentreAndBands_data() {
    QTest::addColumn<QString>("keys");
    QTest::addColumn<int>("raw");
    QTest::addColumn<double>("value");
    const QString centred = "range = [95, 4000]\ncentre = 2000\ndead_band = 100\nend_band = 5\n";
    QTest::newRow("below the range") << centred << 0 << -70.0;
    QTest::newRow("in the low end band") << centred << 100 << -70.0;
    QTest::newRow("half way to the low end") << centred << 1000 << -35.0;
    QTest::newRow("low edge of the dead band") << centred << 1900 << 0.0;
    QTest::newRow("centre") << centred << 2000 << 0.0;
    QTest::newRow("high edge of the dead band") << centred << 2100 << 0.0;
    QTest::newRow("half way to the high end, 947 of 1895 counts") << centred << 3047 << 34.98;
    QTest::newRow("in the high end band") << centred << 3995 << 70.0;
    QTest::newRow("inverted, raw high is left") << "range = [4000, 0]\n" << 4000 << -70.0;
    QTest::newRow("inverted, a quarter") << "range = [4000, 0]\n" << 3000 << -35.0;
    QTest::newRow("inverted with centre") << "range = [4000, 0]\ncentre = 1000\n" << 500 << 35.0;
    QTest::newRow("other values at the ends") << "range = [0, 1000]\nto = [-30, 60]\n" << 500 << 15.0;
    QTest::newRow("another value at the centre") << "range = [0, 1000]\ncentre = 500\nto = [-30, 0, 60]\n"
                                                 << 750 << 30.0;
}

void TestRigAxes::rangeCentreAndBands() {
    QFETCH(QString, keys);
    QFETCH(int, raw);
    QFETCH(double, value);
    Bench bench(kTiller + keys.toStdString());
    QCOMPARE(bench.problems(), std::string());
    bench.send(0, "X", raw);
    QCOMPARE(bench.number("tiller"), value);
}

void TestRigAxes::pointsReadTheTrueAngle_data() {
    QTest::addColumn<QString>("keys");
    QTest::addColumn<int>("raw");
    QTest::addColumn<double>("value");
    const QString uneven = "points = [{ at = 200, value = \"-60 deg\" }, { at = 1000, value = \"-10 deg\" },\n"
                           "{ at = 2000, value = \"0 deg\" }, { at = 3800, value = \"60 deg\" }]\n";
    QTest::newRow("beyond the first") << uneven << 150 << -60.0;
    QTest::newRow("the first") << uneven << 200 << -60.0;
    QTest::newRow("half way") << uneven << 600 << -35.0;
    QTest::newRow("a point") << uneven << 1000 << -10.0;
    QTest::newRow("half of a flat stretch") << uneven << 1500 << -5.0;
    QTest::newRow("one count of it") << uneven << 1501 << -4.99;
    QTest::newRow("a third of the last") << uneven << 2600 << 20.0;
    QTest::newRow("beyond the last") << uneven << 4095 << 60.0;
    const QString bands = uneven + "centre = 2000\ndead_band = 200\nend_band = 40\n";
    QTest::newRow("in the end band") << bands << 240 << -60.0;
    QTest::newRow("half way from the end band") << bands << 620 << -35.0;
    QTest::newRow("a point beside the dead band") << bands << 1000 << -10.0;
    QTest::newRow("half way to the dead band") << bands << 1400 << -5.0;
    QTest::newRow("low edge of the dead band") << bands << 1800 << 0.0;
    QTest::newRow("high edge of the dead band") << bands << 2200 << 0.0;
    QTest::newRow("half way from the dead band") << bands << 2980 << 30.0;
    const QString covered = uneven + "centre = 2000\ndead_band = 1000\nend_band = 40\n";
    QTest::newRow("a point in the dead band is the centre") << covered << 1000 << 0.0;
    QTest::newRow("and the way to it goes on") << covered << 620 << -30.0;
    const QString inverted = "points = [{ at = 3800, value = \"-60 deg\" }, { at = 3000, value = \"-10 deg\" },\n"
                             "{ at = 200, value = \"60 deg\" }]\n";
    QTest::newRow("inverted, the first") << inverted << 3900 << -60.0;
    QTest::newRow("inverted, half way") << inverted << 3400 << -35.0;
    QTest::newRow("inverted, the last stretch") << inverted << 1600 << 25.0;
    QTest::newRow("two") << "points = [{ at = 1000, value = \"-30 deg\" }, { at = 3000, value = \"30 deg\" }]\n"
                         << 2500 << 15.0;
}

void TestRigAxes::pointsReadTheTrueAngle() {
    rangeCentreAndBands();
}

void TestRigAxes::pointsAnswerWishes() {
    Bench bench(kTiller + "points = [{ at = 3800, value = \"-60 deg\" }, { at = 3000, value = \"-10 deg\" },\n"
                          "{ at = 1500, value = \"20 deg\" }, { at = 200, value = \"60 deg\" }]\n");
    QCOMPARE(bench.problems(), std::string());
    const auto rawFor = [&](double value) {
        return bench.rig().readingsFor(twinJet().id("tiller"), Value::number(value)).front().raw;
    };
    QCOMPARE(rawFor(-70), 3800);
    QCOMPARE(rawFor(-35), 3400);
    QCOMPARE(rawFor(-10), 3000);
    QCOMPARE(rawFor(5), 2250);
    QCOMPARE(rawFor(40), 850);
    QCOMPARE(rawFor(70), 200);
    const ControlFacts& facts = bench.rig().facts()[indexOf(twinJet().id("tiller"))];
    QCOMPARE(facts.range, 120.0);
    QCOMPARE(facts.sigma, 0.28867513459481287 * 50 / 800); // of the steepest stretch
}

void TestRigAxes::crosstalkCoversPoints() {
    Bench bench(kTiller + "points = [{ at = 0, value = \"-70 deg\" }, { at = 1800, value = \"-20 deg\" },\n"
                          "{ at = 2000, value = \"0 deg\" }, { at = 4000, value = \"70 deg\" }]\n"
                          "centre = 2000\ncrosstalk_dead_band = 300\n"
                          "crosstalk = [{ input = \"Y\", centre = 2048, beyond = 500 }]\n");
    QCOMPARE(bench.problems(), std::string());
    bench.send(0, "Y", 2048);
    bench.send(0, "X", 1800);
    QCOMPARE(bench.number("tiller"), -20.0);
    bench.send(1, "Y", 3000);
    QCOMPARE(bench.number("tiller"), 0.0);
    bench.send(2, "X", 850);
    QCOMPARE(bench.number("tiller"), -35.0);
}

void TestRigAxes::partOfThePotIsTheWholeLever() {
    Bench bench(kThrust + "range = [1210, 2870]\n");
    bench.send(0, "X", 1200);
    QCOMPARE(bench.number("thrust_lever_1"), 0.0);
    bench.send(1, "X", 2040);
    QCOMPARE(bench.number("thrust_lever_1"), 50.0);
    bench.send(2, "X", 2900);
    QCOMPARE(bench.number("thrust_lever_1"), 100.0);
}

void TestRigAxes::oneAxisForTwoSignals() {
    Bench bench("[[control]]\nname = \"single lever\"\nsignal = [\"thrust_lever_1\", \"thrust_lever_2\"]\n"
                "wiring = \"axis\"\ninput = \"X\"\nrange = [0, 4000]\n");
    QCOMPARE(bench.problems(), std::string());
    QCOMPARE(bench.send(0, "X", 1000).size(), std::size_t(2));
    QCOMPARE(bench.number("thrust_lever_1"), 25.0);
    QCOMPARE(bench.number("thrust_lever_2"), 25.0);
    QCOMPARE(bench.rig().facts()[1].controlName, std::string("single lever"));
}

void TestRigAxes::noiseDoesNotTravel() {
    Bench bench(kThrust + "range = [0, 4000]\nnoise = 2.0\n"); // least change 6
    bench.send(0, "X", 2000);
    QVERIFY(bench.send(1, "X", 2005).empty());
    QVERIFY(bench.send(2, "X", 1995).empty());
    QCOMPARE(bench.send(3, "X", 2006).size(), std::size_t(1));
    QVERIFY(bench.send(4, "X", 2001).empty());
    QCOMPARE(bench.number("thrust_lever_1"), 50.15);
}

void TestRigAxes::endsAlwaysTravel() {
    Bench bench(kThrust + "range = [100, 4000]\nnoise = 5\n");
    bench.send(0, "X", 110);
    bench.send(1, "X", 99);
    QCOMPARE(bench.number("thrust_lever_1"), 0.0);
    bench.send(2, "X", 3990);
    bench.send(3, "X", 4001);
    QCOMPARE(bench.number("thrust_lever_1"), 100.0);
}

void TestRigAxes::sigmaIsInTheSignalsUnit() {
    Bench plain(kThrust + "range = [0, 4000]\n");
    QCOMPARE(plain.rig().facts()[0].sigma, 0.28867513459481287 / 40); // rounding: 1 / sqrt(12) counts
    QCOMPARE(plain.rig().facts()[0].range, 100.0);
    QVERIFY(plain.rig().facts()[0].isWired);
    QVERIFY(!plain.rig().facts()[1].isWired);
    Bench noisy(kTiller +
                "range = [0, 4000]\ncentre = 1400\nnoise = 2\n"); // the left half is steeper: 0.05 deg a count
    const std::size_t tiller = indexOf(twinJet().id("tiller"));
    QCOMPARE(noisy.rig().facts()[tiller].sigma, 0.1);
    QCOMPARE(noisy.rig().facts()[tiller].range, 140.0);
}

void TestRigAxes::spikesOfAWornPot() {
    Bench bench(kThrust + "range = [0, 4000]\nspike_limit = 200\nsettle = \"20 ms\"\n");
    bench.send(0, "X", 2000);
    QVERIFY(bench.send(10, "X", 3500).empty()); // case 4
    QVERIFY(bench.send(15, "X", 2000).empty()); // case 5
    QVERIFY(bench.wait(100).empty());
    QVERIFY(bench.send(110, "X", 0).empty());
    QCOMPARE(bench.send(112, "X", 2100).size(), std::size_t(1));
    QCOMPARE(bench.number("thrust_lever_1"), 52.5);
    QVERIFY(bench.rig().nextTimer() == kForever);
}

void TestRigAxes::aJumpThatLastsIsReal() {
    Bench bench(kThrust + "range = [0, 4000]\nspike_limit = 200\nsettle = \"20 ms\"\n");
    bench.send(0, "X", 2000);
    bench.send(10, "X", 3000);
    bench.send(20, "X", 3100); // case 6: its time runs on
    QVERIFY(bench.rig().nextTimer() == Bench::at(30));
    QVERIFY(bench.send(25, "X", 500).empty()); // case 7
    QVERIFY(bench.wait(44).empty());
    QCOMPARE(bench.wait(60).size(), std::size_t(1)); // case 8
    QCOMPARE(bench.number("thrust_lever_1"), 12.5);
    QCOMPARE(bench.lastTime(), 45.0);
}

void TestRigAxes::theMedianIsLateByHalfItsWindow() {
    Bench bench(kThrust + "range = [0, 4000]\nmedian = \"8 ms\"\n");
    QCOMPARE(bench.problems(), std::string());
    bench.send(0, "X", 2000);
    QVERIFY(bench.send(10, "X", 3500).empty());
    QVERIFY(bench.send(13.5, "X", 2000).empty()); // a spike of 3.5 ms
    QVERIFY(bench.wait(90).empty());
    QVERIFY(bench.send(100, "X", 3000).empty());
    QVERIFY(bench.rig().nextTimer() == Bench::at(104));
    QCOMPARE(bench.wait(200).size(), std::size_t(1));
    QCOMPARE(bench.number("thrust_lever_1"), 75.0);
    QCOMPARE(bench.lastTime(), 104.0);
    QVERIFY(bench.rig().nextTimer() == kForever);
}

void TestRigAxes::theMedianTakesTheMiddle() {
    Bench bench(kThrust + "range = [0, 4000]\nmedian = \"6 ms\"\n");
    bench.send(0, "X", 1000);
    bench.send(10, "X", 3000);
    bench.send(12, "X", 2000); // in the window up to 13: 3 of 1000, 2 of 3000, 1 of 2000
    QCOMPARE(bench.wait(12.9).size(), std::size_t(0));
    QCOMPARE(bench.wait(13).size(), std::size_t(1));
    QCOMPARE(bench.number("thrust_lever_1"), 50.0);
    QVERIFY(bench.wait(100).empty());
}

/// Against the median of samples that lie evenly in the window.
void TestRigAxes::theMedianIsThatOfEvenSamples() {
    TimedMedian median(std::chrono::milliseconds(10));
    std::vector<std::int64_t> said;
    unsigned state = 1;
    std::int64_t raw = 500;
    for (int ms = 0; ms < 5000; ++ms) {
        const Time time = std::chrono::milliseconds(ms);
        state = state * 1664525u + 1013904223u; // a linear congruential generator: the same everywhere
        if (state >> 30 == 0)
            raw = 500 + (state >> 16 & 255u);
        while (median.nextTimer() <= time) {
            const Time timer = median.nextTimer();
            median.advance(timer);
            QVERIFY(median.nextTimer() > timer); // else it never ends
        }
        const std::int64_t value = median.take(raw, time);
        if (said.size() >= 10) {
            std::vector<std::int64_t> window(said.end() - 10, said.end());
            std::sort(window.begin(), window.end());
            QVERIFY(value >= window[4] && value <= window[5]);
        }
        said.push_back(raw);
    }
}

void TestRigAxes::theLowPassFollowsItsFormula() {
    Bench bench(kThrust + "range = [0, 4000]\nsmooth = \"20 ms\"\n");
    bench.send(0, "X", 1000);
    bench.send(10, "X", 3000);
    bench.wait(30); // after one time constant 1 - 1/e of the way: 1000 + 2000 * 0.63212 = 2264 counts
    QCOMPARE(bench.number("thrust_lever_1"), 56.6);
    bench.wait(70); // after three: 3000 - 2000 * 0.049787 = 2900
    QCOMPARE(bench.number("thrust_lever_1"), 72.5);
    bench.wait(1000);
    QCOMPARE(bench.number("thrust_lever_1"), 75.0);
    QVERIFY(bench.lastTime() < 190); // 2000 exp(-t / tau) is below half a count after 8.3 time constants
    QVERIFY(bench.rig().nextTimer() == kForever);
}

void TestRigAxes::theLowPassIsLateByItsTimeConstant() {
    LowPass lowPass(std::chrono::milliseconds(30));
    std::int64_t value = 0;
    for (int ms = 0; ms <= 1000; ++ms)
        value = lowPass.take(10 * ms, std::chrono::milliseconds(ms));
    QVERIFY(std::abs(value - (10000 - 300)) <= 10); // 10 counts a millisecond, held from report to report
}

void TestRigAxes::theLowPassReachesTheEnd() {
    Bench bench(kThrust + "range = [100, 4000]\nnoise = 5\nsmooth = \"20 ms\"\n");
    bench.send(0, "X", 300);
    bench.send(10, "X", 100);
    QVERIFY(bench.number("thrust_lever_1") > 0);
    bench.wait(300);
    QCOMPARE(bench.number("thrust_lever_1"), 0.0);
}

/// What is left of white noise: sqrt(a / (2 - a)) with a = 1 - exp(-h / tau), the variance of an exponentially weighted
/// moving average (NIST/SEMATECH e-Handbook of Statistical Methods, 6.3.2.4; from memory).
void TestRigAxes::theLowPassQuietsNoiseByItsFormula() {
    LowPass lowPass(std::chrono::milliseconds(10));
    unsigned state = 7;
    double sum = 0, squares = 0, rawSquares = 0;
    constexpr int kReports = 40000;
    for (int ms = 0; ms < kReports; ++ms) {
        state = state * 1664525u + 1013904223u;
        const std::int64_t raw = static_cast<std::int64_t>(state >> 20) - 2048; // uniform
        const auto value = static_cast<double>(lowPass.take(raw, std::chrono::milliseconds(ms)));
        sum += value;
        squares += value * value;
        rawSquares += static_cast<double>(raw * raw);
    }
    const double left = std::sqrt((squares - sum * sum / kReports) / rawSquares);
    // A report moves the value only from then on: as much as the report before it has done by the next.
    const double a = 1 - std::exp(-0.1);
    QVERIFY2(std::fabs(left / std::sqrt(a / (2 - a)) - 1) < 0.05, qPrintable(QString::number(left)));
}

void TestRigAxes::medianThenLowPass() {
    Bench bench(kThrust + "range = [0, 4000]\nmedian = \"8 ms\"\nsmooth = \"20 ms\"\n");
    bench.send(0, "X", 2000);
    bench.send(10, "X", 4000);
    bench.send(13, "X", 2000);
    QVERIFY(bench.wait(90).empty()); // nothing of the spike is left to be smeared
    bench.send(100, "X", 3000);
    bench.wait(124); // 4 ms late, then one time constant: 2000 + 1000 * 0.63212 = 2632
    QCOMPARE(bench.number("thrust_lever_1"), 65.8);
    QVERIFY(bench.rig().connect(0, bench.inputs())); // plugged in again: nothing of before is left
    bench.send(130, "X", 1000);
    QCOMPARE(bench.number("thrust_lever_1"), 25.0);
}

void TestRigAxes::sweepIsAskedFor() {
    Bench bench(kThrust + "range = [0, 4000]\nsweep = true\n");
    QVERIFY(bench.send(0, "X", 2000).empty());
    QVERIFY(bench.fault().find("move it once from end to end") != std::string::npos);
    QVERIFY(bench.send(10, "X", 50).empty());
    QCOMPARE(bench.send(20, "X", 3990).size(), std::size_t(1));
    QCOMPARE(bench.fault(), std::string());
    QVERIFY(bench.rig().connect(0, bench.inputs())); // plugged in again: its card has to learn anew
    QVERIFY(bench.send(30, "X", 1000).empty());
    QVERIFY(!bench.fault().empty());
}

void TestRigAxes::restEndIsChecked() {
    const std::string brake =
        "[[control]]\nsignal = \"toe_brake_left\"\nwiring = \"axis\"\ninput = \"X\"\nrests_at = \"low\"\n";
    Bench wrong(brake + "range = [0, 4000]\n"); // this one rests at its highest count
    wrong.send(0, "X", 4000);
    QVERIFY(wrong.fault().find("exchange the two numbers") != std::string::npos);
    wrong.send(1, "X", 10); // it was a foot after all
    QCOMPARE(wrong.fault(), std::string());
    Bench right(brake + "range = [4000, 0]\n");
    right.send(0, "X", 4000);
    QCOMPARE(right.fault(), std::string());
    QCOMPARE(right.number("toe_brake_left"), 0.0);
    right.send(1, "X", 0);
    QCOMPARE(right.fault(), std::string());
    QCOMPARE(right.number("toe_brake_left"), 100.0);
}

void TestRigAxes::springBackIsNotTheHand() {
    Bench bench(kTiller + "range = [0, 4000]\ncentre = 2000\nspring_rate = 200\n"); // 0.035 deg a count
    bench.send(0, "X", 2000);
    QVERIFY(bench.lastActor() == Actor::Machine); // found there
    for (int i = 1; i <= 20; ++i)
        bench.send(i * 10, "X", 2000 + i * 40); // led out by 140 deg/s
    QVERIFY(bench.lastActor() == Actor::Hand);
    bench.send(3000, "X", 2650); // let go after a rest: 150 counts of 800
    QVERIFY(bench.lastActor() == Actor::Machine);
    bench.send(3010, "X", 2200);
    QVERIFY(bench.lastActor() == Actor::Machine);
    bench.send(3020, "X", 1950); // swings across
    QVERIFY(bench.lastActor() == Actor::Machine);
    bench.send(3030, "X", 2000);
    QVERIFY(bench.lastActor() == Actor::Machine);
    QCOMPARE(bench.number("tiller"), 0.0);
    bench.send(3100, "X", 1700);
    QVERIFY(bench.lastActor() == Actor::Hand);
}

void TestRigAxes::slowReturnIsTheHand() {
    Bench bench(kTiller + "range = [0, 4000]\ncentre = 2000\nspring_rate = 200\n");
    bench.send(0, "X", 2000);
    bench.send(10, "X", 3000);
    for (int i = 1; i <= 25; ++i) {
        bench.send(1000 + i * 10, "X", 3000 - i * 40); // 140 deg/s
        QVERIFY(bench.lastActor() == Actor::Hand);
    }
    QCOMPARE(bench.number("tiller"), 0.0);
}

void TestRigAxes::crosstalkWidensTheDeadBand() {
    Bench bench(kTiller + "range = [0, 4000]\ncentre = 2000\ndead_band = 20\ncrosstalk_dead_band = 300\n"
                          "crosstalk = [{ input = \"Y\", centre = 2048, beyond = 500 }]\n");
    QCOMPARE(bench.problems(), std::string());
    bench.send(0, "Y", 2048);
    bench.send(0, "X", 2000);
    bench.send(1, "X", 2200);
    QVERIFY(bench.number("tiller") > 5);
    bench.send(2, "X", 2000);
    bench.send(3, "Y", 3000);
    QVERIFY(bench.send(4, "X", 2200).empty());
    QCOMPARE(bench.number("tiller"), 0.0);
    bench.send(5, "X", 4000);
    QCOMPARE(bench.number("tiller"), 70.0); // the ends stay where they are
}

void TestRigAxes::gatesWithHysteresis_data() {
    QTest::addColumn<QList<int>>("raws");
    QTest::addColumn<QString>("text");
    QTest::newRow("in a gate") << QList<int>{310} << "up";
    QTest::newRow("its band's edge") << QList<int>{380} << "up";
    QTest::newRow("beyond it") << QList<int>{381} << "between";
    QTest::newRow("held by the hysteresis") << QList<int>{310, 400} << "up";
    QTest::newRow("out of the hysteresis") << QList<int>{310, 401} << "between";
    QTest::newRow("not taken back by it") << QList<int>{310, 401, 390} << "between";
    QTest::newRow("straight to another gate") << QList<int>{310, 2000} << "12";
    QTest::newRow("a narrower band of its own") << QList<int>{3741} << "between";
}

void TestRigAxes::gatesWithHysteresis() {
    Bench bench("[[control]]\nsignal = \"flap_lever\"\nwiring = \"gates\"\ninput = \"X\"\nband = 80\nhysteresis = 20\n"
                "gates = [\n{ position = \"up\", at = 300 },\n{ position = \"4\", at = 1150 },\n"
                "{ position = \"12\", at = 2000 },\n{ position = \"22\", at = 2900 },\n"
                "{ position = \"34\", at = 3700, band = 40 },\n]\n");
    QCOMPARE(bench.problems(), std::string());
    QFETCH(QList<int>, raws);
    QFETCH(QString, text);
    for (int i = 0; i < raws.size(); ++i)
        bench.send(i, "X", raws[i]);
    QCOMPARE(QString::fromStdString(bench.text("flap_lever")), text);
    QCOMPARE(bench.rig().facts()[indexOf(twinJet().id("flap_lever"))].range, 0.0);
}

QTEST_APPLESS_MAIN(TestRigAxes)
#include "test_rig_axes.moc"
