// What counts as practice, whose it is, and what a run's record says of its steps.

#include <QtTest>

#include "base/valuewords.h"
#include "progress/practice.h"
#include "store/outcomes.h"
#include "store/storefixture.h"

using namespace flowhand;

namespace {

/// A run of the test flow: its light is on, its flap lever was left.
struct Flown {
    std::string pilot = "Kim";
    std::string rig = "One quadrant";
    Origin origin = Origin::Device;
    bool isFinished = true;
    bool isScored = true;
};

class FilledStore {
public:
    FilledStore() : store(std::move(*Store::open(m_file.file()))) {}

    [[nodiscard]] std::string file() const { return m_file.file(); }

    std::int64_t add(const Flown& flown) {
        RunHeader header = testHeader();
        header.startedUnixMillis += 1000 * ++m_added;
        header.pilot = flown.pilot;
        header.rigTitle = flown.rig;
        const std::unique_ptr<Recorder> recorder = store.recorder();
        const std::vector<Sample> samples{handSample(1000, 2, 1.0, flown.origin)};
        bool isGood = recorder->begin(header) && recorder->samples(samples);
        Score score = testScore();
        score.isScored = flown.isScored;
        const std::string wrong = "Thrust lever at 40 % instead of: Flap lever to 12";
        score.ledger.push_back({500, 0, -1, LossKind::SmallMargin, std::string("Taxi light on: small margin")});
        score.ledger.push_back({2500, 1, -1, LossKind::WrongControl, wrong});
        score.ledger.push_back({2500, 1, -1, LossKind::WrongControl, wrong});
        std::vector<StepResult> results = testResults();
        results[1].isOwn = true;
        if (flown.isFinished)
            isGood = isGood && recorder->finish(std::chrono::seconds(10), score, results);
        if (!isGood)
            qFatal("a run could not be recorded");
        return recorder->runId();
    }

private:
    TemporaryStore m_file;
    int m_added = 0;

public:
    Store store;
};

Flown by(const char* pilot, const char* rig) {
    Flown flown;
    flown.pilot = pilot;
    flown.rig = rig;
    return flown;
}

} // namespace

class TestPractice : public QObject {
    Q_OBJECT

private Q_SLOTS:
    void aRunsStepsAreRead();
    void onlyPracticeCounts();
    void simulatedRunsAreCounted();
    void pilotsAndRigsAreNotMixed_data();
    void pilotsAndRigsAreNotMixed();
    void unknownNamesAreErrors_data();
    void unknownNamesAreErrors();
    void withoutRunsThereIsNothing();
    void anOutcomeIsTheRunWithoutSamples();
};

void TestPractice::aRunsStepsAreRead() {
    FilledStore filled;
    filled.add({});
    const Result<PracticeRecord> record = practiceRecord(filled.file(), {});
    QVERIFY(record && record->runs.size() == 1);
    const PractisedRun& run = record->runs.front();
    QCOMPARE(run.flow.aircraftFolder, std::string("bench"));
    QCOMPARE(run.flow.flowId, std::string("light_and_flap"));
    QVERIFY(!run.isComplete);
    QCOMPARE(run.steps.size(), std::size_t(2));
    QCOMPARE(run.steps[0].id, std::string("taxi_light"));
    QVERIFY(run.steps[0].mistakes.empty()); // a small margin is none
    QCOMPARE(run.steps[1].title, std::string("Flap lever to 12"));
    QCOMPARE(englishOf(run.steps[1].mistakes),
             (std::vector<std::string>{"not done", "Thrust lever at 40 % instead of: Flap lever to 12"}));
}

void TestPractice::onlyPracticeCounts() {
    FilledStore filled;
    const std::int64_t flown = filled.add({});
    Flown scripted, cutOff, unscored;
    scripted.origin = Origin::Script;
    cutOff.isFinished = false;
    unscored.isScored = false;
    filled.add(scripted);
    filled.add(cutOff);
    filled.add(unscored);
    QVERIFY(filled.store.remove(filled.add({})));
    const Result<PracticeRecord> record = practiceRecord(filled.file(), {});
    QVERIFY(record && record->runs.size() == 1);
    QCOMPARE(record->runs.front().id, flown);
    QCOMPARE(record->line.runs, 1);
}

void TestPractice::simulatedRunsAreCounted() {
    FilledStore filled;
    Flown onScreen, onControls;
    onScreen.origin = Origin::Screen;
    onControls.origin = Origin::Device;
    filled.add(onControls);
    filled.add(onScreen);
    filled.add(onControls);
    const Result<PracticeRecord> record = practiceRecord(filled.file(), {});
    QVERIFY(record.has_value());
    QCOMPARE(record->runs.size(), std::size_t(3));
    QCOMPARE(record->simulatedRuns, 1);
}

