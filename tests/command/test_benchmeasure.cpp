// 'flowhand bench calibrate' and 'bench health' as a builder types them, on recordings of generated controls.

#include <fstream>
#include <sstream>

#include <QJsonArray>
#include <QJsonDocument>
#include <QJsonObject>
#include <QTemporaryDir>
#include <QtTest>

#include "base/textfile.h"
#include "bench/evidence.h"
#include "bench/generated.h"
#include "bench/generatedswitch.h"
#include "command/printed.h"
#include "device/recording.h"
#include "procedure/aircraftfile.h"

using namespace flowhand;
using namespace flowhand::test;
using namespace std::chrono_literals;

namespace {

/// A joystick with one axis of 12 bits in 16 and eight buttons.
const std::vector<std::uint8_t> kDescriptor = *parseHex(
    "05 01 09 04 A1 01 09 30 15 00 26 FF 0F 75 10 95 01 81 02 05 09 19 01 29 08 15 00 25 01 75 01 95 08 81 02 C0");

const std::string kRig = R"(format = 1
title = "Desk" # mine

[[device]]
name = "unit"
id = "1209:F101"

[[control]]
name = "Left lever"
signal = "thrust_lever_1"
wiring = "axis"
input = "X"
range = [4000, 50] # its pot is the other way round

[[control]]
signal = "autobrake"
wiring = "selector"
contacts = [
    { input = "button 1", value = "off" },
    { input = "button 2", value = "low" },
    { input = "button 3", value = "medium" },
]
)";

const std::string kGates = R"(format = 1
title = "Flaps"
[[device]]
name = "unit"
id = "1209:F101"
[[control]]
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
)";

void write(const QString& file, const std::string& text) {
    std::ofstream(file.toStdString(), std::ios::binary) << text;
}

std::string headOf(const std::string& device, std::optional<Time> started = std::nullopt) {
    Recording recording;
    recording.device = device;
    recording.started = started;
    recording.descriptor = kDescriptor;
    return recordingHead(recording);
}

/// What 'devices --record' would have written; the buttons are those of `buttons` at the same report.
std::string recordingOf(const Series& axis, const std::vector<Series>& buttons = {},
                        const std::string& head = headOf("1209:F101 Desk unit")) {
    std::string text = head;
    for (std::size_t i = 0; i < axis.points.size(); ++i) {
        const auto raw = static_cast<std::uint16_t>(axis.points[i].raw);
        std::uint8_t bits = 0;
        for (std::size_t b = 0; b < buttons.size(); ++b)
            if (!buttons[b].points.empty())
                bits |=
                    static_cast<std::uint8_t>(buttons[b].points[std::min(i, buttons[b].points.size() - 1)].raw << b);
        text += recordingLine(
            {axis.points[i].time, {static_cast<std::uint8_t>(raw & 0xFF), static_cast<std::uint8_t>(raw >> 8), bits}});
    }
    return text;
}

Series worked() {
    return GeneratedAxis({}).hold(11).sweep(0, 1, 6).hold(1).sweep(1, 0, 6).hold(1).visit({0.0, 1.0}, 3).series();
}

std::vector<QJsonValue> linesOf(const QString& text) {
    std::vector<QJsonValue> lines;
    for (const QString& line : text.split('\n', Qt::SkipEmptyParts))
        lines.push_back(QJsonDocument::fromJson(line.toUtf8()).object());
    return lines;
}

} // namespace

