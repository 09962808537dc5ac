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

    /// Only the segments and the points: "0..1 false, 1..2 true; 1 unknown".
    static QString stretches(const std::string& condition, const std::string& csv) {
        const Outcome outcome = judge({condition, "--trace", "TRACE", "--end", "4", "--json"}, csv);
        if (outcome.status != kExitDone)
            return QString::fromStdString(outcome.err);
        const Json json = Json::parse(outcome.out);
        const auto word = [](const Json& verdict) {
            return verdict.is_boolean() ? (verdict.get<bool>() ? "true" : "false") : verdict.get<std::string>();
        };
        std::string text;
        for (const Json& segment : json["segments"])
            text += (text.empty() ? "" : ", ") + segment[0].dump() + ".." + segment[1].dump() + " " + word(segment[2]);
        for (const Json& point : json["points"])
            text += "; " + point[0].dump() + " " + word(point[1]);
        return QString::fromStdString(text);
    }

    void columnsAreWhatTheConditionMakesOfThem_data() {
        QTest::addColumn<QString>("condition");
        QTest::addColumn<QString>("csv");
        QTest::addColumn<QString>("expected");
        const auto row = [](const char* name, const char* condition, const char* csv, const char* expected) {
            QTest::newRow(name) << condition << csv << expected;
        };
        row("each empty column by itself", "(p or x > 3) and gear != down or on",
            "time,p,x,gear,on\n0,,,,true\n1,,,,\n", "0..4 true");
        row("numbers are positions beside a word", "flap == up or n > 3", "time,flap,n\n0,5,1\n1,12,4\n2,,1\n",
            "0..1 false, 1..2 true, 2..4 false");
        row("numbers are numbers beside a number", "flap == 5 or n > 3", "time,flap,n\n0,5,1\n1,12,1\n2,,4\n",
            "0..1 true, 1..2 false, 2..4 true");
        row("a number that is no position of the column", "flap == 7 or flap < 12", "time,flap\n0,up\n1,12\n",
            "0..1 true, 1..4 false");
        row("positions that come in another order", "lever == gate", "time,lever,gate\n0,up,down\n1,down,\n2,mid,\n",
            "0..1 false, 1..2 true, 2..4 false");
        row("positions beside an empty column", "lever == gate", "time,lever,gate\n0,up,\n1,down,\n", "0..4 unknown");
        row("on/off beside an empty column", "lit == armed", "time,lit,armed\n0,,true\n1,,false\n", "0..4 unknown");
        row("a movement of which nothing is known", "moved(x, 0)", "time,x\n0,\n1,5\n", "0..1 unknown, 1..4 true");
        row("numbers beside words", "lever == gate", "time,lever,gate\n0,up,5\n1,5,\n", "0..1 false, 1..4 true");
    }
    void columnsAreWhatTheConditionMakesOfThem() {
        QFETCH(QString, condition);
        QFETCH(QString, csv);
        QFETCH(QString, expected);
        QCOMPARE(stretches(condition.toStdString(), csv.toStdString()), expected);
    }

    void decimalsAreCountedAsDecimals_data() {
        QTest::addColumn<QString>("condition");
        QTest::addColumn<QString>("csv");
        QTest::addColumn<QString>("expected");
        const auto row = [](const char* condition, const char* csv, const char* expected) {
            QTest::newRow(condition) << condition << csv << expected;
        };
        row("x + y <= 0.3", "time,x,y\n0,0.1,0.2\n1,0.1,0.2000001\n", "0..1 true, 1..4 false");
        row("x >= 0.1 + 0.2", "time,x\n0,0.3\n1,0.2999999\n", "0..1 true, 1..4 false");
        row("abs(x - y) == 0.2", "time,x,y\n0,100.3,100.1\n1,100.3,100.1000001\n", "0..1 true, 1..4 false");
        row("moved(x, 0.2)", "time,x\n0,0.1\n1,0.2999999\n2,0.3\n", "0..2 false, 2..4 true");
        row("v == 36 km/h", "time,v [m/s]\n0,10\n1,10.0000001\n", "0..1 true, 1..4 false");
        row("v == 1852 m/s", "time,v [kt]\n0,3600\n1,3601\n", "0..1 true, 1..4 false");
        row("max(m, f) == f", "time,m [m],f [ft]\n0,-1,7.55\n1,3,7.55\n", "0..1 true, 1..4 false");
        row("f < max(m, f)", "time,m [m],f [ft]\n0,-1,7.55\n1,3,7.55\n", "0..1 false, 1..4 true");
        row("x / (y - 0.3) > 1", "time,x,y\n0,1,0.3\n1,1,0.4\n", "0..1 unknown, 1..4 true");
    }
    void decimalsAreCountedAsDecimals() {
        QFETCH(QString, condition);
        QFETCH(QString, csv);
        QFETCH(QString, expected);
        QCOMPARE(stretches(condition.toStdString(), csv.toStdString()), expected);
    }

    void marginsOfOneValueAreOne() {
        const Outcome outcome = judge({"x > 0.3 or y < 0.7", "--trace", "TRACE", "--end", "4", "--json"},
                                      "time,x,y\n0,0.4,0.9\n1,0.1,0.6\n2,0.1,0.8\n");
        QCOMPARE(Json::parse(outcome.out)["margins"], Json::parse("[[0, 2, 0.1], [2, 4, -0.1]]"));
    }

    /// Seen: the gate 12 was less than 10 because the trace named it first.
    void gatesCalledByNumbersAreInTheirOrder() {
        const Outcome outcome =
            judge({"f < 10", "--trace", "TRACE", "--end", "5", "--json"}, "time,f\n0,12\n1,between\n2,5\n");
        QCOMPARE(Json::parse(outcome.out)["segments"], Json::parse("[[0, 2, false], [2, 5, true]]"));
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
