#include <QtTest>

#include <map>
#include <set>

#include "bench/axishealth.h"
#include "bench/contacthealth.h"
#include "bench/devicehealth.h"
#include "bench/filteradvice.h"
#include "bench/measured.h"
#include "bench/statistics.h"
#include "bench/track.h"
#include "generated.h"
#include "generatedswitch.h"

using namespace flowhand;
using namespace flowhand::test;
using namespace std::chrono_literals;

namespace {

bool isNear(double value, double wanted, double tolerance) {
    if (std::fabs(value - wanted) <= tolerance)
        return true;
    qWarning("is %g, wanted %g +- %g", value, wanted, tolerance);
    return false;
}

/// What a builder is asked to do with an axis that is measured.
GeneratedAxis worked(const AxisTruth& truth, unsigned seed) {
    return GeneratedAxis(truth, seed).hold(11).sweep(0, 1, 6).hold(1).sweep(1, 0, 6).hold(1).visit({0.0, 1.0}, 2);
}

std::set<std::string> alarmsOf(const std::vector<Finding>& findings) {
    std::set<std::string> alarms;
    for (const Finding& finding : findings)
        if (finding.verdict >= Soundness::Caution)
            alarms.insert(finding.check);
    return alarms;
}

// --- generated controls with a seeded fault: what was found ---

using Alarms = std::set<std::string>;

AxisTruth healthyAxis(std::mt19937& random) {
    const auto between = [&](double low, double high) {
        return std::uniform_real_distribution<double>(low, high)(random);
    };
    AxisTruth truth;
    truth.highest = std::vector<std::int64_t>{1023, 4095, 4095, 65535}[random() % 4];
    const double full = double(truth.highest);
    truth.low = full * between(0.02, 0.3);
    truth.high = full * between(0.6, 0.98);
    truth.noise = std::max(0.25, between(0.0001, 0.0006) * full);
    truth.backlash = between(0, 0.003) * (truth.high - truth.low);
    truth.rate = std::vector<double>{60, 100, 125, 250, 500}[random() % 5];
    truth.jitter = between(0, 0.1);
    return truth;
}

const std::vector<double> kGates = {0.0, 0.25, 0.5, 0.75, 1.0};

Alarms axisAlarms(const std::string& fault, unsigned seed) {
    std::mt19937 random(seed * 7919 + 17);
    AxisTruth truth = healthyAxis(random);
    const double travel = truth.high - truth.low;
    const double size = std::uniform_real_distribution<double>(1.0, 3.0)(random); // of the fault
    const double middle = truth.low + travel * std::uniform_real_distribution<double>(0.2, 0.8)(random);
    AxisHealthAsk ask;
    if (fault == "noise")
        truth.noise = size * 0.0025 * travel;
    if (fault == "drift")
        truth.drift = size * 0.0012 * travel;
    if (fault == "gap")
        truth.track = [=](double counts) {
            return std::fabs(counts - middle) < size * 0.015 * travel ? middle - size * 0.015 * travel : counts;
        };
    if (fault == "coarse")
        truth.track = [=, step = double(truth.highest + 1) / 128](double counts) {
            return std::floor(counts / step) * step;
        };
    if (fault == "short arc")
        truth.high = truth.low + 300 * truth.noise;
    if (fault == "open input") {
        truth.noise = 0.4 * double(truth.highest);
        return alarmsOf(measureAxis(GeneratedAxis(truth, seed).hold(10).series(), ask).findings);
    }
    if (fault == "stuck")
        truth.noise = 0, truth.high = truth.low, truth.backlash = 0;
    if (fault == "one bit") {
        truth.highest = 1;
        truth.low = 0, truth.high = 1, truth.noise = 0, truth.backlash = 0;
    }
    if (fault == "coarse")
        truth.noise = 0.0;
    GeneratedAxis axis = worked(truth, seed);
    if (fault == "spikes")
        for (int i = 0; i < 3; ++i)
            axis.hold(0.4)
                .spike(i % 2 == 0 ? 0.0 : double(truth.highest), truth.rate > 200 ? 3 : 1)
                .hold(0.4)
                .sweep(0, 0.2 + 0.2 * i, 1)
                .hold(0.6)
                .moveTo(0, 0.5);
    if (fault == "backlash" || fault == "gates") {
        truth.backlash = fault == "gates" ? truth.backlash : size * 0.015 * travel;
        axis = worked(truth, seed).visit(kGates, 2);
        ask.gateCount = kGates.size();
    }
    if (fault == "return" || fault == "centre") {
        axis.returnsToCentre(3, 0.5, fault == "centre" ? 0.002 : size * 0.012);
        ask.hasCentre = true;
    }
    return alarmsOf(measureAxis(axis.series(), ask).findings);
}

Alarms contactAlarms(const std::string& fault, unsigned seed) {
    std::mt19937 random(seed + 99);
    ContactTruth truth;
    truth.rate = std::vector<double>{125, 250, 1000}[random() % 3];
    if (fault == "bounce")
        truth.bounce = 0.015, truth.rate = 1000;
    GeneratedSwitch contact(1, truth, seed);
    contact.wait(0.5);
    for (int i = 0; i < 10 && fault != "stuck"; ++i)
        contact.press(0, 0.08 + 0.04 * (i % 4));
    if (fault == "chatter")
        for (int i = 0; i < 2; ++i)
            contact.set(0, true).wait(0.3).flicker(0, 2.5 / truth.rate).set(0, false).wait(0.3);
    contact.wait(0.5);
    return alarmsOf(
        measureContact(edgesOf(contact.series().front()), {true, false, fromSeconds(1 / truth.rate)}).findings);
}

Alarms switchAlarms(const std::string& fault, unsigned seed) {
    std::mt19937 random(seed + 7);
    const std::size_t count = 3 + random() % 4;
    GeneratedSwitch rotary(count, {}, seed);
    rotary.set(0, true).wait(1);
    const bool makesFirst = random() % 2 == 0;
    rotary.turnThrough(0.03 + 0.02 * double(random() % 5), makesFirst ? 0.02 : 0.0);
    if (fault == "both on")
        rotary.turn(0, 1, 0, 0.8).turn(1, 0, 0.05, 0);
    if (fault == "none on")
        rotary.turn(0, 1, 0.9, 0).turn(1, 0, 0.05, 0);
    rotary.wait(0.5);
    std::vector<ContactEdges> contacts;
    for (const Series& series : rotary.series())
        contacts.push_back(edgesOf(series));
    if (fault == "position")
        contacts.back().times.clear();
    return alarmsOf(measureSwitch(contacts, {}).findings);
}

Alarms deviceAlarms(const std::string& fault, unsigned seed) {
    std::mt19937 random(seed);
    AxisTruth truth;
    truth.rate = std::vector<double>{60, 125, 250, 1000}[random() % 4];
    truth.jitter = 0.15;
    if (fault == "slow")
        truth.rate = 6;
    if (fault == "jitter")
        truth.rate = 100, truth.jitter = 0.95;
    GeneratedAxis axis = worked(truth, seed);
    DeviceSeries device = axis.device();
    if (fault == "dropouts")
        device.reports.erase(std::remove_if(device.reports.begin(), device.reports.end(),
                                            [&](Time time) {
                                                return time > 3s && time < 3s + 120ms + 10ms * (seed % 20);
                                            }),
                             device.reports.end());
    if (fault == "jitter") // as a busy hub does: some reports wait for the next but one
        for (std::size_t i = 3; i + 3 < device.reports.size(); i += 4)
            device.reports[i] = device.reports[i + 1] + 8ms, device.reports[i + 1] = device.reports[i] + 1ms;
    std::sort(device.reports.begin(), device.reports.end());
    return alarmsOf(measureDevice(device).findings);
}

struct Seeded {
    const char* fault;
    Alarms (*measure)(const std::string&, unsigned);
    const char* check; ///< that has to find it; null: nothing may be found
};

const std::vector<Seeded> kSeeded = {{"healthy", axisAlarms, nullptr},         {"gates", axisAlarms, nullptr},
                                     {"centre", axisAlarms, nullptr},          {"contact", contactAlarms, nullptr},
                                     {"rotary switch", switchAlarms, nullptr}, {"device", deviceAlarms, nullptr},
                                     {"noise", axisAlarms, "noise"},           {"open input", axisAlarms, "noise"},
                                     {"stuck", axisAlarms, "movement"},        {"one bit", axisAlarms, "movement"},
                                     {"short arc", axisAlarms, "range"},       {"drift", axisAlarms, "drift"},
                                     {"coarse", axisAlarms, "dead codes"},     {"gap", axisAlarms, "jumps"},
                                     {"spikes", axisAlarms, "jumps"},          {"backlash", axisAlarms, "hysteresis"},
                                     {"return", axisAlarms, "return"},         {"bounce", contactAlarms, "bounce"},
                                     {"chatter", contactAlarms, "chatter"},    {"stuck", contactAlarms, "stuck"},
                                     {"both on", switchAlarms, "both on"},     {"none on", switchAlarms, "none on"},
                                     {"position", switchAlarms, "positions"},  {"slow", deviceAlarms, "reports"},
                                     {"jitter", deviceAlarms, "jitter"},       {"dropouts", deviceAlarms, "dropouts"}};
constexpr unsigned kEach = 10;

} // namespace