class TestBenchMeasure : public QObject {
    Q_OBJECT

private Q_SLOTS:
    void calibrationIsWrittenAndProven();
    void aDryRunWritesNothing();
    void gatesAreWritten();
    void valuesBendTheScaleBack();
    void valuesAtASpring();
    void repeatCheck_data();
    void repeatCheck();
    void repeatCheckOfGates();
    void healthIsToldAndKept();
    void filtersAreSaidAndWritten();
    void bothDevicesOfOneControl();
    void theSheetHasWhatWasMeasured();
    void aBadControlEndsOtherwise();
    void badInputIsAnError_data();
    void badInputIsAnError();

private:
    QTemporaryDir m_folder;
    QString file(const char* name) const { return m_folder.filePath(name); }
    std::vector<EvidenceRecord> evidence(const char* rig) const {
        Problems problems;
        auto records = readEvidence(evidenceFileOf(file(rig).toStdString()), problems);
        return problems.all().empty() ? *records : std::vector<EvidenceRecord>();
    }
    /// What the rig's first control says at a count.
    static double valueAt(const QString& rigFile, double count) {
        Problems problems;
        const auto aircraft = loadAircraft(PROCEDURES "/twin_jet/aircraft.toml", problems);
        const auto rig = parseRigFile(*readFile(rigFile.toStdString()), "rig.toml", aircraft->signals,
                                      aircraft->controls.size(), problems);
        Outputs outputs;
        rig->controls.front()->take(0, std::llround(count), Time{}, outputs);
        return outputs.back().value.number();
    }
    static ControlFingerprint fingerprint(const QString& rigFile) {
        Problems problems;
        const auto aircraft = loadAircraft(PROCEDURES "/twin_jet/aircraft.toml", problems);
        const auto rig = parseRigFile(*readFile(rigFile.toStdString()), "rig.toml", aircraft->signals,
                                      aircraft->controls.size(), problems);
        return fingerprintsOf(*rig, aircraft->signals)->front();
    }
};

void TestBenchMeasure::calibrationIsWrittenAndProven() {
    write(file("desk.toml"), kRig);
    write(file("lever.rec"), recordingOf(worked()));
    const Printed done = flowhandWith({"bench", "calibrate", "--rig", file("desk.toml"), "--recording",
                                       file("lever.rec"), "--json", "thrust_lever_1"});
    QVERIFY2(done.status == 0, qPrintable(done.err));
    const QJsonValue line = linesOf(done.out).front();
    QCOMPARE(line["control"].toString(), QString("Left lever"));
    QVERIFY(line["good"].toBool() && line["saved"].toBool());
    const QString source = QString::fromStdString(*readFile(file("desk.toml").toStdString()));
    // The truth is 380 to 3720; it stays inverted, and what a person wrote stays.
    QVERIFY2(source.contains(QRegularExpression("range = \\[37(19|20|21), (379|380|381)\\] # its pot")),
             qPrintable(source));
    QVERIFY(source.contains("title = \"Desk\" # mine"));
    QVERIFY(source.contains("\nnoise = 1.2"));
    const std::vector<EvidenceRecord> records = evidence("desk.toml");
    QCOMPARE(records.size(), std::size_t(1));
    const FoundEvidence found = findEvidence(records, kCalibrationEvidence, fingerprint(file("desk.toml")));
    QVERIFY(found.state == EvidenceState::Current);
    QVERIFY(found.record->isGood);
    QCOMPARE(found.record->raw.front().reports, std::uint64_t(worked().points.size()));
    QVERIFY(found.record->raw.front().changes.size() > 1000);
    write(file("desk.toml"),
          QString(source).replace("noise = 1.2", "end_band = 9\nnoise = 1.2").remove("\nend_band = 4").toStdString());
    QVERIFY(findEvidence(records, kCalibrationEvidence, fingerprint(file("desk.toml"))).state == EvidenceState::Stale);
}

void TestBenchMeasure::aDryRunWritesNothing() {
    write(file("dry.toml"), kRig);
    write(file("lever.rec"), recordingOf(worked()));
    const Printed done = flowhandWith(
        {"bench", "calibrate", "--rig", file("dry.toml"), "--recording", file("lever.rec"), "--dry-run", "Left lever"});
    QVERIFY2(done.status == 0, qPrintable(done.err));
    QVERIFY(done.out.contains("not written") && done.out.contains("range = "));
    QCOMPARE(*readFile(file("dry.toml").toStdString()), kRig);
    QVERIFY(evidence("dry.toml").empty());
}

void TestBenchMeasure::gatesAreWritten() {
    write(file("flaps.toml"), kGates);
    AxisTruth truth;
    truth.backlash = 30;
    GeneratedAxis axis(truth);
    axis.hold(1).visit({0.0, 0.22, 0.45, 0.7, 1.0}, 3);
    write(file("flaps.rec"), recordingOf(axis.series()));
    const Printed done = flowhandWith(
        {"bench", "calibrate", "--rig", file("flaps.toml"), "--recording", file("flaps.rec"), "--json", "flap_lever"});
    QVERIFY2(done.status == 0, qPrintable(done.err));
    const QJsonArray gates =
        linesOf(done.out).front()["result"]["axes"].toArray().first().toObject()["gates"].toArray();
    QCOMPARE(gates.size(), 5);
    QCOMPARE(gates[2].toObject()["position"].toString(), QString("12"));
    QVERIFY(std::fabs(gates[2].toObject()["at"].toDouble() - axis.counts(0.45)) < 4);
    QVERIFY(std::fabs(gates[2].toObject()["backlash"].toDouble() - 30) < 4);
    QVERIFY(findEvidence(evidence("flaps.toml"), kCalibrationEvidence, fingerprint(file("flaps.toml"))).state ==
            EvidenceState::Current);
}

