#include <QtTest>

#include <fstream>
#include <sstream>

#include <QTemporaryDir>

#include <nlohmann/json.hpp>

#include "command/command.h"

using namespace flowhand;
using Json = nlohmann::json;

namespace {

struct Outcome {
    int status = -1;
    std::string out;
    std::string err;
};

/// Runs `flowhand judge` with these arguments; a trace file "TRACE" has `csv`.
Outcome judge(std::vector<std::string> arguments, const std::string& csv) {
    const QTemporaryDir folder;
    const std::string file = folder.filePath("trace.csv").toStdString();
    std::ofstream(file) << csv;
    std::replace(arguments.begin(), arguments.end(), std::string("TRACE"), file);
    std::ostringstream out;
    std::ostringstream err;
    CommandLine line{out, err, {}};
    CLI::App app;
    addJudgeCommand(app, line);
    arguments.insert(arguments.begin(), "judge");
    std::reverse(arguments.begin(), arguments.end()); // as CLI11 wants them
    app.parse(arguments);
    const int status = line.chosen();
    return {status, out.str(), err.str()};
}

const std::string kCsv = "time,x,p,flap_lever,never\n"
                         "0,1,false,5,\n"
                         "1.5,4,true,12,\n"
                         "3.000000001,2,false,up,\n";

} // namespace

class TestJudge : public QObject {
    Q_OBJECT
private Q_SLOTS:
    void printsJson_data() {
        QTest::addColumn<QString>("condition");
        QTest::addColumn<QString>("json");
        const auto row = [](const char* condition, const char* json) {
            QTest::newRow(condition) << condition << json;
        };
        row("x > 2", R"({"segments": [[0, 1.5, false], [1.5, 3.000000001, true], [3.000000001, 5, false]], "points": [],
                         "margins": [[0, 1.5, -1], [1.5, 3.000000001, 2], [3.000000001, 5, 0]]})");
        row("rise(p)", R"({"segments": [[0, 5, false]], "points": [[1.5, true]], "margins": [[0, 5, "-inf"]]})");
        row("p == false",
            R"({"segments": [[0, 1.5, true], [1.5, 3.000000001, false], [3.000000001, 5, true]], "points": [],
                         "margins": [[0, 1.5, "inf"], [1.5, 3.000000001, "-inf"], [3.000000001, 5, "inf"]]})");
        row("flap_lever == 5", R"({"segments": [[0, 1.5, true], [1.5, 5, false]], "points": [],
                         "margins": [[0, 1.5, "inf"], [1.5, 5, "-inf"]]})");
        // Nothing is known of the column; it is taken for what the condition makes of it.
        row("never", R"({"segments": [[0, 5, "unknown"]], "points": [], "margins": []})");
        row("never < 3", R"({"segments": [[0, 5, "unknown"]], "points": [], "margins": []})");
        row("never == down", R"({"segments": [[0, 5, "unknown"]], "points": [], "margins": []})");
    }
    void printsJson() {
        QFETCH(QString, condition);
        QFETCH(QString, json);
        const Outcome outcome = judge({condition.toStdString(), "--trace", "TRACE", "--end", "5", "--json"}, kCsv);
        QCOMPARE(outcome.status, kExitDone);
        QCOMPARE(Json::parse(outcome.out), Json::parse(json.toStdString()));
        QVERIFY(outcome.err.empty());
    }

    void keepsTimesExact() {
        const Outcome outcome =
            judge({"x < 2", "--trace", "TRACE", "--json"}, "time,x\n123456789.000000001,1\n123456789.000000002,2\n");
        QVERIFY2(outcome.out.find("[123456789.000000001, 123456789.000000002, true]") != std::string::npos,
                 outcome.out.c_str());
    }

    void printsText() {
        const Outcome outcome = judge({"once(rise(p), 1 s)", "--trace", "TRACE", "--end", "5"}, kCsv);
        QCOMPARE(outcome.out,
                 std::string("0 s to 1.5 s: false\n1.5 s to 2.5 s: true\n2.5 s to 5 s: false\nat 2.5 s only: true\n"));
        const Outcome unit = judge({"v > 2 m/s", "--trace", "TRACE", "--end", "2"}, "time,v [m/s]\n0,5\n");
        QCOMPARE(unit.out, std::string("0 s to 2 s: true\n0 s to 2 s: margin 3 m/s of v\n"));
    }

    void usesAnAircraft() {
        const std::string aircraft = std::string(PROCEDURES) + "/twin_jet/aircraft.toml";
        const Outcome outcome = judge({"ground_speed < aircraft.tiller_limit", "--trace", "TRACE", "--aircraft",
                                       aircraft, "--end", "2", "--json"},
                                      "time,ground_speed [km/h]\n0,0\n1,300\n");
        QVERIFY2(outcome.status == kExitDone, outcome.err.c_str());
        QCOMPARE(Json::parse(outcome.out)["segments"], Json::parse("[[0, 1, true], [1, 2, false]]"));
    }

    void refuses_data() {
        QTest::addColumn<QStringList>("arguments");
        QTest::addColumn<QString>("says");
        QTest::newRow("condition") << QStringList{"x > 2 kt", "--trace", "TRACE"} << "condition:1:5: '2 kt'";
        QTest::newRow("no file") << QStringList{"x > 2", "--trace", "/no/such/file.csv"}
                                 << "/no/such/file.csv: this file cannot be opened";
        QTest::newRow("end too early") << QStringList{"x > 2", "--trace", "TRACE", "--end=-1"}
                                       << "before the trace begins";
        QTest::newRow("end no time") << QStringList{"x > 2", "--trace", "TRACE", "--end", "soon"}
                                     << "'soon' is not a time";
        QTest::newRow("aircraft") << QStringList{"x > 2", "--trace", "TRACE", "--aircraft", "/no/such.toml"}
                                  << "/no/such.toml";
    }
    void refuses() {
        QFETCH(QStringList, arguments);
        QFETCH(QString, says);
        std::vector<std::string> words;
        for (const QString& argument : arguments)
            words.push_back(argument.toStdString());
        const Outcome outcome = judge(words, kCsv);
        QCOMPARE(outcome.status, kExitError);
        QVERIFY(outcome.out.empty());
        QVERIFY2(outcome.err.find(says.toStdString()) != std::string::npos, outcome.err.c_str());
    }

    void warns() {
        const Outcome outcome = judge({"since(not p, p)", "--trace", "TRACE"}, kCsv);
        QCOMPARE(outcome.status, kExitDone);
        QVERIFY(outcome.err.find("warning") != std::string::npos);
    }
};

QTEST_APPLESS_MAIN(TestJudge)
#include "test_judge.moc"
