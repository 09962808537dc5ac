// The bench's commands, live, on a device in a real kernel whose truth is known: see README.md here.

#include <QJsonArray>
#include <QJsonDocument>
#include <QJsonObject>
#include <QTemporaryDir>
#include <QtTest>

#include <algorithm>
#include <cmath>
#include <numeric>

#include "bench/generated.h"
#include "bench/generatedswitch.h"
#include "guestrun.h"

using namespace flowhand;
using namespace flowhand::test;

namespace {

constexpr int kMostSeconds = 360; // half a minute of work, on a computer with much else to do

const QByteArray kAircraft = R"(format = 1
title = "Three controls"
engines = 1
seats = ["pilot"]

[[control]]
name = "flap_lever"
label = "Flap lever"
panel = "FLAP"
area = "pedestal"
kind = "gated lever"
positions = ["up", "4", "12", "22", "34"]

[[control]]
name = "level_selector"
label = "Level selector"
panel = "LEVEL"
area = "overhead"
kind = "selector"
positions = ["off", "1", "2", "3", "4", "5"]

[[control]]
name = "latch"
label = "Latch"
panel = "LATCH"
area = "side"
kind = "switch"

[[control]]
name = "reply_button"
label = "Reply"
panel = "REPLY"
area = "yoke"
kind = "button"
)";

/// The gates' counts are guesses of a builder; calibrating finds the true ones.
const QByteArray kRig = R"(format = 1
title = "Lever, rotary switch, micro switch"

[[device]]
name = "unit"
id = "1209:F160"

[[control]]
name = "Lever"
signal = "flap_lever"
wiring = "gates"
input = "X"
band = 60
gates = [
    { position = "up", at = 310 },
    { position = "4", at = 1120 },
    { position = "12", at = 1985 },
    { position = "22", at = 2890 },
    { position = "34", at = 3740 },
]

[[control]]
name = "Rotary switch"
signal = "level_selector"
wiring = "selector"
contacts = [
    { input = "button 1", value = "off" },
    { input = "button 2", value = "1" },
    { input = "button 3", value = "2" },
    { input = "button 4", value = "3" },
    { input = "button 5", value = "4" },
    { input = "button 6", value = "5" },
]

[[control]]
name = "Micro switch"
signal = "latch"
wiring = "contact"
input = "button 7"
)";

/// A joystick with one axis of 12 bits in 16, seven buttons and a bit of padding.
const QString kPlug = "plug unit 1209:F160 usb-0000:00:14.0-3/input0 "
                      "05010904A1010930150026FF0F751095018102050919012907150025017501950781027501950181"
                      "03C0\n";

// What is true of the controls. Counts of the converter, seconds.
const std::vector<double> kGates = {0.0, 0.22, 0.45, 0.7, 1.0}; // share of the travel
constexpr double kNoise = 1.2;
constexpr double kBacklash = 20.0;
constexpr std::size_t kPositions = 6;
constexpr std::size_t kMicroSwitch = 6; // the contact behind the positions'
constexpr int kPresses = 8;
constexpr double kBetweenPositions = 0.08;                     // no contact is closed
constexpr Duration kPutThere = std::chrono::milliseconds(100); // the rotary switch, bounces and all

// How far what was measured may be from it.
constexpr double kPlaceWithin = 2.0;    // a thousandth of the travel is 3.3
constexpr double kBacklashWithin = 3.0; // the difference of two places
constexpr double kNoiseWithin = 0.15;
/// A report is late by what the kernel and the program need for it.
constexpr double kBounceWithinMs = 0.5;
constexpr double kLongestBounceWithinMs = 2.0;
constexpr double kBetweenWithinMs = 10.0; // the contacts bounce at both ends of it
constexpr double kIntervalWithinMs = 0.5;