void TestBenchMeasure::valuesBendTheScaleBack() {
    // A rod that turns the potentiometer unevenly, backwards: straight between its ends, 25 % would read 21 %.
    const std::vector<double> shares = {0.0, 0.31, 0.56, 0.79, 1.0};
    const GeneratedAxis axis = GeneratedAxis({}).hold(1).visit(shares, 3);
    write(file("rod.toml"), kRig);
    write(file("rod.rec"), recordingOf(axis.series()));
    const QStringList calibrate = {"bench",       "calibrate",     "--rig",  file("rod.toml"),
                                   "--recording", file("rod.rec"), "--json", "Left lever"};
    const Printed done = flowhandWith(calibrate + QStringList{"--values", "0 %,25 %, 50 %, 75 %,100 %"});
    QVERIFY2(done.status == 0, qPrintable(done.err));
    const QString source = QString::fromStdString(*readFile(file("rod.toml").toStdString()));
    QVERIFY2(source.contains("points = [") && !source.contains("\nrange"), qPrintable(source));
    for (std::size_t i = 0; i < shares.size(); ++i)
        QVERIFY(std::fabs(valueAt(file("rod.toml"), axis.counts(shares[4 - i])) - 25.0 * double(i)) < 0.2);
    QVERIFY(std::fabs(valueAt(file("rod.toml"), axis.counts(0.675)) - 37.5) < 0.2);
    const QJsonValue result = linesOf(done.out).front()["result"]["axes"][0];
    QCOMPARE(result["values"][1]["value"].toDouble(), 25.0);
    QVERIFY(result["linearity_percent"].toDouble() > 2);
    QVERIFY(findEvidence(evidence("rod.toml"), kCalibrationEvidence, fingerprint(file("rod.toml"))).state ==
            EvidenceState::Current);
    // The next time the file's values are asked for.
    QVERIFY(flowhandWith(calibrate).status == 0);
    QCOMPARE(QString::fromStdString(*readFile(file("rod.toml").toStdString())), source);
    const Printed checked = flowhandWith(calibrate + QStringList{"--check"});
    QVERIFY2(checked.status == 0, qPrintable(checked.err));
    const QJsonValue places = linesOf(checked.out).front()["result"]["places"];
    QCOMPARE(places[1]["place"].toString(), QString("25 %"));
    QVERIFY(std::fabs(places[1]["reads"].toDouble() - 25) < 0.2);
    QVERIFY(std::fabs(places[1]["error_percent"].toDouble()) < 0.1);
}

void TestBenchMeasure::valuesAtASpring() {
    write(file("spring.toml"), QString::fromStdString(kRig)
                                   .replace("thrust_lever_1", "tiller")
                                   .replace("wiring = \"axis\"", "wiring = \"axis\"\ncentre = 2000")
                                   .toStdString());
    GeneratedAxis axis = GeneratedAxis({}).hold(1).visit({0.0, 0.3, 0.52, 0.8, 1.0}, 2);
    axis.moveTo(0.0, 0.5).returnsToCentre(4, 0.52, 0.004);
    write(file("spring.rec"), recordingOf(axis.series()));
    const QStringList calibrate = {"bench",       "calibrate",        "--rig",      file("spring.toml"),
                                   "--recording", file("spring.rec"), "Left lever", "--values"};
    const Printed done = flowhandWith(calibrate + QStringList{"-70 deg,-30 deg,0 deg,35 deg,70 deg"});
    QVERIFY2(done.status == 0, qPrintable(done.err + done.out));
    QCOMPARE(valueAt(file("spring.toml"), axis.counts(0.52)), 0.0);
    QVERIFY(std::fabs(valueAt(file("spring.toml"), axis.counts(0.3)) - 35) < 0.3); // it runs backwards
    QVERIFY(std::fabs(valueAt(file("spring.toml"), axis.counts(0.8)) + 30) < 0.3);
}

