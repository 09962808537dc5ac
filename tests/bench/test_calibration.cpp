#include <QtTest>

#include <rapidcheck.h>

#include "bench/calibration.h"
#include "bench/statistics.h"
#include "generated.h"

using namespace flowhand;
using namespace flowhand::test;

namespace {

GeneratedAxis swept(AxisTruth truth = {}, unsigned seed = 1) {
    return GeneratedAxis(std::move(truth), seed).hold(1.0).visit({0.0, 1.0}, 3);
}

bool isNear(double value, double wanted, double tolerance) {
    if (std::fabs(value - wanted) <= tolerance)
        return true;
    qWarning("is %g, wanted %g +- %g", value, wanted, tolerance);
    return false;
}

const std::vector<std::string> kGates = {"up", "4", "12", "22", "34"};
const std::vector<double> kGateShares = {0.0, 0.22, 0.45, 0.7, 1.0};

} // namespace

class TestCalibration : public QObject {
    Q_OBJECT

private Q_SLOTS:
    void statistics();
    void effectiveBits_data();
    void effectiveBits();
    void closestLine();
    void range_data();
    void range();
    void aSpikeMovesTheRangeByLessThanHalfAPercent_data();
    void aSpikeMovesTheRangeByLessThanHalfAPercent();
    void invertedAxis();
    void anEndThatWasNotHeldIsRefused();
    void whatDoesNotMoveIsRefused_data();
    void whatDoesNotMoveIsRefused();
    void centre_data();
    void centre();
    void centreOfOneSide();
    void gates_data();
    void gates();
    void wrongGatesAreRefused();
    void gatesTooWide();
    void values();
    void valuesWithoutTheCentre();
    void anyLever();
};

void TestCalibration::statistics() {
    QCOMPARE(medianOf({}), 0.0);
    QCOMPARE(medianOf({3, 1, 2}), 2.0);
    QCOMPARE(medianOf({4, 1, 2, 3}), 2.5);
    QCOMPARE(percentileOf({0, 10, 20, 30, 40}, 0.1), 4.0);
    QCOMPARE(percentileOf({5}, 0.995), 5.0);
    QCOMPARE(deviationOf({2, 4, 4, 4, 5, 5, 7, 9}), std::sqrt(32.0 / 7.0));
    QVERIFY(isNear(robustDeviationOf({1, 2, 3, 4, 5, 1000}), 1.4826 * 1.5, 1e-9));
}

// 12 bits: sigma of 1 LSB 12.00 effective and 9.28 noise-free bits, 2 LSB 11.00 and 8.28; the difference of the two is
// log2(6.6) = 2.72; at most the converter's bits. Computed from log2(FSR / sigma) and log2(FSR / 6.6 sigma), which are
// common practice of converter data sheets; these give the difference as 2.7.
void TestCalibration::effectiveBits_data() {
    QTest::addColumn<double>("sigma");
    QTest::addColumn<double>("effective");
    QTest::addColumn<double>("noiseFree");
    QTest::newRow("1 LSB") << 1.0 << 12.00 << 9.28;
    QTest::newRow("2 LSB") << 2.0 << 11.00 << 8.28;
    QTest::newRow("less than a step") << 0.2887 << 12.0 << 11.07;
    QTest::newRow("none") << 0.0 << 12.0 << 12.0;
    QTest::newRow("more than its range") << 10000.0 << 0.0 << 0.0;
}

void TestCalibration::effectiveBits() {
    QFETCH(double, sigma);
    QFETCH(double, effective);
    QFETCH(double, noiseFree);
    QVERIFY(isNear(flowhand::effectiveBits(4096, sigma, 12), effective, 0.005));
    QVERIFY(isNear(noiseFreeBits(4096, sigma, 12), noiseFree, 0.005));
}

