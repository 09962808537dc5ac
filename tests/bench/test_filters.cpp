// Filters that follow from a measurement, on generated controls whose truth is known: they do what they say, they are
// late by what they say, and nothing follows where nothing can.

#include <QtTest>

#include <cmath>
#include <random>

#include "bench/filteradvice.h"
#include "bench/measurednoise.h"
#include "bench/obstacles.h"
#include "bench/statistics.h"
#include "desk.h"
#include "generated.h"
#include "generatedswitch.h"
#include "rig/axisfilter.h"

using namespace flowhand;
using namespace flowhand::test;
using namespace std::chrono_literals;

namespace {

constexpr std::int64_t kFar = 1'000'000'000'000;

std::string lever(const std::string& keys = "noise = 1.23\n") {
    return "[[control]]\nsignal = \"thrust_lever_1\"\nwiring = \"axis\"\ninput = \"X\"\nrange = [380, 3720]\n" + keys;
}

/// A rig with one control, measured.
struct Bench {
    explicit Bench(const std::string& rigText)
        : rig(rigOf(rigText)), controls(*benchControlsOf(rig, twinJetFolder().aircraft->signals)) {}

    FilterAdvice advise(const DeviceSeries& device, const StepDemand& demand) const {
        const Measurement measurement = {{0, device}};
        const Result<ControlHealth> health = measureControl(controls.front(), measurement, true);
        if (!health)
            qFatal("%s", describe(health.error()).c_str());
        return adviseFilters(controls.front(), *health, measurement, demand);
    }

    RigFile rig;
    std::vector<BenchControl> controls;
};

StepDemand band(double counts, Duration delay = kMostFilterDelay) {
    StepDemand demand;
    demand.band = counts;
    demand.bandOf = std::string("Thrust to 40 %");
    demand.delay = delay;
    return demand;
}

GeneratedAxis worked(const AxisTruth& truth, unsigned seed = 1) {
    return GeneratedAxis(truth, seed).hold(11).sweep(0, 1, 6).hold(1).sweep(1, 0, 6).hold(1).visit({0.0, 1.0}, 2);
}

std::string keyOf(const FilterAdvice& advice, const std::string& name) {
    for (const RigKey& key : advice.keys)
        if (key.key == name)
            return key.value.empty() ? "removed" : key.value;
    return "";
}

QString findings(const FilterAdvice& advice) {
    return QString::fromStdString(findingsText(advice.findings));
}

Soundness verdict(const FilterAdvice& advice, const std::string& check) {
    const Finding* finding = findingOf(advice.findings, check);
    if (!finding)
        qFatal("no finding '%s'", check.c_str());
    return finding->verdict;
}

/// The filters that the rig would have after the advice was followed.
AxisLimits limitsOf(const FilterAdvice& advice) {
    AxisLimits limits;
    const auto time = [&](const char* key) {
        const std::string text = keyOf(advice, key);
        return text.empty() || text == "removed" ? Duration{} : *parseDuration(text.substr(1, text.size() - 2));
    };
    limits.median = time("median");
    limits.smooth = time("smooth");
    limits.settle = time("settle");
    const std::string limit = keyOf(advice, "spike_limit");
    limits.spikeLimit = limit.empty() || limit == "removed" ? 0 : std::stoll(limit);
    return limits;
}

/// What the filter holds at each report.
std::vector<double> filtered(const Series& series, const AxisLimits& limits) {
    AxisFilter filter(limits, -kFar, kFar);
    std::vector<double> values;
    for (const RawChange& point : series.points) {
        while (filter.nextTimer() <= point.time)
            (void)filter.advance(filter.nextTimer());
        (void)filter.take(point.raw, point.time);
        values.push_back(double(*filter.held()));
    }
    return values;
}

/// How much later than the lever itself what is filtered comes in a steady movement, in seconds.
double delayOf(const AxisLimits& limits, double rate) {
    AxisTruth truth;
    truth.noise = 0;
    truth.rate = rate;
    constexpr double kSeconds = 4;
    const Series series = GeneratedAxis(truth).hold(1).sweep(0, 1, kSeconds).hold(1).series();
    const std::vector<double> values = filtered(series, limits);
    double behind = 0;
    int count = 0;
    for (std::size_t i = 0; i < values.size(); ++i) {
        const double time = seconds(series.points[i].time);
        if (time < 2 || time > 4.5)
            continue;
        behind += double(series.points[i].raw) - values[i];
        ++count;
    }
    return behind / count / ((truth.high - truth.low) / kSeconds);
}

} // namespace

