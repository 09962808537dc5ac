// The live check of the library's editor, and copies of one's own.

#include <QDir>
#include <QFile>
#include <QTemporaryDir>
#include <QtTest>

#include "base/textfile.h"
#include "command/owncopy.h"
#include "command/textcheck.h"
#include "procedure/lint.h"

using namespace flowhand;

namespace {

std::string textOf(const std::string& file) {
    return readFile(file).value_or("");
}

std::string replaced(std::string text, const std::string& from, const std::string& to) {
    const std::size_t at = text.find(from);
    return at == std::string::npos ? text : text.replace(at, from.size(), to);
}

} // namespace

class TestTextCheck : public QObject {
    Q_OBJECT

private Q_SLOTS:
    void everyShippedFileIsClean_data();
    void everyShippedFileIsClean();
    void problemsStandAtTheirPlace_data();
    void problemsStandAtTheirPlace();
    void adviceHasItsRuleAndSource();
    void aNewFlowNeedsNoFile();
    void withoutAircraftItSaysSo();
    void theFolderIsReadAgainWhenItChanges();
    void copiesBringWhatTheyNeed_data();
    void copiesBringWhatTheyNeed();
    void aCopyIsMadeOnce();

private:
    const std::string m_taxiOut = PROCEDURES "/twin_jet/taxi_out.toml";
};

void TestTextCheck::everyShippedFileIsClean_data() {
    QTest::addColumn<QString>("file");
    for (const char* folder : {"twin_jet", "light_single", "twin_turboprop", "twin_jet/scenarios"})
        for (const QFileInfo& file : QDir(QString(PROCEDURES "/") + folder).entryInfoList({"*.toml"}, QDir::Files))
            if (file.fileName() != "practice.toml")
                QTest::newRow(qPrintable(file.filePath())) << file.filePath();
}

void TestTextCheck::everyShippedFileIsClean() {
    QFETCH(QString, file);
    static TextCheck check;
    const CheckedText checked = check.check(file.toStdString(), textOf(file.toStdString()));
    for (const Problem& problem : checked.problems)
        QFAIL(describe(problem.error).c_str());
    QVERIFY(checked.card.find("not for real-world flight training") != std::string::npos);
    QVERIFY(!checked.title.empty() && checked.card.find("<h1>") != std::string::npos);
}

void TestTextCheck::problemsStandAtTheirPlace_data() {
    QTest::addColumn<QString>("from");
    QTest::addColumn<QString>("to");
    QTest::addColumn<QString>("code");
    QTest::newRow("no TOML") << "[start]"
                             << "[start"
                             << "bad-toml";
    QTest::newRow("condition") << "done = \"taxi_light\""
                               << "done = \"taxi_lamp\""
                               << "unknown-name";
    QTest::newRow("key") << "within = \"10 s\""
                         << "withn = \"10 s\""
                         << "unknown-key";
}

void TestTextCheck::problemsStandAtTheirPlace() {
    QFETCH(QString, from);
    QFETCH(QString, to);
    QFETCH(QString, code);
    const std::string text = replaced(textOf(m_taxiOut), from.toStdString(), to.toStdString());
    const auto before = text.substr(0, text.find(to.toStdString()));
    const int line = static_cast<int>(std::count(before.begin(), before.end(), '\n')) + 1;
    TextCheck check;
    const CheckedText checked = check.check(m_taxiOut, text);
    QVERIFY(!checked.problems.empty());
    QCOMPARE(QString::fromStdString(checked.problems.front().error.code), code);
    QVERIFY(std::abs(checked.problems.front().error.place.line - line) <= 1); // TOML's parser sees an open bracket late
    QVERIFY(checked.card.empty());
    QVERIFY(check.check(m_taxiOut, textOf(m_taxiOut)).problems.empty()); // and mended, it is well again
}

void TestTextCheck::adviceHasItsRuleAndSource() {
    const std::string text =
        replaced(textOf(m_taxiOut), "title = \"Taxi light on\"", "title = \"Taxi light as required\"");
    TextCheck check;
    const CheckedText checked = check.check(m_taxiOut, text);
    QVERIFY(!checked.problems.empty());
    const Problem& advice = checked.problems.front();
    QVERIFY(advice.severity == Severity::Advice);
    const auto rule = std::find_if(lintRules().begin(), lintRules().end(), [&](const LintRule& each) {
        return each.code == advice.error.code;
    });
    QVERIFY(rule != lintRules().end());
    QVERIFY(advice.error.message.find(rule->source) != std::string::npos);
    QVERIFY(!checked.card.empty()); // advice keeps no card back
}