void TestPractice::pilotsAndRigsAreNotMixed_data() {
    QTest::addColumn<QString>("pilot");
    QTest::addColumn<QString>("rig");
    QTest::addColumn<bool>("everyPilot");
    QTest::addColumn<bool>("everyRig");
    QTest::addColumn<int>("runs");
    QTest::addColumn<QString>("whose");
    QTest::newRow("whoever flew last") << ""
                                       << "" << false << false << 2 << "Kim, on on-screen controls";
    QTest::newRow("a pilot") << "Ada"
                             << "" << false << false << 1 << "Ada, on Desk";
    QTest::newRow("a rig") << ""
                           << "Desk" << false << false << 1 << "Ada, on Desk";
    QTest::newRow("both") << "Kim"
                          << "Panel" << false << false << 3 << "Kim, on Panel";
    QTest::newRow("the screen") << "Kim"
                                << "on-screen controls" << false << false << 2 << "Kim, on on-screen controls";
    QTest::newRow("every rig") << "Kim"
                               << "" << false << true << 5 << "Kim, on every rig";
    QTest::newRow("all") << ""
                         << "" << true << true << 6 << "every pilot, on every rig";
}

void TestPractice::pilotsAndRigsAreNotMixed() {
    QFETCH(QString, pilot);
    QFETCH(QString, rig);
    FilledStore filled;
    for (int i = 0; i < 3; ++i)
        filled.add(by("Kim", "Panel"));
    filled.add(by("Ada", "Desk"));
    filled.add(by("Kim", ""));
    filled.add(by("Kim", ""));
    PracticeWish wish;
    if (!pilot.isEmpty())
        wish.pilot = pilot.toStdString();
    if (!rig.isEmpty())
        wish.rig = rig.toStdString();
    QFETCH(bool, everyPilot);
    QFETCH(bool, everyRig);
    wish.isEveryPilot = everyPilot;
    wish.isEveryRig = everyRig;
    const Result<PracticeRecord> record = practiceRecord(filled.file(), wish);
    QVERIFY(record.has_value());
    QTEST(static_cast<int>(record->runs.size()), "runs");
    QTEST(QString::fromStdString(describe(*record).english()), "whose");
    QCOMPARE(record->lines.size(), std::size_t(3));
    QCOMPARE(record->lines.front().runs, 2); // the most recent first
    for (std::size_t i = 1; i < record->runs.size(); ++i)
        QVERIFY(record->runs[i - 1].startedUnixMillis < record->runs[i].startedUnixMillis);
}

void TestPractice::unknownNamesAreErrors_data() {
    QTest::addColumn<QString>("pilot");
    QTest::addColumn<QString>("rig");
    QTest::addColumn<QString>("code");
    QTest::addColumn<QString>("words");
    QTest::newRow("pilot") << "Kam"
                           << ""
                           << "unknown-pilot"
                           << "did you mean 'Kim'?";
    QTest::newRow("rig of another") << "Kim"
                                    << "Desk"
                                    << "unknown-rig"
                                    << "there are runs on Panel";
}

void TestPractice::unknownNamesAreErrors() {
    QFETCH(QString, pilot);
    QFETCH(QString, rig);
    QFETCH(QString, words);
    FilledStore filled;
    filled.add(by("Kim", "Panel"));
    filled.add(by("Ada", "Desk"));
    PracticeWish wish;
    wish.pilot = pilot.toStdString();
    if (!rig.isEmpty())
        wish.rig = rig.toStdString();
    const Result<PracticeRecord> record = practiceRecord(filled.file(), wish);
    QVERIFY(!record);
    QTEST(QString::fromStdString(record.error().code), "code");
    QVERIFY2(QString::fromStdString(record.error().message).contains(words), record.error().message.c_str());
}

void TestPractice::withoutRunsThereIsNothing() {
    FilledStore filled;
    PracticeWish wish;
    wish.pilot = "Kim";
    const Result<PracticeRecord> record = practiceRecord(filled.file(), wish);
    QVERIFY(record && record->runs.empty() && record->lines.empty());
}

void TestPractice::anOutcomeIsTheRunWithoutSamples() {
    FilledStore filled;
    const std::int64_t id = filled.add({});
    const Result<StoredRun> whole = filled.store.load(id);
    Result<Outcomes> outcomes = Outcomes::open(filled.file());
    QVERIFY(outcomes.has_value());
    const Result<StoredRun> outcome = outcomes->load(id);
    QVERIFY(whole && outcome);
    QVERIFY(!whole->samples.empty() && outcome->samples.empty());
    QCOMPARE(outcome->score.milliPoints, whole->score.milliPoints);
    QCOMPARE(outcome->results.size(), whole->results.size());
    QCOMPARE(outcome->header.flowSource, whole->header.flowSource);
    QVERIFY(outcome->damage.empty());
    QVERIFY(!outcomes->load(id + 1));
}

QTEST_APPLESS_MAIN(TestPractice)
#include "test_practice.moc"
