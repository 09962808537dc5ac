// The bench's commands as a person types them, over recordings: wire, walk, prove, print.

#include <memory>
#include <sstream>

#include <QDir>
#include <QFile>
#include <QJsonArray>
#include <QJsonDocument>
#include <QJsonObject>
#include <QTemporaryDir>
#include <QtTest>

#include "command/printed.h"

using namespace flowhand;

namespace {

Printed bench(const QStringList& arguments) {
    return flowhandWith(QStringList{"bench"} + arguments);
}

/// A device with one axis X of 8 bits and two buttons, recorded: what was done, a line each 10 ms.
class Recorded {
public:
    Recorded& hold(int axis, int buttons, double seconds) {
        for (int i = 0; i < seconds * 100; ++i)
            line(axis, buttons);
        m_axis = axis;
        return *this;
    }
    Recorded& move(int axis, int buttons) {
        const int from = m_axis;
        for (int i = 1; i <= 60; ++i)
            line(from + (axis - from) * i / 60, buttons);
        return hold(axis, buttons, 1.5);
    }
    [[nodiscard]] QByteArray text() const { return m_text; }

private:
    void line(int axis, int buttons) {
        m_text += QString::asprintf("%d.%02d0000: %02X %02X\n", m_time / 100, m_time % 100, axis, buttons).toUtf8();
        ++m_time;
    }

    QByteArray m_text = "device: 1209:F101 Quadrant\ndescriptor: 05 01 09 04 A1 01 09 30 15 00 26 FF 00 75 08 95 01 "
                        "81 02 05 09 19 01 29 02 25 01 75 01 95 02 81 02 75 06 95 01 81 03 C0\n";
    int m_time = 0;
    int m_axis = 0;
};

const QString kAircraft = PROCEDURES "/twin_jet/aircraft.toml";
const QString kFullCockpit = ASSETS "/rigs/full_cockpit.toml";
/// What it is wired for.
const QStringList kWiredFlows{"--flow", "taxi_out", "--flow", "take_off", "--flow", "landing_roll"};

} // namespace

class TestBench : public QObject {
    Q_OBJECT

private Q_SLOTS:
    void init() {
        m_folder = std::make_unique<QTemporaryDir>();
        QVERIFY(m_folder->isValid());
    }
    void fromWireToSheet();
    void twoSignalsOfOneInputAreAConflict();
    void coverageSaysWhich();
    void coverageAsTable();
    void sheetWithoutEvidence();
    void whatStaysOpenIsNotConfirmed();
    void tolerancesOfTheRigFileAreAskedAndSaid();
    void mistakesAreErrors_data();
    void mistakesAreErrors();

private:
    QString write(const QString& name, const QByteArray& content) {
        QFile file(path(name));
        if (!file.open(QFile::WriteOnly) || file.write(content) != content.size())
            return {};
        return file.fileName();
    }
    QString read(const QString& name) {
        QFile file(path(name));
        return file.open(QFile::ReadOnly) ? QString::fromUtf8(file.readAll()) : QString();
    }
    QString path(const QString& name) const { return m_folder->filePath(name); }

    std::unique_ptr<QTemporaryDir> m_folder;
};

