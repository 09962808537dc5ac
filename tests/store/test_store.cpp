#include <QFile>
#include <QtTest>
#include <algorithm>
#include <rapidcheck.h>
#include <sys/stat.h>
#include <sys/wait.h>
#include <unistd.h>

#include "store/database.h"
#include "store/schema.h"
#include "store/storerecorder.h"
#include "storefixture.h"

using namespace flowhand;
using namespace std::chrono_literals;

namespace {

/// A run as a session hands it over: whole-tick times that never go back, several samples of several origins at one
/// time.
std::vector<Sample> anyRun() {
    std::vector<Sample> samples;
    std::int64_t micros = 0;
    for (int i = *rc::gen::inRange(0, 300); i > 0; --i) {
        micros += *rc::gen::weightedOneOf<std::int64_t>({{4, rc::gen::just<std::int64_t>(0)},
                                                         {6, rc::gen::inRange<std::int64_t>(1, 50'000)},
                                                         {1, rc::gen::inRange<std::int64_t>(0, 12'000'000)}});
        const double number = *rc::gen::oneOf(rc::gen::map(rc::gen::inRange(0, 10000),
                                                           [](int n) {
                                                               return n / 100.0;
                                                           }),
                                              rc::gen::map(rc::gen::inRange(0, 10000),
                                                           [](int n) {
                                                               return std::sqrt(double(n));
                                                           }),
                                              rc::gen::just(std::numeric_limits<double>::quiet_NaN()));
        samples.push_back({std::chrono::microseconds(micros), SignalId{*rc::gen::inRange(0U, 8U)},
                           Value::number(number), Actor(*rc::gen::inRange(0, 3)), Origin(*rc::gen::inRange(0, 5)),
                           ControlId{*rc::gen::inRange<std::uint16_t>(0, 4)}});
    }
    return samples;
}

/// In batches as a session makes them, flushed now and then.
void record(Recorder& recorder, const std::vector<Sample>& samples) {
    for (std::size_t at = 0; at < samples.size();) {
        const std::size_t count = std::min<std::size_t>(*rc::gen::inRange<std::size_t>(1, 20), samples.size() - at);
        RC_ASSERT(recorder.samples(std::span(samples).subspan(at, count)));
        at += count;
        if (*rc::gen::inRange(0, 4) == 0)
            RC_ASSERT(recorder.flush(samples[at - 1].time));
    }
}

std::vector<Value> valuesAfter(const std::vector<Sample>& samples, Time time) {
    std::vector<Value> values;
    for (const Sample& sample : samples) {
        if (sample.time > time)
            break;
        values.resize(std::max(values.size(), indexOf(sample.signal) + 1));
        values[indexOf(sample.signal)] = sample.value;
    }
    return values;
}

/// Of one signal; of several at one time the last.
std::vector<Sample> rowsOf(const std::vector<Sample>& samples, SignalId signal) {
    std::vector<Sample> rows;
    for (const Sample& sample : samples) {
        if (sample.signal != signal)
            continue;
        if (!rows.empty() && rows.back().time == sample.time)
            rows.pop_back();
        rows.push_back(sample);
    }
    return rows;
}

std::vector<Sample> rowsOf(const SamplesBySignal& samples, SignalId signal) {
    std::vector<Sample> rows;
    const SignalSamples& columns = samples[signal];
    for (std::size_t i = 0; i < columns.size(); ++i) {
        const SignalSamples::Maker& maker = columns.makerOf(i);
        rows.push_back(
            {columns.times[i], signal, Value::number(columns.values[i]), maker.actor, maker.origin, maker.control});
    }
    return rows;
}

/// Runs `check` in a process of an ordinary user, for whom file permissions count; gives its exit status.
int asOrdinaryUser(const std::function<int()>& check) {
    const pid_t child = fork();
    if (child == 0) {
        if (geteuid() == 0 && seteuid(65534) != 0)
            _exit(99);
        _exit(check());
    }
    int status = -1;
    waitpid(child, &status, 0);
    return WIFEXITED(status) ? WEXITSTATUS(status) : -1;
}

QByteArray contentOf(const std::string& file) {
    QFile content(QString::fromStdString(file));
    return content.open(QIODevice::ReadOnly) ? content.readAll() : QByteArray();
}

void makeRun(const std::string& file) {
    Result<Store> store = Store::open(file);
    QVERIFY(store);
    const std::unique_ptr<Recorder> recorder = store->recorder();
    QVERIFY(recorder->begin(testHeader()));
    QVERIFY(recorder->samples(testSamples(1)));
    QVERIFY(recorder->finish(1s, testScore(), testResults()));
}

} // namespace

class TestStore : public QObject {
    Q_OBJECT

private Q_SLOTS:
    void everyRunComesBack();
    void aLongRunComesBackBySignal();
    void headerAndResultComeBack();
    void cutOffRunsAreRecovered();
    void runsAreListedNewestFirst();
    void simulatedHandsAreLabelled_data();
    void simulatedHandsAreLabelled();
    void sourcesAreKeptOnce();
    void anUnreadableFlowIsNotRecorded();
    void migrationsRunOnceAndInOrder();
    void aFailedMigrationLeavesTheFileAsItWas();
    void anOldSchemaIsOpened();
    void aNewerSchemaIsRefusedUntouched();
    void refusedFilesSayWhy_data();
    void refusedFilesSayWhy();
    void aMissingFileIsNotMade_data();
    void aMissingFileIsNotMade();
    void aLockedFileSaysSo();
    void aLockInMidRunIsSaidOnce();
    void aReadOnlyFileCanBeRead();
    void permissionsAreRespected();
    void aFullDiskIsSaidOnce();
};

void TestStore::everyRunComesBack() {
    QVERIFY(rc::check("samples, their order and the values at any time come back", [] {
        const TemporaryStore place;
        Result<Store> store = Store::open(place.file());
        RC_ASSERT(store.has_value());
        const std::vector<Sample> samples = anyRun();
        const std::unique_ptr<Recorder> recorder = store->recorder();
        RC_ASSERT(recorder->begin(testHeader()));
        record(*recorder, samples);
        RC_ASSERT(recorder->finish(samples.empty() ? Time{} : samples.back().time, {}, {}));
        const Result<StoredRun> run = store->load(recorder->runId());
        RC_ASSERT(run.has_value());
        RC_ASSERT(run->damage.empty());
        RC_ASSERT(run->samples == samples);
        const Result<StoredRun> bySignal = store->load(recorder->runId(), SampleForm::BySignal);
        RC_ASSERT(bySignal && bySignal->damage.empty() && bySignal->samples.empty());
        for (std::uint32_t signal = 0; signal < 8; ++signal)
            RC_ASSERT(rowsOf(bySignal->bySignal, SignalId{signal}) == rowsOf(samples, SignalId{signal}));
        const Time time = std::chrono::microseconds(*rc::gen::inRange<std::int64_t>(-10, 60'000'000));
        const Result<std::vector<Value>> values = store->valuesAt(recorder->runId(), time);
        RC_ASSERT(values.has_value());
        RC_ASSERT(*values == valuesAfter(samples, time));
    }));
}

/// Long enough that several threads unpack it; a hand and the partner at one lever, and a damaged window in the middle.
void TestStore::aLongRunComesBackBySignal() {
    const TemporaryStore place;
    std::vector<Sample> samples = testSamples(600);
    for (Sample& sample : samples)
        if (sample.signal == SignalId{0} && sample.time.count() / 1'000'000'000 % 7 == 3)
            sample.actor = Actor::Partner;
    {
        Result<Store> store = Store::open(place.file());
        QVERIFY(store);
        const std::unique_ptr<Recorder> recorder = store->recorder();
        QVERIFY(recorder->begin(testHeader()));
        QVERIFY(recorder->samples(samples));
        QVERIFY(recorder->finish(600s, testScore(), testResults()));
        Result<Connection> connection = openDatabase(place.file(), false, 1s);
        QVERIFY(connection && connection->execute("UPDATE chunk SET samples = x'00' WHERE window = 60"));
    }
    Result<Store> store = Store::open(place.file());
    const Result<StoredRun> inOrder = store->load(1);
    const Result<StoredRun> bySignal = store->load(1, SampleForm::BySignal);
    QVERIFY(inOrder && bySignal);
    std::erase_if(samples, [](const Sample& sample) {
        return sample.time >= 300s && sample.time < 305s;
    });
    QVERIFY(inOrder->samples == samples);
    QCOMPARE(bySignal->bySignal.size(), samples.size());
    for (std::uint32_t signal = 0; signal < 8; ++signal)
        QVERIFY(rowsOf(bySignal->bySignal, SignalId{signal}) == rowsOf(samples, SignalId{signal}));
    QVERIFY(!inOrder->damage.empty());
    QCOMPARE(bySignal->damage, inOrder->damage);
    QCOMPARE(bySignal->missing.size(), inOrder->missing.size());
    QVERIFY(bySignal->missing.front().from == 300s && bySignal->missing.front().to == 305s);
}

void TestStore::headerAndResultComeBack() {
    const TemporaryStore place;
    Result<Store> store = Store::open(place.file());
    QVERIFY(store);
    const std::unique_ptr<Recorder> recorder = store->recorder();
    RunHeader header = testHeader();
    header.scenario = "Surprises, part 2";
    header.setup.events = {{"engine", "Engine 2 fails", "first_officer", "Engine failure."},
                           {"tyre", "A tyre", "", ""}};
    QVERIFY(recorder->begin(header));
    const std::vector<RunCommand> commands = {{0s, CommandKind::Unobserved, "airspeed height"},
                                              {100ms, CommandKind::CarryOn, "Taxi"},
                                              {200ms, CommandKind::Start, ""},
                                              {500ms, CommandKind::Event, "engine"},
                                              {1s, CommandKind::Hold, "the telephone"},
                                              {1500ms, CommandKind::Gap, "the box is unplugged"},
                                              {1700ms, CommandKind::Jump, "flap_12"},
                                              {2s, CommandKind::Resume, ""},
                                              {9s, CommandKind::Stop, ""}};
    for (const RunCommand& command : commands)
        QVERIFY(recorder->command(command));
    Event due;
    due.time = 1s;
    due.kind = EventKind::StepDue;
    due.step = 1;
    Event ended;
    ended.time = 9s;
    ended.kind = EventKind::RunEnded;
    QVERIFY(recorder->events(std::vector<Event>{due}));
    QVERIFY(recorder->flush(2s));
    QVERIFY(recorder->events(std::vector<Event>{ended}));
    const RunLosses losses{3, 2500us, {{"quadrant", 12, 1}}};
    QVERIFY(recorder->losses(losses));
    QVERIFY(recorder->finish(9s, testScore(), testResults()));
    const Result<StoredRun> run = store->load(recorder->runId());
    QVERIFY(run);
    QCOMPARE(run->damage.size(), std::size_t(0));
    QVERIFY(run->losses == losses);
    QCOMPARE(run->commands, commands);
    QCOMPARE(run->eventLines.size(), std::size_t(2));
    QVERIFY(run->eventLines[0].find("flap_12") != std::string::npos);
    const RunHeader& back = run->header;
    QCOMPARE(back.startedUnixMillis, header.startedUnixMillis);
    QCOMPARE(back.pilot, header.pilot);
    QCOMPARE(back.programVersion, header.programVersion);
    QCOMPARE(back.aircraftSource, header.aircraftSource);
    QCOMPARE(back.flowId, header.flowId);
    QCOMPARE(back.flowFile, header.flowFile);
    QCOMPARE(back.flowSource, header.flowSource);
    QCOMPARE(back.rigSource, header.rigSource);
    QCOMPARE(back.motionSource, header.motionSource);
    QCOMPARE(back.scenario, header.scenario);
    QVERIFY(back.setup.events == header.setup.events);
    QCOMPARE(back.controlNames, header.controlNames);
    QCOMPARE(back.setup.ownSeat, header.setup.ownSeat);
    QCOMPARE(back.setup.isSolo, header.setup.isSolo);
    QCOMPARE(back.setup.seed, header.setup.seed);
    QCOMPARE(back.setup.partnerErrorRate, header.setup.partnerErrorRate);
    QVERIFY(back.setup.hasPartnerHands);
    QVERIFY(back.setup.latency == header.setup.latency);
    QCOMPARE(back.setup.controls.size(), header.setup.controls.size());
    QCOMPARE(back.setup.controls[0].sigma, 0.025);
    QVERIFY(back.setup.controls[2].isMomentary && back.setup.controls[2].isSimulated);
    QCOMPARE(run->score.milliPoints, std::int64_t(77'500));
    QCOMPARE(run->score.upperMilliPoints, std::int64_t(80'000));
    QVERIFY(run->score.whyNotPassed == testScore().whyNotPassed);
    QVERIFY(run->score.pace == 12'345ms);
    QVERIFY(run->score.ledger.at(0).what == LossKind::NotDone);
    QVERIFY(run->score.ledger.at(0).text == testScore().ledger.at(0).text);
    QCOMPARE(run->score.outOfOrder, testScore().outOfOrder);
    QVERIFY(run->score.late == testScore().late);
    QCOMPARE(run->results.size(), std::size_t(2));
    QVERIFY(run->results[0].done == 3'000'001us && run->results[0].state == StepState::Done);
    QVERIFY(run->results[1].due == kForever && run->results[1].isTooEarly && !run->results[1].isOwn);
    QVERIFY(run->summary.length == 9s && run->summary.isFinished && run->summary.isScored && !run->summary.isPassed);
}

void TestStore::cutOffRunsAreRecovered() {
    const TemporaryStore place;
    const std::vector<Sample> samples = testSamples(12);
    {
        Result<Store> store = Store::open(place.file());
        QVERIFY(store);
        const std::unique_ptr<Recorder> recorder = store->recorder();
        QVERIFY(recorder->begin(testHeader()));
        QVERIFY(recorder->samples(samples));
    }
    Result<Store> store = Store::open(place.file());
    QVERIFY(store);
    const Result<std::vector<RunSummary>> runs = store->runs();
    QVERIFY(runs && runs->size() == 1);
    QVERIFY(!runs->front().isFinished);
    QVERIFY(runs->front().length == samples.back().time);
    const Result<StoredRun> run = store->load(runs->front().id);
    QVERIFY(run && run->samples == samples && run->damage.empty());
}

void TestStore::runsAreListedNewestFirst() {
    const TemporaryStore place;
    makeRun(place.file());
    makeRun(place.file());
    Result<Store> store = Store::open(place.file());
    QVERIFY(store);
    const Result<std::vector<RunSummary>> runs = store->runs();
    QVERIFY(runs && runs->size() == 2);
    QCOMPARE(runs->at(0).id, std::int64_t(2));
    QCOMPARE(runs->at(0).milliPoints, std::int64_t(77'500));
    QCOMPARE(runs->at(1).flowTitle, std::string("Taxi light and flap"));
    QCOMPARE(store->load(3).error().code, std::string("no-such-run"));
}

void TestStore::simulatedHandsAreLabelled_data() {
    QTest::addColumn<int>("origin");
    QTest::addColumn<int>("actor");
    QTest::addColumn<bool>("isSimulated");
    QTest::newRow("device") << int(Origin::Device) << int(Actor::Hand) << false;
    QTest::newRow("screen") << int(Origin::Screen) << int(Actor::Hand) << true;
    QTest::newRow("script") << int(Origin::Script) << int(Actor::Hand) << true;
    QTest::newRow("practice aircraft") << int(Origin::Practice) << int(Actor::Machine) << false;
    QTest::newRow("partner") << int(Origin::Script) << int(Actor::Partner) << false;
}

void TestStore::simulatedHandsAreLabelled() {
    QFETCH(int, origin);
    QFETCH(int, actor);
    QFETCH(bool, isSimulated);
    const TemporaryStore place;
    Result<Store> store = Store::open(place.file());
    QVERIFY(store);
    const std::unique_ptr<Recorder> recorder = store->recorder();
    QVERIFY(recorder->begin(testHeader()));
    Sample sample = handSample(10, 0, 1.0, Origin(origin));
    sample.actor = Actor(actor);
    QVERIFY(recorder->samples(std::vector<Sample>{sample}));
    QVERIFY(recorder->finish(1s, {}, {}));
    QCOMPARE(store->runs()->front().isSimulated, isSimulated);
}

void TestStore::sourcesAreKeptOnce() {
    const TemporaryStore place;
    makeRun(place.file());
    makeRun(place.file());
    Result<Connection> connection = openDatabase(place.file(), true, 1s);
    QVERIFY(connection);
    QCOMPARE(*connection->number("SELECT count(*) FROM source"), std::int64_t(3));
}

void TestStore::anUnreadableFlowIsNotRecorded() {
    const TemporaryStore place;
    Result<Store> store = Store::open(place.file());
    QVERIFY(store);
    RunHeader header = testHeader();
    header.aircraftSource.clear();
    const std::unique_ptr<Recorder> recorder = store->recorder();
    QCOMPARE(recorder->begin(header).error().code, std::string("store-bad-header"));
    QVERIFY(recorder->samples(testSamples(1)));
    QVERIFY(store->runs()->empty());
}

void TestStore::migrationsRunOnceAndInOrder() {
    const TemporaryStore place;
    Result<Connection> connection = Connection::open(place.file(), OpenMode::Create, 1s);
    QVERIFY(connection);
    const std::vector<Migration> first = {"CREATE TABLE a (x);"};
    const std::vector<Migration> all = {first[0], "ALTER TABLE a ADD COLUMN y; INSERT INTO a VALUES (1, 2);",
                                        "UPDATE a SET y = y + 40;"};
    QVERIFY(migrate(*connection, first));
    QCOMPARE(*connection->number("PRAGMA user_version"), std::int64_t(1));
    QCOMPARE(*connection->number("PRAGMA application_id"), kApplicationId);
    QVERIFY(migrate(*connection, all));
    QVERIFY(migrate(*connection, all));
    QCOMPARE(*connection->number("PRAGMA user_version"), std::int64_t(3));
    QCOMPARE(*connection->number("SELECT sum(y) FROM a"), std::int64_t(42));
}

void TestStore::aFailedMigrationLeavesTheFileAsItWas() {
    const TemporaryStore place;
    Result<Connection> connection = Connection::open(place.file(), OpenMode::Create, 1s);
    QVERIFY(connection);
    const std::vector<Migration> steps = {"CREATE TABLE a (x);",
                                          "CREATE TABLE b (x); INSERT INTO no_such_table VALUES (1);"};
    QVERIFY(!migrate(*connection, steps));
    QCOMPARE(*connection->number("PRAGMA user_version"), std::int64_t(1));
    QCOMPARE(*connection->number("SELECT count(*) FROM sqlite_schema WHERE name = 'b'"), std::int64_t(0));
}

void TestStore::anOldSchemaIsOpened() {
    // Frozen when schema 1 was the newest; see tests/data/store/README.md for what is in it.
    const TemporaryStore place;
    QVERIFY(QFile::copy(TEST_DATA "/store/schema1.sqlite", QString::fromStdString(place.file())));
    QFile::setPermissions(QString::fromStdString(place.file()), QFile::ReadOwner | QFile::WriteOwner);
    Result<Store> store = Store::open(place.file());
    QVERIFY2(store, store ? "" : store.error().message.c_str());
    const Result<std::vector<RunSummary>> runs = store->runs();
    QVERIFY(runs && runs->size() == 2);
    const Result<StoredRun> finished = store->load(1);
    QVERIFY(finished && finished->damage.empty());
    QVERIFY(finished->samples == testSamples(12));
    QCOMPARE(finished->header.flowSource, kTestFlow);
    QCOMPARE(finished->commands.size(), std::size_t(2));
    QCOMPARE(finished->eventLines.size(), std::size_t(2));
    QCOMPARE(finished->score.milliPoints, std::int64_t(77'500));
    const Result<StoredRun> cutOff = store->load(2);
    QVERIFY(cutOff && cutOff->damage.empty() && !cutOff->summary.isFinished);
    QVERIFY(cutOff->samples == testSamples(7));
}

void TestStore::aNewerSchemaIsRefusedUntouched() {
    const TemporaryStore place;
    makeRun(place.file());
    {
        Result<Connection> newer = Connection::open(place.file(), OpenMode::ReadWrite, 1s);
        QVERIFY(newer && newer->execute("PRAGMA user_version = 99"));
    }
    const QByteArray before = contentOf(place.file());
    const Result<Store> store = Store::open(place.file());
    QVERIFY(!store);
    QCOMPARE(store.error().code, std::string("store-newer"));
    QVERIFY(contentOf(place.file()) == before);
}

void TestStore::refusedFilesSayWhy_data() {
    QTest::addColumn<QString>("what");
    QTest::addColumn<QString>("code");
    QTest::newRow("a folder") << "folder"
                              << "store-unreadable";
    QTest::newRow("text") << "text"
                          << "store-damaged";
    QTest::newRow("another program's database") << "foreign"
                                                << "store-unreadable";
    QTest::newRow("below a file") << "below a file"
                                  << "store-unreadable";
}

void TestStore::refusedFilesSayWhy() {
    QFETCH(QString, what);
    QFETCH(QString, code);
    const TemporaryStore place;
    std::string file = place.file();
    if (what == "folder") {
        file = place.folder();
    } else if (what == "foreign") {
        Result<Connection> other = Connection::open(file, OpenMode::Create, 1s);
        QVERIFY(other && other->execute("CREATE TABLE notes (text)"));
    } else {
        QFile text(QString::fromStdString(file));
        QVERIFY(text.open(QIODevice::WriteOnly) && text.write(QByteArray(5000, 'x')) == 5000);
        if (what == "below a file")
            file += "/deeper/runs.sqlite";
    }
    const QByteArray before = contentOf(file);
    const Result<Store> store = Store::open(file);
    QVERIFY(!store);
    QCOMPARE(QString::fromStdString(store.error().code), code);
    QVERIFY(store.error().message.find("--db") != std::string::npos);
    QCOMPARE(store.error().place.file, file);
    QVERIFY(contentOf(file) == before);
}

void TestStore::aMissingFileIsNotMade_data() {
    QTest::addColumn<bool>("isReadOnly");
    QTest::addColumn<bool>("mustExist");
    QTest::newRow("to read") << true << false;
    QTest::newRow("to look for a run") << false << true;
}

void TestStore::aMissingFileIsNotMade() {
    QFETCH(bool, isReadOnly);
    QFETCH(bool, mustExist);
    const TemporaryStore place;
    const Result<Store> store = Store::open(place.file(), {isReadOnly, mustExist, 1s});
    QVERIFY(!store);
    QCOMPARE(store.error().code, std::string("store-missing"));
    QVERIFY(!QFile::exists(QString::fromStdString(place.file())));
}

void TestStore::aLockedFileSaysSo() {
    const TemporaryStore place;
    makeRun(place.file());
    Result<Connection> other = Connection::open(place.file(), OpenMode::ReadWrite, 1s);
    QVERIFY(other && other->execute("PRAGMA locking_mode = EXCLUSIVE; BEGIN EXCLUSIVE; "
                                    "UPDATE run SET pilot = 'x'; COMMIT"));
    const Result<Store> store = Store::open(place.file(), {false, false, 1ms});
    QVERIFY(!store);
    QCOMPARE(store.error().code, std::string("store-locked"));
}

void TestStore::aLockInMidRunIsSaidOnce() {
    const TemporaryStore place;
    Result<Store> store = Store::open(place.file(), {false, false, 1ms});
    QVERIFY(store);
    const std::unique_ptr<Recorder> recorder = store->recorder();
    QVERIFY(recorder->begin(testHeader()));
    Result<Connection> other = Connection::open(place.file(), OpenMode::ReadWrite, 1s);
    QVERIFY(other && other->execute("BEGIN IMMEDIATE"));
    QVERIFY(recorder->samples(testSamples(1)));
    const Status finished = recorder->finish(1s, {}, {});
    QVERIFY(!finished);
    QCOMPARE(finished.error().code, std::string("store-locked"));
    QVERIFY(recorder->samples(testSamples(1)));
    QVERIFY(recorder->flush(2s));
    QVERIFY(recorder->finish(3s, {}, {}));
}

void TestStore::aReadOnlyFileCanBeRead() {
    const TemporaryStore place;
    makeRun(place.file());
    Result<Store> store = Store::open(place.file(), {true, false, 1s});
    QVERIFY(store);
    QCOMPARE(store->runs()->size(), std::size_t(1));
    QCOMPARE(store->load(1)->samples.size(), testSamples(1).size());
    const Status begun = store->recorder()->begin(testHeader());
    QVERIFY(!begun);
    QCOMPARE(begun.error().code, std::string("store-read-only"));
}

void TestStore::permissionsAreRespected() {
    const TemporaryStore place;
    makeRun(place.file());
    chmod(place.file().c_str(), 0444);
    chmod(place.folder().c_str(), 0555);
    const int status = asOrdinaryUser([&] {
        Result<Store> store = Store::open(place.file());
        if (!store || store->runs()->size() != 1)
            return 1;
        const Status begun = store->recorder()->begin(testHeader());
        if (begun || begun.error().code != "store-read-only")
            return 2;
        const Result<Store> fresh = Store::open(place.folder() + "/deeper/runs.sqlite");
        return fresh || fresh.error().code != "store-read-only" ? 3 : 0;
    });
    chmod(place.folder().c_str(), 0755);
    QCOMPARE(status, 0);
}

void TestStore::aFullDiskIsSaidOnce() {
    const TemporaryStore place;
    makeRun(place.file());
    Result<Connection> connection = openDatabase(place.file(), false, 1s);
    // SQLite's own limit gives the same error as a disk without space.
    QVERIFY(connection && connection->number("PRAGMA max_page_count = 30"));
    StoreRecorder recorder(std::move(*connection));
    QVERIFY(recorder.begin(testHeader()));
    std::vector<Sample> samples = testSamples(1000);
    int errors = 0;
    for (std::size_t i = 0; i + 100 <= samples.size(); i += 100)
        if (const Status status = recorder.samples(std::span(samples).subspan(i, 100)); !status)
            ++errors;
    if (const Status status = recorder.finish(1000s, {}, {}); !status) {
        ++errors;
        QCOMPARE(status.error().code, std::string("store-full"));
    }
    QCOMPARE(errors, 1);
    Result<Store> store = Store::open(place.file());
    QVERIFY(store);
    QCOMPARE(store->load(1)->samples.size(), testSamples(1).size());
    const Result<StoredRun> cut = store->load(2);
    QVERIFY(cut && cut->damage.empty());
    samples.resize(cut->samples.size());
    QVERIFY(cut->samples == samples);
}

QTEST_APPLESS_MAIN(TestStore)
#include "test_store.moc"
