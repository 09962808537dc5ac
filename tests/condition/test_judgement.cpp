#include <QtTest>

#include <fstream>

#include <nlohmann/json.hpp>

#include "condition/judgement.h"
#include "condition/reading.h"

using namespace flowhand;
using Json = nlohmann::json;

namespace {

const Json& published() {
    static const Json examples = Json::parse(std::ifstream(TEST_DATA "/condition/published.json"));
    return examples;
}

Time at(const Json& text) {
    return parseSeconds(text.get<std::string>()).value();
}

Result<Trace> readTrace(const std::string& text, const std::string& condition = "") {
    return TraceTable::parse(text, "trace.csv").and_then([&](const TraceTable& table) {
        return table.read({}, readingOf(condition, table.signalNames(), {}));
    });
}

Judgement judged(const std::string& text, const std::string& csv, Time end) {
    const Trace trace = readTrace(csv, text).value();
    const std::map<std::string, AircraftValue, std::less<>> none;
    std::vector<ConditionProblem> problems;
    return judge(Condition::compile(text, {trace.signals, none}, problems).value(), trace, end);
}

/// "0..2 false, 2..3.5 true; 3.5 true": segments, then points.
std::string described(const Judgement& judgement) {
    const auto word = [](Truth truth) {
        return truth == Truth::True ? " true" : truth == Truth::False ? " false" : " unknown";
    };
    std::string text;
    for (const Judgement::Segment& segment : judgement.segments)
        text += (text.empty() ? "" : ", ") + secondsText(segment.from) + ".." + secondsText(segment.to) +
                word(segment.truth);
    for (const Judgement::Point& point : judgement.points)
        text += "; " + secondsText(point.time) + word(point.truth);
    return text;
}

} // namespace

class TestJudgement : public QObject {
    Q_OBJECT
private Q_SLOTS:
    void agreesWithPublishedExamples_data() {
        QTest::addColumn<int>("index");
        for (std::size_t i = 0; i < published().size(); ++i)
            QTest::addRow("%s", published()[i]["source"].get<std::string>().c_str()) << static_cast<int>(i);
    }
    void agreesWithPublishedExamples() {
        QFETCH(int, index);
        const Json& example = published().at(static_cast<std::size_t>(index));
        std::string csv;
        for (const Json& line : example["trace"])
            csv += line.get<std::string>() + "\n";
        const Judgement found = judged(example["condition"].get<std::string>(), csv, at(example["end"]));
        if (example.contains("differs")) {
            QCOMPARE(found.segments.size(), std::size_t{1});
            QVERIFY(found.segments[0].truth == Truth::False);
            QVERIFY(found.points.empty());
            return;
        }
        if (example["kind"] == "margin") {
            std::vector<Judgement::MarginSegment> finite;
            for (const Judgement::MarginSegment& segment : found.margins)
                if (std::isfinite(segment.margin.value))
                    finite.push_back(segment);
            QCOMPARE(finite.size(), example["stated"].size());
            for (std::size_t i = 0; i < finite.size(); ++i) {
                QVERIFY(finite[i].from == at(example["stated"][i][0]));
                QVERIFY(finite[i].to == at(example["stated"][i][1]));
                QCOMPARE(finite[i].margin.value, example["stated"][i][2].get<double>());
            }
            return;
        }
        std::vector<Judgement::Segment> areTrue;
        for (const Judgement::Segment& segment : found.segments)
            if (segment.truth == Truth::True)
                areTrue.push_back(segment);
        QCOMPARE(areTrue.size(), example["stated"].size());
        for (std::size_t i = 0; i < areTrue.size(); ++i) {
            QVERIFY(areTrue[i].from == at(example["stated"][i][0]));
            QVERIFY(areTrue[i].to == at(example["stated"][i][1]));
        }
    }

    void judges_data() {
        QTest::addColumn<QString>("condition");
        QTest::addColumn<QString>("expected");
        const auto row = [](const char* condition, const char* expected) {
            QTest::newRow(condition) << condition << expected;
        };
        row("x > 2", "0..1.5 false, 1.5..6 true");
        row("p", "0..1.5 false, 1.5..4 true, 4..6 false");
        row("p == false", "0..1.5 true, 1.5..4 false, 4..6 true");
        row("rise(p)", "0..6 false; 1.5 true");
        row("not rise(p)", "0..6 true; 1.5 false");
        row("held(p, 1 s)", "0..2.5 false, 2.5..4 true, 4..6 false");
        row("once(fall(p), 0 s .. 1 s)", "0..4 false, 4..5 true, 5..6 false; 5 true");
        row("flap_lever == 12", "0..3.000000001 false, 3.000000001..4 true, 4..6 false");
        row("flap_lever < 12", "0..3.000000001 true, 3.000000001..6 false");
        row("flap_lever == 34", "0..6 false");
        row("flap_lever == 'up'", "0..1.5 true, 1.5..6 false");
        row("ground_speed < 12 kt", "0..3.000000001 true, 3.000000001..6 false");
        row("late > 1", "0..4 unknown, 4..6 true");
        row("late > 1 or p", "0..1.5 unknown, 1.5..6 true");
        row("historically(p, 5 s ..)", "0..5 true, 5..6 false");
    }
    void judges() {
        QFETCH(QString, condition);
        QFETCH(QString, expected);
        const std::string csv = "time,x,p,flap_lever,ground_speed [kt],late\r\n"
                                "0,1,false,up,5,\r\n"
                                "1.5,,true,4,,\r\n"
                                "1.5,3,,,,\r\n" // the same time: one change
                                "\r\n"
                                "3.000000001,5,,12,12.5,\r\n"
                                "4.0,,false,between,,7\r\n";
        QCOMPARE(QString::fromStdString(described(judged(condition.toStdString(), csv, std::chrono::seconds(6)))),
                 expected);
    }

