#include <QFile>
#include <QtTest>
#include <csignal>
#include <random>
#include <sched.h>
#include <sys/wait.h>
#include <unistd.h>

#include "store/database.h"
#include "store/storerecorder.h"
#include "storefixture.h"

using namespace flowhand;
using namespace std::chrono_literals;

namespace {

constexpr std::size_t kBatch = 25;

/// In a process of its own: records the samples, at most one batch ahead of the disk, and after each batch writes to
/// `report` up to where they are safe. Ends when it is killed.
[[noreturn]] void recordUntilKilled(const std::string& file, const std::vector<Sample>& samples, int report) {
    Result<Connection> connection = openDatabase(file, false, 5s);
    if (!connection)
        _exit(1);
    StoreRecorder recorder(std::move(*connection));
    if (!recorder.begin(testHeader()))
        _exit(2);
    Time before = Time::min();
    for (std::size_t at = 0; at < samples.size(); at += kBatch) {
        if (!recorder.samples(std::span(samples).subspan(at, kBatch)) || !recorder.flush(samples[at].time))
            _exit(3);
        while (recorder.safeUntil() < before)
            sched_yield();
        before = samples[at + kBatch - 1].time;
        const std::int64_t safe = recorder.safeUntil().count();
        if (write(report, &safe, sizeof safe) != sizeof safe)
            _exit(4);
    }
    pause();
    _exit(5);
}

/// Kills the recording once it has reported `reports` times; gives the last time it called safe.
Time killAfter(const std::string& file, const std::vector<Sample>& samples, int reports) {
    int ends[2];
    if (pipe(ends) != 0)
        return kForever;
    const pid_t child = fork();
    if (child == 0) {
        close(ends[0]);
        recordUntilKilled(file, samples, ends[1]);
    }
    close(ends[1]);
    std::int64_t safe = Time::min().count();
    std::int64_t next = 0;
    for (int i = 0; i < reports && read(ends[0], &next, sizeof next) == sizeof next; ++i)
        safe = next;
    kill(child, SIGKILL);
    while (read(ends[0], &next, sizeof next) == sizeof next)
        safe = next;
    close(ends[0]);
    waitpid(child, nullptr, 0);
    return Time(safe);
}

bool isBeginning(const std::vector<Sample>& part, const std::vector<Sample>& whole) {
    return part.size() <= whole.size() && std::equal(part.begin(), part.end(), whole.begin());
}

/// Several finished runs, the log written back into the file.
void makeRuns(const std::string& file, int runs) {
    Result<Store> store = Store::open(file);
    QVERIFY(store);
    for (int i = 0; i < runs; ++i) {
        const std::unique_ptr<Recorder> recorder = store->recorder();
        QVERIFY(recorder->begin(testHeader()));
        QVERIFY(recorder->command({0s, CommandKind::Start, ""}));
        QVERIFY(recorder->samples(testSamples(60)));
        QVERIFY(recorder->finish(60s, testScore(), testResults()));
    }
}

/// Every sample that was read was recorded, in the same order.
bool isSubsequence(const std::vector<Sample>& part, const std::vector<Sample>& whole) {
    auto at = whole.begin();
    for (const Sample& sample : part) {
        at = std::find(at, whole.end(), sample);
        if (at == whole.end())
            return false;
        ++at;
    }
    return true;
}

/// What one damaged file gives away: nothing wrong, and what is missing is named.
void checkDamaged(const std::string& file, int runs, int& openedRuns) {
    Result<Store> store = Store::open(file, {false, false, 1ms});
    if (!store) {
        QVERIFY2(store.error().code.rfind("store-", 0) == 0, store.error().code.c_str());
        return;
    }
    const std::vector<Sample> whole = testSamples(60);
    for (int id = 1; id <= runs; ++id) {
        const Result<StoredRun> run = store->load(id);
        if (!run)
            continue;
        QVERIFY(isSubsequence(run->samples, whole));
        if (run->samples.size() != whole.size() || run->header.flowSource != kTestFlow || run->commands.size() != 1)
            QVERIFY2(!run->damage.empty(), "something is missing and not named");
        else
            ++openedRuns;
    }
}

} // namespace

class TestDamage : public QObject {
    Q_OBJECT

private Q_SLOTS:
    void killedAtAnyMomentNothingSafeIsLost();
    void aFileCutShortIsNeverBelieved();
    void aCutLogLosesItsEndOnly();
    void aDamagedPageIsNamedAndTheRestOpens();
    void oneDamagedChunkCostsOneWindow();
    void aMissingWindowIsNamed();
    void aChangedEventIsNoticed();
};

void TestDamage::killedAtAnyMomentNothingSafeIsLost() {
    const TemporaryStore place;
    const std::vector<Sample> samples = testSamples(20);
    std::mt19937 random(20240607);
    constexpr int kKills = 200;
    int partial = 0;
    for (int i = 1; i <= kKills; ++i) {
        const int reports = std::uniform_int_distribution<int>(0, i % 4 == 0 ? 80 : 30)(random);
        const Time safe = killAfter(place.file(), samples, reports);
        Result<Store> store = Store::open(place.file());
        QVERIFY2(store, store ? "" : store.error().message.c_str());
        const Result<std::vector<RunSummary>> runs = store->runs();
        QVERIFY(runs);
        if (runs->empty())
            continue; // killed before the run began
        QVERIFY(!runs->front().isFinished && !runs->front().isDamaged);
        const Result<StoredRun> run = store->load(runs->front().id);
        QVERIFY(run && run->damage.empty());
        QVERIFY(isBeginning(run->samples, samples));
        partial += !run->samples.empty() && run->samples.size() < samples.size() ? 1 : 0;
        if (safe != Time::min())
            QVERIFY(!run->samples.empty() && run->samples.back().time >= safe);
    }
    QVERIFY2(partial > kKills / 2, "the kills must come in mid-run to prove anything");
}

