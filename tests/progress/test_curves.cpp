// Trends, learning curves and rates of mistakes, against values reckoned by hand.

#include <algorithm>
#include <cmath>

#include <QtTest>
#include <rapidcheck.h>

#include "progress/flowprogress.h"
#include "progress/trend.h"

using namespace flowhand;

namespace {

std::vector<TimedTry> triesOf(const std::vector<double>& seconds) {
    std::vector<TimedTry> tries;
    for (const double each : seconds)
        tries.push_back({static_cast<int>(tries.size()) + 1, each});
    return tries;
}

bool isNear(double a, double b, double within = 1e-9) {
    return std::abs(a - b) <= within;
}

StepTry tryOf(const char* id, const std::vector<std::string>& mistakes) {
    return {id, std::string("Title of ") + id, std::vector<Phrase>(mistakes.begin(), mistakes.end())};
}

PractisedRun runOf(std::vector<StepTry> steps) {
    PractisedRun run;
    run.steps = std::move(steps);
    return run;
}

std::vector<const PractisedRun*> pointersTo(const std::vector<PractisedRun>& runs) {
    std::vector<const PractisedRun*> all;
    for (const PractisedRun& run : runs)
        all.push_back(&run);
    return all;
}

} // namespace

class TestCurves : public QObject {
    Q_OBJECT

private Q_SLOTS:
    void trendIsTheMedianSlope_data();
    void trendIsTheMedianSlope();
    void trendHeedsNoOddRun();
    void trendTurnsWithTheRuns();
    void powerLawIsFound();
    void exponentialIsFound();
    void curveByHand();
    void fewTriesHaveNoCurve_data();
    void fewTriesHaveNoCurve();
    void noFitIsBetter();
    void ratesByHand_data();
    void ratesByHand();
    void ratesStayWithinTheirBounds();
    void worstStepStandsFirst();
    void oldRunsLeaveTheRates();
    void undoneRunsLeaveTheCurve();
};

void TestCurves::trendIsTheMedianSlope_data() {
    QTest::addColumn<QList<double>>("values");
    QTest::addColumn<double>("trend"); // NaN: none
    QTest::newRow("too few") << QList<double>{70, 80, 90} << std::nan("");
    QTest::newRow("a line") << QList<double>{70, 72, 74, 76} << 2.0;
    // Slopes 10, 0, 5, -10, 2.5, 15, in order -10 0 2.5 5 10 15: between 2.5 and 5.
    QTest::newRow("by hand") << QList<double>{60, 70, 60, 75} << 3.75;
    QTest::newRow("level") << QList<double>{80, 80, 80, 80, 80} << 0.0;
}

void TestCurves::trendIsTheMedianSlope() {
    QFETCH(QList<double>, values);
    QFETCH(double, trend);
    const std::optional<double> found = trendOf({values.begin(), values.end()});
    QCOMPARE(found.has_value(), !std::isnan(trend));
    if (found)
        QVERIFY2(isNear(*found, trend), qPrintable(QString::number(*found)));
}

void TestCurves::trendHeedsNoOddRun() {
    QVERIFY(isNear(*trendOf({70, 71, 72, 0, 74, 75, 76}), 1.0));
}

void TestCurves::trendTurnsWithTheRuns() {
    QVERIFY(rc::check("backwards, a trend is its opposite", [] {
        const auto values = *rc::gen::suchThat(rc::gen::container<std::vector<int>>(rc::gen::inRange(0, 100)),
                                               [](const std::vector<int>& all) {
                                                   return all.size() >= kFewestForTrend;
                                               });
        std::vector<double> there(values.begin(), values.end());
        std::vector<double> back(there.rbegin(), there.rend());
        RC_ASSERT(isNear(*trendOf(there), -*trendOf(back)));
    }));
}

void TestCurves::powerLawIsFound() {
    std::vector<double> times;
    for (int n = 1; n <= 8; ++n)
        times.push_back(100.0 * std::pow(n, -0.3));
    const std::optional<LearningCurve> curve = learningCurve(triesOf(times));
    QVERIFY(curve && curve->kind == CurveKind::PowerLaw);
    QVERIFY(isNear(curve->scale, 100.0) && isNear(curve->rate, 0.3) && isNear(curve->residual, 0.0));
    QVERIFY(isNear(curve->secondsAt(16), 43.527528164806206)); // 100 * 16^-0.3 = 100 / 2^1.2
}

void TestCurves::exponentialIsFound() {
    std::vector<double> times;
    for (int n = 1; n <= 8; ++n)
        times.push_back(60.0 * std::exp(-0.1 * n));
    const std::optional<LearningCurve> curve = learningCurve(triesOf(times));
    QVERIFY(curve && curve->kind == CurveKind::Exponential);
    QVERIFY(isNear(curve->scale, 60.0) && isNear(curve->rate, 0.1) && isNear(curve->residual, 0.0));
}

/// ln T = 4, 3, 3, 2 at n = 1, 2, 3, 4: mean 3 at 2.5, slope (-1.5 - 1.5) / 5 = -0.6; off by 0.1, -0.3, 0.3, -0.1.
void TestCurves::curveByHand() {
    const std::vector<TimedTry> tries = triesOf({std::exp(4.0), std::exp(3.0), std::exp(3.0), std::exp(2.0)});
    const LearningCurve curve = fittedCurve(CurveKind::Exponential, tries);
    QVERIFY(isNear(curve.rate, 0.6));
    QVERIFY(isNear(curve.scale, std::exp(4.5)));
    QVERIFY(isNear(curve.residual, std::sqrt(0.05)));
}