    void domainEndsBeforeItsEnd() {
        const std::string csv = "time,p\n0,false\n2,true\n3,false\n";
        QCOMPARE(described(judged("p", csv, std::chrono::seconds(2))), std::string("0..2 false"));
        QCOMPARE(described(judged("p", csv, std::chrono::seconds(3))), std::string("0..2 false, 2..3 true"));
        QCOMPARE(described(judged("p", csv, Time(0))), std::string(""));
    }

    void timesAreExact_data() {
        QTest::addColumn<QString>("text");
        QTest::addColumn<qint64>("nanoseconds");
        QTest::addColumn<QString>("again");
        QTest::newRow("whole") << "12" << qint64{12'000'000'000} << "12";
        QTest::newRow("finest") << "0.000000001" << qint64{1} << "0.000000001";
        QTest::newRow("no binary fraction") << "0.1" << qint64{100'000'000} << "0.1";
        QTest::newRow("needless zeros") << "007.50000000000" << qint64{7'500'000'000} << "7.5";
        QTest::newRow("negative") << "-0.5" << qint64{-500'000'000} << "-0.5";
        QTest::newRow("latest") << "500000000" << qint64{500'000'000'000'000'000} << "500000000";
    }
    void timesAreExact() {
        QFETCH(QString, text);
        QFETCH(qint64, nanoseconds);
        QFETCH(QString, again);
        const Result<Time> time = parseSeconds(text.toStdString());
        QVERIFY(time.has_value());
        QCOMPARE(qint64{time->count()}, nanoseconds);
        QCOMPARE(QString::fromStdString(secondsText(*time)), again);
    }

    void refusesTimes_data() {
        QTest::addColumn<QString>("text");
        for (const char* text :
             {"", "-", ".", "1e3", "0.0000000001", "500000001", "99999999999999999999", "1.2.3", "nan", "1 s"})
            QTest::addRow("'%s'", text) << text;
    }
    void refusesTimes() {
        QFETCH(QString, text);
        QVERIFY(!parseSeconds(text.toStdString()));
    }

    void refusesTraces_data() {
        QTest::addColumn<QString>("text");
        QTest::addColumn<int>("line");
        QTest::addColumn<int>("column");
        QTest::addColumn<QString>("says");
        const auto row = [](const char* name, const char* text, int line, int column, const char* says) {
            QTest::newRow(name) << text << line << column << says;
        };
        row("empty", "", 1, 1, "first line");
        row("no time column", "x,y\n1,2\n", 1, 1, "'time'");
        row("no values", "time,x\n", 1, 1, "no line with values");
        row("a cell too few", "time,x,y\n0,1\n", 2, 3, "2 cells");
        row("time goes back", "time,x\n1,1\n0,1\n", 3, 1, "goes back");
        row("no time", "time,x\nsoon,1\n", 2, 1, "soon");
        row("no unit", "time,x [knots]\n0,1\n", 1, 6, "not a unit");
        row("unit never closed", "time,x [kt\n0,1\n", 1, 6, "kt");
        row("unit and word", "time,x [kt]\n0,fast\n", 2, 3, "not a number");
        row("not finite", "time,x [kt]\n0,inf\n", 2, 3, "not a number");
        row("not a number, without a unit", "time,x\n0,1\n1,nan\n", 3, 3, "'nan' is not a number");
        row("name twice", "time,x,x\n0,1,1\n", 1, 8, "used twice");
        row("no name", "time,,x\n0,1,1\n", 1, 6, "no name");
    }
    void refusesTraces() {
        QFETCH(QString, text);
        QFETCH(int, line);
        QFETCH(int, column);
        QFETCH(QString, says);
        const Result<Trace> trace = readTrace(text.toStdString());
        QVERIFY(!trace.has_value());
        QCOMPARE(trace.error().place.line, line);
        QCOMPARE(trace.error().place.column, column);
        QVERIFY2(trace.error().message.find(says.toStdString()) != std::string::npos, trace.error().message.c_str());
    }

    void takesUnitsAndPositionsOfKnownSignals() {
        SignalTable known;
        Signal speed;
        speed.name = "ground_speed";
        speed.unit = *findUnit("kt");
        Signal lever;
        lever.name = "gear_lever";
        lever.kind = SignalKind::Position;
        lever.positions = {"up", "down"};
        const SignalId speedId = known.add(speed).value();
        const SignalId leverId = known.add(lever).value();
        const auto read = [&](const char* text) {
            return TraceTable::parse(text, "trace.csv").value().read(known, {});
        };
        const Result<Trace> trace = read("time,gear_lever,ground_speed [km/h]\n0,\"down\",18.52\n");
        QVERIFY(trace.has_value());
        QVERIFY(trace->rows[0].changes[0].first == leverId && trace->rows[0].changes[0].second == Value::position(1));
        QVERIFY(trace->rows[0].changes[1].first == speedId);
        QCOMPARE(trace->rows[0].changes[1].second.number(), 10.0);
        QVERIFY(!read("time,gear_lever\n0,middle\n").has_value());
        QVERIFY(!read("time,ground_speed [deg]\n0,5\n").has_value());
    }
};

QTEST_APPLESS_MAIN(TestJudgement)
#include "test_judgement.moc"