class TestFilters : public QObject {
    Q_OBJECT

private Q_SLOTS:
    void lowPassLeavesWhatItSays_data();
    void lowPassLeavesWhatItSays();
    void aLowPassBringsTheNoiseIntoTheBand_data();
    void aLowPassBringsTheNoiseIntoTheBand();
    void humIsNotWhite();
    void whereNoneIsNeeded();
    void neverLaterThanAStepAllows();
    void spikesOfAHand_data();
    void spikesOfAHand();
    void whatTheFileHas_data();
    void whatTheFileHas();
    void debounce_data();
    void debounce();
    void hysteresis_data();
    void hysteresis();
    void hostileControls_data();
    void hostileControls();
    void whatStepsAsk();
};

void TestFilters::lowPassLeavesWhatItSays_data() {
    QTest::addColumn<double>("rate");
    QTest::addColumn<int>("tauMillis");
    for (const double rate : {60.0, 125.0, 1000.0})
        for (const int tau : {5, 20, 80})
            QTest::addRow("%g reports a second, %d ms", rate, tau) << rate << tau;
}

void TestFilters::lowPassLeavesWhatItSays() {
    QFETCH(double, rate);
    QFETCH(int, tauMillis);
    AxisTruth truth;
    truth.highest = 65535;
    truth.low = 20000;
    truth.noise = 400;
    truth.rate = rate;
    const Series series = GeneratedAxis(truth, 11).hold(200).series();
    AxisLimits limits;
    limits.smooth = std::chrono::milliseconds(tauMillis);
    std::vector<double> residuals = filtered(series, limits);
    residuals.erase(residuals.begin(), residuals.begin() + long(residuals.size() / 20));
    const double share = deviationOf(residuals) / truth.noise;
    const double wanted = lowPassShare(fromSeconds(1 / rate), limits.smooth);
    QVERIFY2(std::fabs(share / wanted - 1) < 0.06, qPrintable(QString("%1 for %2").arg(share).arg(wanted)));
    QVERIFY(std::fabs(seconds(lowPassFor(fromSeconds(1 / rate), wanted)) - 1e-3 * tauMillis) < 1e-6);
    const std::optional<double> behind = noiseBehind(series, restingOf(series), {}, limits.smooth);
    QVERIFY(behind && std::fabs(*behind / truth.noise / wanted - 1) < 0.1);
}

void TestFilters::aLowPassBringsTheNoiseIntoTheBand_data() {
    QTest::addColumn<double>("rate");
    QTest::addColumn<double>("share"); // of six sigma that the band is
    for (const double rate : {125.0, 250.0, 1000.0})
        for (const double share : {0.9, 0.6, 0.4})
            QTest::addRow("%g reports a second, %g", rate, share) << rate << share;
}

void TestFilters::aLowPassBringsTheNoiseIntoTheBand() {
    QFETCH(double, rate);
    QFETCH(double, share);
    AxisTruth truth;
    truth.noise = 8;
    truth.rate = rate;
    const double width = 6 * std::hypot(truth.noise, kRoundingNoise) * share;
    const FilterAdvice advice = Bench(lever()).advise(worked(truth).device(), band(width));
    QVERIFY2(verdict(advice, "low-pass") == Soundness::Caution, qPrintable(findings(advice)));
    const AxisLimits limits = limitsOf(advice);
    QVERIFY(limits.smooth > Duration{} && limits.median == Duration{} && limits.spikeLimit == 0);
    QVERIFY(advice.delay <= advice.allowed);
    // Another day's noise of the same deviation.
    const Series other = GeneratedAxis(truth, 77).hold(60).series();
    const std::optional<double> left = noiseBehind(other, restingOf(other), limits.median, limits.smooth);
    QVERIFY2(6 * *left <= 1.06 * width, qPrintable(QString("%1 in %2").arg(6 * *left).arg(width)));
    QCOMPARE(keyOf(advice, "noise"), exactText(advice.noise, {}));
    QVERIFY(std::fabs(advice.noise / *left - 1) < 0.1 && 6 * advice.noise <= width + 0.06);
    const double late = delayOf(limits, rate);
    QVERIFY2(std::fabs(late - seconds(advice.delay)) <= 1 / rate + 1e-9,
             qPrintable(QString("late by %1, said %2").arg(late).arg(seconds(advice.delay))));
}