void TestCalibration::closestLine() {
    const Line exact = flowhand::closestLine({0, 1, 2}, {1, 3, 5});
    QVERIFY(isNear(exact.slope, 2, 1e-12) && isNear(exact.at0, 1, 1e-12) && isNear(exact.worst, 0, 1e-12));
    // A peak of 2 in the middle: the best line runs at half its height.
    QVERIFY(isNear(flowhand::closestLine({0, 1, 2}, {0, 2, 0}).worst, 1.0, 1e-12));
    QVERIFY(rc::check("no other line is closer", [] {
        std::vector<double> x, y;
        for (int i = 0; i < 8; ++i) {
            x.push_back(i);
            y.push_back(*rc::gen::inRange(-100, 100));
        }
        const Line best = flowhand::closestLine(x, y);
        const double slope = best.slope + *rc::gen::inRange(-50, 50) / 10.0;
        const double at0 = best.at0 + *rc::gen::inRange(-50, 50) / 10.0;
        double worst = 0.0;
        double own = 0.0;
        for (std::size_t i = 0; i < x.size(); ++i) {
            worst = std::max(worst, std::fabs(y[i] - slope * x[i] - at0));
            own = std::max(own, std::fabs(y[i] - best.slope * x[i] - best.at0));
        }
        RC_ASSERT(worst >= best.worst - 1e-9);
        RC_ASSERT(std::fabs(own - best.worst) < 1e-9);
    }));
}

void TestCalibration::range_data() {
    QTest::addColumn<qint64>("highest");
    QTest::addColumn<double>("low");
    QTest::addColumn<double>("high");
    QTest::addColumn<double>("noise");
    QTest::addColumn<double>("rate");
    QTest::newRow("12 bits") << qint64(4095) << 380.0 << 3720.0 << 1.2 << 125.0;
    QTest::newRow("noisy") << qint64(4095) << 380.0 << 3720.0 << 12.0 << 125.0;
    QTest::newRow("no noise") << qint64(4095) << 380.0 << 3720.0 << 0.0 << 125.0;
    QTest::newRow("a short arc") << qint64(4095) << 1700.0 << 2200.0 << 1.2 << 125.0;
    QTest::newRow("the whole converter") << qint64(4095) << 0.0 << 4095.0 << 1.0 << 125.0;
    QTest::newRow("8 bits") << qint64(255) << 20.0 << 240.0 << 0.3 << 100.0;
    QTest::newRow("32 bits") << qint64(4294967295) << 4e8 << 3.9e9 << 1e6 << 125.0;
    QTest::newRow("1 kHz") << qint64(4095) << 380.0 << 3720.0 << 1.2 << 1000.0;
    QTest::newRow("20 Hz") << qint64(4095) << 380.0 << 3720.0 << 1.2 << 20.0;
}

void TestCalibration::range() {
    QFETCH(qint64, highest);
    QFETCH(double, low);
    QFETCH(double, high);
    QFETCH(double, noise);
    QFETCH(double, rate);
    AxisTruth truth;
    truth.highest = highest;
    truth.low = low;
    truth.high = high;
    truth.noise = noise;
    truth.rate = rate;
    const auto found = calibrateAxis(swept(truth).series(), {});
    QVERIFY2(found, found ? "" : found.error().message.c_str());
    const double tolerance = std::max(1.0, noise / 2);
    QVERIFY(isNear(double(found->low.at), low, tolerance));
    QVERIFY(isNear(double(found->high.at), high, tolerance));
    QVERIFY(isNear(found->share, (high - low) / (double(highest) + 1), 0.01));
    // Rounding to counts adds 1 / sqrt(12) of a count; noise that a converter's end cuts off is less.
    QVERIFY(isNear(found->noise, std::max(std::hypot(noise, 0.29), 0.29), high == highest ? 0.5 : 0.15 * noise + 0.05));
    QVERIFY(found->low.visits >= 3 && found->high.visits == 3);
    // 100 places that noise (6.6 sigma) does not blur.
    const bool isFine = (high - low) / (6.6 * found->noise) >= 100;
    QVERIFY(worstOf(found->findings) == (isFine ? Soundness::Good : Soundness::Caution));
}

void TestCalibration::aSpikeMovesTheRangeByLessThanHalfAPercent_data() {
    QTest::addColumn<double>("spike");
    QTest::addColumn<int>("reports");
    QTest::addColumn<double>("rate");
    QTest::newRow("to the top") << 4095.0 << 1 << 125.0;
    QTest::newRow("to the bottom") << 0.0 << 1 << 125.0;
    QTest::newRow("two reports") << 4095.0 << 2 << 125.0;
    QTest::newRow("slow device") << 4095.0 << 1 << 20.0;
    QTest::newRow("fast device, 5 ms") << 0.0 << 5 << 1000.0;
}

