// The check walk: what confirms a control, what does not, and what is kept of it.

#include <cmath>

#include <QtTest>

#include "bench/walkevidence.h"
#include "desk.h"
#include "handson.h"
#include "rig/rig.h"

using namespace flowhand;

namespace {

const Aircraft& jet() {
    return *twinJetFolder().aircraft;
}

/// A rig on device 0 of the moved devices, walked.
class Walked {
public:
    explicit Walked(const std::string& controls, Walk::Setup setup = {})
        : m_file(rigOf(controls)), m_reaches(reachesOf(m_file, jet().signals, jet().controls.size())),
          m_walk(jet(), m_file, m_reaches, std::move(setup), Time{}) {
        Problems problems;
        m_rig = Rig::parse(m_file.source, "desk.toml", jet().signals, jet().controls.size(), problems);
        if (!m_rig || !m_rig->connect(0, hands.inputs()[0]))
            qFatal("no rig");
        hands.setNoise(0.5);
    }

    /// Moves, and holds for a second.
    Walked& move(const QString& words, Duration hold = std::chrono::seconds(1)) {
        hands.move(words);
        std::vector<Sample> samples;
        for (const Time end = hands.now() + hold; hands.now() < end;) {
            for (const Reading& reading : hands.report())
                if (reading.device == 0)
                    m_rig->take(reading, samples);
            m_rig->advance(hands.now(), samples);
            for (const Sample& sample : samples)
                m_walk.take(sample);
            samples.clear();
            m_walk.advance(hands.now());
        }
        return *this;
    }

    [[nodiscard]] const Walk& walk() const { return m_walk; }
    [[nodiscard]] Walk& walk() { return m_walk; }
    [[nodiscard]] QString ask() const { return QString::fromStdString(m_walk.ask().english()); }
    [[nodiscard]] EvidenceRecord evidence(std::size_t at, bool isRecorded = false) {
        const auto fingerprints = fingerprintsOf(m_file, jet().signals);
        const WalkedControl& control = m_walk.controls()[at];
        return walkEvidence(control, (*fingerprints)[control.control], jet(), m_reaches, {}, isRecorded, 1772388245,
                            {});
    }

    HandsOn hands;

private:
    RigFile m_file;
    std::vector<Reach> m_reaches;
    Walk m_walk;
    std::optional<Rig> m_rig;
};

const std::string kLever =
    "[[control]]\nsignal = \"thrust_lever_1\"\nwiring = \"axis\"\ninput = \"X\"\nrange = [200, 3900]\nnoise = 0.5\n";
const std::string kTiller = "[[control]]\nsignal = \"tiller\"\nwiring = \"axis\"\ninput = \"Y\"\nrange = [100, 4000]\n"
                            "centre = 2050\nnoise = 0.5\n";
const std::string kFlap = "[[control]]\nsignal = \"flap_lever\"\nwiring = \"gates\"\ninput = \"Z\"\nband = 150\n"
                          "hysteresis = 40\nnoise = 0.5\ngates = [\n{ position = \"up\", at = 300 },\n"
                          "{ position = \"4\", at = 1100 },\n{ position = \"12\", at = 1950 },\n"
                          "{ position = \"22\", at = 2800 },\n{ position = \"34\", at = 3700 }]\n";
const std::string kLight = "[[control]]\nsignal = \"taxi_light\"\nwiring = \"contact\"\ninput = \"button 3\"\n";
const std::string kReply =
    "[[control]]\nsignal = \"reply_button\"\nwiring = \"contact\"\ninput = \"button 1\"\nmomentary = true\n";

} // namespace

class TestWalk : public QObject {
    Q_OBJECT

private Q_SLOTS:
    void controlsAreConfirmed_data();
    void controlsAreConfirmed();
    void whatIsMissingIsNamed_data();
    void whatIsMissingIsNamed();
    void tolerancesCanBeSet();
    void tolerancesAreThePublishedGoals();
    void oneAfterTheOther();
    void patienceEnds();
    void anotherControlIsNamed();
    void recordsComeBack();
    void damagedRecordsAreErrors();
};

