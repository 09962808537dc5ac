#include <QFile>
#include <QFileInfo>
#include <QtTest>

#include "store/database.h"
#include "storefixture.h"

using namespace flowhand;
using namespace std::chrono_literals;

namespace {

Note wordsOf(const char* text) {
    Note note;
    note.text = text;
    return note;
}

std::vector<std::int64_t> idsOf(const Result<std::vector<RunSummary>>& runs) {
    std::vector<std::int64_t> ids;
    for (const RunSummary& run : *runs)
        ids.push_back(run.id);
    return ids;
}

using Ids = std::vector<std::int64_t>;

} // namespace

class TestHousekeeping : public QObject {
    Q_OBJECT

private Q_SLOTS:
    void init();
    void runsAreFound_data();
    void runsAreFound();
    void tagsAreSetAndTakenAway();
    void badTagsAreRefused_data();
    void badTagsAreRefused();
    void aDeletedRunComesBack();
    void aFlowHasOneReference();
    void theOldestRunsMakeRoom();
    void runsWithWordsStay();
    void aRunBeingFlownStays();
    void roomIsTrulyGivenBack();
    void damageIsFound();
    void aBackupIsMadeInMidRun();
    void aBackupReplacesNothing();
    void anOldReadOnlyFileIsReadAsNew();

private:
    std::optional<TemporaryStore> m_place;
    std::optional<Store> m_store;
    std::int64_t fly(int runSeconds = 5, const std::string& pilot = "Kim", const std::string& flow = "light_and_flap");
};

void TestHousekeeping::init() {
    m_store.reset();
    m_place.emplace();
    Result<Store> store = Store::open(m_place->file());
    QVERIFY(store);
    m_store.emplace(std::move(*store));
}

std::int64_t TestHousekeeping::fly(int runSeconds, const std::string& pilot, const std::string& flow) {
    RunHeader header = testHeader();
    header.pilot = pilot;
    header.flowId = flow;
    const std::unique_ptr<Recorder> recorder = m_store->recorder();
    const bool isFlown = recorder->begin(header) && recorder->samples(testSamples(runSeconds)) &&
                         recorder->finish(std::chrono::seconds(runSeconds), testScore(), testResults());
    return isFlown ? recorder->runId() : 0;
}

void TestHousekeeping::runsAreFound_data() {
    QTest::addColumn<QString>("text");
    QTest::addColumn<QString>("tag");
    QTest::addColumn<QList<int>>("found");
    QTest::newRow("all") << ""
                         << "" << QList<int>{3, 2, 1};
    QTest::newRow("by pilot, whatever the case") << "ROBIN"
                                                 << "" << QList<int>{2};
    QTest::newRow("by flow") << "taxi light"
                             << "" << QList<int>{3, 2, 1};
    QTest::newRow("by tag's text") << "winter"
                                   << "" << QList<int>{1};
    QTest::newRow("by tag") << ""
                            << "winter check" << QList<int>{1};
    QTest::newRow("not by a part of a tag") << ""
                                            << "winter" << QList<int>{};
    QTest::newRow("by note") << "telephone"
                             << "" << QList<int>{3};
    QTest::newRow("a wild card is a letter") << "te%one"
                                             << "" << QList<int>{};
    QTest::newRow("both") << "robin"
                          << "winter check" << QList<int>{};
}

void TestHousekeeping::runsAreFound() {
    QFETCH(QString, text);
    QFETCH(QString, tag);
    QFETCH(QList<int>, found);
    fly();
    fly(5, "Robin");
    fly();
    QVERIFY(m_store->tag(1, "winter check"));
    QVERIFY(m_store->writeNote(3, wordsOf("The telephone rang.")));
    const Ids ids = idsOf(m_store->runs({text.toStdString(), tag.toStdString()}));
    QCOMPARE(QList<int>(ids.begin(), ids.end()), found);
}

void TestHousekeeping::tagsAreSetAndTakenAway() {
    fly();
    QVERIFY(m_store->tag(1, "check") && m_store->tag(1, "a b") && m_store->tag(1, "check"));
    QCOMPARE(m_store->runs()->front().tags, (std::vector<std::string>{"a b", "check"}));
    QVERIFY(m_store->untag(1, "check"));
    QCOMPARE(m_store->runs()->front().tags, std::vector<std::string>{"a b"});
    QCOMPARE(m_store->untag(1, "check").error().code, std::string("no-such-tag"));
    QCOMPARE(m_store->tag(2, "check").error().code, std::string("no-such-run"));
}