void TestFilters::humIsNotWhite() {
    AxisTruth truth;
    truth.noise = 1;
    truth.rate = 1000;
    GeneratedAxis axis = worked(truth);
    DeviceSeries device = axis.device();
    for (RawChange& point : device.inputs.front().points) // of the mains, 50 Hz
        point.raw += std::llround(12 * std::sin(2 * M_PI * 50 * seconds(point.time)));
    const FilterAdvice advice = Bench(lever()).advise(device, band(30));
    QVERIFY2(verdict(advice, "low-pass") == Soundness::Caution, qPrintable(findings(advice)));
    const Series& series = device.inputs.front();
    const AxisLimits limits = limitsOf(advice);
    QVERIFY(6 * *noiseBehind(series, restingOf(series), {}, limits.smooth) <= 30);
    const Duration white = lowPassFor(1ms, 30 / (6 * restingOf(series).sigma));
    QVERIFY(limits.smooth >= 2 * white);
}

void TestFilters::whereNoneIsNeeded() {
    AxisTruth truth;
    for (const StepDemand& demand : {band(40), band(7.6), StepDemand{}}) {
        const FilterAdvice advice = Bench(lever()).advise(worked(truth).device(), demand);
        QVERIFY2(advice.keys.empty(), qPrintable(findings(advice)));
        QCOMPARE(advice.delay, Duration{});
        QCOMPARE(worstOf(advice.findings), Soundness::Good);
    }
    // Without a band no noise is too much for one, but what does not travel should fit.
    truth.noise = 30;
    const FilterAdvice advice = Bench(lever()).advise(worked(truth).device(), {});
    QVERIFY(limitsOf(advice).smooth == Duration{} && !keyOf(advice, "noise").empty());
}

void TestFilters::neverLaterThanAStepAllows() {
    AxisTruth truth;
    truth.noise = 8;
    for (const Duration allowed : {100ms, 20ms, 5ms}) {
        // A third of six sigma takes 36 ms at 125 reports a second; a step of 0.2 s has 20.
        const FilterAdvice advice = Bench(lever()).advise(worked(truth).device(), band(16, allowed));
        QVERIFY(advice.delay <= allowed);
        QCOMPARE(verdict(advice, "low-pass"), allowed < 36ms ? Soundness::Bad : Soundness::Caution);
        QCOMPARE(limitsOf(advice).smooth > Duration{}, allowed >= 36ms);
    }
    // Narrower than what a count is rounded by, no filter helps.
    const FilterAdvice advice = Bench(lever()).advise(worked(truth).device(), band(1.5));
    QCOMPARE(verdict(advice, "low-pass"), Soundness::Bad);
    QCOMPARE(advice.delay, Duration{});
}

void TestFilters::spikesOfAHand_data() {
    QTest::addColumn<double>("rate");
    QTest::addColumn<double>("height"); // counts above the lever
    QTest::addColumn<int>("reports");
    QTest::addColumn<double>("noise");
    QTest::addColumn<double>("band"); // counts; 0: none
    QTest::addColumn<QString>("by");
    QTest::newRow("large ones, fast reports") << 1000.0 << 900.0 << 2 << 1.2 << 0.0 << "spike_limit";
    QTest::newRow("of a hand's height, slow reports") << 125.0 << 150.0 << 1 << 1.2 << 0.0 << "median";
    QTest::newRow("large ones, and noise") << 500.0 << 900.0 << 2 << 6.0 << 12.0 << "median smooth";
}

