#include <QtTest>
#include <algorithm>
#include <random>

#include "base/sha256.h"
#include "session/replay.h"
#include "store/archive.h"
#include "store/archiveparts.h"
#include "store/chunk.h"
#include "store/database.h"
#include "store/runjson.h"
#include "storefixture.h"

using namespace flowhand;
using namespace std::chrono_literals;

namespace {

const std::string kFile = "run.flowrun";

/// A finished run with something of everything beside it.
std::int64_t fly(Store& store) {
    const std::unique_ptr<Recorder> recorder = store.recorder();
    RunHeader header = testHeader();
    header.help = "from memory";
    header.setup.timeScale = 0.5;
    Event due;
    due.kind = EventKind::StepDue;
    due.step = 1;
    due.time = 3s;
    bool isFlown = recorder->begin(header).has_value();
    isFlown &= recorder->command({1us, CommandKind::Start, ""}).has_value();
    isFlown &= recorder->samples(testSamples(12)).has_value();
    isFlown &= recorder->events(std::vector<Event>{{}, due}).has_value();
    isFlown &= recorder->command({13s, CommandKind::Stop, ""}).has_value();
    isFlown &= recorder->losses({3, 2500us, {{"quadrant", 12, 1}}}).has_value();
    isFlown &= recorder->finish(13s, testScore(), testResults()).has_value();
    Note account;
    account.kind = NoteKind::Account;
    account.text = "I forgot the flap.";
    account.author = "Kim";
    Note note;
    note.anchor = {"flap_12", 1500ms, 4s};
    note.text = "Here.";
    isFlown &= store.writeNote(recorder->runId(), account) && store.writeNote(recorder->runId(), note);
    isFlown &= store.tag(recorder->runId(), "winter check").has_value();
    return isFlown ? recorder->runId() : 0;
}

/// The whole of a run as bytes, but for what belongs to a store: numbers, and where the flow lay.
std::string everythingOf(StoredRun run) {
    for (Note& note : run.notes)
        note.id = 0;
    return archiveOf(run).value_or("cannot be archived");
}

std::string replaced(std::string text, const std::string& what, const std::string& with) {
    const std::size_t at = text.find(what);
    return at == std::string::npos ? "'" + what + "' is not there" : text.replace(at, what.size(), with);
}

/// The archive with one of its sections' text changed, and all hashes right.
template <class Change>
Bytes changedIn(const Bytes& archive, char kind, Change change) {
    std::vector<ArchiveSection> sections = *splitSections(archive, kFile);
    for (ArchiveSection& section : sections)
        if (section.kind == kind)
            section.bytes = pack({change(*unpack(section.bytes))});
    return joinSections(sections);
}

} // namespace

class TestArchive : public QObject {
    Q_OBJECT

private Q_SLOTS:
    void initTestCase();
    void nothingIsLost();
    void aCutOffRunStaysOne();
    void theSameArchiveIsTakenOnce();
    void aDamagedRunIsNotArchived();
    void whatIsNoArchiveIsLeftAlone_data();
    void whatIsNoArchiveIsLeftAlone();
    void noBitMayBeWrong();
    void aLieIsFound_data();
    void aLieIsFound();
    void badSamplesAreFound_data();
    void badSamplesAreFound();
    void noPathLeadsOut();
    void whatIsChangedInsideHarmsNothing();

private:
    TemporaryStore m_place;
    std::optional<Store> m_store;
    Bytes m_archive;
    void refuse(const Bytes& archive, const char* why);
};

void TestArchive::initTestCase() {
    Result<Store> store = Store::open(m_place.file());
    QVERIFY(store);
    m_store.emplace(std::move(*store));
    const std::int64_t run = fly(*m_store);
    QVERIFY(run > 0);
    const Result<Bytes> archive = archiveOf(*m_store->load(run));
    QVERIFY2(archive, archive ? "" : archive.error().message.c_str());
    m_archive = *archive;
}

