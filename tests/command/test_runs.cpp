// The commands around stored runs, as a person types them, in this process.

#include <QFile>
#include <QJsonArray>
#include <QJsonDocument>
#include <QJsonObject>
#include <QTemporaryDir>
#include <QtTest>

#include "command/printed.h"
#include "store/store.h"

using namespace flowhand;

namespace {

QJsonObject objectIn(const QString& text) {
    return QJsonDocument::fromJson(text.toUtf8()).object();
}

QJsonArray arrayIn(const QString& text) {
    return QJsonDocument::fromJson(text.toUtf8()).array();
}

QByteArray contentOf(const QString& file) {
    QFile content(file);
    return content.open(QIODevice::ReadOnly) ? content.readAll() : QByteArray();
}

} // namespace

class TestRuns : public QObject {
    Q_OBJECT

private Q_SLOTS:
    void initTestCase();
    void init();
    void runsAreListedAndFound();
    void runsAreDeletedAndRestored();
    void roomIsMade();
    void everythingIsCheckedAndBackedUp();
    void twoRunsAreCompared();
    void aRunIsComparedWithItsReference();
    void notesAreWrittenInTheirOrder();
    void theMarksAreExplained();
    void notesShowInTheDebrief();
    void aRunIsJudgedByAnotherFlow();
    void aRunGoesElsewhereAndComesBackTheSame();
    void everythingIsExported();
    void badInputIsAnError_data();
    void badInputIsAnError();

private:
    QTemporaryDir m_folder;
    QString m_flown; ///< two runs of a take-off: 1 well, 2 with errors
    QString m_db;    ///< a copy of it, for each test
    QString inFolder(const QString& name) const { return m_folder.filePath(name); }
    QString good(const QStringList& arguments) const {
        const Printed printed = flowhandWith(arguments + QStringList{"--db", m_db});
        if (printed.status != 0)
            QTest::qFail(qPrintable(printed.err + printed.out), __FILE__, __LINE__);
        return printed.out;
    }
};

void TestRuns::initTestCase() {
    m_flown = inFolder("flown.sqlite");
    QVERIFY(
        flowhandWith({"practise", "twin_jet/take_off", "--demonstration", "--db", m_flown, "--pilot", "Kim"}).status ==
        0);
    QVERIFY(flowhandWith({"practise", "twin_jet/take_off", "--hands", TEST_DATA "/hands/take_off_wrong.hands", "--db",
                          m_flown, "--pilot", "Robin"})
                .status == 3);
}

void TestRuns::init() {
    m_db = inFolder(QString(QTest::currentTestFunction()) + QTest::currentDataTag() + ".sqlite");
    QFile::remove(m_db);
    QVERIFY(QFile::copy(m_flown, m_db));
}

void TestRuns::runsAreListedAndFound() {
    QCOMPARE(arrayIn(good({"runs", "--json"})).size(), 2);
    QVERIFY(good({"runs", "tag", "winter check", "1"}).contains("Run 1 is tagged"));
    const QJsonArray found = arrayIn(good({"runs", "--tag", "winter check", "--json"}));
    QCOMPARE(found.size(), 1);
    QCOMPARE(found[0].toObject()["run"].toInt(), 1);
    QCOMPARE(found[0].toObject()["tags"].toArray(), QJsonArray{"winter check"});
    QCOMPARE(arrayIn(good({"runs", "--search", "robin", "--json"}))[0].toObject()["run"].toInt(), 2);
    QVERIFY(good({"runs"}).contains("winter"));
    QVERIFY(good({"runs", "--search", "nobody"}).contains("No such runs"));
    good({"runs", "untag", "winter check", "1"});
    QCOMPARE(arrayIn(good({"runs", "--tag", "winter check", "--json"})).size(), 0);
    for (const QString& line : good({"runs"}).split('\n'))
        QVERIFY2(line.size() <= 100, qPrintable(line));
}

void TestRuns::runsAreDeletedAndRestored() {
    QVERIFY(good({"runs", "delete", "2"}).contains("restore"));
    QCOMPARE(arrayIn(good({"runs", "--json"})).size(), 1);
    QCOMPARE(arrayIn(good({"runs", "--deleted", "--json"}))[0].toObject()["run"].toInt(), 2);
    QVERIFY(good({"debrief", "last"}).contains("Run 1,"));
    good({"runs", "restore", "2"});
    QCOMPARE(arrayIn(good({"runs", "--json"})).size(), 2);
}

void TestRuns::roomIsMade() {
    good({"runs", "tag", "keep", "1"});
    const QString said = good({"runs", "trim", "1kB"});
    QVERIFY2(said.contains("1 run erased") && said.contains("stays"), qPrintable(said));
    QCOMPARE(arrayIn(good({"runs", "--json"}))[0].toObject()["run"].toInt(), 1);
    QVERIFY(good({"runs", "trim", "1GB"}).contains("0 runs erased"));
}