void TestWalk::controlsAreConfirmed_data() {
    QTest::addColumn<QString>("rig");
    QTest::addColumn<QStringList>("moves");
    const auto row = [](const char* name, const std::string& rig, const QStringList& moves) {
        QTest::newRow(name) << QString::fromStdString(rig) << moves;
    };
    row("lever", kLever, {"X=200", "X=3900"});
    row("lever, high end first", kLever, {"X=3900", "X=200"});
    row("lever, nearly to its ends", kLever, {"X=300", "X=3800"});
    row("tiller", kTiller, {"Y=2050", "Y=100", "Y=4000", "Y=2050"});
    row("gates", kFlap, {"Z=300", "Z=1100", "Z=1950", "Z=2800", "Z=3700"});
    row("gates, in any order", kFlap, {"Z=3700", "Z=1950", "Z=300", "Z=2800", "Z=1100"});
    row("switch", kLight, {"", "b3=1"});
    row("button, pressed shortly", kReply, {"", "b1=1|b1=0"});
    row("both ends of a contact lever",
        "[[control]]\nsignal = \"reverse_lever_1\"\nwiring = \"contact\"\ninput = \"button 2\"\nopen = \"0 %\"\n"
        "closed = \"100 %\"\n",
        {"", "b2=1"});
    row("trim counted by a wheel",
        "[[control]]\nsignal = \"pitch_trim\"\nwiring = \"relative_wheel\"\ninput = \"Wheel\"\nstart = \"0 deg\"\n"
        "per_count = \"0.1 deg\"\n",
        {"wheel=0", "wheel=12"});
    row("split lever",
        "[[control]]\nsignal = [\"thrust_lever_1\", \"reverse_lever_1\"]\nwiring = \"split_axis\"\ninput = \"X\"\n"
        "ranges = [[1130, 3960], [1040, 150]]\nsplit = 1085\nhysteresis = 15\nnoise = 0.5\n",
        {"X=1085", "X=3960", "X=1085", "X=150"});
}

void TestWalk::controlsAreConfirmed() {
    QFETCH(QString, rig);
    QFETCH(QStringList, moves);
    Walked walked(rig.toStdString());
    for (const QString& move : moves) {
        QVERIFY2(!walked.walk().isDone(), "confirmed too early");
        const QStringList parts = move.split('|');
        for (const QString& part : parts)
            walked.move(part, part == parts.last() ? Duration(std::chrono::seconds(1))
                                                   : Duration(std::chrono::milliseconds(100)));
    }
    QVERIFY2(walked.walk().isDone(), qPrintable(walked.ask()));
    QVERIFY(walked.walk().isAllConfirmed());
}

void TestWalk::whatIsMissingIsNamed_data() {
    QTest::addColumn<QString>("rig");
    QTest::addColumn<QStringList>("moves");
    QTest::addColumn<QString>("missing");
    const auto row = [](const char* name, const std::string& rig, const QStringList& moves, const char* missing) {
        QTest::newRow(name) << QString::fromStdString(rig) << moves << missing;
    };
    row("nothing heard", kLever, {}, "its low end, its high end");
    row("stays short of its high end", kLever, {"X=200", "X=3700"}, "its high end (came to 95 %)");
    row("passes its end without standing", kLever, {"X=200", "X=3900|X=2000"}, "its high end");
    row("does not come back to its centre", kTiller, {"Y=2050", "Y=100", "Y=4000", "Y=2250"}, "a return to its centre");
    row("a gate that is passed", kFlap, {"Z=300", "Z=1100", "Z=1950", "Z=2800|Z=3700"}, "22");
    row("between the gates", kFlap, {"Z=700"}, "up, 4, 12, 22, 34");
    row("a switch that is stuck", kLight, {"", ""}, "on");
    row("an axis of one bit", // two values are no lever
        "[[control]]\nsignal = \"thrust_lever_1\"\nwiring = \"axis\"\ninput = \"X\"\nrange = [0, 1]\nspike_limit = 0\n",
        {"X=0", "X=1"}, "the way between its ends");
}

void TestWalk::whatIsMissingIsNamed() {
    QFETCH(QString, rig);
    QFETCH(QStringList, moves);
    QFETCH(QString, missing);
    Walked walked(rig.toStdString());
    walked.hands.setNoise(0.0);
    for (const QString& move : moves) {
        const QStringList parts = move.split('|');
        for (const QString& part : parts)
            walked.move(part, part == parts.last() ? Duration(std::chrono::seconds(1))
                                                   : Duration(std::chrono::milliseconds(420)));
    }
    QVERIFY(!walked.walk().isDone());
    const WalkedSignal& signal = walked.walk().current().signals.front();
    QVERIFY2(QString::fromStdString(signal.missing.english()).startsWith(missing), signal.missing.english().c_str());
    QVERIFY2(walked.ask().contains("still to be seen: " + QString::fromStdString(signal.open.english())),
             qPrintable(walked.ask()));
}

void TestWalk::tolerancesCanBeSet() {
    Walk::Setup loose;
    loose.tolerances.leverShare = 0.10;
    Walked walked(kLever, loose);
    walked.move("X=500").move("X=3600");
    QVERIFY(walked.walk().isAllConfirmed());
    Walk::Setup tight;
    tight.tolerances.leverShare = 0.005;
    Walked narrow(kLever, tight);
    narrow.move("X=230").move("X=3870");
    QVERIFY(!narrow.walk().isDone());
}

