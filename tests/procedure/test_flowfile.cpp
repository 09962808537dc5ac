#include <QtTest>

#include "bench.h"
#include "problemtext.h"
#include "procedure/flow.h"

using namespace flowhand;
using namespace std::chrono_literals;

class TestFlowFile : public QObject {
    Q_OBJECT

private Q_SLOTS:
    void readsEveryKey();
    void fillsInWhatIsLeftOut();
    void ordersSteps();
    void aFlowOfTheLargestSizeLoads();
    void brokenFlowIsRefusedWithItsPlace_data();
    void brokenFlowIsRefusedWithItsPlace();
    void doubtfulStepsAreWarnedOf_data();
    void doubtfulStepsAreWarnedOf();
    void readingStopsAfterAHundredProblems();
};

namespace {

std::optional<Flow> parsed(const QString& source, Problems& problems) {
    return parseFlow(source.toStdString(), "bench/small.toml", benchAircraft(), problems);
}

SignalId signalOf(const char* name) {
    return *benchAircraft().signals.find(name);
}

Flow small() {
    Problems problems;
    std::optional<Flow> flow = parsed(benchText("small.toml"), problems);
    if (!flow || !problems.all().empty())
        qFatal("%s", qPrintable(problemText(problems)));
    return std::move(*flow);
}

} // namespace

void TestFlowFile::readsEveryKey() {
    const Flow flow = small();
    QCOMPARE(flow.id, std::string("small"));
    QCOMPARE(flow.file, std::string("bench/small.toml"));
    QCOMPARE(flow.title, std::string("Small flow"));
    QCOMPARE(flow.style, FlowStyle::Flow);
    QCOMPARE(flow.phaseFrom, std::string("taxi_out"));
    QCOMPARE(flow.phaseTo, std::string("line_up"));
    QCOMPARE(flow.target, 75.0);
    QCOMPARE(flow.source, benchText("small.toml").toStdString());
    QCOMPARE(flow.startPlace, std::string("here"));
    QCOMPARE(flow.startWhere.line, 9);
    QCOMPARE(flow.start.size(), std::size_t(3));
    QCOMPARE(flow.start[0].value, Value::number(15.0));
    QCOMPARE(flow.start[0].tolerance, 2.0);
    QCOMPARE(flow.start[1].value, Value::position(0));
    QCOMPARE(flow.start[2].value, Value::onOff(false));

    const Step& flap = flow.steps[0];
    QCOMPARE(flap.title, std::string("Flap lever to the planned gate"));
    QCOMPARE(flap.seat, std::string("pilot"));
    QCOMPARE(flap.cue->text, std::string("Flap."));
    QCOMPARE(flap.cue->by, std::string("helper"));
    QVERIFY(flap.expires && !flap.expiresAfter);
    QCOMPARE(flap.weight, 3);
    QCOMPARE(flap.place, (SourcePlace{"bench/small.toml", 16, 1}));
    QCOMPARE(flap.done->place, (SourcePlace{"bench/small.toml", 20, 8}));

    const Step& light = flow.steps[1];
    QVERIFY(light.when && light.suspend && !light.expires);
    QCOMPARE(*light.expiresAfter, Duration(30s));
    QCOMPARE(light.within, Duration(2s));
    QCOMPARE(light.late, Duration(6s));

    QCOMPARE(flow.steps[2].band->signal, signalOf("lever"));
    QCOMPARE(flow.steps[2].band->lowest, 40.0);
    QCOMPARE(flow.steps[2].band->highest, 60.0);
    QCOMPARE(flow.steps[5].duty, Duty::Monitoring);

    QCOMPARE(flow.guards.size(), std::size_t(1));
    QCOMPARE(*flow.guards[0].from, std::size_t(1));
    QCOMPARE(*flow.guards[0].to, std::size_t(3));
    QVERIFY(flow.guards[0].isCritical);
    QCOMPARE(flow.outcomes[0].name, std::string("stopped"));
    QCOMPARE(flow.waivers[0].rule, std::string("step-says-why"));
    QCOMPARE(flow.waivers[0].step, std::string("call"));
}