void TestHousekeeping::badTagsAreRefused_data() {
    QTest::addColumn<QString>("tag");
    for (const char* tag : {"", " ", "a,b", " a", "a ", "a\nb", "12345678901234567890123456789012345678901"})
        QTest::newRow(tag) << tag;
}

void TestHousekeeping::badTagsAreRefused() {
    QFETCH(QString, tag);
    fly();
    QCOMPARE(m_store->tag(1, tag.toStdString()).error().code, std::string("bad-tag"));
}

void TestHousekeeping::aDeletedRunComesBack() {
    fly();
    fly();
    QVERIFY(m_store->remove(2));
    QCOMPARE(idsOf(m_store->runs()), Ids{1});
    QCOMPARE(idsOf(m_store->runs({"", "", true})), Ids{2});
    QVERIFY(m_store->load(2)->summary.isDeleted);
    QVERIFY(m_store->restore(2));
    QCOMPARE(idsOf(m_store->runs()), (Ids{2, 1}));
    QVERIFY(m_store->load(2)->samples == testSamples(5));
    QCOMPARE(m_store->remove(3).error().code, std::string("no-such-run"));
}

void TestHousekeeping::aFlowHasOneReference() {
    fly();
    fly();
    fly(5, "Kim", "another_flow");
    QCOMPARE(*m_store->referenceFor(1), std::int64_t(0));
    QVERIFY(m_store->setReference(1));
    QVERIFY(m_store->setReference(2));
    QVERIFY(m_store->setReference(3));
    QCOMPARE(*m_store->referenceFor(1), std::int64_t(2));
    QCOMPARE(*m_store->referenceFor(3), std::int64_t(3));
    QVERIFY(m_store->runs()->at(1).isReference && !m_store->runs()->at(2).isReference);
    QVERIFY(m_store->clearReference(2));
    QCOMPARE(*m_store->referenceFor(1), std::int64_t(0));
    QCOMPARE(m_store->setReference(9).error().code, std::string("no-such-run"));
}

void TestHousekeeping::theOldestRunsMakeRoom() {
    for (int i = 0; i < 6; ++i)
        fly(60);
    QVERIFY(m_store->remove(5));
    const std::int64_t before = m_store->trim(std::int64_t{1} << 40)->bytes;
    const Result<Trimmed> trimmed = m_store->trim(before / 2);
    QVERIFY(trimmed);
    QVERIFY(trimmed->bytes <= before / 2);
    QCOMPARE(trimmed->runs.at(0), std::int64_t(5)); // it was deleted already
    QCOMPARE(trimmed->runs.at(1), std::int64_t(1));
    const Ids left = idsOf(m_store->runs());
    QVERIFY(!left.empty() && left.front() == 6);
    for (const std::int64_t run : left)
        QVERIFY(m_store->load(run)->damage.empty());
}

void TestHousekeeping::runsWithWordsStay() {
    for (int i = 0; i < 4; ++i)
        fly(60);
    QVERIFY(m_store->tag(1, "keep"));
    QVERIFY(m_store->writeNote(2, wordsOf("Look at this one.")));
    QVERIFY(m_store->setReference(3));
    const Result<Trimmed> trimmed = m_store->trim(0);
    QVERIFY(trimmed);
    QCOMPARE(trimmed->runs, Ids{4});
    QCOMPARE(idsOf(m_store->runs()), (Ids{3, 2, 1}));
}

void TestHousekeeping::aRunBeingFlownStays() {
    RunHeader header = testHeader();
    header.startedUnixMillis =
        std::chrono::duration_cast<std::chrono::milliseconds>(std::chrono::system_clock::now().time_since_epoch())
            .count();
    const std::unique_ptr<Recorder> recorder = m_store->recorder();
    QVERIFY(recorder->begin(header));
    QVERIFY(recorder->samples(testSamples(1)));
    const Result<Trimmed> trimmed = m_store->trim(0);
    QVERIFY(trimmed && trimmed->runs.empty());
    QVERIFY(recorder->finish(1s, testScore(), testResults()));
    QVERIFY(m_store->load(1)->samples == testSamples(1));
}