void TestDamage::aFileCutShortIsNeverBelieved() {
    const TemporaryStore place;
    makeRuns(place.file(), 3);
    QFile file(QString::fromStdString(place.file()));
    std::mt19937 random(1);
    int opened = 0;
    for (int i = 0; i < 60; ++i) {
        const QString copy = QString::fromStdString(place.folder()) + "/cut.sqlite";
        QFile::remove(copy);
        QVERIFY(file.copy(copy));
        QFile cut(copy);
        QVERIFY(cut.resize(std::uniform_int_distribution<qint64>(0, file.size() - 1)(random)));
        checkDamaged(copy.toStdString(), 3, opened);
    }
}

void TestDamage::aCutLogLosesItsEndOnly() {
    const TemporaryStore place;
    const std::vector<Sample> samples = testSamples(20);
    killAfter(place.file(), samples, 50);
    const QString log = QString::fromStdString(place.file()) + "-wal";
    QVERIFY(QFile::exists(log));
    const qint64 size = QFile(log).size();
    std::size_t fewest = samples.size();
    for (int i = 0; i < 40; ++i) {
        const QString copy = QString::fromStdString(place.folder()) + "/cut.sqlite";
        for (const char* end : {"", "-wal", "-shm"})
            QFile::remove(copy + end);
        QVERIFY(QFile::copy(QString::fromStdString(place.file()), copy) && QFile::copy(log, copy + "-wal"));
        QVERIFY(QFile(copy + "-wal").resize(size - size * i / 40));
        Result<Store> store = Store::open(copy.toStdString());
        QVERIFY2(store, store ? "" : store.error().message.c_str());
        const Result<StoredRun> run = store->load(1);
        if (!run) {
            QCOMPARE(run.error().code, std::string("no-such-run"));
            continue;
        }
        QVERIFY(run->damage.empty() && isBeginning(run->samples, samples));
        QVERIFY(run->samples.size() <= fewest);
        fewest = run->samples.size();
    }
}

void TestDamage::aDamagedPageIsNamedAndTheRestOpens() {
    constexpr int kRuns = 3;
    constexpr int kPage = 4096;
    const TemporaryStore place;
    makeRuns(place.file(), kRuns);
    QFile original(QString::fromStdString(place.file()));
    QVERIFY(original.open(QIODevice::ReadOnly));
    const QByteArray whole = original.readAll();
    const QString copy = QString::fromStdString(place.folder()) + "/damaged.sqlite";
    std::mt19937 random(2);
    int opened = 0;
    const int pages = int(whole.size()) / kPage;
    for (int page = 0; page < pages; ++page) {
        QByteArray damaged = whole;
        for (int i = 0; i < kPage; ++i)
            damaged[page * kPage + i] = static_cast<char>(random());
        for (const char* end : {"", "-wal", "-shm"})
            QFile::remove(copy + end);
        QFile file(copy);
        QVERIFY(file.open(QIODevice::WriteOnly) && file.write(damaged) == damaged.size());
        file.close();
        checkDamaged(copy.toStdString(), kRuns, opened);
    }
    // Most pages hold samples of one run; the other runs must not notice.
    QVERIFY2(opened > pages, qPrintable(QString("%1 whole runs in %2 files").arg(opened).arg(pages)));
}

void TestDamage::oneDamagedChunkCostsOneWindow() {
    const TemporaryStore place;
    makeRuns(place.file(), 1);
    Result<Connection> connection = openDatabase(place.file(), false, 1s);
    QVERIFY(connection &&
            connection->execute("UPDATE chunk SET samples = zeroblob(100) WHERE window = 4 AND stream = 0"));
    Result<Store> store = Store::open(place.file());
    const Result<StoredRun> run = store->load(1);
    QVERIFY(run);
    QCOMPARE(run->damage, std::vector<std::string>{"samples of the devices between 0:20.0 and 0:25.0 are damaged"});
    QCOMPARE(run->samples.size(), testSamples(60).size() - 250);
}

void TestDamage::aMissingWindowIsNamed() {
    const TemporaryStore place;
    makeRuns(place.file(), 1);
    Result<Connection> connection = openDatabase(place.file(), false, 1s);
    QVERIFY(connection && connection->execute("DELETE FROM chunk WHERE window = 4"));
    Result<Store> store = Store::open(place.file());
    const Result<StoredRun> run = store->load(1);
    QVERIFY(run);
    QCOMPARE(run->damage, std::vector<std::string>{"the samples from 0:20.0 to 0:25.0 are missing"});
}

void TestDamage::aChangedEventIsNoticed() {
    const TemporaryStore place;
    Result<Store> store = Store::open(place.file());
    const std::unique_ptr<Recorder> recorder = store->recorder();
    QVERIFY(recorder->begin(testHeader()));
    QVERIFY(recorder->events(std::vector<Event>(3)));
    QVERIFY(recorder->finish(1s, {}, {}));
    Result<Connection> connection = openDatabase(place.file(), false, 1s);
    QVERIFY(connection && connection->execute("UPDATE event SET line = '{}' WHERE number = 1"));
    const Result<StoredRun> run = store->load(1);
    QVERIFY(run);
    QCOMPARE(run->damage.size(), std::size_t(1));
    QVERIFY(run->damage[0].find("events") != std::string::npos);
}

QTEST_APPLESS_MAIN(TestDamage)
#include "test_damage.moc"
