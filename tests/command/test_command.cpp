// The commands as a person types them, in this process: what they print, and their exit status.

#include <QDir>
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

} // namespace

class TestCommand : public QObject {
    Q_OBJECT

private Q_SLOTS:
    void withoutCommandTheWindowIsWanted();
    void everyPlaceCarriesTheTrainingNote();
    void aRunIsFlownStoredAndDebriefed();
    void theRunKeepsWhatItWasFlownWith();
    void aPartIsPractised();
    void aFlightBeginsElsewhereInSlowTime();
    void sameHandsSameEvents();
    void wrongHandsAreFound_data();
    void wrongHandsAreFound();
    void aRecordingIsFlownLikeTheDevice();
    void aRecordingThatNeverBeginsSaysWhy();
    void rigsAreLinted_data();
    void rigsAreLinted();
    void everyErrorOfARigIsTold();
    void badInputIsAnError_data();
    void badInputIsAnError();

private:
    QTemporaryDir m_folder;
    QString inFolder(const char* name) const { return m_folder.filePath(name); }
    QString write(const char* name, const QByteArray& content) {
        QFile file(inFolder(name));
        if (!QDir(m_folder.path()).mkpath(QFileInfo(file).path()) || !file.open(QIODevice::WriteOnly))
            return {};
        file.write(content);
        return file.fileName();
    }
    void writeLights();
};

void TestCommand::withoutCommandTheWindowIsWanted() {
    QVERIFY(!flowhandWith({}).status);
}

void TestCommand::everyPlaceCarriesTheTrainingNote() {
    const QString note = "not for real-world flight training";
    QVERIFY(flowhandWith({"--help"}).out.contains(note));
    QVERIFY(flowhandWith({"practise", "twin_jet/take_off", "--demonstration", "--unstored"}).out.contains(note));
}

void TestCommand::aRunIsFlownStoredAndDebriefed() {
    const QString db = inFolder("runs.sqlite");
    const Printed flown = flowhandWith({"practise", "twin_jet/take_off", "--demonstration", "--db", db, "--json"});
    QVERIFY2(flown.status == 0, qPrintable(flown.err));
    const QJsonObject debrief = objectIn(flown.out);
    QVERIFY(debrief["passed"].toBool());
    QVERIFY(debrief["simulated_input"].toBool());
    const QJsonArray runs = QJsonDocument::fromJson(flowhandWith({"runs", "--db", db, "--json"}).out.toUtf8()).array();
    QCOMPARE(runs.size(), 1);
    const Printed stored = flowhandWith({"debrief", "last", "--db", db, "--json"});
    QVERIFY2(stored.status == 0, qPrintable(stored.err));
    QCOMPARE(objectIn(stored.out)["ledger"], debrief["ledger"]);
    QCOMPARE(objectIn(stored.out)["steps"], debrief["steps"]);
    const Printed again = flowhandWith({"debrief", "last", "--db", db, "--rejudge"});
    QVERIFY2(again.status == 0, qPrintable(again.err));
    const Printed judged = flowhandWith({"judge", "airspeed > aircraft.vr", "--run", "last", "--db", db, "--json"});
    QVERIFY2(judged.status == 0, qPrintable(judged.err));
    const QJsonArray segments = objectIn(judged.out)["segments"].toArray();
    QCOMPARE(segments.first().toArray()[2], QJsonValue(false));
    QCOMPARE(segments.last().toArray()[2], QJsonValue(true));
}

void TestCommand::theRunKeepsWhatItWasFlownWith() {
    const QString db = inFolder("with.sqlite");
    const Printed flown = flowhandWith({"practise", "twin_jet/take_off", "--demonstration", "--db", db, "--json",
                                        "--latency", "80", "--partner-errors", "0.25", "--seed", "7"});
    QVERIFY2(flown.status, "the command did not run");
    Result<Store> store = Store::open(db.toStdString());
    QVERIFY(store);
    const Result<StoredRun> run = store->load(1);
    QVERIFY2(run, run ? "" : describe(run.error()).c_str());
    QVERIFY(run->header.setup.latency == std::chrono::milliseconds(80));
    QCOMPARE(run->header.setup.partnerErrorRate, 0.25);
    QCOMPARE(run->header.setup.seed, std::uint64_t(7));
    const Printed again = flowhandWith({"debrief", "last", "--db", db, "--rejudge"});
    QVERIFY2(again.status == 0, qPrintable(again.err));
}