class TestHealth : public QObject {
    Q_OBJECT

private Q_SLOTS:
    void evidenceIsOfNoLanguage();
    void confusion_data();
    void confusion();
    void theTable();
    void figuresOfAKnownAxis();
    void hysteresisAndLinearityInKnownTerms();
    void deadCodesOfASlowSweep();
    void aThirtyTwoBitAxis();
    void lostReportsAreNoJumps();
    void bounceHistogram();
    void slowReportsHideBounce();
    void breakBeforeMakeIsNoFault();
    void anOpenPositionIsNoFault();
    void onlyChangesSayNothingOfGaps();

private:
    std::map<std::string, std::map<std::string, int>> m_table;
};

void TestHealth::evidenceIsOfNoLanguage() {
    ControlHealth health;
    health.axes.emplace_back("X", measureAxis(worked({}, 1).series(), {}));
    const std::vector<Finding>& found = health.axes.front().second.findings;
    const std::vector<Finding> kept = findingsIn(healthJson(health, FilterAdvice{}, {}, FindingsAs::Record));
    const std::vector<Finding> printed = findingsIn(healthJson(health, FilterAdvice{}, {}, FindingsAs::English));
    QVERIFY(found.size() > 3);
    QCOMPARE(kept.size(), found.size());
    for (std::size_t i = 0; i < found.size(); ++i) {
        QVERIFY(found[i].text.isPattern());
        QVERIFY(kept[i].text == phrase("{1}: {2}").with("X", found[i].text));
        QVERIFY(kept[i].reason == found[i].reason && kept[i].remedy == found[i].remedy);
        QVERIFY(!printed[i].reason.isPattern());
        QCOMPARE(printed[i].text.english(), "X: " + found[i].text.english());
    }
}

