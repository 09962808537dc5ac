// The rigs that are shipped for each aircraft: a whole one confirms every step of every flow; with a beginner's the
// rest is left out and said so.

#include <QtTest>

#include "command/printed.h"
#include "procedure/library.h"
#include "rig/rig.h"
#include "session/keepingrecorder.h"
#include "session/runloop.h"

using namespace flowhand;

class TestShippedRigs : public QObject {
    Q_OBJECT

private Q_SLOTS:
    void aWholeRigConfirmsEveryStep_data();
    void aWholeRigConfirmsEveryStep();
    void whatABeginnerLacksIsLeftOut_data();
    void whatABeginnerLacksIsLeftOut();
};

namespace {

const char* const kAircraft[] = {"twin_jet", "twin_turboprop", "light_single"};

QString rigFile(const QString& aircraft, const char* name) {
    return QString(ASSETS "/rigs/%1/%2.toml").arg(aircraft, name);
}

/// By id: the steps that the run leaves out as it begins, and why.
std::map<std::string, std::string> leftOut(const Aircraft& aircraft, const Flow& flow, const std::string& rig) {
    Problems problems;
    KeepingRecorder memory;
    RunParts parts;
    parts.aircraft = &aircraft;
    parts.flow = &flow;
    parts.rig = Rig::load(rig, aircraft.signals, aircraft.controls.size(), problems);
    if (!parts.rig)
        qFatal("%s", describe(problems.firstError()).c_str());
    parts.header.setup.controls = parts.rig->facts();
    parts.header.setup.ownSeat = aircraft.seats.front();
    parts.recorder = &memory;
    Result<PracticeAircraft> practice = PracticeAircraft::create(aircraft, flow.startPlace);
    if (!practice)
        qFatal("%s", describe(practice.error()).c_str());
    parts.practice.emplace(std::move(*practice));
    RunLoop loop(std::move(parts));
    loop.command(CommandKind::Start);
    loop.command(CommandKind::Waive);
    loop.advance(std::chrono::milliseconds(20));
    std::map<std::string, std::string> found;
    for (const Event& event : memory.allEvents)
        if (event.kind == EventKind::StepLeftOut)
            found[flow.steps[static_cast<std::size_t>(event.step)].id] = event.text.english();
    return found;
}

} // namespace

void TestShippedRigs::aWholeRigConfirmsEveryStep_data() {
    QTest::addColumn<QString>("aircraft");
    for (const char* aircraft : kAircraft)
        QTest::newRow(aircraft) << aircraft;
}

void TestShippedRigs::aWholeRigConfirmsEveryStep() {
    QFETCH(QString, aircraft);
    const Printed checked = flowhandWith({"lint", rigFile(aircraft, "full")});
    QCOMPARE(checked.out, QString("1 file, nothing to complain of.\n"));
    const Printed covered =
        flowhandWith({"bench", "coverage", "--rig", rigFile(aircraft, "full"), PROCEDURES "/" + aircraft});
    QVERIFY2(covered.status == 0, qPrintable(covered.out + covered.err));
}

void TestShippedRigs::whatABeginnerLacksIsLeftOut_data() {
    aWholeRigConfirmsEveryStep_data();
}

void TestShippedRigs::whatABeginnerLacksIsLeftOut() {
    QFETCH(QString, aircraft);
    const QString rig = rigFile(aircraft, "beginner");
    QCOMPARE(flowhandWith({"lint", rig}).out, QString("1 file, nothing to complain of.\n"));
    Problems problems;
    const std::optional<AircraftFolder> folder = loadAircraftFolder(PROCEDURES "/" + aircraft.toStdString(), problems);
    QVERIFY(folder);
    const std::optional<Rig> loaded =
        Rig::load(rig.toStdString(), folder->aircraft->signals, folder->aircraft->controls.size(), problems);
    QVERIFY(loaded);
    std::size_t kept = 0, left = 0;
    for (const Flow& flow : folder->flows) {
        const std::map<std::string, std::string> out = leftOut(*folder->aircraft, flow, rig.toStdString());
        for (const Step& step : flow.steps) {
            const bool isMine = step.movedBy == folder->aircraft->seats.front() && step.kind == StepKind::Act;
            if (!isMine)
                continue;
            const bool isLacking = std::none_of(step.controls.begin(), step.controls.end(), [&](SignalId control) {
                return loaded->facts()[indexOf(control)].isWired;
            });
            const auto found = out.find(step.id);
            QVERIFY2(!isLacking || found != out.end(),
                     qPrintable(rig + " " + QString::fromStdString(flow.id + "/" + step.id)));
            QVERIFY2(found == out.end() || !found->second.empty(), step.id.c_str());
            ++(found == out.end() ? kept : left);
        }
    }
    QVERIFY2(left > 0 && kept >= 20, qPrintable(QString("%1 kept, %2 left out").arg(kept).arg(left)));
}

QTEST_GUILESS_MAIN(TestShippedRigs)
#include "test_shippedrigs.moc"