void TestRuns::everythingIsCheckedAndBackedUp() {
    QVERIFY(good({"runs", "check"}).contains("All is whole"));
    const QString file = inFolder("backup.sqlite");
    good({"runs", "backup", file});
    QCOMPARE(arrayIn(flowhandWith({"runs", "--db", file, "--json"}).out).size(), 2);
    const Printed again = flowhandWith({"runs", "backup", file, "--db", m_db});
    QVERIFY(again.status == 1 && again.err.contains("already"));
}

void TestRuns::twoRunsAreCompared() {
    const QJsonObject comparison = objectIn(good({"compare", "2", "1", "--json"}));
    QCOMPARE(comparison["run"].toInt(), 2);
    QCOMPARE(comparison["other"].toInt(), 1);
    bool isFlapNamed = false;
    for (const QJsonValue& step : comparison["steps"].toArray())
        isFlapNamed |= step["id"] == "flap_to_4" && !step["differences"].toArray().isEmpty();
    QVERIFY(isFlapNamed);
    const QString text = good({"compare", "2", "1"});
    QVERIFY(text.contains("Run 2 (") && text.contains("Robin") && text.contains("behind"));
    for (const QString& line : text.split('\n'))
        QVERIFY2(line.size() <= 110, qPrintable(line));
}

void TestRuns::aRunIsComparedWithItsReference() {
    const Printed none = flowhandWith({"compare", "2", "--db", m_db});
    QVERIFY(none.status == 1 && none.err.contains("runs reference"));
    good({"runs", "reference", "1"});
    QCOMPARE(objectIn(good({"compare", "2", "--json"}))["other"].toInt(), 1);
    QVERIFY(good({"runs"}).contains("reference"));
    good({"runs", "reference", "1", "--clear"});
    QVERIFY(flowhandWith({"compare", "2", "--db", m_db}).status == 1);
}

void TestRuns::notesAreWrittenInTheirOrder() {
    const QStringList ruling{"note",   "2",         "A telephone rang.", "--kind", "ruling",
                             "--step", "flap_to_4", "--choice",          "excused"};
    const Printed early = flowhandWith(ruling + QStringList{"--db", m_db});
    QVERIFY(early.status == 1 && early.err.contains("own account comes first"));
    good({"note", "2", "Too fast with the flap.", "--kind", "account", "--author", "Robin"});
    good(ruling);
    good({"note", "2", "--kind", "cause", "--step", "flap_to_4", "--choice", "was rushed"});
    good({"note", "2", "--kind", "mark", "--phase", "take_off", "--choice", "3"});
    good({"note", "2", "Looked out here.", "--at", "20 s"});
    const QString list = good({"note", "2"});
    QVERIFY(list.indexOf("own account") < list.indexOf("Looked out") &&
            list.indexOf("Looked out") < list.indexOf("excused") && list.indexOf("excused") < list.indexOf("mark for"));
    QVERIFY(list.contains("(Robin)") && list.contains("at 0:20.0"));
    const QString number = list.section('\n', 0, 0).section(' ', 0, 0);
    good({"note", "2", "--remove", number});
    QVERIFY(!good({"note", "2"}).contains("own account"));
}

void TestRuns::theMarksAreExplained() {
    const QString help = flowhandWith({"note", "--help"}).out.simplified();
    QVERIFY(help.contains("safe and adequate") && help.contains("did not know"));
}

void TestRuns::notesShowInTheDebrief() {
    good({"note", "2", "Too fast with the flap.", "--kind", "account"});
    good({"note", "2", "One second in.", "--step", "flap_to_4", "--at", "1 s"});
    const QJsonObject before = objectIn(good({"debrief", "2", "--json"}));
    const QJsonObject after = objectIn(good({"debrief", "2", "--json", "--rejudge"}));
    QCOMPARE(before["notes"].toArray().size(), 2);
    QCOMPARE(after["notes"], before["notes"]); // they stay where they were
    QCOMPARE(before["notes"].toArray()[1].toObject()["step"].toString(), QString("flap_to_4"));
    QCOMPARE(before["notes"].toArray()[1].toObject()["offset_us"].toInt(), 1'000'000);
    QVERIFY(good({"debrief", "2"}).contains("One second in."));
    QVERIFY(good({"runs"}).contains("2 notes"));
}