void TestHealth::confusion_data() {
    QTest::addColumn<int>("row");
    for (std::size_t i = 0; i < kSeeded.size(); ++i)
        QTest::addRow("%s", kSeeded[i].fault) << int(i);
}

void TestHealth::confusion() {
    QFETCH(int, row);
    const Seeded& seeded = kSeeded[std::size_t(row)];
    const std::string name = std::to_string(row + 10) + " " + seeded.fault;
    for (unsigned seed = 1; seed <= kEach; ++seed) {
        const Alarms alarms = seeded.measure(seeded.fault, seed);
        for (const std::string& alarm : alarms)
            ++m_table[name][alarm];
        m_table[name]["any"] += alarms.empty() ? 0 : 1;
    }
    if (seeded.check)
        QCOMPARE(m_table[name][seeded.check], int(kEach));
    else
        QCOMPARE(m_table[name]["any"], 0);
}

/// Printed, for README.md: rows are what was seeded, columns what was found.
void TestHealth::theTable() {
    QVERIFY(kSeeded.size() * kEach >= 200);
    for (const auto& [fault, found] : m_table) {
        QString line = QString::fromStdString(fault).leftJustified(18);
        for (const auto& [check, count] : found)
            line += QString("  %1 %2").arg(QString::fromStdString(check)).arg(count);
        qInfo().noquote() << line;
    }
}