/// 14 CFR Part 60 (edition of January 2014), table A2A: 2.a.4 and 2.a.5 steering 2 degrees, 2.a.8 throttle 5 degrees of
/// lever or 3 %.
void TestWalk::tolerancesAreThePublishedGoals() {
    const WalkTolerances goals;
    QCOMPARE(goals.steeringDegrees, 2.0);
    QCOMPARE(goals.leverDegrees, 5.0);
    QCOMPARE(goals.leverShare, 0.03);
    Walked walked(kLever + kTiller);
    QCOMPARE(walked.walk().controls()[0].signals[0].tolerance, 3.0); // of 100 %
    const Signal& tiller = jet().signals[twinJetSignal("tiller")];
    QCOMPARE(walked.walk().controls()[1].signals[0].tolerance,
             tiller.unit.symbol == "deg" ? 2.0 : 0.03 * (tiller.highest - tiller.lowest));
}

void TestWalk::oneAfterTheOther() {
    Walked walked(kLever + kLight);
    QVERIFY(walked.ask().startsWith("Thrust lever 1"));
    walked.move("b3=1").move("X=200").move("b3=0").move("X=3900");
    QCOMPARE(walked.walk().controls()[0].outcome, WalkOutcome::Confirmed);
    QVERIFY(walked.ask().startsWith("Taxi light"));
    walked.move("").move("b3=1"); // what it did before it was asked for does not count
    QVERIFY(walked.walk().isAllConfirmed());

    Walk::Setup only;
    only.only = {twinJetSignal("taxi_light")};
    QCOMPARE(Walked(kLever + kLight, only).walk().controls().size(), std::size_t(1));
}

void TestWalk::patienceEnds() {
    Walk::Setup setup;
    setup.patience = std::chrono::seconds(5);
    Walked walked(kLever + kLight, setup);
    walked.move("X=200", std::chrono::seconds(6));
    QCOMPARE(walked.walk().controls()[0].outcome, WalkOutcome::NotConfirmed);
    const QString missing = QString::fromStdString(walked.walk().controls()[0].signals[0].missing.english());
    QVERIFY2(missing.startsWith("its high end (came to 0"), qPrintable(missing));
    walked.move("b3=1").move("b3=0");
    QVERIFY(walked.walk().isDone());
    QVERIFY(!walked.walk().isAllConfirmed());
    QVERIFY(!walked.evidence(0).isGood);
    QVERIFY(walked.evidence(1).isGood);
}

void TestWalk::anotherControlIsNamed() {
    Walked walked(kLight + kTiller);
    walked.move("Y=2050").move("Y=3500");
    QCOMPARE(walked.walk().current().movedInstead, std::vector<std::string>{"Tiller"});
}

void TestWalk::recordsComeBack() {
    Walked walked(kTiller + kFlap);
    walked.move("Y=2050").move("Y=100").move("Y=4000").move("Y=2060");
    walked.move("Z=300").move("Z=1100").move("Z=1950").move("Z=2800").move("Z=3700");
    QVERIFY2(walked.walk().isAllConfirmed(), qPrintable(walked.ask()));
    const EvidenceRecord evidence = walked.evidence(0, true);
    QVERIFY(evidence.isGood);
    QCOMPARE(evidence.kind, std::string(kWalkEvidence));
    const auto record = walkRecordOf(evidence);
    QVERIFY(record);
    QVERIFY(record->isRecorded);
    const WalkedSignalRecord& tiller = record->signals.at(0);
    QVERIFY(tiller.isConfirmed);
    QVERIFY(tiller.lowest && tiller.highest && tiller.centre);
    const Signal& signal = jet().signals[twinJetSignal("tiller")];
    QVERIFY(std::fabs(*tiller.lowest - signal.lowest) < 0.1);
    QVERIFY(std::fabs(*tiller.highest - signal.highest) < 0.1);
    QVERIFY(*tiller.centre > 0.0 && *tiller.centre <= tiller.tolerance);
    QVERIFY(tiller.trace.size() > 20 && tiller.trace.size() <= 400);
    const auto flap = walkRecordOf(walked.evidence(1));
    QVERIFY(flap);
    QCOMPARE(flap->signals.at(0).seen, (std::vector<std::string>{"up", "4", "12", "22", "34"}));
    QVERIFY(evidenceLine(evidence));
}

void TestWalk::damagedRecordsAreErrors() {
    for (const char* text : {"", "{}", "[]", "{\"source\": 1}", "{\"source\": \"device\", \"seconds\": 1}"}) {
        EvidenceRecord record;
        record.control = "Tiller";
        record.result = text;
        const auto read = walkRecordOf(record);
        QVERIFY(!read);
        QCOMPARE(read.error().code, std::string("damaged-evidence"));
    }
}

QTEST_APPLESS_MAIN(TestWalk)
#include "test_walk.moc"