/// A pair of hands on all three controls, at the same time. The lever has been put to its low end, the rotary switch
/// to its first position.
struct Hands {
    explicit Hands(unsigned seed)
        : lever({.noise = kNoise, .backlash = kBacklash}, seed),
          contacts(kPositions + 1, {.bounce = 0.0015, .rate = 1000.0}, seed) {
        lever.moveTo(0.05, 0.15).moveTo(0.0, 0.15).hold(0.5);
        contacts.set(0, true).wait(0.5);
    }
    void turnThrough() {
        for (std::size_t i = 0; i + 1 < kPositions; ++i)
            contacts.turn(i, i + 1, kBetweenPositions, 0.0).wait(0.15);
        for (std::size_t i = kPositions - 1; i > 0; --i)
            contacts.turn(i, i - 1, kBetweenPositions, 0.0).wait(0.15);
    }
    void press(int times, double seconds) {
        for (int i = 0; i < times; ++i)
            contacts.press(kMicroSwitch, seconds);
    }

    GeneratedAxis lever;
    GeneratedSwitch contacts;
};

QString instruction(Time time, std::int64_t raw, unsigned buttons) {
    return QString::asprintf("at %lld unit %02X%02X%02X\n",
                             static_cast<long long>(std::chrono::floor<std::chrono::microseconds>(time).count()),
                             static_cast<unsigned>(raw & 0xFF), static_cast<unsigned>(raw >> 8), buttons);
}

/// The device reports at the lever's pace, and at once when a contact changes.
QString reportsOf(const Hands& hands) {
    const std::vector<RawChange> lever = hands.lever.series().points;
    const std::vector<Series> contacts = hands.contacts.series();
    const std::vector<RawChange>& ticks = contacts.front().points;
    QString text;
    unsigned buttons = 1; // the first position; that it was put there is not shown
    std::size_t at = 0;
    for (std::size_t tick = 0; tick < ticks.size(); ++tick) {
        for (; at < lever.size() && lever[at].time <= ticks[tick].time; ++at)
            text += instruction(lever[at].time, lever[at].raw, buttons);
        if (ticks[tick].time < kPutThere)
            continue;
        unsigned now = 0;
        for (std::size_t i = 0; i < contacts.size(); ++i)
            now |= contacts[i].points[tick].raw != 0 ? 1u << i : 0u;
        if (now != buttons && at > 0)
            text += instruction(ticks[tick].time, lever[at - 1].raw, now);
        buttons = now;
    }
    for (; at < lever.size(); ++at)
        text += instruction(lever[at].time, lever[at].raw, buttons);
    return text;
}

/// Milliseconds that the micro switch bounced at each of its changes, as they were sent.
std::vector<double> bouncesOf(const Hands& hands) {
    std::vector<double> bounces;
    const std::vector<RawChange> points = hands.contacts.series()[kMicroSwitch].points;
    Time begin{}, last{};
    for (std::size_t i = 1; i < points.size(); ++i) {
        if (points[i].raw == points[i - 1].raw)
            continue;
        if (bounces.empty() || points[i].time - last > std::chrono::milliseconds(100)) {
            bounces.push_back(0.0);
            begin = points[i].time;
        }
        last = points[i].time;
        bounces.back() = 1000.0 * seconds(last - begin);
    }
    return bounces;
}

bool isNear(double found, double truth, double within) {
    return std::fabs(found - truth) <= within;
}

} // namespace

/// QVERIFY, with what was found.
#define IS_NEAR(found, truth, within)                                                                                  \
    QVERIFY2(isNear(found, truth, within),                                                                             \
             qPrintable(QString("%1 was found, %2 is true, %3 allowed").arg(found).arg(truth).arg(within)))

class TestProvenRig : public QObject {
    Q_OBJECT

private Q_SLOTS:
    void initTestCase();
    void theLeverIsCalibrated();
    void noHealthyControlIsBlamed_data();
    void noHealthyControlIsBlamed();
    void theLeverIsMeasured();
    void thePaceIsMeasured();
    void theRotarySwitchIsMeasured();
    void theMicroSwitchIsMeasured();
    void everyControlIsConfirmed();

private:
    void writeScript(const QString& progress);
    [[nodiscard]] QJsonObject line(const char* key, const QString& value, const char* with) const;
    [[nodiscard]] QJsonObject health(const QString& control) const { return line("control", control, "verdict"); }