void TestFilters::spikesOfAHand() {
    QFETCH(double, rate);
    QFETCH(double, height);
    QFETCH(int, reports);
    QFETCH(double, noise);
    QFETCH(double, band);
    QFETCH(QString, by);
    AxisTruth truth;
    truth.rate = rate;
    truth.noise = noise;
    GeneratedAxis axis = worked(truth);
    for (int i = 0; i < 4; ++i)
        axis.sweep(0, 0.1 * i, 1).hold(0.4).spike(axis.counts(0.1 * i) + height, reports).hold(0.6).moveTo(0, 0.5);
    StepDemand demand;
    if (band > 0)
        demand = ::band(band);
    const FilterAdvice advice = Bench(lever()).advise(axis.device(), demand);
    const AxisLimits limits = limitsOf(advice);
    QVERIFY2(verdict(advice, "spikes") == Soundness::Caution, qPrintable(findings(advice)));
    QCOMPARE(limits.spikeLimit > 0, by.contains("spike_limit"));
    QCOMPARE(limits.median > Duration{}, by.contains("median"));
    QCOMPARE(limits.smooth > Duration{}, by.contains("smooth"));
    // The spikes are gone ...
    const std::vector<double> values = filtered(axis.series(), limits);
    for (std::size_t i = 1; i < values.size(); ++i)
        QVERIFY(std::fabs(values[i] - values[i - 1]) < 0.8 * height);
    // ... and what a hand does is late by what was said.
    QVERIFY2(std::fabs(delayOf(limits, rate) - seconds(advice.delay)) <= 1 / rate + 1e-9,
             qPrintable(QString::number(delayOf(limits, rate))));
    QCOMPARE(advice.delay, limits.median / 2 + limits.smooth);
}

void TestFilters::whatTheFileHas_data() {
    QTest::addColumn<QString>("keys");
    QTest::addColumn<double>("noise");
    QTest::addColumn<double>("band");
    QTest::addColumn<QString>("removed");
    QTest::addColumn<QString>("changed");
    QTest::newRow("a low-pass without need") << "noise = 0.5\nsmooth = \"30 ms\"" << 1.2 << 0.0 << "smooth"
                                             << "noise";
    QTest::newRow("a low-pass that is right") << "noise = 4.7\nsmooth = \"10 ms\"" << 8.0 << 30.0 << ""
                                              << "";
    QTest::newRow("a low-pass too short") << "noise = 7.6\nsmooth = \"1 ms\"" << 8.0 << 30.0 << ""
                                          << "smooth noise";
    QTest::newRow("a median stays") << "noise = 0.6\nmedian = \"40 ms\"" << 1.2 << 0.0 << ""
                                    << "";
    QTest::newRow("a median that is too late") << "noise = 0.2\nmedian = \"400 ms\"" << 1.2 << 0.0 << "median"
                                               << "noise";
    QTest::newRow("a limit stays") << "noise = 1.2\nspike_limit = 400\nsettle = \"30 ms\"" << 1.2 << 0.0 << ""
                                   << "";
    QTest::newRow("a limit in the way of a low-pass")
        << "noise = 8\nspike_limit = 400\nsettle = \"30 ms\"" << 8.0 << 30.0 << "spike_limit settle"
        << "smooth noise";
}

void TestFilters::whatTheFileHas() {
    QFETCH(QString, keys);
    QFETCH(double, noise);
    QFETCH(double, band);
    QFETCH(QString, removed);
    QFETCH(QString, changed);
    AxisTruth truth;
    truth.noise = noise;
    const Bench bench(lever(keys.toStdString() + "\n"));
    const FilterAdvice advice = bench.advise(worked(truth).device(), band > 0 ? ::band(band) : StepDemand{});
    QStringList gone, other;
    for (const RigKey& key : advice.keys)
        (key.value.empty() ? gone : other) << QString::fromStdString(key.key);
    QCOMPARE(gone.join(' '), removed);
    QCOMPARE(other.join(' '), changed);
    // What comes of it is a good rig file, of which nothing follows any more.
    const Result<std::string> source = withControlKeys(bench.rig.source, 0, advice.keys);
    QVERIFY(source);
    const FilterAdvice again = Bench(*source).advise(worked(truth).device(), band > 0 ? ::band(band) : StepDemand{});
    QVERIFY2(again.keys.empty(), qPrintable(findings(again)));
    QCOMPARE(worstOf(again.findings), Soundness::Good);
}

void TestFilters::debounce_data() {
    QTest::addColumn<double>("bounce"); // longest, ms
    QTest::addColumn<double>("held");   // shortest state, ms
    QTest::addColumn<QString>("file");
    QTest::addColumn<QString>("advised");
    QTest::addColumn<int>("verdict");
    const int good = int(Soundness::Good), caution = int(Soundness::Caution), bad = int(Soundness::Bad);
    QTest::newRow("10 ms are right") << 4.0 << 300.0 << ""
                                     << "" << good;
    QTest::newRow("a worn switch") << 14.0 << 300.0 << ""
                                   << "\"21 ms\"" << caution;
    QTest::newRow("short pulses") << 2.0 << 8.0 << ""
                                  << "\"3 ms\"" << caution;
    QTest::newRow("pulses as short as the bounce") << 12.0 << 15.0 << ""
                                                   << "" << bad;
    QTest::newRow("longer than any step allows") << 80.0 << 900.0 << ""
                                                 << "" << bad;
    QTest::newRow("the file's is right") << 14.0 << 300.0 << "debounce = \"25 ms\"\n"
                                         << "" << good;
}