void TestCalibration::aSpikeMovesTheRangeByLessThanHalfAPercent() {
    QFETCH(double, spike);
    QFETCH(int, reports);
    QFETCH(double, rate);
    AxisTruth truth;
    truth.rate = rate;
    const double limit = 0.005 * (truth.high - truth.low);
    for (const double at : {0.2, 0.6, 1.0}) { // in the first rest, on the way, at the far end
        const GeneratedAxis axis =
            GeneratedAxis(truth).hold(at).spike(spike, reports).hold(1.2 - at).visit({0.0, 1.0}, 2);
        const auto found = calibrateAxis(axis.series(), {});
        QVERIFY2(found, found ? "" : found.error().message.c_str());
        QVERIFY(isNear(double(found->low.at), truth.low, limit));
        QVERIFY(isNear(double(found->high.at), truth.high, limit));
    }
    const GeneratedAxis moving =
        GeneratedAxis(truth).hold(1).moveTo(0.5, 0.3).spike(spike, reports).visit({0.0, 1.0}, 2);
    const auto found = calibrateAxis(moving.series(), {});
    QVERIFY2(found, found ? "" : found.error().message.c_str());
    QVERIFY(isNear(double(found->low.at), truth.low, limit) && isNear(double(found->high.at), truth.high, limit));
}

void TestCalibration::invertedAxis() {
    AxisAsk ask;
    ask.isInverted = true;
    const auto found = calibrateAxis(swept().series(), ask);
    QVERIFY(found);
    QVERIFY(isNear(double(found->low.at), 3720, 1) && isNear(double(found->high.at), 380, 1));
}

void TestCalibration::anEndThatWasNotHeldIsRefused() {
    const GeneratedAxis axis =
        GeneratedAxis({}).hold(1).moveTo(0.8, 0.5).hold(1).moveTo(1.0, 0.6).moveTo(0.0, 0.6).hold(1);
    const auto found = calibrateAxis(axis.series(), {});
    QVERIFY(!found);
    QCOMPARE(found.error().code, std::string("end-not-held"));
    QVERIFY(found.error().words.isPattern()); // the window says it in its language
}

void TestCalibration::whatDoesNotMoveIsRefused_data() {
    QTest::addColumn<int>("what");
    QTest::newRow("nothing") << 0;
    QTest::newRow("constant") << 1;
    QTest::newRow("noise alone") << 2;
    QTest::newRow("random") << 3;
    QTest::newRow("one report") << 4;
    QTest::newRow("one bit") << 5;
}

void TestCalibration::whatDoesNotMoveIsRefused() {
    QFETCH(int, what);
    AxisTruth truth;
    truth.noise = what == 1 ? 0.0 : what == 3 ? 3000.0 : 4.0;
    if (what == 5) {
        truth = {};
        truth.highest = 1;
        truth.low = 0;
        truth.high = 1;
        truth.noise = 0;
    }
    Series series = GeneratedAxis(truth).hold(what == 0 ? 0 : 10).series();
    if (what == 5)
        series = swept(truth).series();
    if (what == 4)
        series.points.resize(1);
    for (const bool hasCentre : {false, true}) {
        AxisAsk ask;
        ask.hasCentre = hasCentre;
        const auto found = calibrateAxis(series, ask);
        QVERIFY(!found);
        QCOMPARE(found.error().code, std::string("did-not-move"));
        QVERIFY(found.error().words.isPattern()); // the window says it in its language
    }
}

void TestCalibration::centre_data() {
    QTest::addColumn<double>("centre");
    QTest::addColumn<double>("error"); // share of the travel, either side
    QTest::newRow("exact") << 0.5 << 0.0;
    QTest::newRow("friction") << 0.5 << 0.008;
    QTest::newRow("not in the middle") << 0.42 << 0.004;
}

void TestCalibration::centre() {
    QFETCH(double, centre);
    QFETCH(double, error);
    GeneratedAxis axis = GeneratedAxis({}).hold(1).visit({0.0, 1.0}, 1).returnsToCentre(3, centre, error);
    AxisAsk ask;
    ask.hasCentre = true;
    const auto found = calibrateAxis(axis.series(), ask);
    QVERIFY2(found, found ? "" : found.error().message.c_str());
    QVERIFY(found->centre);
    QVERIFY(isNear(double(found->centre->place.at), axis.counts(centre), 1 + error * 3340));
    QCOMPARE(found->centre->place.visits, std::size_t(6));
    QVERIFY(isNear(found->centre->place.spread, 2 * error * 3340, 3));
    QVERIFY(isNear(*found->centre->place.backlash, 2 * error * 3340, 3));
    QVERIFY(double(found->centre->deadBand) >= error * 3340);
    QVERIFY(double(found->centre->deadBand) <= 2 * error * 3340 + 6);
}