void TestHealth::figuresOfAKnownAxis() {
    AxisTruth truth;
    truth.noise = 2.0;
    const AxisHealth health = measureAxis(worked(truth, 5).series(), {});
    QVERIFY(isNear(health.sigma, std::hypot(2.0, 0.2887), 0.05)); // with the rounding of 1 / sqrt(12)
    // 12 bits and 2 LSB: 11.00 effective and 8.28 noise-free bits; rounding takes 0.015 more.
    QVERIFY(isNear(health.effectiveBits, 11.00, 0.05));
    QVERIFY(isNear(health.noiseFreeBits, 8.28, 0.05));
    QVERIFY(isNear(health.peakToPeak, 6.6 * 2.0, 1.6)); // +-3.3 sigma holds all but 0.1 %
    QVERIFY(isNear(health.travel, 3340, 16));
    QVERIFY(isNear(health.share, 3340.0 / 4096, 0.01));
    QVERIFY(health.drift && isNear(*health.drift, 0, 1));
    QCOMPARE(health.quantum, std::int64_t(1));
    // Fast moves of 0.5 s: 1.5 travels / 0.5 s at the steepest.
    QVERIFY(health.fastest < 3.1 * 3340 && health.fastest > 500);
    truth.drift = 3.0;
    QVERIFY(isNear(*measureAxis(GeneratedAxis(truth).hold(20).sweep(0, 1, 2).hold(1).series(), {}).drift, 3 * 16, 3));
}

void TestHealth::hysteresisAndLinearityInKnownTerms() {
    AxisTruth truth;
    truth.backlash = 60;
    const std::vector<double> shares = {0.0, 0.31, 0.56, 0.79, 1.0};
    AxisHealthAsk ask;
    ask.values = {0, 15, 30, 45, 60};
    GeneratedAxis axis = GeneratedAxis(truth).hold(1).visit(shares, 2);
    const AxisHealth health = measureAxis(axis.series(), ask);
    QVERIFY(health.hysteresis && isNear(*health.hysteresis, 60, 2));
    std::vector<double> counts;
    for (const double share : shares)
        counts.push_back(axis.counts(share));
    // The ends are come to from one side only, half the play away from their middle.
    QVERIFY(health.linearity && isNear(*health.linearity, 100 * closestLine(ask.values, counts).worst / 4096, 1.0));
    QCOMPARE(findingOf(health.findings, "hysteresis")->verdict, Soundness::Caution); // 1.8 % of the travel
    QCOMPARE(findingOf(measureAxis(worked({}, 1).series(), ask).findings, "hysteresis")->verdict,
             Soundness::Unmeasured);
}

void TestHealth::deadCodesOfASlowSweep() {
    AxisTruth truth;
    truth.highest = 1023;
    truth.low = 100;
    truth.high = 600;
    truth.noise = 0.3;
    truth.rate = 1000;
    QCOMPARE(findingOf(measureAxis(worked(truth, 1).series(), {}).findings, "dead codes")->verdict, Soundness::Good);
    truth.track = [](double counts) { // every eighth code never comes: the next takes its place
        return std::fmod(std::floor(counts + 0.5), 8) == 3 ? std::floor(counts + 0.5) + 1 : counts;
    };
    truth.noise = 0;
    const AxisHealth health = measureAxis(worked(truth, 1).series(), {});
    QVERIFY(health.deadCodes && isNear(*health.deadCodes, 1.0 / 8, 0.01));
    QCOMPARE(findingOf(health.findings, "dead codes")->verdict, Soundness::Caution);
    QCOMPARE(quantumOf({0, 16, 32, 48, 80, 96, 128, 160, 320}), std::int64_t(16));
    QCOMPARE(quantumOf({3, 4, 5, 6, 7, 8, 9, 10}), std::int64_t(1));
    QCOMPARE(quantumOf({}), std::int64_t(1));
}

void TestHealth::aThirtyTwoBitAxis() {
    AxisTruth truth;
    truth.highest = 4294967295;
    truth.low = 4e8;
    truth.high = 3.9e9;
    truth.noise = 1e6;
    const AxisHealth health = measureAxis(worked(truth, 3).series(), {});
    QVERIFY(alarmsOf(health.findings).empty());
    QVERIFY(isNear(health.effectiveBits, std::log2(4294967296.0 / 1e6), 0.05));
}