void TestBench::fromWireToSheet() {
    const QString moving = write("wire.rec", Recorded()
                                                 .hold(10, 0, 3)
                                                 .move(240, 0)
                                                 .move(10, 0)
                                                 .hold(10, 0, 3)
                                                 .move(10, 2)
                                                 .move(10, 0)
                                                 .hold(10, 0, 1)
                                                 .text());
    const Printed wired = bench({"wire", "--rig", path("my.toml"), "--aircraft", kAircraft, "--recording", moving,
                                 "thrust_lever_1", "taxi_light"});
    QVERIFY2(wired.status == 0, qPrintable(wired.out + wired.err));
    QVERIFY2(read("my.toml").contains("signal = \"thrust_lever_1\"\ndevice = \"quadrant\"\nwiring = \"axis\"\n"
                                      "input = \"X\"\nrange = [10, 240]\n"),
             qPrintable(read("my.toml")));
    QVERIFY2(read("my.toml").contains("signal = \"taxi_light\"\ndevice = \"quadrant\"\nwiring = \"contact\"\n"
                                      "input = \"button 2\"\n"),
             qPrintable(read("my.toml")));

    const QString walking =
        write("walk.rec", Recorded().hold(10, 0, 1).move(240, 0).hold(240, 0, 1).move(240, 2).move(240, 0).text());
    const Printed walked =
        bench({"walk", "--rig", path("my.toml"), "--recording", walking, "--sheet", path("sheet.html")});
    QVERIFY2(walked.status == 0, qPrintable(walked.out + walked.err));
    QCOMPARE(read("my.evidence.jsonl").count('\n'), 2);
    QVERIFY(read("my.evidence.jsonl").contains("\"source\":\"recording\""));

    const QString sheet = read("sheet.html");
    QVERIFY(sheet.contains("qualifies nothing"));
    QVERIFY(sheet.contains("not for real-world flight training"));
    QVERIFY(sheet.contains("2 of 2 controls"));
    QVERIFY(sheet.contains("from a recording"));
    QCOMPARE(sheet.count("<svg"), 2);
    QVERIFY(!sheet.contains("<script") && !sheet.contains("http"));

    const Printed proven = bench({"coverage", "--rig", path("my.toml"), PROCEDURES "/twin_jet", "--json"});
    QCOMPARE(proven.status, 1); // two controls do not make a cockpit
    const QJsonObject json = QJsonDocument::fromJson(proven.out.toUtf8()).object();
    QCOMPARE(json["controls"].toArray()[0].toObject()["state"].toString(), QString("seen working"));
    for (const QJsonValue& step : json["steps"].toArray())
        if (step.toObject()["step"].toString() == "taxi_light_on")
            QVERIFY(step.toObject()["confirmable"].toBool());

    // Another range: what was seen no longer holds.
    write("my.toml", read("my.toml").replace("[10, 240]", "[20, 240]").toUtf8());
    const Printed stale = bench({"coverage", "--rig", path("my.toml"), PROCEDURES "/twin_jet", "--json"});
    const QJsonObject lever = QJsonDocument::fromJson(stale.out.toUtf8()).object()["controls"].toArray()[0].toObject();
    QCOMPARE(lever["state"].toString(), QString("wired"));
    QVERIFY(lever["stale"].toBool());
    QCOMPARE(bench({"sheet", "--rig", path("my.toml"), "--out", path("sheet.html")}).status, 0);
    QVERIFY(read("sheet.html").contains("stale"));
}

void TestBench::twoSignalsOfOneInputAreAConflict() {
    const QString moving = write("wire.rec", Recorded()
                                                 .hold(10, 0, 3)
                                                 .move(240, 0)
                                                 .move(10, 0)
                                                 .hold(10, 0, 3)
                                                 .move(240, 0)
                                                 .move(10, 0)
                                                 .hold(10, 0, 1)
                                                 .text());
    const QStringList wire{"wire",        "--rig", path("my.toml"),  "--aircraft",    kAircraft,
                           "--recording", moving,  "thrust_lever_1", "thrust_lever_2"};
    const Printed refused = bench(wire);
    QCOMPARE(refused.status, 1);
    QVERIFY(refused.out.contains("Conflict: quadrant: X is also wired to 'Thrust lever 1'"));
    QVERIFY(!read("my.toml").contains("thrust_lever_2"));
    QCOMPARE(bench(wire + QStringList{"--shared"}).status, 0);
    QVERIFY(read("my.toml").contains("thrust_lever_2"));
}