void TestCalibration::centreOfOneSide() {
    GeneratedAxis axis = GeneratedAxis({}).hold(1).visit({0.0, 1.0}, 2);
    for (int i = 0; i < 3; ++i)
        axis.moveTo(1.0, 0.4).hold(0.5).moveTo(0.5, 0.2).hold(1.5);
    AxisAsk ask;
    ask.hasCentre = true;
    const auto found = calibrateAxis(axis.series(), ask);
    QVERIFY(found);
    const Finding* finding = findingOf(found->findings, "centre");
    QVERIFY(finding && finding->verdict == Soundness::Caution);
    const auto none = calibrateAxis(swept().series(), ask);
    QVERIFY(!none);
    QCOMPARE(none.error().code, std::string("centre-not-found"));
}

void TestCalibration::gates_data() {
    QTest::addColumn<double>("backlash");
    QTest::addColumn<double>("noise");
    QTest::addColumn<bool>("pauses");
    QTest::newRow("tight") << 0.0 << 1.2 << false;
    QTest::newRow("backlash") << 40.0 << 1.2 << false;
    QTest::newRow("noise") << 20.0 << 8.0 << false;
    QTest::newRow("a pause between two gates") << 20.0 << 1.2 << true;
}

void TestCalibration::gates() {
    QFETCH(double, backlash);
    QFETCH(double, noise);
    QFETCH(bool, pauses);
    AxisTruth truth;
    truth.backlash = backlash;
    truth.noise = noise;
    GeneratedAxis axis = GeneratedAxis(truth).hold(1).visit(kGateShares, 2);
    if (pauses)
        axis.moveTo(0.57, 0.6).hold(1.0).moveTo(0.7, 0.3).hold(1.0);
    AxisAsk ask;
    ask.gates = kGates;
    const auto found = calibrateAxis(axis.series(), ask);
    QVERIFY2(found, found ? "" : found.error().message.c_str());
    QCOMPARE(found->gates.size(), kGates.size());
    for (std::size_t i = 0; i < kGates.size(); ++i) {
        const GatePlace& gate = found->gates[i];
        QCOMPARE(gate.position, kGates[i]);
        const bool isEnd =
            i == 0 || i + 1 == kGates.size(); // come to from one side: half the play away from its middle
        QVERIFY(isNear(double(gate.place.at), axis.counts(kGateShares[i]), 2 + noise / 2 + (isEnd ? backlash / 2 : 0)));
        QCOMPARE(gate.place.backlash.has_value(), !isEnd);
        if (!isEnd) // the count is higher when it comes from above
            QVERIFY(isNear(*gate.place.backlash, backlash, 2 + noise / 2));
        QVERIFY(double(gate.band) >= backlash / 2 + (isEnd ? 0 : 3 * noise));
    }
    for (std::size_t i = 1; i < kGates.size(); ++i)
        QVERIFY(found->gates[i].place.at - found->gates[i].band - found->gates[i - 1].place.at -
                    found->gates[i - 1].band >
                found->hysteresis);
    QVERIFY(isNear(*found->backlash, backlash, 2 + noise / 2));
    QVERIFY(findingOf(found->findings, "gate") == nullptr);
}

void TestCalibration::wrongGatesAreRefused() {
    AxisAsk ask;
    ask.gates = kGates;
    const auto found = calibrateAxis(GeneratedAxis({}).hold(1).visit({0.0, 0.3, 0.6, 1.0}, 2).series(), ask);
    QVERIFY(!found);
    QCOMPARE(found.error().code, std::string("places-not-found"));
    QVERIFY(found.error().words.isPattern()); // the window says it in its language
    QVERIFY2(found.error().message.find("5 gates") != std::string::npos, found.error().message.c_str());
    GeneratedAxis once = GeneratedAxis({}).hold(1);
    for (const double share : kGateShares)
        once.moveTo(share, 0.5).hold(1);
    const auto single = calibrateAxis(once.series(), ask);
    QVERIFY(single);
    QVERIFY(findingOf(single->findings, "gate") != nullptr);
    QVERIFY(findingOf(single->findings, "repeat")->verdict == Soundness::Caution);
}

