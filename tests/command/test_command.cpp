// The commands as a person types them, in this process: what they print, and their exit status.

#include <sstream>

#include <QDir>
#include <QFile>
#include <QJsonArray>
#include <QJsonDocument>
#include <QJsonObject>
#include <QTemporaryDir>
#include <QtTest>

#include "command/commandline.h"

using namespace flowhand;

namespace {

struct Outcome {
    std::optional<int> status;
    QString out;
    QString err;
};

Outcome flowhandWith(const QStringList& arguments) {
    std::vector<std::string> words{"flowhand"};
    for (const QString& argument : arguments)
        words.push_back(argument.toStdString());
    std::vector<char*> pointers;
    for (std::string& word : words)
        pointers.push_back(word.data());
    std::ostringstream out, err;
    Outcome outcome;
    WindowWish window;
    outcome.status = runCommandLine(static_cast<int>(pointers.size()), pointers.data(), out, err, window);
    outcome.out = QString::fromStdString(out.str());
    outcome.err = QString::fromStdString(err.str());
    return outcome;
}

QJsonObject objectIn(const QString& text) {
    return QJsonDocument::fromJson(text.toUtf8()).object();
}

} // namespace

class TestCommand : public QObject {
    Q_OBJECT

private Q_SLOTS:
    void withoutCommandTheWindowIsWanted();
    void everyPlaceCarriesTheTrainingNote();
    void aRunIsFlownStoredAndDebriefed();
    void sameHandsSameEvents();
    void wrongHandsAreFound_data();
    void wrongHandsAreFound();
    void badInputIsAnError_data();
    void badInputIsAnError();

private:
    QTemporaryDir m_folder;
    QString inFolder(const char* name) const { return m_folder.filePath(name); }
};

void TestCommand::withoutCommandTheWindowIsWanted() {
    QVERIFY(!flowhandWith({}).status);
}

void TestCommand::everyPlaceCarriesTheTrainingNote() {
    const QString note = "not for real-world flight training";
    QVERIFY(flowhandWith({"--help"}).out.contains(note));
    QVERIFY(flowhandWith({"practise", "take_off", "--demonstration", "--unstored"}).out.contains(note));
}

void TestCommand::aRunIsFlownStoredAndDebriefed() {
    const QString db = inFolder("runs.sqlite");
    const Outcome flown = flowhandWith({"practise", "take_off", "--demonstration", "--db", db, "--json"});
    QVERIFY2(flown.status == 0, qPrintable(flown.err));
    const QJsonObject debrief = objectIn(flown.out);
    QVERIFY(debrief["passed"].toBool());
    QVERIFY(debrief["simulated_input"].toBool());
    const QJsonArray runs = QJsonDocument::fromJson(flowhandWith({"runs", "--db", db, "--json"}).out.toUtf8()).array();
    QCOMPARE(runs.size(), 1);
    const Outcome stored = flowhandWith({"debrief", "last", "--db", db, "--json"});
    QVERIFY2(stored.status == 0, qPrintable(stored.err));
    QCOMPARE(objectIn(stored.out)["ledger"], debrief["ledger"]);
    QCOMPARE(objectIn(stored.out)["steps"], debrief["steps"]);
    const Outcome again = flowhandWith({"debrief", "last", "--db", db, "--rejudge"});
    QVERIFY2(again.status == 0, qPrintable(again.err));
    const Outcome judged = flowhandWith({"judge", "airspeed > aircraft.vr", "--run", "last", "--db", db, "--json"});
    QVERIFY2(judged.status == 0, qPrintable(judged.err));
    const QJsonArray segments = objectIn(judged.out)["segments"].toArray();
    QCOMPARE(segments.first().toArray()[2], QJsonValue(false));
    QCOMPARE(segments.last().toArray()[2], QJsonValue(true));
}

void TestCommand::sameHandsSameEvents() {
    QStringList progress;
    for (int i = 0; i < 2; ++i)
        progress << flowhandWith({"practise", "landing_roll", "--demonstration", "--unstored", "--json"}).err;
    QCOMPARE(progress[0], progress[1]);
    QVERIFY(progress[0].contains("Spoiler lever up"));
}

void TestCommand::wrongHandsAreFound_data() {
    QTest::addColumn<QString>("flow");
    QTest::addColumn<QString>("hands");
    QTest::addColumn<int>("status");
    QTest::addColumn<QStringList>("findings");
    QTest::newRow("tiller above its limit, wrong gate")
        << "take_off" << TEST_DATA "/hands/take_off_wrong.hands" << 3
        << QStringList{"guard tiller_above_limit", "wrong value flap_to_4"};
    QTest::newRow("reversers left out") << "landing_roll" << TEST_DATA "/hands/landing_roll_no_reverse.hands" << 0
                                        << QStringList{"not done reverse_raised"};
}