void TestArchive::nothingIsLost() {
    const Result<ArchivedRun> read = readArchive(m_archive, kFile);
    QVERIFY2(read, read ? "" : read.error().message.c_str());
    const TemporaryStore elsewhere;
    Result<Store> other = Store::open(elsewhere.file());
    const Result<std::int64_t> id = other->add(*read);
    QVERIFY2(id, id ? "" : id.error().message.c_str());
    const StoredRun before = *m_store->load(1);
    const StoredRun after = *other->load(*id);
    QVERIFY(after.damage.empty());
    QVERIFY(after.samples == before.samples);
    QCOMPARE(after.commands, before.commands);
    QCOMPARE(after.eventLines, before.eventLines);
    QCOMPARE(after.header.help, std::string("from memory"));
    QCOMPARE(after.header.setup.timeScale, 0.5);
    QCOMPARE(after.header.rigSource, before.header.rigSource);
    QCOMPARE(after.header.setup.seed, before.header.setup.seed);
    QCOMPARE(after.judgedBy, before.judgedBy);
    QCOMPARE(after.summary.tags, before.summary.tags);
    QCOMPARE(after.notes.size(), std::size_t(2));
    QVERIFY(after.losses == before.losses);
    QVERIFY(after.summary.isFinished && after.summary.length == before.summary.length);
    QCOMPARE(everythingOf(after), everythingOf(before));
    QCOMPARE(everythingOf(after), m_archive);
    // Not only as it is read: the rows are the same.
    for (const char* table : {"chunk", "keyframe", "event", "command", "source", "note", "tag", "result"}) {
        Result<Connection> here = openDatabase(m_place.file(), true, 1s);
        Result<Connection> there = openDatabase(elsewhere.file(), true, 1s);
        const std::string sql = std::string("SELECT count(*) FROM ") + table;
        QCOMPARE(*there->number(sql), *here->number(sql));
    }
}

void TestArchive::aCutOffRunStaysOne() {
    const TemporaryStore place;
    Result<Store> store = Store::open(place.file());
    {
        const std::unique_ptr<Recorder> recorder = store->recorder();
        QVERIFY(recorder->begin(testHeader()) && recorder->samples(testSamples(7)));
    }
    const StoredRun before = *store->load(1);
    const Result<ArchivedRun> read = readArchive(*archiveOf(before), kFile);
    QVERIFY(read);
    const StoredRun after = *store->load(*store->add(*read));
    QVERIFY(!after.summary.isFinished && after.samples == before.samples);
    QVERIFY(after.summary.length == before.summary.length);
    QCOMPARE(everythingOf(after), everythingOf(before));
}

void TestArchive::theSameArchiveIsTakenOnce() {
    const TemporaryStore place;
    Result<Store> store = Store::open(place.file());
    const Result<ArchivedRun> read = readArchive(m_archive, kFile);
    QVERIFY(store->add(*read));
    const Result<std::int64_t> again = store->add(*read);
    QVERIFY(!again);
    QCOMPARE(again.error().code, std::string("already-imported"));
    QVERIFY(again.error().message.find("as run 1") != std::string::npos);
    QCOMPARE(store->runs()->size(), std::size_t(1));
}

void TestArchive::aDamagedRunIsNotArchived() {
    StoredRun run = *m_store->load(1);
    run.damage = {"the score is damaged"};
    QCOMPARE(archiveOf(run).error().code, std::string("damaged-run"));
}

void TestArchive::refuse(const Bytes& archive, const char* why) {
    const Result<ArchivedRun> read = readArchive(archive, kFile);
    QVERIFY(!read);
    QVERIFY2(QString::fromStdString(read.error().message).contains(why), read.error().message.c_str());
    QCOMPARE(read.error().place.file, kFile);
}

void TestArchive::whatIsNoArchiveIsLeftAlone_data() {
    QTest::addColumn<QByteArray>("bytes");
    QTest::addColumn<QString>("code");
    QTest::newRow("nothing") << QByteArray() << "not-an-archive";
    QTest::newRow("text") << QByteArray(500, 'x') << "not-an-archive";
    QTest::newRow("a database of runs") << QByteArray("SQLite format 3\0", 16) + QByteArray(500, '\0')
                                        << "not-an-archive";
    QTest::newRow("the mark alone") << QByteArray("FLHWRUN\1") << "not-an-archive";
    QTest::newRow("of a newer program") << QByteArray("FLHWRUN\2") + QByteArray(64, '0') << "newer-archive";
    QTest::newRow("empty") << QByteArray("FLHWRUN\1") + QByteArray::fromStdString(sha256("")) << "damaged-archive";
}