void TestFilters::debounce() {
    QFETCH(double, bounce);
    QFETCH(double, held);
    QFETCH(QString, file);
    QFETCH(QString, advised);
    QFETCH(int, verdict);
    const Bench bench("[[control]]\nsignal = \"reply_button\"\nwiring = \"contact\"\ninput = \"button 1\"\n" +
                      file.toStdString());
    ControlHealth health;
    ContactHealth contact;
    contact.changes = 20;
    contact.longestBounce = fromSeconds(1e-3 * bounce);
    contact.shortestState = fromSeconds(1e-3 * held);
    health.contacts = {{"button 1", contact}};
    const FilterAdvice advice = adviseFilters(bench.controls.front(), health, {}, {});
    QCOMPARE(int(::verdict(advice, "debounce")), verdict);
    QCOMPARE(QString::fromStdString(keyOf(advice, "debounce")), advised);
    QCOMPARE(advice.keys.size(), std::size_t(advised.isEmpty() ? 0 : 1));
    contact.changes = 0;
    health.contacts = {{"button 1", contact}};
    QCOMPARE(::verdict(adviseFilters(bench.controls.front(), health, {}, {}), "debounce"), Soundness::Unmeasured);
}

void TestFilters::hysteresis_data() {
    QTest::addColumn<QString>("keys");
    QTest::addColumn<bool>("isAdvised");
    QTest::addColumn<int>("verdict");
    const QString gates = "signal = \"spoiler_lever\"\nwiring = \"gates\"\ninput = \"X\"\nnoise = 4\ngates = [\n"
                          "{ position = \"down\", at = 380 },\n{ position = \"armed\", at = 1500 },\n"
                          "{ position = \"up\", at = 3720 },\n]\n";
    QTest::newRow("none") << gates + "band = 90\n" << true << int(Soundness::Caution);
    QTest::newRow("enough") << gates + "band = 90\nhysteresis = 40\n" << false << int(Soundness::Good);
    QTest::newRow("no room") << gates + "band = 555\n" << false << int(Soundness::Bad);
    const QString split = "signal = [\"thrust_lever_1\", \"reverse_lever_1\"]\nwiring = \"split_axis\"\ninput = \"X\"\n"
                          "noise = 4\nranges = [[1500, 3720], [%1, 380]]\nsplit = %2\n";
    QTest::newRow("split") << split.arg(1400).arg(1450) << true << int(Soundness::Caution);
    QTest::newRow("split beside idle") << split.arg(1480).arg(1490) << false << int(Soundness::Bad);
}

void TestFilters::hysteresis() {
    QFETCH(QString, keys);
    QFETCH(bool, isAdvised);
    QFETCH(int, verdict);
    AxisTruth truth;
    truth.noise = 4;
    const Bench bench("[[control]]\n" + keys.toStdString());
    const FilterAdvice advice = bench.advise(worked(truth).visit({0, 0.335, 1}, 2).device(), {});
    QCOMPARE(int(::verdict(advice, "hysteresis")), verdict);
    QVERIFY(std::fabs(advice.noise - 4.01) < 0.2);
    QCOMPARE(keyOf(advice, "hysteresis"), isAdvised ? std::to_string(std::lround(std::ceil(6 * advice.noise))) : "");
    if (isAdvised)
        (void)rigOf(*withControlKeys(bench.rig.source, 0, advice.keys)); // a good rig file, or it ends here
}

void TestFilters::hostileControls_data() {
    QTest::addColumn<QString>("kind");
    for (const char* kind : {"constant", "random", "one bit", "32 bits", "32 bits and noise", "one report", "silent"})
        QTest::newRow(kind) << kind;
}