void TestCommand::aPartIsPractised() {
    QFile script(inFolder("part.hands"));
    QVERIFY(script.open(QIODevice::WriteOnly));
    script.write("due light, 1 s later: taxi_light on\n");
    script.close();
    QVERIFY(QDir(m_folder.path()).mkpath("part/craft"));
    for (const char* file : {"aircraft.toml", "practice.toml"})
        QVERIFY(QFile::copy(QString(PROCEDURES "/twin_jet/") + file, inFolder("part/craft/") + file));
    QVERIFY(QDir(m_folder.path()).mkpath("part/fenholt"));
    QVERIFY(QFile::copy(PROCEDURES "/fenholt/ground.toml", inFolder("part/fenholt/ground.toml")));
    QFile flow(inFolder("part/craft/two.toml"));
    QVERIFY(flow.open(QIODevice::WriteOnly));
    flow.write("format = 1\ntitle = 'Two'\nphases = ['taxi_out']\nseat = 'captain'\n[start]\nplace = 'stand'\n"
               "[[step]]\nid = 'flap'\ntitle = 'Flap lever to 4'\ndone = 'flap_lever == 4'\n"
               "[[step]]\nid = 'light'\ntitle = 'Taxi light on'\ndone = 'taxi_light'\n");
    flow.close();
    const Printed flown = flowhandWith({"practise", "two", "--procedures", inFolder("part"), "--hands",
                                        inFolder("part.hands"), "--unstored", "--from", "light"});
    QVERIFY2(flown.status == 3, qPrintable(flown.err)); // a part never passes
    const QString said = flown.out.simplified();        // whatever the columns and lines
    for (const char* words : {"jumped to Taxi light on", "void Flap lever to 4 - jumped over", "done Taxi light on",
                              "the run does not pass"})
        QVERIFY2(said.contains(words), qPrintable(flown.out));
}

void TestCommand::aFlightBeginsElsewhereInSlowTime() {
    const QString hands = write("rotate.hands", "due rotate: yoke_pitch 30 % over 0.6 s\n"
                                                "when pitch > 9 deg: yoke_pitch 0 % over 0.8 s\n");
    const QString db = inFolder("elsewhere.sqlite");
    const auto rotated = [&](const QStringList& more) { // s from the run's start
        const Printed flown = flowhandWith(
            QStringList{"practise", "twin_jet/take_off", "--from", "rotate", "--hands", hands, "--db", db, "--json"} +
            more);
        for (const QJsonValue& step : objectIn(flown.out)["steps"].toArray())
            if (step.toObject()["id"].toString() == "rotate")
                return step.toObject()["due_us"].toDouble() / 1e6;
        return 0.0;
    };
    const double fromLineUp = rotated({"--place", "line_up"});
    const double byItself = rotated({}); // the step's own place
    const double fromV1 = rotated({"--place", "v1"});
    const double slow = rotated({"--place", "v1", "--slow", "4"});
    QVERIFY2(fromV1 > 0.0 && fromV1 < fromLineUp / 3.0, qPrintable(QString("%1 %2").arg(fromV1).arg(fromLineUp)));
    QVERIFY2(std::fabs(byItself - fromV1) < 0.1, qPrintable(QString("%1 %2").arg(byItself).arg(fromV1)));
    QVERIFY2(std::fabs(slow - fromV1) < 0.1, qPrintable(QString("%1 %2").arg(slow).arg(fromV1))); // by the run's clock
    Result<Store> store = Store::open(db.toStdString());
    QVERIFY(store);
    const Result<StoredRun> run = store->load(4);
    QVERIFY2(run, run ? "" : describe(run.error()).c_str());
    QCOMPARE(run->header.setup.timeScale, 0.25);
    QVERIFY(QString::fromStdString(run->header.motionSource).endsWith(" from v1"));
    const Printed again = flowhandWith({"debrief", "last", "--db", db, "--rejudge"});
    QVERIFY2(again.status == 0, qPrintable(again.err));
    QVERIFY2(again.out.contains("a second of the run, as times are given here, took 4 s"), qPrintable(again.out));
    QVERIFY(flowhandWith({"debrief", "2", "--db", db}).out.contains("put elsewhere at 0:00.0: v1"));
}