void TestFlowFile::fillsInWhatIsLeftOut() {
    const Flow flow = small();
    QCOMPARE(flow.steps[0].late, Duration(10s));
    QCOMPARE(flow.steps[0].movedBy, std::string("pilot"));
    QCOMPARE(flow.steps[0].controls, std::vector<SignalId>{signalOf("flap")});
    QVERIFY(!flow.steps[0].compareOnly);
    QCOMPARE(flow.steps[1].needs, std::vector<SignalId>{signalOf("ground_speed")});
    QCOMPARE(flow.steps[2].needs, std::vector<SignalId>{signalOf("airspeed")});
    QCOMPARE(flow.steps[2].within, Duration(5s));
    QVERIFY(flow.steps[3].done->condition.isInstant());
    QCOMPARE(flow.steps[3].controls, std::vector<SignalId>{signalOf("reply_button")});
    QVERIFY(flow.steps[4].compareOnly);
    QVERIFY(!flow.steps[5].done);
    QCOMPARE(flow.steps[5].movedBy, std::string("helper"));
}

void TestFlowFile::ordersSteps() {
    const Flow flow = small();
    using Indexes = std::vector<std::size_t>;
    QCOMPARE(flow.steps[0].after, Indexes{});
    QCOMPARE(flow.steps[1].after, Indexes{0});
    QCOMPARE(flow.steps[2].after, Indexes{0});
    QCOMPARE(flow.steps[3].after, (Indexes{1, 2}));
    QCOMPARE(flow.steps[4].after, Indexes{0});
    QCOMPARE(flow.steps[5].after, (Indexes{1, 2, 3}));
}

void TestFlowFile::aFlowOfTheLargestSizeLoads() {
    QString source = "format = 1\ntitle = \"Long\"\nphases = [\"cruise\"]\nseat = \"pilot\"\n";
    for (int i = 0; i < 10000; ++i)
        source += QString("[[step]]\nid = \"s%1\"\ntitle = \"Light\"\ndone = \"light\"\n").arg(i);
    Problems problems;
    const std::optional<Flow> flow = parsed(source, problems);
    QVERIFY2(flow, qPrintable(problemText(problems)));
    QCOMPARE(flow->steps.size(), std::size_t(10000));
    QVERIFY(!parsed(source + "[[step]]\nid = \"one_more\"\ntitle = \"Light\"\ndone = \"light\"\n", problems));
    QCOMPARE(problems.firstError().code, std::string("too-many"));
}