void TestFilters::hostileControls() {
    QFETCH(QString, kind);
    AxisTruth truth;
    if (kind.startsWith("32")) {
        truth.highest = 4294967295;
        truth.low = 4e8;
        truth.high = 3.9e9;
        truth.noise = kind.endsWith("noise") ? 3e6 : 0;
    }
    DeviceSeries device = worked(truth).device();
    std::mt19937 random(5);
    for (RawChange& point : device.inputs.front().points)
        point.raw = kind == "constant"  ? 1234
                    : kind == "random"  ? std::int64_t(random() % 4096)
                    : kind == "one bit" ? std::int64_t(random() % 2)
                                        : point.raw;
    if (kind == "one report")
        device.inputs.front().points.resize(1), device.reports.resize(1);
    if (kind == "silent")
        device.inputs.front().points.clear();
    const FilterAdvice advice = Bench(lever()).advise(device, band(kind.startsWith("32") ? 6e6 : 4));
    QVERIFY(advice.delay >= Duration{} && advice.delay <= advice.allowed);
    if (!kind.startsWith("32")) {
        QVERIFY2(advice.keys.empty(), qPrintable(findings(advice)));
        QCOMPARE(advice.findings.front().verdict, Soundness::Unmeasured);
        return;
    }
    QVERIFY(std::isfinite(advice.noise));
    QCOMPARE(limitsOf(advice).smooth > Duration{}, kind.endsWith("noise"));
    (void)rigOf(*withControlKeys(rigOf(lever()).source, 0, advice.keys));
}

void TestFilters::whatStepsAsk() {
    RigFile rig = rigOf(shippedRig("full_cockpit.toml"));
    const Aircraft& aircraft = *twinJetFolder().aircraft;
    const std::vector<BenchControl> controls = *benchControlsOf(rig, aircraft.signals);
    std::vector<const Flow*> flows;
    Duration shortest = kForever;
    for (const Flow& flow : twinJetFolder().flows) {
        flows.push_back(&flow);
        for (const Step& step : flow.steps)
            if (step.within > Duration{})
                shortest = std::min(shortest, step.within);
    }
    const std::vector<EvidenceRecord> none;
    const std::vector<Reach> reaches = reachesOf(rig, aircraft.signals, aircraft.controls.size());
    const std::vector<StepDemand> demands = stepDemandsOf(controls, reaches, {aircraft, flows, none, aircraft.seats});
    QCOMPARE(demands.size(), controls.size());
    bool hasBand = false;
    for (const BenchControl& control : controls) {
        const StepDemand& demand = demands[control.index];
        QVERIFY(demand.delay <= kMostFilterDelay && demand.delay >= std::min(shortest / 10, kMostFilterDelay));
        QCOMPARE(demand.band.has_value(), !demand.bandOf.isEmpty());
        if (control.wiring == "contact" || control.wiring == "selector")
            QVERIFY(!demand.band);
        hasBand = hasBand || demand.band.has_value();
    }
    QVERIFY(hasBand);
    // By hand: 'breakaway thrust' is 8 % either side, of a lever of 0 to 100 % over the counts of its range.
    const auto find = [&](const std::string& signal) {
        return *std::find_if(controls.begin(), controls.end(), [&](const BenchControl& control) {
            return control.fingerprint.signals.front() == signal;
        });
    };
    const BenchControl thrust = find("thrust_lever_1");
    const StepDemand& demand = demands[thrust.index];
    const Reach& reach = reaches[indexOf(twinJetSignal("thrust_lever_1"))];
    QVERIFY(demand.band && *demand.band * reach.perCount <= 16.0 + 1e-6);
    // One step, alone.
    std::vector<ConditionProblem> problems;
    const auto width = [&](const std::string& text) {
        const std::optional<Condition> condition = Condition::compile(text, aircraft.scope(), problems);
        if (!condition)
            qFatal("%s", problems.front().message.c_str());
        return narrowestJudged(*condition, twinJetSignal("thrust_lever_1"), reaches, aircraft.signals);
    };
    QVERIFY(std::fabs(*width("thrust_lever_1 > 30 % and thrust_lever_1 < 45 %") - 15) < 0.01);
    QVERIFY(std::fabs(*width("moved(thrust_lever_1, 4 %)") - 4) < 0.01);
    QVERIFY(std::fabs(*width("abs(thrust_lever_1 - thrust_lever_2) < 5 %") - 10 / std::sqrt(2.0)) < 0.02);
    QVERIFY(!width("parking_brake"));
}

QTEST_APPLESS_MAIN(TestFilters)
#include "test_filters.moc"