void TestBench::coverageSaysWhich() {
    const Printed whole = bench(QStringList{"coverage", "--rig", kFullCockpit, PROCEDURES "/twin_jet"} + kWiredFlows);
    QVERIFY2(whole.status == 0, qPrintable(whole.out + whole.err));
    QVERIFY(whole.out.contains("Wired, but no step"));
    QCOMPARE(
        bench(QStringList{"coverage", "--rig", kFullCockpit, PROCEDURES "/twin_jet", "--proven"} + kWiredFlows).status,
        1);
    const Printed all = bench({"coverage", "--rig", kFullCockpit, PROCEDURES "/twin_jet"});
    QCOMPARE(all.status, 1);
    QVERIFY2(all.out.simplified().contains("Beacon is not wired"), qPrintable(all.out)); // it has no overhead panel
    QCOMPARE(bench({"coverage", "--rig", kFullCockpit, PROCEDURES "/twin_jet/taxi_out.toml"}).status, 0);

    QFile shipped(kFullCockpit);
    QVERIFY(shipped.open(QFile::ReadOnly));
    QString text = QString::fromUtf8(shipped.readAll());
    text.replace("    { position = \"12\", at = 1950 },\n", "");
    const QString rig = write("part.toml", text.toUtf8());
    const Printed part = bench({"coverage", "--rig", rig, PROCEDURES "/twin_jet", "--flow", "taxi_out"});
    QCOMPARE(part.status, 1);
    QVERIFY(part.out.contains("Cannot be confirmed with this rig"));
    QVERIFY2(part.out.simplified().contains("Flap lever must be 12"), qPrintable(part.out));
    QCOMPARE(bench({"coverage", "--rig", rig, PROCEDURES "/twin_jet", "--flow", "landing_roll"}).status, 0);
}

void TestBench::coverageAsTable() {
    const Printed outcome =
        bench(QStringList{"coverage", "--rig", kFullCockpit, PROCEDURES "/twin_jet", "--csv", path("table.csv")} +
              kWiredFlows);
    QCOMPARE(outcome.status, 0);
    const QStringList lines = read("table.csv").split("\r\n", Qt::SkipEmptyParts);
    QVERIFY(lines.size() > 40);
    QVERIFY(lines[0].startsWith("flow,step,title,control,"));
    // RFC 4180: a field with a comma stands in quotes.
    QVERIFY(!lines.filter("\"Thrust levers a little forward, equally\"").isEmpty());
}

void TestBench::sheetWithoutEvidence() {
    const QString rig = write("my.toml", "format = 1\ntitle = \"<script>A & B</script>\"\n[[device]]\n"
                                         "name = \"quadrant\"\nid = \"1209:F101\"\n[[control]]\n"
                                         "name = \"Lever \\\"1\\\"\"\nsignal = \"thrust_lever_1\"\n"
                                         "wiring = \"axis\"\ninput = \"X\"\nrange = [10, 240]\n");
    const Printed made = bench({"sheet", "--rig", rig, "--out", path("sheet.html")});
    QVERIFY2(made.status == 0, qPrintable(made.err));
    const Printed told = bench({"sheet", "--rig", rig, "--out", path("sheet.html"), "--json"});
    const QJsonObject json = QJsonDocument::fromJson(told.out.toUtf8()).object();
    QCOMPARE(json["sheet"].toString(), path("sheet.html"));
    QCOMPARE(json["controls"].toInt(), 1);
    QCOMPARE(json["confirmed"].toInt(), 0);
    const QString sheet = read("sheet.html");
    QVERIFY(sheet.contains("0 of 1 controls"));
    QVERIFY(sheet.contains("not walked"));
    QVERIFY(sheet.contains("Check sheet: &lt;script&gt;A &amp; B&lt;/script&gt;</h1>"));
    QVERIFY(sheet.contains("Lever &quot;1&quot;"));
    QVERIFY(!sheet.contains("<script") && !sheet.contains("<svg"));
}