void TestCalibration::gatesTooWide() {
    AxisTruth truth;
    truth.backlash = 420; // of 740 to 830 between two gates
    AxisAsk ask;
    ask.gates = kGates;
    const auto found = calibrateAxis(GeneratedAxis(truth).hold(1).visit(kGateShares, 3).series(), ask);
    if (found) {
        QVERIFY(worstOf(found->findings) == Soundness::Bad);
    } else {
        QCOMPARE(found.error().code, std::string("places-not-found"));
    }
}

void TestCalibration::values() {
    // A rod that turns the potentiometer unevenly: the places of 0, 15, 30, 45 and 60 degrees of the lever.
    const std::vector<double> shares = {0.0, 0.31, 0.56, 0.79, 1.0};
    GeneratedAxis axis = GeneratedAxis({}).hold(1).visit(shares, 2);
    AxisAsk ask;
    ask.values = {0, 15, 30, 45, 60};
    const auto found = calibrateAxis(axis.series(), ask);
    QVERIFY2(found, found ? "" : found.error().message.c_str());
    for (std::size_t i = 0; i < shares.size(); ++i) {
        QCOMPARE(found->values[i].value, ask.values[i]);
        QVERIFY(isNear(double(found->values[i].place.at), axis.counts(shares[i]), 2));
    }
    // The true linearity, from the truth by the same definition: 3.25 % of the travel, 2.65 % of the converter.
    std::vector<double> counts;
    for (const double share : shares)
        counts.push_back(axis.counts(share));
    QVERIFY(isNear(*found->linearity, 100 * flowhand::closestLine(ask.values, counts).worst / 4096, 0.05));
    ask.isInverted = true;
    const auto inverted = calibrateAxis(axis.series(), ask);
    QVERIFY(inverted);
    QVERIFY(isNear(double(inverted->values.front().place.at), axis.counts(1.0), 2));
}

void TestCalibration::valuesWithoutTheCentre() {
    GeneratedAxis axis = GeneratedAxis({}).hold(1).visit({0.0, 0.28, 1.0}, 2);
    axis.returnsToCentre(4, 0.5, 0.0);
    AxisAsk ask;
    ask.hasCentre = true;
    ask.values = {-70, -30, 0, 70};
    const auto found = calibrateAxis(axis.series(), ask);
    QVERIFY2(found, found ? "" : found.error().message.c_str());
    QCOMPARE(found->values[2].place.at, found->centre->place.at);
    GeneratedAxis other = GeneratedAxis({}).hold(1).visit({0.0, 1.0}, 2);
    other.returnsToCentre(4, 0.5, 0.0);
    ask.values = {-70, 70};
    const auto none = calibrateAxis(other.series(), ask);
    QVERIFY(!none);
    QCOMPARE(none.error().code, std::string("places-not-found"));
}

void TestCalibration::anyLever() {
    QVERIFY(rc::check("ends, noise and backlash of any lever are found", [] {
        AxisTruth truth;
        truth.low = *rc::gen::inRange(30, 1200);
        truth.high = truth.low + *rc::gen::inRange(900, 2800);
        truth.noise = *rc::gen::inRange(0, 60) / 10.0;
        truth.backlash = *rc::gen::inRange(0, 25);
        truth.rate = *rc::gen::element(60.0, 125.0, 250.0);
        const auto seed = *rc::gen::inRange(1u, 1'000'000u);
        AxisAsk ask;
        ask.gates = {"a", "b", "c"};
        const GeneratedAxis axis = GeneratedAxis(truth, seed).hold(1).visit({0.0, 0.5, 1.0}, 2);
        const auto found = calibrateAxis(axis.series(), ask);
        RC_ASSERT(found.has_value());
        const double tolerance = 1.5 + truth.noise / 2 + truth.backlash / 2;
        RC_ASSERT(std::fabs(double(found->low.at) - std::max(truth.low, 0.0)) <= tolerance);
        RC_ASSERT(std::fabs(double(found->high.at) - truth.high) <= tolerance);
        RC_ASSERT(std::fabs(*found->backlash - truth.backlash) <= 2 + truth.noise / 2);
        // Between two counts rounding makes up to half a count of noise.
        RC_ASSERT(std::fabs(found->noise - std::hypot(truth.noise, 0.29)) <= 0.35 + 0.1 * truth.noise);
    }));
}

QTEST_APPLESS_MAIN(TestCalibration)
#include "test_calibration.moc"
