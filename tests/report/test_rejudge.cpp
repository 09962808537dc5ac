#include <QDir>
#include <QTemporaryDir>
#include <QtTest>

#include "base/textfile.h"
#include "procedure/library.h"
#include "report/storeddebrief.h"
#include "session/onscreenfacts.h"
#include "session/runloop.h"
#include "store/archive.h"

using namespace flowhand;
using namespace std::chrono_literals;

namespace {

std::string handsOf(const Flow& flow) {
    return std::string(PROCEDURES "/twin_jet/hands/") + flow.id + ".hands";
}

RunHeader headerOf(const Aircraft& aircraft, const Flow& flow) {
    RunHeader header;
    header.programVersion = "0.1.0";
    header.aircraftFolder = aircraft.folder;
    header.aircraftSource = aircraft.toml.source();
    header.flowId = flow.id;
    header.flowTitle = flow.title;
    header.flowFile = flow.file;
    header.flowSource = flow.source;
    header.controlNames = {""};
    header.setup.controls = onScreenFacts(aircraft);
    return header;
}

/// Flies the flow's demonstration into the store, up to `end` at the latest; then the recording breaks off.
void fly(Store& store, const Aircraft& aircraft, const Flow& flow, Time end, const std::string& seat = "captain") {
    Problems problems;
    RunParts parts;
    parts.aircraft = &aircraft;
    parts.flow = &flow;
    parts.header = headerOf(aircraft, flow);
    Result<PracticeAircraft> practice = PracticeAircraft::create(aircraft, flow.startPlace);
    QVERIFY(practice);
    parts.practice.emplace(std::move(*practice));
    parts.hands = Hands::load(handsOf(flow), aircraft, flow, problems);
    QVERIFY(parts.hands);
    parts.partnerHands = Hands::load(handsOf(flow), aircraft, flow, problems);
    parts.header.setup.ownSeat = seat;
    parts.header.setup.hasPartnerHands = true;
    const std::unique_ptr<Recorder> recorder = store.recorder();
    parts.recorder = recorder.get();
    RunLoop loop(std::move(parts));
    loop.command(CommandKind::Start);
    for (Time time{}; time < end && !loop.isEnded(); time += 20ms)
        loop.advance(time);
}

StoredRun loaded(Store& store, std::int64_t id) {
    Result<StoredRun> run = store.load(id);
    return run ? std::move(*run) : StoredRun();
}

} // namespace

class TestRejudge : public QObject {
    Q_OBJECT

private Q_SLOTS:
    void initTestCase();
    void everyFlownFlowIsTheSameJudgedAgain_data();
    void everyFlownFlowIsTheSameJudgedAgain();
    void everySampleRunIsTheSameJudgedAgain_data();
    void everySampleRunIsTheSameJudgedAgain();
    void aChangeIsNamed();
    void aRunCutOffIsJudgedFromItsSamples();
    void aRunWithoutItsFlowSaysSo();

private:
    QTemporaryDir m_folder;
    std::optional<Store> m_store;
    std::vector<AircraftFolder> m_library;
};

void TestRejudge::initTestCase() {
    Result<Store> store = Store::open(m_folder.filePath("runs.sqlite").toStdString());
    QVERIFY(store);
    m_store.emplace(std::move(*store));
    Problems problems;
    m_library = loadLibrary(PROCEDURES, problems);
    QVERIFY(!problems.hasErrors() && !m_library.empty());
}

void TestRejudge::everyFlownFlowIsTheSameJudgedAgain_data() {
    QTest::addColumn<int>("flow");
    QTest::addColumn<QString>("seat");
    for (std::size_t i = 0; i < m_library[0].flows.size(); ++i)
        for (const std::string& seat : m_library[0].aircraft->seats)
            QTest::addRow("%s, %s", m_library[0].flows[i].id.c_str(), seat.c_str())
                << int(i) << QString::fromStdString(seat);
}

void TestRejudge::everyFlownFlowIsTheSameJudgedAgain() {
    QFETCH(int, flow);
    QFETCH(QString, seat);
    fly(*m_store, *m_library[0].aircraft, m_library[0].flows[std::size_t(flow)], 1h, seat.toStdString());
    const std::int64_t id = m_store->runs()->front().id;
    const StoredRun run = loaded(*m_store, id);
    QVERIFY(run.summary.isFinished && run.damage.empty() && run.eventLines.size() > 10);
    const Result<StoredDebrief> kept = StoredDebrief::of(run, {"0.1.0", false});
    QVERIFY2(kept, kept ? "" : kept.error().message.c_str());
    QVERIFY(kept->input().rejudgement == nullptr);
    const Result<StoredDebrief> again = StoredDebrief::of(run, {"0.1.0", true});
    QVERIFY(again && again->input().rejudgement != nullptr);
    QVERIFY(again->input().rejudgement->isCompared);
    QVERIFY(again->input().rejudgement->isSame);
    QVERIFY(again->input().events == kept->input().events);
    QCOMPARE(again->input().score.milliPoints, kept->input().score.milliPoints);
    QVERIFY(debriefText(again->input()).find("the same events, to the byte") != std::string::npos);
}