    QTemporaryDir m_folder;
    std::vector<double> m_bounces;
    QString m_story;
    QList<QJsonObject> m_lines;
};

/// Who moves what when: each command says what it wants, and it is done.
void TestProvenRig::writeScript(const QString& progress) {
    QString script = kPlug;
    const auto stage = [&](const QString& asked, const Hands& hands) {
        // The report has the device hear that the command before has closed it; the next one opens it in 50 ms.
        script += "sync -50000 " + progress + ' ' + asked + "\nsend unit 860101\nopen unit\n" + reportsOf(hands);
    };
    Hands calibrating(1);
    calibrating.lever.visit(kGates, 3, 0.8);
    stage("Put it into each gate", calibrating);

    Hands working(2);
    working.turnThrough();
    working.press(kPresses, 0.2);
    working.lever.hold(10).sweep(0, 1, 3).hold(0.8).sweep(1, 0, 3).hold(0.8).visit(kGates, 2, 0.8);
    m_bounces = bouncesOf(working);
    stage("Leave all of it alone", working);

    Hands moving(3), turning(4), pressing(5);
    moving.lever.visit(kGates, 1, 0.8);
    stage("\"control\":\"Lever\",\"ask\"", moving);
    turning.turnThrough();
    stage("\"control\":\"Rotary switch\",\"ask\"", turning);
    pressing.press(2, 0.7);
    stage("\"control\":\"Micro switch\",\"ask\"", pressing);

    QFile file(m_folder.filePath("script"));
    QVERIFY(file.open(QIODevice::WriteOnly) && file.write(script.toUtf8()) > 0);
}

void TestProvenRig::initTestCase() {
    SKIP_WITHOUT_GUEST();
    QFile rig(m_folder.filePath("rig.toml")), aircraft(m_folder.filePath("aircraft.toml"));
    QVERIFY(rig.open(QIODevice::WriteOnly) && rig.write(kRig) == kRig.size());
    QVERIFY(aircraft.open(QIODevice::WriteOnly) && aircraft.write(kAircraft) == kAircraft.size());
    rig.close();
    aircraft.close();
    writeScript(m_folder.filePath("progress"));

    const guest::Outcome outcome = guest::run(
        kMostSeconds, {"--own-time", "--keep", m_folder.path()},
        {KERNEL_FOLDER "/prove", FLOWHAND, VIRTUALDEVICES, m_folder.filePath("script"), m_folder.path(), "Lever"});
    SKIP_WITHOUT_KERNEL(outcome);
    QFile progress(m_folder.filePath("progress"));
    if (progress.open(QIODevice::ReadOnly))
        m_story = QString::fromUtf8(progress.readAll());
    qInfo().noquote() << m_story; // a failed check would cut it
    QVERIFY2(outcome.status == 0, qPrintable(outcome.errors + m_story));
    for (const QString& said : m_story.split('\n', Qt::SkipEmptyParts))
        if (said.startsWith('{'))
            m_lines << QJsonDocument::fromJson(said.toUtf8()).object();
}

/// The first of the commands' lines where `key` is `value` and `with` is there.
QJsonObject TestProvenRig::line(const char* key, const QString& value, const char* with) const {
    for (const QJsonObject& line : m_lines)
        if (line[key] == value && line.contains(with))
            return line;
    return {};
}

/// Ends are come to from one side only, by which half of the backlash is missing at either.
void TestProvenRig::theLeverIsCalibrated() {
    QVERIFY(m_story.contains("calibrate ended 0"));
    const QJsonObject axis =
        line("control", "Lever", "saved")["result"].toObject()["axes"].toArray().first().toObject();
    const GeneratedAxis truth(AxisTruth{});
    IS_NEAR(axis["low"].toObject()["at"].toDouble(), truth.counts(0.0) + kBacklash / 2, kPlaceWithin);
    IS_NEAR(axis["high"].toObject()["at"].toDouble(), truth.counts(1.0) - kBacklash / 2, kPlaceWithin);
    IS_NEAR(axis["noise"].toDouble(), std::hypot(kNoise, 1 / std::sqrt(12.0)), kNoiseWithin); // with that of rounding
    const QJsonArray gates = axis["gates"].toArray();
    QCOMPARE(gates.size(), int(kGates.size()));
    for (int i = 1; i + 1 < gates.size(); ++i) {
        const QJsonObject gate = gates[i].toObject();
        IS_NEAR(gate["at"].toDouble(), truth.counts(kGates[std::size_t(i)]), kPlaceWithin);
        IS_NEAR(gate["backlash"].toDouble(), kBacklash, kBacklashWithin);
    }
}

