// Filters that were written into a rig file, and taken back.

#include <QFile>
#include <QTemporaryDir>
#include <QtTest>

#include "base/textfile.h"
#include "bench/desk.h"
#include "bench/filterchange.h"

using namespace flowhand;

namespace {

const std::string kRig = R"(format = 1
title = "Desk" # mine
[[device]]
name = "desk"
id = "1209:F101"

[[control]]
name = "Left lever"
signal = "thrust_lever_1"
wiring = "axis" # a long-throw pot
input = "X"
range = [10, 240]
median = "8 ms" # since the spikes
noise = 1.5

[[control]]
signal = "taxi_light"
wiring = "contact"
input = "button 2"
)";

const std::vector<RigKey> kQuieter = {{"noise", "2.25"}, {"median", ""}, {"smooth", "\"20 ms\""}};

} // namespace

class TestFilterChange : public QObject {
    Q_OBJECT

private Q_SLOTS:
    void init() {
        m_folder = std::make_unique<QTemporaryDir>();
        m_rigFile = m_folder->filePath("desk.toml").toStdString();
        QVERIFY(writeFile(m_rigFile, kRig));
    }
    void isWrittenAndTakenBack();
    void evidenceHoldsOn();
    void isTakenBackStepByStep();
    void theLastOfAllIsFound();
    void whatWasChangedSinceIsLeftAlone();
    void allOrNothing();
    void onlyWhatDiffersIsOpen();

private:
    [[nodiscard]] std::string text() const { return *readFile(m_rigFile); }
    [[nodiscard]] std::vector<EvidenceRecord> evidence() const {
        Problems problems;
        return *readEvidence(evidenceFileOf(m_rigFile), problems);
    }
    [[nodiscard]] std::vector<ControlFingerprint> fingerprints() const {
        const RigFile rig = rigOf(text());
        return *fingerprintsOf(rig, aircraft().signals);
    }
    static const Aircraft& aircraft() { return *twinJetFolder().aircraft; }
    Status apply(std::size_t control, const std::vector<RigKey>& keys) {
        return applyFilters(m_rigFile, rigOf(text()), aircraft(), {{control, keys}});
    }
    Result<std::vector<ControlKeys>> undo(const std::vector<std::size_t>& controls) {
        return undoFilters(m_rigFile, rigOf(text()), aircraft(), evidence(), controls);
    }

    std::unique_ptr<QTemporaryDir> m_folder;
    std::string m_rigFile;
};

void TestFilterChange::isWrittenAndTakenBack() {
    QVERIFY(apply(0, kQuieter));
    QVERIFY(text().find("noise = 2.25") != std::string::npos);
    QVERIFY(text().find("smooth = \"20 ms\"") != std::string::npos);
    QVERIFY(text().find("median") == std::string::npos);
    const auto undone = undo({0});
    QVERIFY2(undone, undone ? "" : undone.error().message.c_str());
    QCOMPARE(undone->front().keys.size(), std::size_t(3));
    QVERIFY(text().find("noise = 1.5") != std::string::npos);
    QVERIFY(text().find("median = \"8 ms\"") != std::string::npos);
    QVERIFY(text().find("smooth") == std::string::npos);
    QVERIFY(text().find("# mine") != std::string::npos && text().find("# a long-throw pot") != std::string::npos);
    // There is nothing left to be taken back.
    const std::string before = text();
    const auto again = undo({0});
    QVERIFY(!again);
    QCOMPARE(again.error().code, std::string("nothing-to-undo"));
    QCOMPARE(text(), before);
}

void TestFilterChange::evidenceHoldsOn() {
    const std::vector<ControlFingerprint> before = fingerprints();
    QVERIFY(apply(0, kQuieter));
    QCOMPARE(fingerprints()[0].hash, before[0].hash);
    QVERIFY(undo({0}));
    QCOMPARE(fingerprints()[0].hash, before[0].hash);
}

void TestFilterChange::isTakenBackStepByStep() {
    QVERIFY(apply(0, {{"noise", "2.25"}}));
    QVERIFY(apply(0, {{"noise", "3"}}));
    QVERIFY(undo({0}));
    QVERIFY(text().find("noise = 2.25") != std::string::npos);
    QVERIFY(apply(0, {{"noise", "4"}}));
    QVERIFY(undo({0}));
    QVERIFY(text().find("noise = 2.25") != std::string::npos);
    QVERIFY(undo({0}));
    QCOMPARE(text(), kRig);
    QVERIFY(!undo({0}));
}

void TestFilterChange::theLastOfAllIsFound() {
    QVERIFY(lastChangedControls(evidence(), fingerprints()).empty());
    QVERIFY(applyFilters(m_rigFile, rigOf(text()), aircraft(),
                         {{0, {{"noise", "2.25"}}}, {1, {{"debounce", "\"4 ms\""}}}}));
    QCOMPARE(lastChangedControls(evidence(), fingerprints()), (std::vector<std::size_t>{0, 1}));
    QVERIFY(undo({0, 1}));
    QVERIFY(lastChangedControls(evidence(), fingerprints()).empty());
    QCOMPARE(text(), kRig);
}

void TestFilterChange::whatWasChangedSinceIsLeftAlone() {
    QVERIFY(apply(0, kQuieter));
    const std::string changed = edited(text(), "smooth = \"20 ms\"", "smooth = \"30 ms\"");
    QVERIFY(writeFile(m_rigFile, changed));
    const auto undone = undo({0});
    QVERIFY(!undone);
    QCOMPARE(undone.error().code, std::string("filters-changed"));
    QVERIFY2(undone.error().message.find("'smooth' of 'Left lever'") != std::string::npos,
             undone.error().message.c_str());
    QVERIFY2(undone.error().message.find("no smooth") != std::string::npos, undone.error().message.c_str());
    QCOMPARE(text(), changed);
}

void TestFilterChange::allOrNothing() {
    QVERIFY(apply(0, kQuieter));
    const std::string before = text();
    QVERIFY(!undo({0, 1})); // the second one was never changed
    QCOMPARE(text(), before);
    // What makes no good rig file is refused, and nothing is kept of it.
    const std::size_t records = evidence().size();
    QVERIFY(!apply(0, {{"spike_limit", "12"}}));
    QCOMPARE(text(), before);
    QCOMPARE(evidence().size(), records);
}

void TestFilterChange::onlyWhatDiffersIsOpen() {
    const auto open = openKeys(kRig, 0, {{"noise", "1.5"}, {"median", ""}, {"smooth", ""}, {"settle", "\"9 ms\""}});
    QVERIFY(open);
    QCOMPARE(open->size(), std::size_t(2));
    QCOMPARE((*open)[0].key, std::string("median"));
    QCOMPARE((*open)[1].key, std::string("settle"));
}

QTEST_APPLESS_MAIN(TestFilterChange)
#include "test_filterchange.moc"