void TestRuns::aRunIsJudgedByAnotherFlow() {
    const QString folder = inFolder("strict");
    QVERIFY(QDir().mkpath(folder));
    QFile::remove(folder + "/aircraft.toml");
    QVERIFY(QFile::copy(PROCEDURES "/twin_jet/aircraft.toml", folder + "/aircraft.toml"));
    QByteArray flow = contentOf(PROCEDURES "/twin_jet/take_off.toml");
    QVERIFY(flow.contains("within = \"3 s\""));
    flow.replace("within = \"3 s\"", "within = \"0.1 s\"");
    QFile strict(folder + "/take_off.toml");
    QVERIFY(strict.open(QIODevice::WriteOnly) && strict.write(flow) > 0);
    strict.close();
    const QJsonObject same =
        objectIn(good({"debrief", "1", "--rejudge", "--flows", PROCEDURES "/twin_jet", "--json"}))["rejudged"]
            .toObject();
    QVERIFY(same["same"].toBool() && same["changed"].toArray().isEmpty());
    for (const QString& path : {folder, folder + "/take_off.toml"}) {
        const QJsonObject again =
            objectIn(good({"debrief", "1", "--rejudge", "--flows", path, "--json"}))["rejudged"].toObject();
        QVERIFY(again["compared"].toBool());
        QStringList changed;
        for (const QJsonValue& step : again["changed"].toArray())
            changed << step["id"].toString();
        QVERIFY2(changed.contains("brakes_off"), qPrintable(changed.join(' ')));
    }
    const QString text = good({"debrief", "1", "--rejudge", "--flows", folder}).simplified(); // whatever the lines
    QVERIFY(text.contains("Steps that changed") && text.contains("(the other: done)"));
    const Printed nowhere = flowhandWith({"debrief", "1", "--rejudge", "--flows", inFolder("none"), "--db", m_db});
    QVERIFY(nowhere.status == 1 && nowhere.err.contains("no flow 'take_off' here"));
}

void TestRuns::aRunGoesElsewhereAndComesBackTheSame() {
    good({"note", "2", "Too fast with the flap.", "--kind", "account"});
    const QString archive = inFolder("two.flowrun");
    const QString elsewhere = inFolder("elsewhere.sqlite");
    QFile::remove(elsewhere);
    good({"export", "2", "--archive", archive});
    const Printed imported = flowhandWith({"import", archive, "--db", elsewhere});
    QVERIFY2(imported.status == 0 && imported.out.contains("is run 1 now"), qPrintable(imported.err));
    QJsonObject here = objectIn(good({"debrief", "2", "--json"}));
    QJsonObject there = objectIn(flowhandWith({"debrief", "1", "--db", elsewhere, "--json"}).out);
    here.remove("run");
    there.remove("run");
    QJsonArray hereNotes = here["notes"].toArray();
    QVERIFY(hereNotes.size() == 1);
    here.remove("notes");
    QCOMPARE(there.take("notes").toArray()[0].toObject()["text"], hereNotes[0].toObject()["text"]);
    QCOMPARE(there, here);
    const Printed again = flowhandWith({"debrief", "1", "--db", elsewhere, "--rejudge"});
    QVERIFY(again.out.contains("the same events, to the byte"));
    QVERIFY(flowhandWith({"import", archive, "--db", elsewhere}).err.contains("here already, as run 1"));
}

void TestRuns::everythingIsExported() {
    const QString page = inFolder("run.html");
    const QString events = inFolder("events.csv");
    const QString signal = inFolder("signals.csv");
    good({"export", "2", "--html", page, "--csv-events", events, "--csv-signals", signal});
    QVERIFY(contentOf(page).contains("<svg") && contentOf(page).contains("not for real-world flight training"));
    QVERIFY(contentOf(events).startsWith("time_s,event,") && contentOf(events).contains("run-ended"));
    QVERIFY(contentOf(signal).count('\n') > 1000);
}

void TestRuns::badInputIsAnError_data() {
    QTest::addColumn<QStringList>("arguments");
    QTest::addColumn<QString>("says");
    QFile junk(inFolder("junk.flowrun"));
    QVERIFY(junk.open(QIODevice::WriteOnly) && junk.write(QByteArray(300, 'x')) > 0);
    QTest::newRow("import of junk") << QStringList{"import", inFolder("junk.flowrun")} << "no archive of a run";
    QTest::newRow("import of nothing") << QStringList{"import", inFolder("none.flowrun")} << "cannot be opened";
    QTest::newRow("import of a device") << QStringList{"import", "/dev/zero"} << "a pipe or a device";
    QTest::newRow("export of nothing") << QStringList{"export", "1"} << "--archive";
    QTest::newRow("export to nowhere") << QStringList{"export", "1", "--html", inFolder("no/such.html")}
                                       << "cannot write";
    QTest::newRow("a run that is none") << QStringList{"runs", "tag", "x", "9"} << "no run 9";
    QTest::newRow("a tag that is none") << QStringList{"runs", "tag", "a,b", "1"} << "is no tag";
    QTest::newRow("a size that is none") << QStringList{"runs", "trim", "much"} << "SIZE";
    QTest::newRow("a kind that is none") << QStringList{"note", "1", "x", "--kind", "gossip"} << "no kind of note";
    QTest::newRow("a place that is none") << QStringList{"note", "1", "x", "--at", "soon"} << "soon";
    QTest::newRow("flows without judging") << QStringList{"debrief", "1", "--flows", "x"} << "--rejudge";
}

void TestRuns::badInputIsAnError() {
    QFETCH(QStringList, arguments);
    QFETCH(QString, says);
    const Printed printed = flowhandWith(arguments + QStringList{"--db", m_db});
    QVERIFY2(printed.status == 1, qPrintable(printed.out));
    QVERIFY2(printed.err.contains(says) || printed.out.contains(says), qPrintable(printed.err + printed.out));
}

QTEST_APPLESS_MAIN(TestRuns)
#include "test_runs.moc"