void TestRejudge::everySampleRunIsTheSameJudgedAgain_data() {
    QTest::addColumn<QString>("file");
    const QDir folder(ASSETS "/runs");
    for (const QString& name : folder.entryList({"*.flowrun"}))
        QTest::newRow(qPrintable(name)) << folder.filePath(name);
    QTest::newRow("of before there were phrases") << ASSETS "/../tests/data/store/before_phrases.flowrun";
}

void TestRejudge::everySampleRunIsTheSameJudgedAgain() {
    QFETCH(QString, file);
    const Result<std::string> bytes = readFile(file.toStdString(), kLargestArchive);
    QVERIFY(bytes);
    const Result<ArchivedRun> archived = readArchive(*bytes, file.toStdString());
    QVERIFY2(archived, archived ? "" : archived.error().message.c_str());
    const Result<std::int64_t> id = m_store->add(*archived);
    QVERIFY2(id, id ? "" : id.error().message.c_str());
    const StoredRun run = loaded(*m_store, *id);
    QVERIFY(run.damage.empty() && run.summary.isFinished && run.eventLines.size() > 10);
    const Result<StoredDebrief> again = StoredDebrief::of(run, {"0.1.0", true});
    QVERIFY(again && again->input().rejudgement->isCompared);
    // Seeking in it changes nothing.
    for (Time time{}; time < run.summary.length; time += 777ms)
        QVERIFY(m_store->valuesAt(*id, time));
    QVERIFY(loaded(*m_store, *id).eventLines == run.eventLines);
    // Where the judge has changed on purpose: assets/runs/README.md.
    QVERIFY2(again->input().rejudgement->isSame, debriefText(again->input()).c_str());
    QCOMPARE(again->input().score.milliPoints, run.score.milliPoints);
}

void TestRejudge::aChangeIsNamed() {
    fly(*m_store, *m_library[0].aircraft, m_library[0].flows[0], 1h);
    StoredRun run = loaded(*m_store, m_store->runs()->front().id);
    const std::string dropped = run.eventLines[3];
    run.eventLines.erase(run.eventLines.begin() + 3);
    run.score.milliPoints -= 500;
    const Result<StoredDebrief> debrief = StoredDebrief::of(run, {"0.2.0", true});
    QVERIFY(debrief);
    const Rejudgement& again = *debrief->input().rejudgement;
    QVERIFY(again.isCompared && !again.isSame);
    QCOMPARE(again.gone.size(), std::size_t(0));
    QCOMPARE(again.added, std::vector<std::string>{dropped});
    QCOMPARE(again.milliPointsBefore, run.score.milliPoints);
    QVERIFY(debriefText(debrief->input()).find("Judged again by version 0.2.0 (recorded with 0.1.0)") !=
            std::string::npos);
}

void TestRejudge::aRunCutOffIsJudgedFromItsSamples() {
    fly(*m_store, *m_library[0].aircraft, m_library[0].flows[0], 12s);
    const StoredRun run = loaded(*m_store, m_store->runs()->front().id);
    QVERIFY(!run.summary.isFinished && run.results.empty());
    const Result<StoredDebrief> debrief = StoredDebrief::of(run, {"0.1.0", false});
    QVERIFY(debrief);
    QVERIFY(!debrief->input().rejudgement->isCompared);
    QCOMPARE(debrief->input().results.size(), m_library[0].flows[0].steps.size());
    const std::string text = debriefText(debrief->input());
    QVERIFY(text.find("the record holds no result") != std::string::npos);
    QVERIFY(text.find("recovered") != std::string::npos);
}

void TestRejudge::aRunWithoutItsFlowSaysSo() {
    StoredRun run = loaded(*m_store, 1);
    run.header.flowSource.clear();
    run.damage = {"the flow as it was flown is damaged"};
    const Result<StoredDebrief> debrief = StoredDebrief::of(run, {"0.1.0", false});
    QVERIFY(!debrief);
    QCOMPARE(debrief.error().code, std::string("unreadable-run"));
    QVERIFY(debrief.error().message.find("the flow as it was flown is damaged") != std::string::npos);
}

QTEST_APPLESS_MAIN(TestRejudge)
#include "test_rejudge.moc"