void TestCommand::wrongHandsAreFound() {
    QFETCH(QString, flow);
    QFETCH(QString, hands);
    QFETCH(int, status);
    QFETCH(QStringList, findings);
    const Outcome flown = flowhandWith({"practise", flow, "--hands", hands, "--unstored", "--json"});
    QStringList found;
    for (const QJsonValue& value : objectIn(flown.out)["ledger"].toArray()) {
        const QJsonObject line = value.toObject();
        if (line["what"] == "small margin")
            continue;
        found << (line["guard"].isString() ? "guard " + line["guard"].toString()
                                           : line["what"].toString() + " " + line["step"].toString());
    }
    found.sort();
    QCOMPARE(found, findings);
    QVERIFY(flown.status == status);
}

void TestCommand::badInputIsAnError_data() {
    QTest::addColumn<QStringList>("arguments");
    QTest::addColumn<QString>("says");
    QFile broken(inFolder("broken.toml"));
    QVERIFY(broken.open(QIODevice::WriteOnly));
    broken.write("format = 1\n[[control]\n");
    broken.close();
    QFile notStore(inFolder("not.sqlite"));
    QVERIFY(notStore.open(QIODevice::WriteOnly));
    notStore.write("this is no database, but long enough to be looked at as one, so that its header is read");
    notStore.close();
    QVERIFY(QDir(m_folder.path()).mkpath("craft"));
    QVERIFY(QFile::copy(PROCEDURES "/twin_jet/aircraft.toml", inFolder("craft/aircraft.toml")));
    QFile misspelt(inFolder("craft/taxi.toml"));
    QVERIFY(misspelt.open(QIODevice::WriteOnly));
    misspelt.write("format = 1\n[[steps]]\nid = 'x'\n");
    misspelt.close();
    QTest::newRow("lint of a folder with a misspelt flow")
        << QStringList{"lint", inFolder("craft")} << "it has no [[step]]";
    QTest::newRow("lint of a misspelt flow")
        << QStringList{"lint", inFolder("craft/taxi.toml")} << "it has no [[step]]";
    QTest::newRow("unknown command") << QStringList{"fly"} << "";
    QTest::newRow("unknown flow") << QStringList{"practise", "taxi_ou", "--demonstration", "--unstored"} << "taxi_out";
    QTest::newRow("nothing to fly with") << QStringList{"practise", "taxi_out", "--unstored"} << "--rig FILE";
    QTest::newRow("missing rig") << QStringList{"practise", "taxi_out", "--rig", inFolder("none.toml"), "--unstored"}
                                 << "none.toml";
    QTest::newRow("broken rig") << QStringList{"practise", "taxi_out", "--rig", inFolder("broken.toml"), "--unstored"}
                                << "broken.toml:2:";
    QTest::newRow("missing hands") << QStringList{"practise", "taxi_out", "--hands", inFolder("none.hands"),
                                                  "--unstored"}
                                   << "none.hands";
    QTest::newRow("no store") << QStringList{"practise", "taxi_out", "--demonstration", "--db", inFolder("not.sqlite")}
                              << "not.sqlite";
    QTest::newRow("no such run") << QStringList{"debrief", "99", "--db", inFolder("fresh.sqlite")} << "no runs yet";
    QTest::newRow("no procedures") << QStringList{"practise",   "taxi_out",     "--demonstration",
                                                  "--unstored", "--procedures", inFolder("nowhere")}
                                   << "";
    QTest::newRow("a folder as descriptor") << QStringList{"decode", "--descriptor", m_folder.path()} << "is a folder";
    QTest::newRow("a device as trace") << QStringList{"judge", "x > 1", "--trace", "/dev/zero"} << "a pipe or a device";
    QTest::newRow("a device as hands") << QStringList{"practise", "taxi_out", "--hands", "/dev/zero", "--unstored"}
                                       << "a pipe or a device";
    QTest::newRow("unknown seat") << QStringList{"practise",   "taxi_out", "--demonstration",
                                                 "--unstored", "--seat",   "captian"}
                                  << "did you mean 'captain'?";
    QTest::newRow("lint of a broken file") << QStringList{"lint", inFolder("broken.toml")} << "";
}

void TestCommand::badInputIsAnError() {
    QFETCH(QStringList, arguments);
    QFETCH(QString, says);
    const Outcome outcome = flowhandWith(arguments);
    QVERIFY2(outcome.status == 1, qPrintable(outcome.out + outcome.err));
    QVERIFY2((outcome.err + outcome.out).contains(says), qPrintable(outcome.err));
    QVERIFY(!(outcome.err + outcome.out).isEmpty());
}

QTEST_GUILESS_MAIN(TestCommand)
#include "test_command.moc"
