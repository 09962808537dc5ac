#include <QtTest>

#include <memory>
#include <set>

#include "bench.h"
#include "problemtext.h"
#include "procedure/lint.h"

using namespace flowhand;

/// The bench's flows keep every rule; each row breaks one.
class TestLint : public QObject {
    Q_OBJECT

private Q_SLOTS:
    void whatKeepsTheRulesHasNoFinding();
    void eachRuleFindsWhatBreaksIt_data();
    void eachRuleFindsWhatBreaksIt();
    void everyRuleHasARow();
    void aWaiverWithAReasonSilencesItsRule();
    void needlessAndUnknownWaiversAreNamed();
};

namespace {

const char* const kFiles[] = {"small.toml", "before_start.toml", "taxi.toml", "fire.toml"};

/// The bench's flows, with `old` in `file` made `changed`.
Problems found(const QString& file, const QString& old, const QString& changed) {
    Problems problems;
    AircraftFolder folder;
    folder.aircraft = std::make_unique<Aircraft>(
        *parseAircraft(benchText("aircraft.toml").toStdString(), "bench/aircraft.toml", problems));
    for (const char* name : kFiles) {
        QString source = benchText(name);
        if (name == file) {
            if (!source.contains(old))
                qFatal("'%s' is not in %s", qPrintable(old), name);
            source.replace(source.indexOf(old), old.size(), changed);
        }
        std::optional<Flow> flow =
            parseFlow(source.toStdString(), std::string("bench/") + name, *folder.aircraft, problems);
        if (!flow)
            qFatal("%s", qPrintable(problemText(problems)));
        folder.flows.push_back(std::move(*flow));
    }
    lint(folder, problems);
    return problems;
}

QString items(int count) {
    QString text;
    for (int i = 0; i < count; ++i)
        text += QString("[[step]]\nid = \"item_%1\"\ntitle = \"Light %1\"\nkind = \"check\"\ngroup = \"many\"\n"
                        "done = \"light\"\nwhy = \"To be seen.\"\n")
                    .arg(i);
    return text;
}

struct Row {
    const char* name;
    const char* rule;
    const char* file;
    const char* old;
    QString broken;
    bool isError = false;
};

std::vector<Row> rows() {
    return {
        {"only checked", "reply-says-state", "small.toml", "reply = \"Ready.\"", "reply = \"Checked.\""},
        {"as required", "reply-says-state", "small.toml", "reply = \"Ready.\"", "reply = \"As required\""},
        {"another name than the panel's", "challenge-names-control", "before_start.toml", "title = \"Light: on\"",
         "title = \"Lamp: on\""},
        {"no completion call", "ends-with-complete", "taxi.toml",
         "title = \"Taxi checklist complete\"\nkind = \"say\"\ncue = { by = \"pilot\", text = \"Taxi checklist "
         "complete.\" }",
         "title = \"Go\"\nkind = \"say\"\ncue = { by = \"pilot\", text = \"Go.\" }"},
        {"if, from memory", "no-condition-from-memory", "small.toml", "title = \"Light on\"",
         "title = \"Light on if dark\""},
        {"or, without one of", "alternatives-say-one-of", "before_start.toml", "One of light or flap", "Light or flap"},
        {"runs out, unexplained", "timed-step-explained", "small.toml", "why = \"It must be set.\"", ""},
        {"repeats for ever", "repetition-ends", "small.toml", "title = \"Light on\"", "title = \"Keep the light on\""},
        {"an action called check", "check-only-compares", "small.toml", "title = \"Light on\"",
         "title = \"Check light on\""},
        {"a check called verify", "check-only-compares", "small.toml", "title = \"Flap as planned\"",
         "title = \"Verify flap\""},
        {"two actions", "one-action", "small.toml", "title = \"Light on\"", "title = \"Light on and lever up\""},
        {"no words ask for the reply", "call-is-whole", "small.toml", "cue = { by = \"helper\", text = \"Ready?\" }",
         ""},
        {"no reply", "call-is-whole", "small.toml", "reply = \"Ready.\"", ""},
        {"no why", "step-says-why", "small.toml", "why = \"To be seen.\"", ""},
        {"eleven in a chunk", "short-chunks", "taxi.toml", "[[step]]\nid = \"end\"",
         items(11) + "[[step]]\nid = \"end\""},
        {"too many in a chunk", "short-chunks", "taxi.toml", "[[step]]\nid = \"end\"",
         items(21) + "[[step]]\nid = \"end\"", true},
        {"critical late", "critical-first", "before_start.toml", "title = \"Flap: planned gate\"",
         "title = \"Flap: planned gate\"\nweight = 3"},
        {"half are critical", "few-critical", "small.toml", "weight = 3\nwhy = \"It must be set.\"",
         "weight = 3\nwhy = \"It must be set.\"\n[[step]]\nid = \"a\"\ntitle = \"Light on\"\ndone = \"light\"\n"
         "weight = 3\nwhy = \"So.\""},
        {"overhead, pedestal, overhead", "no-jump-back", "small.toml", "[[step]]\nid = \"answer\"",
         "[[step]]\nid = \"a\"\ntitle = \"Flap up\"\ndone = \"flap == up\"\nwhy = \"So.\"\n"
         "[[step]]\nid = \"b\"\ntitle = \"Light off\"\ndone = \"not light\"\nwhy = \"So.\"\n[[step]]\nid = \"answer\""},
        {"all of the flow again", "checklist-is-shorter", "before_start.toml", "phases = [\"gate\"]\nseat = \"pilot\"",
         "phases = [\"gate\", \"taxi_out\"]\nseat = \"pilot\"\n[[step]]\nid = \"lever\"\ntitle = \"Thrust: idle\"\n"
         "kind = \"check\"\ndone = \"lever < 5 %\"\nwhy = \"So.\"\n[[step]]\nid = \"a\"\ntitle = \"Light: on\"\n"
         "kind = \"check\"\ndone = \"light\"\nwhy = \"So.\"\n#"},
        {"read on the runway", "no-checklist-on-runway", "taxi.toml", "phases = [\"taxi_out\"]",
         "phases = [\"line_up\"]"},
        {"never checked again", "critical-repeats", "before_start.toml", "title = \"Light: on\"",
         "title = \"Light: on\"\nweight = 3"},
        {"start leaves a control out", "start-is-whole", "small.toml", "light = \"off\"", ""},
        {"no start", "start-is-whole", "taxi.toml", "[start]\nplace = \"here\"\n\n[start.controls]\nflap = \"12\"", ""},
        {"an instant as a cue", "cue-lasts", "small.toml", "when = \"ground_speed < 5 kt\"",
         "when = \"rise(ground_speed < 5 kt)\""},
        {"another reply to the same state", "same-state-same-reply", "fire.toml", "rise(reply_button) and flap == up",
         "rise(reply_button) and flap == aircraft.planned"},
        {"an item between groups", "chunk-has-name", "before_start.toml", "group = \"outside\"\n", ""},
        {"lights and flaps in one group", "chunk-is-one-system", "before_start.toml", "group = \"pedestal\"",
         "group = \"outside\""},
        {"asked about, not looked at", "item-reads-its-control", "before_start.toml",
         "done = \"rise(reply_button) and flap == aircraft.planned\"", "done = \"rise(reply_button)\""},
        {"80 promised, 90 judged", "number-is-judged", "fire.toml", "airspeed < 80 kt", "airspeed < 90 kt"},
        {"five from memory", "few-memory-items", "fire.toml", "style = \"read-and-do\"", "style = \"flow\""},
        {"what cannot wait comes last", "urgent-first", "fire.toml", "title = \"Light: off\"",
         "title = \"Light: off\"\nweight = 3"},
        {"no way out", "list-has-way-out", "fire.toml",
         "[[outcome]]\nid = \"out\"\ntitle = \"The fire is out\"\nwhen = \"lever > 90 %\"\n", ""},
        {"no such flow", "next-flow-is-there", "small.toml", "title = \"Stopped\"",
         "title = \"Stopped\"\nnext = \"nowhere\"", true},
    };
}

} // namespace

