#include <QtTest>

#include <fstream>
#include <iterator>

#include <rapidcheck.h>

#include "bench/evidence.h"
#include "procedure/aircraftfile.h"

using namespace flowhand;
using namespace std::chrono_literals;

namespace {

const Aircraft& twinJet() {
    static const Aircraft aircraft = [] {
        Problems problems;
        return *loadAircraft(PROCEDURES "/twin_jet/aircraft.toml", problems);
    }();
    return aircraft;
}

std::vector<ControlFingerprint> fingerprints(const std::string& source) {
    Problems problems;
    const auto rig = parseRigFile(source, "rig.toml", twinJet().signals, twinJet().controls.size(), problems);
    if (!rig)
        qFatal("%s", describe(problems.firstError()).c_str());
    return *fingerprintsOf(*rig, twinJet().signals);
}

const std::string kHead = "format = 1\ntitle = \"Desk\"\n";
const std::string kDevice = "[[device]]\nname = \"unit\"\nid = \"1209:F101\"\nport = \"usb-1\"\n";
const std::string kLever = "[[control]]\nname = \"Lever\"\nsignal = \"thrust_lever_1\"\nwiring = \"axis\"\ninput = "
                           "\"X\"\nrange = [180, 3910]\nnoise = 2\n";
const std::string kTiller = "[[control]]\nsignal = \"tiller\"\nwiring = \"axis\"\ninput = \"Rz\"\nrange = [90, 4010]\n";

EvidenceRecord record(std::string hash = std::string(64, 'a')) {
    EvidenceRecord record;
    record.kind = kCalibrationEvidence;
    record.unixSeconds = 1'772'388'245;
    record.control = "Lever \"one\"";
    record.signals = {"thrust_lever_1", "thrust_lever_2"};
    record.fingerprint = std::move(hash);
    record.isGood = true;
    record.result = R"({"range":[180,3910],"noise":1.25})";
    record.raw = {
        {"unit", "X", 1ms, 4s, 4000, {{1ms, 180, false}, {1500ms, -7, false}, {2s, 0, true}, {3s, 4000, false}}}};
    return record;
}

std::string contentOf(const QString& file) {
    std::ifstream in(file.toStdString(), std::ios::binary);
    return {std::istreambuf_iterator<char>(in), {}};
}

void put(const QString& file, const std::string& content) {
    std::ofstream(file.toStdString(), std::ios::binary) << content;
}

} // namespace

class TestEvidence : public QObject {
    Q_OBJECT

private Q_SLOTS:
    void init() { QVERIFY(m_folder.isValid()); }
    void standsBesideTheRigFile();
    void comesBackAsItWasWritten();
    void everyRecordComesBack();
    void noFileIsNoEvidence();
    void aDamagedLineIsNamedAndTheOthersHold_data();
    void aDamagedLineIsNamedAndTheOthersHold();
    void aNewerFormatIsLeftAlone();
    void aCutWriteDoesNotHarmTheNext();
    void appendingKeepsEveryByte();
    void anUnwritableFileIsAnError();
    void datesAreRead_data();
    void datesAreRead();
    void fingerprintChangesWithWiringAndCalibration_data();
    void fingerprintChangesWithWiringAndCalibration();
    void staleness();

private:
    [[nodiscard]] QString file() const { return m_folder.filePath("rig.evidence.jsonl"); }
    QTemporaryDir m_folder;
};

void TestEvidence::standsBesideTheRigFile() {
    QCOMPARE(evidenceFileOf("rigs/desk.toml"), std::string("rigs/desk.evidence.jsonl"));
    QCOMPARE(evidenceFileOf("my.desk.toml"), std::string("my.desk.evidence.jsonl"));
}

void TestEvidence::comesBackAsItWasWritten() {
    const Result<std::string> line = evidenceLine(record());
    QVERIFY(line);
    QCOMPARE(line->find('\n'), std::string::npos);
    const Result<EvidenceRecord> back = parseEvidenceLine(*line);
    QVERIFY2(back, back ? "" : back.error().message.c_str());
    QVERIFY(*back == record());
    EvidenceRecord bad = record();
    bad.result = "[1]";
    QCOMPARE(evidenceLine(bad).error().code, std::string("bad-evidence"));
}