void TestBench::whatStaysOpenIsNotConfirmed() {
    const QString rig = write("my.toml", "format = 1\ntitle = \"Desk\"\n[[device]]\nname = \"quadrant\"\n"
                                         "id = \"1209:F101\"\n[[control]]\nsignal = \"thrust_lever_1\"\n"
                                         "wiring = \"axis\"\ninput = \"X\"\nrange = [10, 240]\n");
    const QString half = write("half.rec", Recorded().hold(10, 0, 1).move(130, 0).text());
    const Printed walked = bench({"walk", "--rig", rig, "--recording", half, "--json"});
    QCOMPARE(walked.status, 1);
    QVERIFY(walked.err.contains("its high end"));
    QVERIFY(read("my.evidence.jsonl").contains("\"good\":false"));
    QCOMPARE(bench({"walk", "--rig", rig, "--recording", half, "--unstored"}).status, 1);
    QCOMPARE(read("my.evidence.jsonl").count('\n'), 1);
    const Printed loose = bench({"walk", "--rig", rig, "--recording", half, "--travel", "48.5", "--unstored"});
    QVERIFY2(loose.status == 0, qPrintable(loose.out + loose.err));
}

void TestBench::tolerancesOfTheRigFileAreAskedAndSaid() {
    const QString rig = write("my.toml", "format = 1\ntitle = \"Desk\"\n[tolerances]\ntravel = \"48.5 %\"\n[[device]]\n"
                                         "name = \"quadrant\"\nid = \"1209:F101\"\n[[control]]\n"
                                         "signal = \"thrust_lever_1\"\nwiring = \"axis\"\ninput = \"X\"\n"
                                         "range = [10, 240]\n");
    const QString half = write("half.rec", Recorded().hold(10, 0, 1).move(130, 0).text());
    const QStringList walk = {"walk", "--rig", rig, "--recording", half, "--sheet", path("sheet.html")};
    const Printed asked = bench(walk);
    QVERIFY2(asked.status == 0, qPrintable(asked.out + asked.err));
    QVERIFY2(read("sheet.html").contains("48.5 % of the travel") && read("sheet.html").contains("Other than the goals"),
             qPrintable(read("sheet.html")));
    // What is typed goes before what the file says.
    QCOMPARE(bench(walk + QStringList{"--travel", "3"}).status, 1);
    QVERIFY(read("sheet.html").contains("3.0 % of the travel"));
    QVERIFY(!read("sheet.html").contains("Other than the goals"));
}

void TestBench::mistakesAreErrors_data() {
    QTest::addColumn<QStringList>("arguments");
    QTest::addColumn<QString>("message");
    const QString rig = kFullCockpit;
    QTest::newRow("no such rig") << QStringList{"coverage", "--rig", "none.toml", PROCEDURES} << "none.toml";
    QTest::newRow("no such flow") << QStringList{"coverage", "--rig", rig, PROCEDURES, "--flow", "fly_home"}
                                  << "fly_home";
    QTest::newRow("no flow there") << QStringList{"coverage", "--rig", rig, ASSETS} << "no flow here";
    QTest::newRow("no such seat") << QStringList{"coverage", "--rig", rig, PROCEDURES, "--seat", "jump_seat"}
                                  << "jump_seat";
    QTest::newRow("no such control") << QStringList{"walk", "--rig", rig, "flap_level", "--recording", "x"}
                                     << "flap_level";
    QTest::newRow("no such recording") << QStringList{"walk", "--rig", rig, "--recording", "none.rec"} << "none.rec";
    QTest::newRow("another aircraft's word")
        << QStringList{"wire", "--rig", "x.toml", "--aircraft", kAircraft, "--recording", "none.rec", "spoon"}
        << "spoon";
    QTest::newRow("sheet into nowhere") << QStringList{"sheet", "--rig", rig, "--out", "/nowhere/sheet.html"}
                                        << "/nowhere/sheet.html";
    QTest::newRow("no subcommand") << QStringList{} << "subcommand";
}

void TestBench::mistakesAreErrors() {
    QFETCH(QStringList, arguments);
    QFETCH(QString, message);
    const Printed outcome = bench(arguments);
    QCOMPARE(outcome.status, 1);
    QVERIFY2(outcome.err.contains(message), qPrintable(outcome.err));
}

QTEST_APPLESS_MAIN(TestBench)
#include "test_bench.moc"