void TestFlowFile::brokenFlowIsRefusedWithItsPlace_data() {
    QTest::addColumn<QString>("old");
    QTest::addColumn<QString>("broken");
    QTest::addColumn<QString>("code");
    QTest::addColumn<int>("line");
    QTest::addColumn<int>("column");
    const auto row = [](const char* name, const char* old, const char* broken, const char* code, int line, int column) {
        QTest::newRow(name) << old << broken << code << line << column;
    };
    row("not TOML", "format = 1", "format = ", "bad-toml", 1, 10);
    row("no format", "format = 1", "", "missing-key", 1, 1);
    row("newer format", "format = 1", "format = 9", "newer-format", 1, 10);
    row("no title", "title = \"Small flow\"", "", "missing-key", 1, 1);
    row("unknown key of the file", "target = 75", "tarket = 75", "unknown-key", 6, 10);
    row("unknown seat", "seat = \"pilot\"", "seat = \"pilto\"", "unknown-seat", 5, 8);
    row("no seat", "seat = \"pilot\"", "", "missing-key", 16, 1);
    row("unknown style", "target = 75", "style = \"read\"", "unknown-word", 6, 9);
    row("no phases", "phases = [\"taxi_out\", \"line_up\"]", "", "bad-phases", 1, 1);
    row("unknown phase", "\"line_up\"]", "\"lineup\"]", "unknown-phase", 4, 10);
    row("phases the wrong way", "\"line_up\"]", "\"gate\"]", "bad-phases", 4, 10);
    row("target out of range", "target = 75", "target = 101", "bad-value", 6, 10);
    row("start without a place", "place = \"here\"", "", "missing-key", 8, 1);
    row("start of an unknown control", "light = \"off\"", "lihgt = \"off\"", "unknown-control", 14, 9);
    row("start of a motion signal", "light = \"off\"", "airspeed = \"0 kt\"", "unknown-control", 14, 12);
    row("start at an unknown position", "flap = \"up\"", "flap = \"13\"", "bad-value", 13, 8);
    row("start between positions", "flap = \"up\"", "flap = \"between\"", "bad-value", 13, 8);
    row("start of a wrong type", "light = \"off\"", "light = 1", "wrong-type", 14, 9);
    row("start out of range", "aircraft.low + 5 %", "aircraft.low + 95 %", "out-of-range", 12, 9);
    row("start in a wrong unit", "aircraft.low + 5 %", "aircraft.limit", "wrong-unit", 12, 19);
    row("start by an unknown value", "aircraft.low + 5 %", "aircraft.lwo", "unknown-value", 12, 19);
    row("tolerance of nothing", "tolerance = \"2 %\"", "tolerance = \"0 %\"", "bad-value", 12, 9);
    row("tolerance of a position", "flap = \"up\"", "flap = { value = \"up\", tolerance = \"1\" }", "bad-value", 13,
        36);
    row("no id", "id = \"flap_set\"", "", "missing-key", 16, 1);
    row("bad id", "id = \"look\"", "id = \"look up\"", "bad-name", 56, 6);
    row("same id twice", "id = \"look\"", "id = \"answer\"", "duplicate-name", 56, 6);
    row("unknown key of a step", "weight = 3\nwhy", "wieght = 3\nwhy", "unknown-key", 23, 10);
    row("unknown kind", "kind = \"check\"", "kind = \"chek\"", "unknown-word", 58, 8);
    row("unknown duty", "duty = \"monitoring\"", "duty = \"monitor\"", "unknown-word", 68, 8);
    row("nobody speaks", "cue = { by = \"helper\", text = \"Flap.\" }", "cue = { by = \"tower\", text = \"Flap.\" }",
        "unknown-speaker", 19, 14);
    row("cue without words", "cue = { by = \"helper\", text = \"Flap.\" }", "cue = { by = \"helper\" }", "missing-key",
        19, 7);
    row("say without words", "cue = { by = \"helper\", text = \"Go.\" }", "", "missing-key", 63, 1);
    row("say with done", "cue = { by = \"helper\", text = \"Go.\" }",
        "cue = { by = \"helper\", text = \"Go.\" }\ndone = \"light\"", "say-with-done", 71, 8);
    row("no done", "done = \"light\"", "", "missing-key", 26, 1);
    row("unknown signal in a condition", "done = \"light\"", "done = \"lihgt\"", "unknown-name", 31, 9);
    row("wrong unit in a condition", "ground_speed < 5 kt", "ground_speed < 5 deg", "wrong-unit", 30, 24);
    row("unknown aircraft value in a condition", "airspeed > aircraft.limit", "airspeed > aircraft.limti",
        "unknown-name", 21, 23);
    row("expires is neither", "expires = \"30 s\"", "expires = \"30 parsecs\"", "syntax", 33, 15);
    row("suspended for an instant", "suspend = \"turn_ahead\"", "suspend = \"rise(turn_ahead)\"", "instant-stretch", 32,
        11);
    row("no hand could do it", "done = \"lever > 40 %\"", "done = \"airspeed > 40 kt\"", "no-control", 42, 8);
    row("unknown control", "needs = [\"airspeed\"]", "controls = [\"levre\"]", "unknown-control", 44, 12);
    row("control that is motion", "needs = [\"airspeed\"]", "controls = [\"airspeed\"]", "unknown-control", 44, 12);
    row("unknown need", "needs = [\"airspeed\"]", "needs = [\"airspede\"]", "unknown-signal", 44, 9);
    row("out of reach", "done = \"light\"", "done = \"handle\"", "out-of-reach", 26, 1);
    row("no time", "within = \"2 s\"", "within = \"0 s\"", "bad-time", 34, 10);
    row("time without a unit", "within = \"2 s\"", "within = \"2\"", "bad-duration", 34, 10);
    row("time as a number", "within = \"2 s\"", "within = 2", "wrong-type", 34, 10);
    row("late before within", "late = \"6 s\"", "late = \"1 s\"", "bad-time", 35, 8);
    row("no such weight", "weight = 3\nwhy", "weight = 4\nwhy", "bad-value", 23, 10);
    row("band the wrong way", "from = \"40 %\"", "from = \"70 %\"", "bad-range", 43, 8);
    row("band without an end", ", to = \"60 %\"", "", "missing-key", 43, 8);
    row("band by a speed that is worked out while flying", "from = \"40 %\"", "from = \"aircraft.vr\"", "moving-value",
        43, 35);
    row("band of a position", "signal = \"lever\"", "signal = \"flap\"", "bad-band", 43, 8);
    row("after a later step", "after = [\"flap_set\"]", "after = [\"call\"]", "unknown-step", 59, 9);
    row("group that goes on later", "after = [\"flap_set\"]", "group = \"outside\"", "split-group", 59, 9);
    row("group named as a step", "after = [\"flap_set\"]", "group = \"flap_set\"", "duplicate-name", 59, 9);
    row("guard from an unknown step", "from = \"outside\"", "from = \"inside\"", "unknown-step", 77, 8);
    row("guard that ends before it begins", "to = \"answer\"", "to = \"flap_set\"", "bad-stretch", 78, 6);
    row("guard without a condition", "never = \"ground_speed > 20 kt\"", "", "missing-key", 73, 1);
    row("guard with an open moved", "never = \"ground_speed > 20 kt\"", "never = \"moved(lever, 5 %)\"", "open-moved",
        76, 9);
    row("outcome without a condition", "when = \"lever < 2 % and ground_speed > 1 kt\"", "", "missing-key", 81, 1);
    row("waiver without a reason", "reason = \"Nothing to explain.\"", "", "missing-key", 86, 1);
    row("waiver of an unknown step", "step = \"call\"", "step = \"cal\"", "unknown-step", 88, 8);
}