void TestTextCheck::aNewFlowNeedsNoFile() {
    TextCheck check;
    const CheckedText checked =
        check.check(PROCEDURES "/twin_jet/one_of_my_own.toml", replaced(textOf(m_taxiOut), "Taxi out", "My own"));
    QCOMPARE(checked.title, std::string("My own"));
    for (const Problem& problem : checked.problems)
        QVERIFY2(problem.severity != Severity::Error, describe(problem.error).c_str());
}

void TestTextCheck::withoutAircraftItSaysSo() {
    const QTemporaryDir folder;
    const std::string file = folder.filePath("flow.toml").toStdString();
    TextCheck check;
    const CheckedText checked = check.check(file, textOf(m_taxiOut));
    QCOMPARE(checked.problems.size(), std::size_t(1));
    QVERIFY(checked.problems.front().error.message.find("aircraft.toml") != std::string::npos);
    QCOMPARE(checked.problems.front().error.place.file, file);
}

void TestTextCheck::theFolderIsReadAgainWhenItChanges() {
    const QTemporaryDir own;
    const Result<std::string> copy = copyToOwn(PROCEDURES, own.path().toStdString(), m_taxiOut);
    QVERIFY2(copy.has_value(), copy ? "" : describe(copy.error()).c_str());
    TextCheck check;
    QVERIFY(check.check(*copy, textOf(*copy)).problems.empty());
    const std::string aircraft = own.filePath("twin_jet/aircraft.toml").toStdString();
    QVERIFY(writeFile(aircraft, replaced(textOf(aircraft), "\"taxi_light\"", "\"taxi_lamp\"")));
    QVERIFY(!check.check(*copy, textOf(*copy)).problems.empty());
}

void TestTextCheck::copiesBringWhatTheyNeed_data() {
    QTest::addColumn<QString>("file");
    QTest::addColumn<QStringList>("with");
    QTest::newRow("flow") << "twin_jet/taxi_out.toml"
                          << QStringList{"twin_jet/aircraft.toml", "twin_jet/practice.toml", "fenholt/ground.toml",
                                         "twin_jet/hands/taxi_out.hands"};
    QTest::newRow("a flow that leads on") << "twin_jet/take_off.toml" << QStringList{"twin_jet/rejected_take_off.toml"};
    QTest::newRow("scenario") << "twin_jet/scenarios/engine_failure_before_v1.toml"
                              << QStringList{"twin_jet/take_off.toml", "twin_jet/hands/take_off.hands"};
    QTest::newRow("aircraft") << "light_single/aircraft.toml" << QStringList{"light_single/practice.toml"};
}

void TestTextCheck::copiesBringWhatTheyNeed() {
    QFETCH(QString, file);
    QFETCH(QStringList, with);
    const QTemporaryDir own;
    const Result<std::string> copy =
        copyToOwn(PROCEDURES, own.path().toStdString(), (QString(PROCEDURES "/") + file).toStdString());
    QVERIFY2(copy.has_value(), copy ? "" : describe(copy.error()).c_str());
    QCOMPARE(QString::fromStdString(*copy), own.filePath(file));
    QCOMPARE(textOf(*copy), textOf((QString(PROCEDURES "/") + file).toStdString()));
    for (const QString& each : with)
        QVERIFY2(QFile::exists(own.filePath(each)), qPrintable(each));
    QVERIFY(QFileInfo(own.filePath(file)).isWritable());
    TextCheck check;
    for (const Problem& problem : check.check(*copy, textOf(*copy)).problems)
        QVERIFY2(problem.severity != Severity::Error, describe(problem.error).c_str());
}

void TestTextCheck::aCopyIsMadeOnce() {
    const QTemporaryDir own;
    const Result<std::string> copy = copyToOwn(PROCEDURES, own.path().toStdString(), m_taxiOut);
    QVERIFY(copy && writeFile(*copy, "# mine"));
    const Result<std::string> again = copyToOwn(PROCEDURES, own.path().toStdString(), m_taxiOut);
    QVERIFY(!again);
    QCOMPARE(again.error().code, std::string("file-exists"));
    QVERIFY(copyToOwn(PROCEDURES, own.path().toStdString(), PROCEDURES "/twin_jet/line_up.toml"));
    QCOMPARE(textOf(*copy), std::string("# mine"));
}

QTEST_APPLESS_MAIN(TestTextCheck)
#include "test_textcheck.moc"