void TestArchive::whatIsNoArchiveIsLeftAlone() {
    QFETCH(QByteArray, bytes);
    QFETCH(QString, code);
    const Result<ArchivedRun> read = readArchive(bytes.toStdString(), kFile);
    QVERIFY(!read);
    QCOMPARE(QString::fromStdString(read.error().code), code);
}

void TestArchive::noBitMayBeWrong() {
    std::mt19937 random(7);
    for (int i = 0; i < 300; ++i) {
        Bytes damaged = m_archive;
        damaged[random() % damaged.size()] ^= static_cast<char>(1 << random() % 8);
        QVERIFY(!readArchive(damaged, kFile));
        QVERIFY(!readArchive(std::string_view(m_archive).substr(0, random() % m_archive.size()), kFile));
    }
}

void TestArchive::aLieIsFound_data() {
    QTest::addColumn<QString>("section");
    QTest::addColumn<QString>("what");
    QTest::addColumn<QString>("with");
    QTest::addColumn<QString>("why");
    const auto row = [](const char* name, char section, const char* what, const char* with, const char* why) {
        QTest::newRow(name) << QString(QChar(section)) << what << with << why;
    };
    row("a path as the aircraft", 'h', R"("aircraft_folder":"bench")", R"("aircraft_folder":"../../etc")", "name");
    row("a path as the flow", 'h', R"("flow_id":"light_and_flap")", R"("flow_id":"/etc/passwd")", "name");
    row("an empty name", 'h', R"("flow_id":"light_and_flap")", R"("flow_id":"")", "name");
    row("control characters", 'h', R"("pilot":"Kim")", R"("pilot":"\u001b[2J")", "no text");
    row("a tag of two", 'h', "winter check", "a,b", "tag");
    row("a date of ages", 'h', R"("started_ms":1700000000123)", R"("started_ms":9223372036854775807)", "date");
    row("a date that is a fraction", 'h', R"("started_ms":1700000000123)", R"("started_ms":1.8e20)", "header");
    // Found by the fuzzer: the library would convert it to anything.
    row("a seed that fits nothing", 'u', R"("seed":18364758544493064720)", R"("seed":1.8e25)", "set-up");
    row("a length of ages", 'h', R"("length_us":13000000)", R"("length_us":9223372036854775807)", "header");
    row("no header", 'h', "{", "[", "header");
    row("another flow than named", 'f', "Taxi light on", "Taxi light off", "header");
    row("another rig than named", 'g', "quadrant", "lever", "header");
    row("an aircraft that is none", 'a', "format = 1", "format = x", "header");
    row("fewer controls", 'u', R"({"wired":true,"simulated":true)", R"({"wired":true,"simulated":1)", "set-up");
    row("noise below none", 'u', R"("sigma":0.025)", R"("sigma":-1)", "noise");
    row("errors of 200 %", 'u', R"("partner_error_rate":0.1)", R"("partner_error_rate":2.0)", "range");
    row("time that stands", 'u', R"("time_scale":0.5)", R"("time_scale":0.0)", "range");
    row("commands out of order", 'c', R"("time_us":13000000)", R"("time_us":0)", "commands");
    row("a command that is none", 'c', R"("kind":"stop")", R"("kind":"shell")", "commands");
    row("points beyond all", 'r', R"("milli_points":77500)", R"("milli_points":-9223372036854775808)", "result");
    row("a step done in ages", 'r', R"("done":3000001000)", R"("done":9000000000000000000)", "result");
    row("a note of nothing", 'n', R"("text":"Here.")", R"("text":"")", "note");
    row("a note on no step", 'n', R"("step":"flap_12")", R"("step":"flap_13")", "note");
    row("a kind of note that is none", 'n', R"("kind":"note")", R"("kind":"trigger")", "notes");
}

void TestArchive::aLieIsFound() {
    QFETCH(QString, section);
    QFETCH(QString, what);
    QFETCH(QString, with);
    QFETCH(QString, why);
    const Bytes changed = changedIn(m_archive, section.at(0).toLatin1(), [&](const std::string& text) {
        const std::string other = replaced(text, what.toStdString(), with.toStdString());
        if (other.find("is not there") != std::string::npos)
            qFatal("%s", other.c_str());
        return other;
    });
    refuse(changed, why.toUtf8().constData());
}

void TestArchive::badSamplesAreFound_data() {
    QTest::addColumn<qint64>("micros");
    QTest::addColumn<int>("signal");
    QTest::addColumn<double>("value");
    QTest::newRow("an infinite lever") << qint64(1) << 0 << std::numeric_limits<double>::infinity();
    QTest::newRow("a gate that is none") << qint64(1) << 1 << 3.0;
    QTest::newRow("half a gate") << qint64(1) << 1 << 0.5;
    QTest::newRow("a switch at 2") << qint64(1) << 2 << 2.0;
    QTest::newRow("a signal that is none") << qint64(1) << 4000 << 1.0;
    QTest::newRow("in a hundred years") << qint64(3'000'000'000'000'000) << 0 << 1.0;
    QTest::newRow("before all time") << qint64(-3'000'000'000'000'000) << 0 << 1.0;
}

void TestArchive::badSamplesAreFound() {
    QFETCH(qint64, micros);
    QFETCH(int, signal);
    QFETCH(double, value);
    std::vector<ArchiveSection> sections = *splitSections(m_archive, kFile);
    Sample sample = handSample(micros, static_cast<std::uint32_t>(signal), value);
    sample.control = kNoControl;
    sections.push_back({kSampleSections[0], encodeChunk({{sample, 0}})});
    refuse(joinSections(sections), "sample");
}

void TestArchive::noPathLeadsOut() {
    // The path of the flow on the other computer is not in the archive, and a made up one takes its place.
    StoredRun run = *m_store->load(1);
    run.header.flowFile = "/home/kim/secret/flow.toml";
    const Bytes archive = *archiveOf(run);
    const Result<ArchivedRun> read = readArchive(archive, kFile);
    QVERIFY(read);
    QCOMPARE(read->run.header.flowFile, std::string("bench/light_and_flap.toml"));
    const std::vector<ArchiveSection> sections = *splitSections(archive, kFile);
    for (const ArchiveSection& section : sections)
        if (const std::optional<Bytes> text = unpack(section.bytes))
            QVERIFY(text->find("secret") == std::string::npos);
}

/// Bytes changed within the sections, packing and hash right: refused, or a run like any other.
void TestArchive::whatIsChangedInsideHarmsNothing() {
    const std::vector<ArchiveSection> whole = *splitSections(m_archive, kFile);
    std::mt19937 random(11);
    int refused = 0;
    constexpr int kLies = 1500;
    for (int i = 0; i < kLies; ++i) {
        std::vector<ArchiveSection> sections = whole;
        ArchiveSection& section = sections[random() % sections.size()];
        Bytes plain = *unpack(section.bytes);
        for (unsigned change = 1 + random() % 3; change > 0 && !plain.empty(); --change)
            plain[random() % plain.size()] = static_cast<char>(random() % 3 == 0 ? random() : '0' + random() % 10);
        section.bytes = pack({plain});
        const Result<ArchivedRun> read = readArchive(joinSections(sections), kFile);
        if (!read) {
            ++refused;
            continue;
        }
        QVERIFY(archiveOf(read->run));
        Problems problems;
        const std::optional<Aircraft> aircraft =
            parseAircraft(read->run.header.aircraftSource, "aircraft.toml", problems);
        const std::optional<Flow> flow =
            parseFlow(read->run.header.flowSource, read->run.header.flowFile, *aircraft, problems);
        QVERIFY(flow);
        (void)judgeAgain(*aircraft, *flow, read->run.header.setup, read->run.samples, read->run.commands,
                         read->run.summary.length);
    }
    QVERIFY(refused > kLies / 4 && refused < kLies);
}

QTEST_APPLESS_MAIN(TestArchive)
#include "test_archive.moc"