void TestFlowFile::brokenFlowIsRefusedWithItsPlace() {
    QFETCH(QString, old);
    QFETCH(QString, broken);
    QFETCH(QString, code);
    QFETCH(int, line);
    QFETCH(int, column);
    QString source = benchText("small.toml");
    const qsizetype at = source.indexOf(old);
    QVERIFY2(at >= 0, "the row's text is not in the file");
    source.replace(at, old.size(), broken);
    Problems problems;
    QVERIFY(!parsed(source, problems));
    QVERIFY(problems.hasErrors());
    const Error& error = problems.firstError();
    QVERIFY2(QString::fromStdString(error.code) == code, qPrintable(problemText(problems)));
    QVERIFY2(error.place == (SourcePlace{"bench/small.toml", line, column}), qPrintable(problemText(problems)));
}

void TestFlowFile::doubtfulStepsAreWarnedOf_data() {
    QTest::addColumn<QString>("old");
    QTest::addColumn<QString>("doubtful");
    QTest::addColumn<QString>("code");
    QTest::addColumn<int>("line");
    QTest::addColumn<int>("column");
    const auto row = [](const char* name, const char* old, const char* doubtful, const char* code, int line,
                        int column) {
        QTest::newRow(name) << old << doubtful << code << line << column;
    };
    const char* const done = "done = \"lever > 40 %\"";
    const char* const band = "from = \"40 %\", to = \"60 %\"";
    row("threshold outside the range", done, "done = \"light or lever > 140 %\"", "constant-condition", 42, 18);
    row("never true", done, "done = \"lever > 40 % and light and not light\"", "constant-condition", 42, 9);
    row("since of what excludes each other", done, "done = \"lever > 40 % and since(lever > 50 %, lever < 30 %)\"",
        "exclusive-operands", 42, 26);
    row("held for longer than it may take", done, "done = \"lever > 40 % and held(lever > 30 %, 6 s)\"",
        "window-beyond-limit", 42, 26);
    row("a look back over more than it may take", done, "done = \"lever > 40 % and once(light, 5.1 s)\"",
        "window-beyond-limit", 42, 26);
    row("band outside the range", band, "from = \"90 %\", to = \"150 %\"", "unreachable-band", 43, 8);
    row("band that the condition excludes", band, "from = \"10 %\", to = \"40 %\"", "unreachable-band", 43, 8);
}

void TestFlowFile::doubtfulStepsAreWarnedOf() {
    QFETCH(QString, old);
    QFETCH(QString, doubtful);
    QFETCH(QString, code);
    QFETCH(int, line);
    QFETCH(int, column);
    QString source = benchText("small.toml");
    QVERIFY2(source.contains(old), "the row's text is not in the file");
    Problems problems;
    QVERIFY(parsed(source, problems));
    QVERIFY2(problems.all().empty(), qPrintable(problemText(problems)));
    QVERIFY(parsed(source.replace(old, doubtful), problems));
    QCOMPARE(problems.all().size(), std::size_t(1));
    const Problem& problem = problems.all().front();
    QVERIFY(problem.severity == Severity::Warning);
    QVERIFY2(QString::fromStdString(problem.error.code) == code, qPrintable(problemText(problems)));
    QVERIFY2(problem.error.place == (SourcePlace{"bench/small.toml", line, column}), qPrintable(problemText(problems)));
}

void TestFlowFile::readingStopsAfterAHundredProblems() {
    QString source = "format = 1\ntitle = \"Bad\"\nphases = [\"cruise\"]\nseat = \"pilot\"\n";
    for (int i = 0; i < 2000; ++i)
        source += QString("[[step]]\nid = \"s%1\"\ntitle = \"Light\"\ndone = \"nothing\"\n").arg(i);
    Problems problems;
    QVERIFY(!parsed(source, problems));
    QVERIFY(problems.all().size() < 110);
    QCOMPARE(problems.all().back().error.code, std::string("too-many-problems"));
}

QTEST_APPLESS_MAIN(TestFlowFile)
#include "test_flowfile.moc"