void TestHealth::lostReportsAreNoJumps() {
    AxisTruth truth;
    truth.lost = 0.05;
    const AxisHealth health = measureAxis(worked(truth, 4).series(), {});
    QCOMPARE(findingOf(health.findings, "jumps")->verdict, Soundness::Good);
}

void TestHealth::bounceHistogram() {
    ContactEdges edges{"button 1", false, {}, 0s, 10s};
    const auto change = [&](Time time, std::initializer_list<Duration> bounces) {
        edges.times.push_back(time);
        for (const Duration bounce : bounces)
            edges.times.push_back(time + bounce);
    };
    change(1s, {200us, 400us});
    change(2s, {1ms, 6200us}); // the longest published
    change(3s, {});
    change(4s, {5ms, 12ms});
    const ContactHealth health = measureContact(edges, {});
    QCOMPARE(health.changes, std::size_t(4));
    QCOMPARE(health.longestBounce, Duration(12ms));
    QCOMPARE(health.meanBounce, Duration(4650us));
    const std::array<std::size_t, 9> wanted = {2, 0, 0, 0, 0, 1, 0, 1, 0};
    QVERIFY(health.histogram == wanted);
    QCOMPARE(findingOf(health.findings, "bounce")->verdict, Soundness::Caution);
    QCOMPARE(findingOf(health.findings, "chatter")->verdict, Soundness::Good);
    QCOMPARE(health.shortestState, Duration(993'800us));
    // The published mean of 1,557 us and maximum of 6,200 us are good.
    edges.times = {1s, 1s + 500us, 1s + 1557us, 2s, 2s + 1ms, 2s + 6200us};
    QCOMPARE(findingOf(measureContact(edges, {}).findings, "bounce")->verdict, Soundness::Good);
}

void TestHealth::slowReportsHideBounce() {
    ContactHealthAsk ask;
    ask.interval = 8ms;
    const ContactHealth health = measureContact({"button 1", false, {1s, 2s, 3s}, 0s, 4s}, ask);
    QVERIFY(findingOf(health.findings, "bounce")->text.english().find("8 ms") != std::string::npos);
    QCOMPARE(measureContact({"button 1", true, {}, 0s, 4s}, {false, false, {}}).findings.front().verdict,
             Soundness::Unmeasured);
}

void TestHealth::breakBeforeMakeIsNoFault() {
    for (const double both : {0.0, 0.05}) {
        GeneratedSwitch rotary(4);
        rotary.set(0, true).wait(1).turnThrough(0.08, both);
        std::vector<ContactEdges> contacts;
        for (const Series& series : rotary.series())
            contacts.push_back(edgesOf(series));
        const SwitchHealth health = measureSwitch(contacts, {});
        QCOMPARE(health.changes, std::size_t(6));
        QVERIFY(alarmsOf(health.findings).empty());
        QVERIFY(isNear(seconds(health.usualNone), both > 0 ? 0.0 : 0.08, 0.006));
        QVERIFY(isNear(seconds(health.usualBoth), both, 0.006));
        QVERIFY(health.neverClosed.empty());
    }
}

void TestHealth::anOpenPositionIsNoFault() {
    GeneratedSwitch toggle(2);
    toggle.set(0, true).wait(1).turn(0, 1, 3.0, 0).turn(1, 0, 2.0, 0);
    std::vector<ContactEdges> contacts;
    for (const Series& series : toggle.series())
        contacts.push_back(edgesOf(series));
    SwitchHealthAsk ask;
    QVERIFY(!alarmsOf(measureSwitch(contacts, ask).findings).empty());
    ask.hasOpenPosition = true;
    QVERIFY(alarmsOf(measureSwitch(contacts, ask).findings).empty());
}

void TestHealth::onlyChangesSayNothingOfGaps() {
    DeviceSeries device;
    for (int i = 0; i < 200; ++i)
        device.reports.push_back(std::chrono::milliseconds(i * i * 3));
    QVERIFY(!device.isPaced());
    QCOMPARE(measureDevice(device).findings.front().verdict, Soundness::Unmeasured);
    QCOMPARE(measureDevice({}).findings.front().verdict, Soundness::Unmeasured);
}

QTEST_APPLESS_MAIN(TestHealth)
#include "test_health.moc"