void TestProvenRig::noHealthyControlIsBlamed_data() {
    QTest::addColumn<QString>("control");
    for (const char* control : {"Lever", "Rotary switch", "Micro switch"})
        QTest::newRow(control) << QString(control);
}

void TestProvenRig::noHealthyControlIsBlamed() {
    QFETCH(QString, control);
    const QJsonObject found = health(control);
    QVERIFY2(found["verdict"] == "good", QJsonDocument(found).toJson().constData());
}

void TestProvenRig::theLeverIsMeasured() {
    const QJsonObject axis = health("Lever")["result"].toObject()["axes"].toObject()["X"].toObject();
    IS_NEAR(axis["sigma"].toDouble(), std::hypot(kNoise, 1 / std::sqrt(12.0)), kNoiseWithin);
    IS_NEAR(axis["hysteresis"].toDouble(), kBacklash, kBacklashWithin);
    QVERIFY(axis["gaps"].toArray().isEmpty());
    QCOMPARE(axis["spikes"].toInt(-1), 0);
}

/// The reports between, of contacts that change, do not move the middle one of the intervals.
void TestProvenRig::thePaceIsMeasured() {
    const QJsonObject found = line("device", "unit", "verdict")["result"].toObject();
    QVERIFY(found["paced"].toBool());
    IS_NEAR(found["interval_ms"].toDouble(), 1000.0 / AxisTruth{}.rate, kIntervalWithinMs);
}

void TestProvenRig::theRotarySwitchIsMeasured() {
    const QJsonObject found = health("Rotary switch")["result"].toObject()["switch"].toObject();
    QCOMPARE(found["changes"].toInt(), int(2 * (kPositions - 1)));
    IS_NEAR(found["usual_none_ms"].toDouble(), 1000.0 * kBetweenPositions, kBetweenWithinMs);
    QCOMPARE(found["usual_both_ms"].toDouble(-1.0), 0.0);
    QVERIFY(found["never_closed"].toArray().isEmpty());
}

void TestProvenRig::theMicroSwitchIsMeasured() {
    const QJsonObject found = health("Micro switch")["result"].toObject()["contacts"].toObject()["button 7"].toObject();
    QCOMPARE(m_bounces.size(), std::size_t(2 * kPresses));
    QCOMPARE(found["changes"].toInt(), 2 * kPresses);
    const double mean = std::accumulate(m_bounces.begin(), m_bounces.end(), 0.0) / double(m_bounces.size());
    const double longest = *std::max_element(m_bounces.begin(), m_bounces.end());
    QVERIFY2(mean > 0.3 && longest > 2.0, "the hands made a switch that does not bounce");
    IS_NEAR(found["mean_bounce_ms"].toDouble(), mean, kBounceWithinMs);
    IS_NEAR(found["longest_bounce_ms"].toDouble(), longest, kLongestBounceWithinMs);
    QCOMPARE(found["chatter"].toInt(-1), 0);
}

void TestProvenRig::everyControlIsConfirmed() {
    QVERIFY(m_story.contains("walk ended 0"));
    for (const char* control : {"Lever", "Rotary switch", "Micro switch"})
        QVERIFY2(line("control", control, "confirmed")["confirmed"].toBool(), control);
    QFile evidence(m_folder.filePath("rig.evidence.jsonl"));
    QVERIFY(evidence.open(QIODevice::ReadOnly));
    QCOMPARE(evidence.readAll().count('\n'), 1 + 3 + 3); // calibrated, measured, walked
}

QTEST_GUILESS_MAIN(TestProvenRig)
#include "test_provenrig.moc"