void TestEvidence::everyRecordComesBack() {
    QVERIFY(rc::check("a record with any raw data comes back", [] {
        EvidenceRecord any = record();
        any.unixSeconds = *rc::gen::inRange<std::int64_t>(0, 4'000'000'000);
        any.isGood = *rc::gen::arbitrary<bool>();
        RawTrace& trace = any.raw.front();
        trace.changes.clear();
        Time time = trace.begin;
        for (const std::int64_t count : *rc::gen::container<std::vector<std::int64_t>>(
                 rc::gen::inRange<std::int64_t>(-(std::int64_t{1} << 40), std::int64_t{1} << 40))) {
            time += std::chrono::microseconds(*rc::gen::inRange(0, 5'000'000));
            const bool isNull = *rc::gen::inRange(0, 8) == 0;
            trace.changes.push_back({time, isNull ? 0 : count, isNull});
        }
        trace.end = time;
        const auto back = parseEvidenceLine(*evidenceLine(any));
        RC_ASSERT(back.has_value());
        RC_ASSERT(*back == any);
    }));
}

void TestEvidence::noFileIsNoEvidence() {
    Problems problems;
    const auto records = readEvidence(m_folder.filePath("none.evidence.jsonl").toStdString(), problems);
    QVERIFY(records && records->empty() && problems.all().empty());
}

void TestEvidence::aDamagedLineIsNamedAndTheOthersHold_data() {
    QTest::addColumn<QByteArray>("line");
    const std::string good = *evidenceLine(record());
    std::string flipped = good;
    flipped[good.find("180")] = '2';
    QTest::newRow("a digit changed") << QByteArray::fromStdString(flipped);
    QTest::newRow("cut") << QByteArray::fromStdString(good.substr(0, good.size() / 2));
    QTest::newRow("cut to a brace") << QByteArray("{");
    QTest::newRow("not text") << QByteArray("\xff\x00\x01", 3);
    QTest::newRow("two in one") << QByteArray::fromStdString(good + good);
    QTest::newRow("deep") << QByteArray(100'000, '[');
    QTest::newRow("a blank") << QByteArray(" ");
}

void TestEvidence::aDamagedLineIsNamedAndTheOthersHold() {
    QFETCH(QByteArray, line);
    const std::string good = *evidenceLine(record());
    put(file(), good + "\n" + line.toStdString() + "\n" + good + "\n");
    Problems problems;
    const auto records = readEvidence(file().toStdString(), problems);
    QVERIFY(records);
    QCOMPARE(records->size(), std::size_t(2));
    QCOMPARE(problems.all().size(), std::size_t(1));
    QCOMPARE(problems.all().front().error.code, std::string("damaged-evidence"));
    QCOMPARE(problems.all().front().error.place.line, 2);
    QVERIFY(!problems.hasErrors());
}

void TestEvidence::aNewerFormatIsLeftAlone() {
    const std::string newer = R"({"format":2,"shape":"unheard of","sum":"%1"})";
    const std::string body = newer.substr(0, newer.find(",\"sum\""));
    const QByteArray sum =
        QCryptographicHash::hash(QByteArray::fromStdString(body), QCryptographicHash::Sha256).toHex().left(16);
    const auto read = parseEvidenceLine(QString::fromStdString(newer).arg(QString::fromLatin1(sum)).toStdString());
    QVERIFY(!read);
    QCOMPARE(read.error().code, std::string("newer-evidence"));
}

void TestEvidence::aCutWriteDoesNotHarmTheNext() {
    put(file(), *evidenceLine(record()) + "\n" + evidenceLine(record())->substr(0, 40));
    QVERIFY(appendEvidence(file().toStdString(), record()));
    Problems problems;
    const auto records = readEvidence(file().toStdString(), problems);
    QVERIFY(records);
    QCOMPARE(records->size(), std::size_t(2));
    QCOMPARE(problems.all().size(), std::size_t(1));
    QCOMPARE(problems.all().front().error.place.line, 2);
}

void TestEvidence::appendingKeepsEveryByte() {
    put(file(), "whatever stands here\n\n");
    const std::string before = contentOf(file());
    QVERIFY(appendEvidence(file().toStdString(), record()));
    QVERIFY(appendEvidence(file().toStdString(), record()));
    const std::string line = *evidenceLine(record()) + "\n";
    QCOMPARE(contentOf(file()), before + line + line);
}

void TestEvidence::anUnwritableFileIsAnError() {
    const Status status = appendEvidence(m_folder.filePath("no/such/folder.jsonl").toStdString(), record());
    QVERIFY(!status);
    QCOMPARE(status.error().code, std::string("save-failed"));
}

void TestEvidence::datesAreRead_data() {
    QTest::addColumn<QString>("text");
    QTest::addColumn<qint64>("seconds"); // -1: refused. Values from 'date -u -d TEXT +%s' (GNU coreutils).
    QTest::newRow("start") << "1970-01-01T00:00:00Z" << qint64(0);
    QTest::newRow("leap day") << "2024-02-29T12:30:59Z" << qint64(1'709'209'859);
    QTest::newRow("not a leap year") << "2023-02-29T12:30:59Z" << qint64(-1);
    QTest::newRow("hour 24") << "2024-02-28T24:00:00Z" << qint64(-1);
    QTest::newRow("no zone") << "2024-02-28T20:00:00" << qint64(-1);
    QTest::newRow("letters") << "2024-O2-28T20:00:00Z" << qint64(-1);
}

void TestEvidence::datesAreRead() {
    QFETCH(QString, text);
    QFETCH(qint64, seconds);
    QCOMPARE(qint64(parseDate(text.toStdString()).value_or(-1)), seconds);
    if (seconds >= 0)
        QCOMPARE(QString::fromStdString(dateText(seconds)), text);
}

void TestEvidence::fingerprintChangesWithWiringAndCalibration_data() {
    QTest::addColumn<QString>("source");
    QTest::addColumn<bool>("changes");
    const QString base = QString::fromStdString(kHead + kDevice + kLever + kTiller);
    const auto with = [&](const char* from, const char* to) {
        return QString(base).replace(QLatin1String(from), QLatin1String(to));
    };
    QTest::newRow("the same") << base << false;
    QTest::newRow("a comment") << with("range = [180, 3910]", "range = [ 180,\n 3910 ] # measured") << false;
    QTest::newRow("order of keys") << with("wiring = \"axis\"\ninput = \"X\"", "input = \"X\"\nwiring = \"axis\"")
                                   << false;
    QTest::newRow("the control's name") << with("\"Lever\"", "\"Left lever\"") << false;
    QTest::newRow("the device's name") << with("\"unit\"", "\"left unit\"") << false;
    QTest::newRow("noise") << with("noise = 2", "noise = 3.5") << false;
    QTest::newRow("spike limit") << with("noise = 2", "noise = 2\nspike_limit = 60\nsettle = \"5 ms\"") << false;
    QTest::newRow("median and low-pass") << with("noise = 2", "noise = 2\nmedian = \"8 ms\"\nsmooth = \"20 ms\"")
                                         << false;
    QTest::newRow("another control") << with("[90, 4010]", "[91, 4010]") << false;
    QTest::newRow("range") << with("[180, 3910]", "[180, 3911]") << true;
    QTest::newRow("inverted") << with("[180, 3910]", "[3910, 180]") << true;
    QTest::newRow("input") << with("\"X\"", "\"Y\"") << true;
    QTest::newRow("a key more") << with("noise = 2", "noise = 2\nend_band = 5") << true;
    QTest::newRow("the device's id") << with("F101", "F102") << true;
    QTest::newRow("the device's port") << with("usb-1", "usb-2") << true;
}

void TestEvidence::fingerprintChangesWithWiringAndCalibration() {
    QFETCH(QString, source);
    QFETCH(bool, changes);
    const auto before = fingerprints(kHead + kDevice + kLever + kTiller);
    const auto after = fingerprints(source.toStdString());
    QCOMPARE(before.front().hash.size(), std::size_t(64));
    QCOMPARE(after.front().signals, std::vector<std::string>{"thrust_lever_1"});
    QCOMPARE(after.front().hash != before.front().hash, changes);
}

void TestEvidence::staleness() {
    const ControlFingerprint now{"Lever", {"thrust_lever_2"}, "now"};
    std::vector<EvidenceRecord> records = {record("before")};
    QVERIFY(findEvidence({}, kCalibrationEvidence, now).state == EvidenceState::None);
    QVERIFY(findEvidence(records, kHealthEvidence, now).state == EvidenceState::None);
    QVERIFY(findEvidence(records, kCalibrationEvidence, now).state == EvidenceState::Stale);
    QVERIFY(findEvidence(records, kCalibrationEvidence, {"Lever", {"flap_lever"}, "before"}).state ==
            EvidenceState::None);
    records.push_back(record("now"));
    records.push_back(record("now"));
    records.push_back(record("between"));
    const FoundEvidence found = findEvidence(records, kCalibrationEvidence, now);
    QVERIFY(found.state == EvidenceState::Current);
    QCOMPARE(found.record, &records[2]); // the newest that holds, though the rig was otherwise after it
}

QTEST_APPLESS_MAIN(TestEvidence)
#include "test_evidence.moc"