void TestBenchMeasure::repeatCheck_data() {
    QTest::addColumn<double>("shift"); // counts of 3,340 by which the high end has slipped since
    QTest::addColumn<int>("status");
    QTest::addColumn<QString>("words");
    QTest::newRow("as it was") << 0.0 << 0 << "good";
    QTest::newRow("a little off") << 50.0 << 0 << "caution";
    QTest::newRow("slipped") << 150.0 << 3 << "bad";
}

void TestBenchMeasure::repeatCheck() {
    QFETCH(double, shift);
    QFETCH(int, status);
    QFETCH(QString, words);
    write(file("again.toml"), kRig);
    write(file("first.rec"), recordingOf(worked()));
    AxisTruth truth;
    truth.high += shift;
    write(file("again.rec"), recordingOf(GeneratedAxis(truth, 7).hold(2).visit({0.0, 1.0}, 3).series()));
    const QStringList calibrate = {"bench", "calibrate", "Left lever", "--rig", file("again.toml"), "--recording"};
    QFile::remove(QString::fromStdString(evidenceFileOf(file("again.toml").toStdString())));
    QCOMPARE(flowhandWith(calibrate + QStringList{file("first.rec")}).status, std::optional(0));
    const std::string before = *readFile(file("again.toml").toStdString());
    const Printed dry = flowhandWith(calibrate + QStringList{file("again.rec"), "--check", "--dry-run"});
    QCOMPARE(dry.status, std::optional(status));
    QCOMPARE(evidence("again.toml").size(), std::size_t(1));
    const Printed text = flowhandWith(calibrate + QStringList{file("again.rec"), "--check"});
    QVERIFY2(text.out.contains(QRegularExpression("place +" + words + " +low end")), qPrintable(text.out));
    QVERIFY(text.out.contains("stays as it is"));
    QCOMPARE(*readFile(file("again.toml").toStdString()), before);
    const std::vector<EvidenceRecord> records = evidence("again.toml");
    const FoundEvidence found = findEvidence(records, kRepeatEvidence, fingerprint(file("again.toml")));
    QVERIFY(found.state == EvidenceState::Current);
    QCOMPARE(found.record->isGood, status == 0);
    const QJsonObject result = QJsonDocument::fromJson(QByteArray::fromStdString(found.record->result)).object();
    // Inverted: its low end is the higher count.
    QVERIFY(std::fabs(result["places"][0]["error_percent"].toDouble() - 100 * shift / (3340 + shift)) < 0.1);
    QVERIFY(std::fabs(result["places"][1]["error_percent"].toDouble()) < 0.1);
}

void TestBenchMeasure::repeatCheckOfGates() {
    write(file("gates.toml"), kGates);
    AxisTruth truth;
    truth.low = 310;
    truth.high = 3740;
    const auto shareOf = [&](double count) {
        return (count - truth.low) / (truth.high - truth.low);
    };
    // The file says 1985 +- 60 for '12'; it is found at 2060.
    const GeneratedAxis axis =
        GeneratedAxis(truth).hold(1).visit({0.0, shareOf(1120), shareOf(2060), shareOf(2890), 1.0}, 3);
    write(file("gates.rec"), recordingOf(axis.series()));
    const Printed done = flowhandWith(
        {"bench", "calibrate", "--check", "--rig", file("gates.toml"), "--recording", file("gates.rec"), "flap_lever"});
    QCOMPARE(done.status, std::optional(3));
    QVERIFY2(done.out.contains(QRegularExpression("bad +gate '12'")), qPrintable(done.out));
    QVERIFY(done.out.contains(QRegularExpression("good +gate '22'")) && done.out.contains("outside its band of 60"));
}