void TestCommand::sameHandsSameEvents() {
    QStringList progress;
    for (int i = 0; i < 2; ++i)
        progress << flowhandWith({"practise", "twin_jet/landing_roll", "--demonstration", "--unstored", "--json"}).err;
    QCOMPARE(progress[0], progress[1]);
    QVERIFY(progress[0].contains("Spoiler lever up"));
}

void TestCommand::wrongHandsAreFound_data() {
    QTest::addColumn<QString>("flow");
    QTest::addColumn<QString>("hands");
    QTest::addColumn<int>("status");
    QTest::addColumn<QStringList>("findings");
    QTest::newRow("tiller above its limit, wrong gate")
        << "twin_jet/take_off" << TEST_DATA "/hands/take_off_wrong.hands" << 3
        << QStringList{"guard tiller_above_limit", "wrong value flap_to_4"};
    QTest::newRow("reversers left out") << "twin_jet/landing_roll" << TEST_DATA "/hands/landing_roll_no_reverse.hands"
                                        << 0 << QStringList{"not done reverse_raised"};
}

void TestCommand::wrongHandsAreFound() {
    QFETCH(QString, flow);
    QFETCH(QString, hands);
    QFETCH(int, status);
    QFETCH(QStringList, findings);
    const Printed flown = flowhandWith({"practise", flow, "--hands", hands, "--unstored", "--json"});
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

/// A folder of procedures with a flow of one step, and a rig with one switch and one lever for it.
void TestCommand::writeLights() {
    if (QFile::exists(inFolder("lights/twin_jet/lights.toml")))
        return;
    write("lights/twin_jet/lights.toml", R"(format = 1
title = "Lights"
phases = ["taxi_out"]
[start]
place = "stand"
[start.controls]
taxi_light = "off"
[[step]]
id = "light"
title = "Taxi light on"
seat = "captain"
within = "60 s"
done = "taxi_light"
)");
    write("lights/fenholt/ground.toml", {});
    for (const char* file : {"twin_jet/aircraft.toml", "twin_jet/practice.toml", "fenholt/ground.toml"}) {
        QFile::remove(inFolder("lights/") + file);
        QVERIFY(QFile::copy(PROCEDURES "/" + QString(file), inFolder("lights/") + file));
    }
    write("switch.toml", R"(format = 1
title = "One switch"
[[device]]
name = "box"
id = "1209:0001"
[[control]]
name = "Light switch"
signal = "taxi_light"
wiring = "contact"
input = "button 1"
)");
}

constexpr const char* kEightButtons =
    "device: 1209:0001 Box\n"
    "descriptor: 05 01 09 04 A1 01 05 09 19 01 29 08 15 00 25 01 75 01 95 08 81 02 C0\n";

void TestCommand::aRecordingIsFlownLikeTheDevice() {
    writeLights();
    const QString recording = write("box.txt", QByteArray(kEightButtons) + "0.1: 00\n2.5: 01\n");
    const QString db = inFolder("recorded.sqlite");
    const QStringList fly{"practise",         "lights",  "--procedures",
                          inFolder("lights"), "--rig",   inFolder("switch.toml"),
                          "--recording",      recording, "--json"};
    const Printed flown = flowhandWith(fly + QStringList{"--db", db});
    QVERIFY2(flown.status == 0, qPrintable(flown.err));
    const QJsonObject step = objectIn(flown.out)["steps"].toArray().at(0).toObject();
    QCOMPARE(step["by"].toString(), QString("Light switch")); // the hand's, by the rig's control
    QCOMPARE(objectIn(flown.out)["rig"].toString(), QString("One switch (recorded)"));
    const QJsonArray runs = QJsonDocument::fromJson(flowhandWith({"runs", "--db", db, "--json"}).out.toUtf8()).array();
    QVERIFY(runs.at(0).toObject()["simulated_input"].toBool());
    const Printed again = flowhandWith(fly + QStringList{"--unstored"});
    QCOMPARE(again.err, flown.err); // the same events at the same times
    const Printed rejudged = flowhandWith({"debrief", "last", "--db", db, "--rejudge"});
    QVERIFY2(rejudged.status == 0, qPrintable(rejudged.err));
}

void TestCommand::aRecordingThatNeverBeginsSaysWhy() {
    writeLights();
    const QString recording = write("on.txt", QByteArray(kEightButtons) + "0.1: 01\n");
    const Printed flown = flowhandWith({"practise", "lights", "--procedures", inFolder("lights"), "--rig",
                                        inFolder("switch.toml"), "--recording", recording, "--unstored"});
    QVERIFY(flown.status == 3);
    QVERIFY2(flown.err.contains("It was left waiting for these controls:\n    Taxi light: is on, wanted off"),
             qPrintable(flown.err));
}

void TestCommand::rigsAreLinted_data() {
    QTest::addColumn<QString>("path");
    QTest::addColumn<int>("status");
    QTest::addColumn<QString>("says");
    const QDir rigs(ASSETS "/rigs");
    for (const QString& rig : rigs.entryList({"*.toml"}))
        QTest::newRow(qPrintable(rig)) << rigs.filePath(rig) << 0 << "";
    QTest::newRow("the folder") << rigs.path() << 0 << "files, nothing to complain of";
    writeLights();
    QTest::newRow("a good one") << inFolder("switch.toml") << 0 << "1 file, nothing to complain of";
    QTest::newRow("one with mistakes") << write("mistakes.toml", "format = 2\n[[device]]\nid = \"1209\"\n") << 1
                                       << "mistakes.toml:1:10: this file has format 2";
    QTest::newRow("without a device") << write("nodevice.toml", "format = 1\ntitle = 'x'\n[[control]]\nsignal = "
                                                                "'taxi_light'\nwiring = 'contact'\ninput = 'X'\n")
                                      << 1 << "nodevice.toml:6:9: ";
    QTest::newRow("no TOML") << write("notoml.toml", "[[device\n") << 1 << "notoml.toml:1:";
}

void TestCommand::rigsAreLinted() {
    QFETCH(QString, path);
    QFETCH(int, status);
    QFETCH(QString, says);
    const Printed linted = flowhandWith({"lint", path});
    QVERIFY2(linted.status == status, qPrintable(linted.out + linted.err));
    QVERIFY2(linted.out.contains(says), qPrintable(linted.out + linted.err));
}

void TestCommand::everyErrorOfARigIsTold() {
    const QString rig = write("three.toml", "format = 1\ntitle = 'x'\n[[device]]\nname = 'a'\nid = '12'\n"
                                            "[[control]]\nsignal = 'taxi_ligt'\nwiring = 'contact'\ninput = 'X'\n"
                                            "[[control]]\nsignal = 'taxi_light'\nwiring = 'contat'\ninput = 'X'\n");
    const Printed flown = flowhandWith({"practise", "twin_jet/taxi_out", "--rig", rig, "--unstored"});
    QVERIFY(flown.status == 1);
    for (const char* place : {"three.toml:5:", "three.toml:7:", "three.toml:12:"})
        QVERIFY2(flown.err.contains(place), qPrintable(flown.err));
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
    QTest::newRow("nothing to fly with") << QStringList{"practise", "twin_jet/taxi_out", "--unstored"} << "--rig FILE";
    QTest::newRow("unknown place") << QStringList{"practise",   "twin_jet/taxi_out", "--demonstration",
                                                  "--unstored", "--place",           "fiftyfeet"}
                                   << "there is no place 'fiftyfeet' to start from";
    QTest::newRow("slower than anything")
        << QStringList{"practise", "twin_jet/taxi_out", "--demonstration", "--unstored", "--slow", "11"} << "--slow";
    QTest::newRow("a slow feed") << QStringList{"practise",        "twin_jet/taxi_out",
                                                "--demonstration", "--unstored",
                                                "--slow",          "2",
                                                "--feed",          "json:49111"}
                                 << "a feed cannot be slowed";
    QTest::newRow("missing rig") << QStringList{"practise", "twin_jet/taxi_out", "--rig", inFolder("none.toml"),
                                                "--unstored"}
                                 << "none.toml";
    QTest::newRow("broken rig") << QStringList{"practise", "twin_jet/taxi_out", "--rig", inFolder("broken.toml"),
                                               "--unstored"}
                                << "broken.toml:2:";
    writeLights();
    const QStringList recorded{"practise",         "lights",     "--procedures",
                               inFolder("lights"), "--rig",      inFolder("switch.toml"),
                               "--unstored",       "--recording"};
    QTest::newRow("missing recording") << recorded + QStringList{inFolder("none.txt")} << "none.txt";
    QTest::newRow("broken recording") << recorded + QStringList{write("bad.txt", "device: 1209:0001 Box\n\n0.1: 0G\n")}
                                      << "bad.txt:3:1: '0.1: 0G' is not a report";
    QTest::newRow("recording without a rig")
        << QStringList{"practise", "twin_jet/taxi_out", "--unstored", "--recording", inFolder("none.txt")} << "--rig";
    QTest::newRow("missing hands") << QStringList{"practise", "twin_jet/taxi_out", "--hands", inFolder("none.hands"),
                                                  "--unstored"}
                                   << "none.hands";
    QTest::newRow("no store") << QStringList{"practise", "twin_jet/taxi_out", "--demonstration", "--db",
                                             inFolder("not.sqlite")}
                              << "not.sqlite";
    QTest::newRow("no such run") << QStringList{"debrief", "99", "--db", inFolder("fresh.sqlite")} << "no runs yet";
    QTest::newRow("no procedures") << QStringList{"practise",   "twin_jet/taxi_out", "--demonstration",
                                                  "--unstored", "--procedures",      inFolder("nowhere")}
                                   << "";
    QTest::newRow("a folder as descriptor") << QStringList{"decode", "--descriptor", m_folder.path()} << "is a folder";
    QTest::newRow("a device as trace") << QStringList{"judge", "x > 1", "--trace", "/dev/zero"} << "a pipe or a device";
    QTest::newRow("a device as hands") << QStringList{"practise", "twin_jet/taxi_out", "--hands", "/dev/zero",
                                                      "--unstored"}
                                       << "a pipe or a device";
    QTest::newRow("a latency of nonsense")
        << QStringList{"practise", "twin_jet/take_off", "--demonstration", "--unstored", "--latency", "-5"}
        << "--latency";
    QTest::newRow("more errors than steps")
        << QStringList{"practise", "twin_jet/take_off", "--demonstration", "--unstored", "--partner-errors", "2"}
        << "--partner-errors";
    QTest::newRow("unknown step to begin with") << QStringList{"practise",   "twin_jet/take_off",
                                                               "--hands",    TEST_DATA "/hands/take_off_wrong.hands",
                                                               "--unstored", "--from",
                                                               "gear_upp"}
                                                << "did you mean 'gear_up'";
    QTest::newRow("unknown seat") << QStringList{"practise",        "twin_jet/taxi_out",
                                                 "--demonstration", "--unstored",
                                                 "--seat",          "captian"}
                                  << "did you mean 'captain'?";
    QTest::newRow("lint of a broken file") << QStringList{"lint", inFolder("broken.toml")} << "";
}

void TestCommand::badInputIsAnError() {
    QFETCH(QStringList, arguments);
    QFETCH(QString, says);
    const Printed outcome = flowhandWith(arguments);
    QVERIFY2(outcome.status == 1, qPrintable(outcome.out + outcome.err));
    QVERIFY2((outcome.err + outcome.out).contains(says), qPrintable(outcome.err));
    QVERIFY(!(outcome.err + outcome.out).isEmpty());
}

QTEST_GUILESS_MAIN(TestCommand)
#include "test_command.moc"
