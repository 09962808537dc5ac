// Whole flights by HID reports through a real kernel: see README.md here. One row a flight.

#include <QDir>
#include <QJsonArray>
#include <QJsonDocument>
#include <QJsonObject>
#include <QProcess>
#include <QRegularExpression>
#include <QTemporaryDir>
#include <QtTest>

#include <algorithm>

#include "guestrun.h"

namespace {

constexpr int kMostSeconds = 800; // of a busy computer; an idle one needs a quarter of it
constexpr int kGapSeconds =
    20; // with a device unplugged; counted, it would make any step of take_off late (15 s at most)

QJsonDocument jsonFile(const QString& path) {
    QFile file(path);
    return file.open(QIODevice::ReadOnly) ? QJsonDocument::fromJson(file.readAll()) : QJsonDocument();
}

QString textFile(const QString& path) {
    QFile file(path);
    return file.open(QIODevice::ReadOnly) ? QString::fromUtf8(file.readAll()) : QString();
}

/// "not done reverse_raised", "guard tiller_above_limit" ...: what the ledger lists, named by step or guard, sorted.
/// How far inside its band a step was is left out: real time moves that a little.
QStringList findingsOf(const QJsonObject& debrief) {
    QStringList findings;
    for (const QJsonValue& value : debrief["ledger"].toArray()) {
        const QJsonObject line = value.toObject();
        const QString guard = line["guard"].toString();
        if (line["what"] == "small margin")
            continue;
        findings << (guard.isEmpty() ? line["what"].toString() + " " + line["step"].toString() : "guard " + guard);
    }
    findings.sort();
    return findings;
}

/// How many gaps the debrief marks.
int gapsOf(const QJsonObject& debrief) {
    const QJsonArray remarks = debrief["remarks"].toArray();
    return int(std::count_if(remarks.begin(), remarks.end(), [](const QJsonValue& remark) {
        return remark.toString().startsWith("Input was lost");
    }));
}

} // namespace

class TestKernel : public QObject {
    Q_OBJECT

private Q_SLOTS:
    void flies_data();
    void flies();

private:
    void unplugOnTheWay(const QString& script, const QString& device);
    void makeReports(const QString& hands, const QString& flow, const QString& go, const QString& script);
};

void TestKernel::flies_data() {
    QTest::addColumn<QString>("flow");
    QTest::addColumn<QString>("hands");
    QTest::addColumn<int>("status");
    QTest::addColumn<QStringList>("findings");
    QTest::addColumn<bool>("isUnplugged");
    const QString good = PROCEDURES "/twin_jet/hands/";
    const QString wrong = TEST_DATA "/hands/";
    QTest::newRow("take_off") << "twin_jet/take_off" << good + "take_off.hands" << 0 << QStringList{} << false;
    QTest::newRow("unplugged") << "twin_jet/take_off" << good + "take_off.hands" << 0 << QStringList{} << true;
    QTest::newRow("take_off_wrong") << "twin_jet/take_off" << wrong + "take_off_wrong.hands" << 3
                                    << QStringList{"guard tiller_above_limit", "wrong value flap_to_4"} << false;
    QTest::newRow("landing_no_reverse") << "twin_jet/landing_roll" << wrong + "landing_roll_no_reverse.hands" << 0
                                        << QStringList{"not done reverse_raised"} << false;
}

/// While a step of its own is due the device is pulled out and, after longer than any step may wait, plugged in again
/// as it was.
void TestKernel::unplugOnTheWay(const QString& script, const QString& device) {
    QStringList lines = textFile(script).split('\n');
    const auto plug = lines[lines.indexOf(QRegularExpression("plug " + device + " .*"))];
    const QRegularExpression due("sync .*");
    const QRegularExpression report("(at [0-9]+|send) " + device + " .*");
    auto here = lines.indexOf(due, lines.size() / 4);
    while (here >= 0 && lines.indexOf(report, here) != here + 1)
        here = lines.indexOf(due, here + 1);
    QVERIFY2(here > 0, "no step waits for the device after the flight's first quarter");
    const auto last = lines.lastIndexOf(report, here);
    QVERIFY(last > 0);
    lines.insert(here + 1,
                 QStringList{"unplug " + device, "wait " + QString::number(kGapSeconds * 1000), plug, "open " + device,
                             "send " + device + ' ' + lines[last].section(' ', -1), "wait 300", "goon"}
                     .join('\n'));
    QFile file(script);
    QVERIFY(file.open(QIODevice::WriteOnly));
    file.write(lines.join('\n').toUtf8());
}

void TestKernel::makeReports(const QString& hands, const QString& flow, const QString& go, const QString& script) {
    QProcess maker;
    maker.setStandardOutputFile(script);
    maker.start(REPORTSOF, {ASSETS "/rigs/full_cockpit.toml", flow, hands, go, TEST_DATA "/rig/quadrant.hex",
                            TEST_DATA "/rig/pedals.hex", TEST_DATA "/rig/yoke.hex"});
    QVERIFY(maker.waitForFinished(60'000));
    QVERIFY2(maker.exitCode() == 0, maker.readAllStandardError().constData());
}

void TestKernel::flies() {
    SKIP_WITHOUT_GUEST();
    QFETCH(QString, flow);
    QFETCH(QString, hands);
    QFETCH(int, status);
    QFETCH(QStringList, findings);
    QFETCH(bool, isUnplugged);
    QTemporaryDir folder;
    const QString kept = folder.path();
    makeReports(hands, flow, kept + "/progress", kept + "/script");
    if (isUnplugged && !QTest::currentTestFailed())
        unplugOnTheWay(kept + "/script", "device0");
    if (QTest::currentTestFailed())
        return;

    const guest::Outcome outcome = guest::run(kMostSeconds, {"--own-time", "--keep", kept},
                                              {KERNEL_FOLDER "/fly", FLOWHAND, VIRTUALDEVICES, kept + "/script", flow,
                                               ASSETS "/rigs/full_cockpit.toml", kept});
    SKIP_WITHOUT_KERNEL(outcome);
    const QString story = textFile(kept + "/progress") + textFile(kept + "/devices") + outcome.errors;
    if (outcome.status != status)
        qWarning().noquote() << story; // QVERIFY2 would cut it
    QVERIFY2(outcome.status == status, qPrintable(QString("exit status %1\n%2").arg(outcome.status).arg(story)));
    const QJsonObject debrief = jsonFile(kept + "/debrief.json").object();
    QCOMPARE(findingsOf(debrief).join('\n'), findings.join('\n'));
    QCOMPARE(story.contains("resumed"), isUnplugged);
    QCOMPARE(gapsOf(debrief), isUnplugged ? 1 : 0);
    QCOMPARE(debrief["passed"].toBool(), status == 0);
    QVERIFY2(!debrief["simulated_input"].toBool(), "the kernel's devices are no simulated controls");
    QCOMPARE(jsonFile(kept + "/runs.json").array().size(), 1);
    QCOMPARE(findingsOf(jsonFile(kept + "/stored.json").object()), findings);
}

QTEST_GUILESS_MAIN(TestKernel)
#include "test_kernel.moc"