void TestBenchMeasure::healthIsToldAndKept() {
    write(file("health.toml"), kRig);
    GeneratedSwitch rotary(3, {0.0015, 125.0});
    rotary.set(0, true).wait(12).turnThrough(0.08, 0).turnThrough(0.08, 0).wait(1);
    write(file("all.rec"), recordingOf(worked(), rotary.series()));
    const Printed done =
        flowhandWith({"bench", "health", "--rig", file("health.toml"), "--recording", file("all.rec"), "--json"});
    QVERIFY2(done.status == 0, qPrintable(done.err + done.out));
    const std::vector<QJsonValue> lines = linesOf(done.out);
    QCOMPARE(lines.size(), std::size_t(4));
    QCOMPARE(lines[3]["filters_to_change"].toArray().size(), 1);
    QCOMPARE(lines[0]["device"].toString(), QString("unit"));
    QVERIFY(std::fabs(lines[0]["result"]["interval_ms"].toDouble() - 8) < 0.01);
    QVERIFY(std::fabs(lines[1]["result"]["axes"]["X"]["sigma"].toDouble() - 1.23) < 0.1);
    QCOMPARE(lines[2]["result"]["switch"]["changes"].toInt(), 8);
    QCOMPARE(evidence("health.toml").size(), std::size_t(2));
    const Printed text =
        flowhandWith({"bench", "health", "--rig", file("health.toml"), "--recording", file("all.rec"), "Left lever"});
    QVERIFY(text.out.contains("noise-free bits"));
}

void TestBenchMeasure::filtersAreSaidAndWritten() {
    write(file("worn.toml"), kRig);
    GeneratedAxis axis = GeneratedAxis({}).hold(11).sweep(0, 1, 6).hold(1).sweep(1, 0, 6).visit({0.0, 1.0}, 3);
    for (const double share : {0.1, 0.4, 0.7})
        axis.moveTo(share, 0.5).hold(0.5).spike(4095).hold(0.5);
    write(file("worn.rec"), recordingOf(axis.series()));
    QCOMPARE(
        flowhandWith({"bench", "calibrate", "--rig", file("worn.toml"), "--recording", file("worn.rec"), "Left lever"})
            .status,
        std::optional(0));
    const std::string before = *readFile(file("worn.toml").toStdString());
    const QStringList health = {"bench",       "health",         "--rig",     file("worn.toml"),
                                "--recording", file("worn.rec"), "Left lever"};
    const Printed said = flowhandWith(health);
    QVERIFY2(said.out.contains(
                 QRegularExpression("filters: late by 0 ms with them, \\d+ ms are allowed\n +spikes +caution")),
             qPrintable(said.out + said.err));
    QVERIFY(said.out.contains("--apply") && said.out.contains("-> spike_limit = "));
    QCOMPARE(*readFile(file("worn.toml").toStdString()), before);
    const Printed done = flowhandWith(health + QStringList{"--apply", "--json"});
    const QJsonValue filters = linesOf(done.out)[1]["result"]["filters"];
    QCOMPARE(filters["delay_ms"].toDouble(), 0.0);
    QCOMPARE(filters["keys"].toObject().keys(), (QStringList{"settle", "spike_limit"}));
    const QString after = QString::fromStdString(*readFile(file("worn.toml").toStdString()));
    QVERIFY2(after.contains("\nspike_limit = ") && after.contains(QRegularExpression("\nsettle = \"1[67] ms\"\n")),
             qPrintable(after));
    QVERIFY(after.contains("title = \"Desk\" # mine") && after.contains("# its pot is the other way round"));
    // What was measured and calibrated holds on, and nothing follows any more.
    const auto records = evidence("worn.toml");
    QVERIFY(findEvidence(records, kCalibrationEvidence, fingerprint(file("worn.toml"))).state ==
            EvidenceState::Current);
    QVERIFY(findEvidence(records, kHealthEvidence, fingerprint(file("worn.toml"))).state == EvidenceState::Current);
    const Printed again = flowhandWith(health + QStringList{"--apply", "--json"});
    QVERIFY(linesOf(again.out)[1]["result"]["filters"]["keys"].toObject().isEmpty());
    QCOMPARE(QString::fromStdString(*readFile(file("worn.toml").toStdString())), after);
    const Printed undone = flowhandWith({"bench", "health", "--rig", file("worn.toml"), "--undo"});
    QVERIFY2(undone.status == 0, qPrintable(undone.err));
    QVERIFY2(undone.out.contains("no spike_limit") && undone.out.contains("Left lever"), qPrintable(undone.out));
    QCOMPARE(*readFile(file("worn.toml").toStdString()), before);
    const Printed nothing = flowhandWith({"bench", "health", "--rig", file("worn.toml"), "--undo", "Left lever"});
    QCOMPARE(nothing.status, std::optional(1));
    QVERIFY2(nothing.err.contains("Left lever"), qPrintable(nothing.err));
}