void TestCurves::fewTriesHaveNoCurve_data() {
    QTest::addColumn<QList<double>>("times");
    QTest::addColumn<bool>("isShown");
    QTest::newRow("none") << QList<double>{} << false;
    QTest::newRow("five") << QList<double>{50, 45, 40, 38, 37} << false;
    QTest::newRow("six") << QList<double>{50, 45, 40, 38, 37, 36} << true;
    QTest::newRow("six, one not timed") << QList<double>{50, 45, 0, 38, 37, 36} << false;
}

void TestCurves::fewTriesHaveNoCurve() {
    QFETCH(QList<double>, times);
    QFETCH(bool, isShown);
    QCOMPARE(learningCurve(triesOf({times.begin(), times.end()})).has_value(), isShown);
}

void TestCurves::noFitIsBetter() {
    QVERIFY(rc::check("a fit moved a little is off by more", [] {
        const auto millis = *rc::gen::suchThat(rc::gen::container<std::vector<int>>(rc::gen::inRange(1000, 90'000)),
                                               [](const std::vector<int>& all) {
                                                   return all.size() >= kFewestForCurve;
                                               });
        std::vector<double> times;
        for (const int each : millis)
            times.push_back(each / 1000.0);
        const std::vector<TimedTry> tries = triesOf(times);
        const LearningCurve best = *learningCurve(tries);
        for (const double factor : {0.99, 1.01})
            for (const bool isScale : {true, false}) {
                LearningCurve other = best;
                (isScale ? other.scale : other.rate) *= factor;
                double squares = 0.0;
                for (const TimedTry& each : tries)
                    squares += std::pow(std::log(each.seconds) - std::log(other.secondsAt(each.number)), 2);
                RC_ASSERT(std::sqrt(squares / double(tries.size())) >= best.residual - 1e-12);
            }
    }));
}

void TestCurves::ratesByHand_data() {
    QTest::addColumn<int>("wrong");
    QTest::addColumn<int>("runs");
    QTest::addColumn<double>("lowest");
    QTest::newRow("no run") << 0 << 0 << 0.0;
    QTest::newRow("never") << 0 << 10 << 0.0;
    // Reckoned from the formula: 1 of 1: 1 / (1 + 3.8416). 5 of 10: (0.5 + 0.19208 - 1.96 sqrt(0.025 + 0.009604)) /
    // 1.38416.
    QTest::newRow("once of once") << 1 << 1 << 1.0 / 4.8416;
    QTest::newRow("half") << 5 << 10 << 0.2365895936;
}

void TestCurves::ratesByHand() {
    QFETCH(int, wrong);
    QFETCH(int, runs);
    QFETCH(double, lowest);
    QVERIFY2(isNear(lowestRate(wrong, runs), lowest, 1e-7),
             qPrintable(QString::number(lowestRate(wrong, runs), 'g', 12)));
}

void TestCurves::ratesStayWithinTheirBounds() {
    QVERIFY(rc::check("0 <= lowest <= rate", [] {
        const int runs = *rc::gen::inRange(1, 200);
        const int wrong = *rc::gen::inRange(0, runs + 1);
        RC_ASSERT(lowestRate(wrong, runs) >= 0.0);
        RC_ASSERT(lowestRate(wrong, runs) <= double(wrong) / runs + 1e-12);
    }));
}

void TestCurves::worstStepStandsFirst() {
    std::vector<PractisedRun> runs;
    for (int i = 0; i < 8; ++i) {
        std::vector<StepTry> steps;
        steps.push_back(
            tryOf("flap", i < 6 ? std::vector<std::string>{i < 4 ? "late" : "not done"} : std::vector<std::string>{}));
        steps.push_back(tryOf("gear", {}));
        if (i == 7) // a step that the flow has got since
            steps.push_back(tryOf("light", {"not done"}));
        runs.push_back(runOf(std::move(steps)));
    }
    const std::vector<StepRate> rates = stepRates(pointersTo(runs));
    QCOMPARE(rates.size(), std::size_t(2));
    QCOMPARE(rates[0].id, std::string("flap"));
    QCOMPARE(rates[0].wrong, 6);
    QCOMPARE(rates[0].runs, 8);
    QCOMPARE(rates[0].instead.front().words.english(), std::string("late"));
    QCOMPARE(rates[0].instead.front().runs, 4);
    QCOMPARE(rates[1].id, std::string("light"));
    QCOMPARE(rates[1].runs, 1);
}

void TestCurves::oldRunsLeaveTheRates() {
    std::vector<PractisedRun> runs;
    for (std::size_t i = 0; i < kRunsForRates + 3; ++i) {
        std::vector<StepTry> steps;
        steps.push_back(tryOf("flap", i < 4 ? std::vector<std::string>{"late"} : std::vector<std::string>{}));
        runs.push_back(runOf(std::move(steps)));
    }
    const std::vector<StepRate> rates = stepRates(pointersTo(runs));
    QCOMPARE(rates.size(), std::size_t(1));
    QCOMPARE(rates.front().wrong, 1); // the fourth; three are older than the newest ten
    QCOMPARE(rates.front().runs, static_cast<int>(kRunsForRates));
}

void TestCurves::undoneRunsLeaveTheCurve() {
    std::vector<PractisedRun> runs(7);
    for (std::size_t i = 0; i < runs.size(); ++i) {
        runs[i].id = static_cast<std::int64_t>(i) + 1;
        runs[i].isComplete = i != 2;
        runs[i].pace = std::chrono::seconds(i == 2 ? 5 : 60 - static_cast<int>(i));
    }
    const FlowProgress progress = flowProgress(pointersTo(runs));
    QCOMPARE(progress.points.size(), std::size_t(7));
    QVERIFY(progress.curve.has_value());
    QCOMPARE(progress.curve->tries, std::size_t(6));
    QVERIFY(progress.curve->residual < 0.02);
}

QTEST_APPLESS_MAIN(TestCurves)
#include "test_curves.moc"