void TestLint::whatKeepsTheRulesHasNoFinding() {
    const Problems problems = found("", "", "");
    QVERIFY2(problems.all().empty(), qPrintable(problemText(problems)));
}

void TestLint::eachRuleFindsWhatBreaksIt_data() {
    QTest::addColumn<QString>("rule");
    QTest::addColumn<QString>("file");
    QTest::addColumn<QString>("old");
    QTest::addColumn<QString>("broken");
    QTest::addColumn<bool>("isError");
    for (const Row& row : rows())
        QTest::newRow(row.name) << row.rule << row.file << row.old << row.broken << row.isError;
}

void TestLint::eachRuleFindsWhatBreaksIt() {
    QFETCH(QString, rule);
    QFETCH(QString, file);
    QFETCH(QString, old);
    QFETCH(QString, broken);
    QFETCH(bool, isError);
    const Problems problems = found(file, old, broken);
    const Problem* finding = nullptr;
    for (const Problem& problem : problems.all())
        if (problem.error.code == rule.toStdString())
            finding = &problem;
    QVERIFY2(finding != nullptr, qPrintable(problemText(problems)));
    QCOMPARE(finding->error.place.file, "bench/" + file.toStdString());
    QVERIFY(finding->error.place.line > 0);
    QCOMPARE(finding->severity == Severity::Error, isError);
}

void TestLint::everyRuleHasARow() {
    std::set<std::string> codes;
    for (const LintRule& rule : lintRules()) {
        QVERIFY2(codes.insert(std::string(rule.code)).second, "two rules have one code");
        QVERIFY(!rule.text.empty() && !rule.source.empty());
    }
    std::set<std::string> rowed;
    for (const Row& row : rows())
        rowed.insert(row.rule);
    QCOMPARE(rowed, codes);
}

void TestLint::aWaiverWithAReasonSilencesItsRule() {
    const QString waiver = "[[waive]]\nrule = \"step-says-why\"\nstep = \"lever_up\"\nreason = \"It is plain.\"\n";
    const Problems problems = found("small.toml", "why = \"To move.\"\n", QString());
    QCOMPARE(problems.all().size(), std::size_t(1));
    const Problems silent =
        found("small.toml", "why = \"To move.\"\n\n[[step]]\nid = \"answer\"", waiver + "\n[[step]]\nid = \"answer\"");
    QVERIFY2(silent.all().empty(), qPrintable(problemText(silent)));
}

void TestLint::needlessAndUnknownWaiversAreNamed() {
    const Problems needless = found("small.toml", "why = \"It must be set.\"",
                                    "why = \"It must be set.\"\n[[waive]]\nrule = \"one-action\"\nreason = \"None.\"");
    QCOMPARE(needless.all().size(), std::size_t(1));
    QCOMPARE(needless.all().front().error.code, std::string("needless-waiver"));
    QCOMPARE(needless.all().front().severity, Severity::Warning);
    const Problems unknown = found("small.toml", "why = \"It must be set.\"",
                                   "why = \"It must be set.\"\n[[waive]]\nrule = \"one-acton\"\nreason = \"None.\"");
    QCOMPARE(unknown.all().front().error.code, std::string("unknown-rule"));
}

QTEST_APPLESS_MAIN(TestLint)
#include "test_lint.moc"