void TestBenchMeasure::bothDevicesOfOneControl() {
    // The lever on one device, the switch that makes it the reverse lever on another, whose recording began 2 s later.
    write(file("two.toml"), R"(format = 1
title = "Two"
[[device]]
name = "unit"
id = "1209:F101"
[[device]]
name = "panel"
id = "1209:F102"
[[control]]
name = "Lever"
signal = ["thrust_lever_1", "reverse_lever_1"]
device = "unit"
wiring = "switched_axis"
input = "X"
ranges = [[0, 4000], [0, 4000]]
switch = "panel: button 1"
)");
    GeneratedAxis lever = GeneratedAxis({}).hold(11).visit({0.0, 1.0}, 3);
    const Time over = lever.series().end;
    const Series axis = lever.hold(1).visit({0.0, 0.4}, 3).series();
    Series still = axis;
    Series contact = axis;
    for (std::size_t i = 0; i < axis.points.size(); ++i) {
        still.points[i] = {axis.points[i].time, 2000, false};
        contact.points[i].raw = axis.points[i].time + 2s > over + 500ms ? 1 : 0;
    }
    write(file("unit.rec"), recordingOf(axis, {}, headOf("1209:F101 Unit", 1'790'000'000s)));
    write(file("panel.rec"), recordingOf(still, {contact}, headOf("1209:F102 Panel", 1'790'000'002s)));
    const QStringList both = {"--rig",       file("two.toml"), "--recording", file("panel.rec"),
                              "--recording", file("unit.rec"), "Lever"};
    const Printed done = flowhandWith(QStringList{"bench", "calibrate"} + both);
    QVERIFY2(done.status == 0, qPrintable(done.err + done.out));
    const QString source = QString::fromStdString(*readFile(file("two.toml").toStdString()));
    const QRegularExpressionMatch match =
        QRegularExpression("ranges = \\[\\[(\\d+), (\\d+)\\], \\[(\\d+), (\\d+)\\]\\]").match(source);
    QVERIFY2(match.hasMatch(), qPrintable(source));
    QVERIFY(std::abs(match.captured(2).toInt() - 3720) < 4);
    QVERIFY(std::abs(match.captured(4).toInt() - (380 + 1336)) < 4);
    const std::vector<EvidenceRecord> records = evidence("two.toml");
    QCOMPARE(records.front().raw.size(), std::size_t(2));
    QCOMPARE(records.front().raw.back().device, std::string("panel"));
    const Printed health = flowhandWith(QStringList{"bench", "health", "--json"} + both);
    QVERIFY2(health.status && *health.status != 1, qPrintable(health.err));
    QCOMPARE(linesOf(health.out).size(), std::size_t(3)); // two devices, one control
}

void TestBenchMeasure::theSheetHasWhatWasMeasured() {
    QString rig = QString::fromStdString(kGates) +
                  "[[control]]\nsignal = \"taxi_light\"\nwiring = \"contact\"\ninput = \"button 1\"\n";
    write(file("sheet.toml"), rig.toStdString());
    AxisTruth truth;
    truth.backlash = 30;
    GeneratedAxis axis(truth);
    axis.hold(11).visit({0.0, 0.22, 0.45, 0.7, 1.0}, 3);
    GeneratedSwitch light(1, {0.012, 125.0});
    light.wait(1);
    for (int i = 0; i < 10; ++i)
        light.press(0, 0.4);
    write(file("sheet.rec"), recordingOf(axis.series(), light.series()));
    const QStringList measured = {"--rig", file("sheet.toml"), "--recording", file("sheet.rec"), "flap_lever"};
    QVERIFY(flowhandWith(QStringList{"bench", "calibrate"} + measured).status.has_value());
    QVERIFY(flowhandWith(QStringList{"bench", "health"} + measured + QStringList{"taxi_light"}).status.has_value());
    const Printed made = flowhandWith({"bench", "sheet", "--rig", file("sheet.toml"), "--out", file("sheet.html")});
    QVERIFY2(made.status == 0, qPrintable(made.err));
    const QString sheet = QString::fromStdString(*readFile(file("sheet.html").toStdString()));
    QVERIFY(sheet.contains("qualifies nothing") && sheet.contains("Calibration and signal"));
    QCOMPARE(sheet.count("<figure>"), 3); // travel, noise, bounce
    QVERIFY(sheet.contains("Gate 12") && sheet.contains("backlash") && sheet.contains("noise-free bits"));
    QVERIFY(sheet.contains("bounces for") && sheet.contains("debounce 10 ms"));
    QVERIFY(sheet.contains(QRegularExpression("Calibrated</td><td>20\\d\\d-")));
    QVERIFY(sheet.contains("<b>bounce, "));
    QVERIFY(!sheet.contains("nan") && !sheet.contains("<script"));
    // Wired anew: the figures are gone, that there were any is said.
    write(file("sheet.toml"), rig.replace("input = \"button 1\"", "input = \"button 2\"").toStdString());
    QCOMPARE(flowhandWith({"bench", "sheet", "--rig", file("sheet.toml"), "--out", file("sheet.html")}).status,
             std::optional(0));
    QVERIFY(
        QString::fromStdString(*readFile(file("sheet.html").toStdString())).contains("stale: wiring or calibration"));
}

void TestBenchMeasure::aBadControlEndsOtherwise() {
    write(file("bad.toml"), kRig);
    AxisTruth truth;
    truth.noise = 0;
    write(file("still.rec"), recordingOf(GeneratedAxis(truth).hold(3).series()));
    const QStringList health = {"bench", "health", "--rig", file("bad.toml"), "--recording", file("still.rec")};
    const Printed named = flowhandWith(health + QStringList{"Left lever"});
    QCOMPARE(named.status, std::optional(3));
    QVERIFY2(named.out.contains("every report says 380"), qPrintable(named.out));
    QVERIFY(!evidence("bad.toml").front().isGood);
}

void TestBenchMeasure::badInputIsAnError_data() {
    QTest::addColumn<QStringList>("arguments");
    QTest::addColumn<QString>("says");
    const QString rig = file("input.toml");
    write(rig, kRig);
    write(file("input.rec"), recordingOf(worked()));
    write(file("other.rec"), headOf("1209:F1FF Other") + "0.0: 00 00 00\n");
    write(file("still.rec"), recordingOf(GeneratedAxis({}).hold(5).series()));
    const auto row = [&](const char* name, const char* what, const QString& recording, const QStringList& controls,
                         const char* says) {
        QTest::newRow(name) << QStringList{"bench", what, "--rig", rig, "--recording", recording} + controls
                            << QString(says);
    };
    row("no such control", "calibrate", file("input.rec"), {"thrust_lever_2"}, "no control 'thrust_lever_2'");
    row("no counts to measure", "calibrate", file("input.rec"), {"autobrake"}, "contacts need none");
    row("values that fall", "calibrate", file("input.rec"), {"--values", "0 %,50 %,40 %", "Left lever"},
        "'40 %' is out of order");
    row("a value beyond the signal", "calibrate", file("input.rec"), {"--values", "0 %,120 %", "Left lever"},
        "within 0 to 100 %");
    row("values of another unit", "calibrate", file("input.rec"), {"--values", "0 deg,20 deg", "Left lever"},
        "is not a value of thrust_lever_1");
    row("one value", "calibrate", file("input.rec"), {"--values", "50 %", "Left lever"}, "two places or more");
    row("other places than values", "calibrate", file("input.rec"), {"--values", "0 %,50 %,100 %", "Left lever"},
        "3 places of the values given");
    row("values of several controls", "calibrate", file("input.rec"),
        {"--values", "0 %,9 %", "Left lever", "autobrake"}, "of one control");
    row("it did not move", "calibrate", file("still.rec"), {"Left lever"}, "did not move from end to end");
    row("another device's recording", "health", file("other.rec"), {}, "none of the recordings is of 'unit'");
    row("no recording", "health", file("input.toml"), {}, "is not a report");
    row("no such file", "health", file("none.rec"), {}, "none.rec");
}

void TestBenchMeasure::badInputIsAnError() {
    QFETCH(QStringList, arguments);
    QFETCH(QString, says);
    const Printed outcome = flowhandWith(arguments);
    QCOMPARE(outcome.status, std::optional(1));
    QVERIFY2(outcome.err.contains(says), qPrintable(outcome.err));
    QCOMPARE(*readFile(file("input.toml").toStdString()), kRig);
}

QTEST_APPLESS_MAIN(TestBenchMeasure)
#include "test_benchmeasure.moc"