void TestHousekeeping::roomIsTrulyGivenBack() {
    for (int i = 0; i < 4; ++i)
        fly(60);
    QVERIFY(m_store->trim(0));
    m_store.reset(); // writes the log back
    const qint64 emptied = QFileInfo(QString::fromStdString(m_place->file())).size();
    TemporaryStore fresh;
    QVERIFY(Store::open(fresh.file()));
    QVERIFY(emptied <= 2 * QFileInfo(QString::fromStdString(fresh.file())).size());
    Result<Connection> connection = openDatabase(m_place->file(), true, 1s);
    QCOMPARE(*connection->number("SELECT count(*) FROM source"), std::int64_t(0));
    QCOMPARE(*connection->number("SELECT count(*) FROM chunk"), std::int64_t(0));
}

void TestHousekeeping::damageIsFound() {
    fly(20);
    fly(20);
    QVERIFY(m_store->check()->empty());
    Result<Connection> connection = openDatabase(m_place->file(), false, 1s);
    QVERIFY(connection && connection->execute("UPDATE chunk SET samples = zeroblob(9) WHERE run = 2 AND window = 1"));
    const Result<std::vector<std::string>> problems = m_store->check();
    QVERIFY(problems && !problems->empty());
    QVERIFY2(problems->front().find("run 2: samples of the devices between 0:05.0 and 0:10.0") == 0,
             problems->front().c_str());
}

void TestHousekeeping::aBackupIsMadeInMidRun() {
    fly(20);
    QVERIFY(m_store->tag(1, "keep"));
    const std::unique_ptr<Recorder> recorder = m_store->recorder();
    QVERIFY(recorder->begin(testHeader()));
    QVERIFY(recorder->samples(testSamples(7)));
    QVERIFY(recorder->flush(7s));
    const std::string file = m_place->folder() + "/backup.sqlite";
    QVERIFY(m_store->backup(file));
    QVERIFY(recorder->samples(std::vector<Sample>{handSample(8'000'000, 0, 1.0)}));
    QVERIFY(recorder->finish(8s, testScore(), testResults()));
    Result<Store> backup = Store::open(file);
    QVERIFY(backup);
    QCOMPARE(idsOf(backup->runs()), (Ids{2, 1}));
    QVERIFY(backup->check()->empty());
    QVERIFY(backup->load(1)->samples == testSamples(20));
    QCOMPARE(backup->runs()->at(1).tags, std::vector<std::string>{"keep"});
    QVERIFY(!backup->load(2)->summary.isFinished);
    QVERIFY(m_store->load(2)->summary.isFinished && m_store->load(2)->damage.empty());
}

void TestHousekeeping::aBackupReplacesNothing() {
    fly();
    const std::string file = m_place->folder() + "/backup.sqlite";
    QVERIFY(m_store->backup(file));
    QCOMPARE(m_store->backup(file).error().code, std::string("backup-exists"));
    const Status nowhere = m_store->backup(m_place->folder() + "/no/such/folder.sqlite");
    QCOMPARE(nowhere.error().code, std::string("backup-failed"));
}

void TestHousekeeping::anOldReadOnlyFileIsReadAsNew() {
    const QString file = QString::fromStdString(m_place->folder()) + "/old.sqlite";
    QVERIFY(QFile::copy(TEST_DATA "/store/schema1.sqlite", file));
    QFile before(file);
    QVERIFY(before.open(QIODevice::ReadOnly));
    const QByteArray bytes = before.readAll();
    Result<Store> store = Store::open(file.toStdString(), {true});
    QVERIFY2(store, store ? "" : store.error().message.c_str());
    QCOMPARE(idsOf(store->runs()), (Ids{2, 1}));
    QVERIFY(store->load(1)->samples == testSamples(12));
    QCOMPARE(store->tag(1, "x").error().code, std::string("store-read-only"));
    QCOMPARE(store->recorder()->begin(testHeader()).error().code, std::string("store-read-only"));
    before.seek(0);
    QVERIFY(before.readAll() == bytes);
}

QTEST_APPLESS_MAIN(TestHousekeeping)
#include "test_housekeeping.moc"
