#include <QtTest>

#include "bench.h"
#include "problemtext.h"
#include "procedure/library.h"
#include "procedure/lint.h"
#include "procedure/motion.h"
#include "procedure/phase.h"

using namespace flowhand;

/// The author's guide says what the program does.
class TestGuide : public QObject {
    Q_OBJECT

private Q_SLOTS:
    void initTestCase();
    void theFirstFlowIsGood();
    void everyRuleIsListed();
    void everySignalPhaseAndUnitIsNamed();

private:
    QString m_guide;
};

void TestGuide::initTestCase() {
    QFile file(PROCEDURES "/README.md");
    QVERIFY(file.open(QIODevice::ReadOnly));
    m_guide = QString::fromUtf8(file.readAll());
}

void TestGuide::theFirstFlowIsGood() {
    const QString fence = "```toml\n";
    const qsizetype begin = m_guide.indexOf(fence) + fence.size();
    const QString source = m_guide.mid(begin, m_guide.indexOf("```", begin) - begin);
    QVERIFY(source.startsWith("format = 1"));
    Problems problems;
    std::optional<Aircraft> aircraft = loadAircraft(PROCEDURES "/twin_jet/aircraft.toml", problems);
    QVERIFY(aircraft);
    AircraftFolder folder{std::make_unique<Aircraft>(std::move(*aircraft)), {}};
    std::optional<Flow> flow = parseFlow(source.toStdString(), "twin_jet/first_flow.toml", *folder.aircraft, problems);
    QVERIFY2(flow, qPrintable(problemText(problems)));
    folder.flows.push_back(std::move(*flow));
    lint(folder, problems);
    QVERIFY2(problems.all().empty(), qPrintable(problemText(problems)));
}

void TestGuide::everyRuleIsListed() {
    for (const LintRule& rule : lintRules()) {
        const QString row = QString("| `%1` | %2 | %3 |\n")
                                .arg(QLatin1String(rule.code.data(), int(rule.code.size())),
                                     QLatin1String(rule.text.data(), int(rule.text.size())),
                                     QLatin1String(rule.source.data(), int(rule.source.size())));
        QVERIFY2(m_guide.contains(row), qPrintable(row));
    }
}

void TestGuide::everySignalPhaseAndUnitIsNamed() {
    const auto isNamed = [&](const std::string& name) {
        return m_guide.contains("`" + QString::fromStdString(name) + "`");
    };
    for (const Signal& signal : motionSignals(1))
        QVERIFY2(isNamed(signal.name), signal.name.c_str());
    for (const Phase& phase : phases())
        QVERIFY2(isNamed(phase.id), phase.id.c_str());
    for (const std::string& unit : unitSymbols())
        QVERIFY2(isNamed(unit), unit.c_str());
}

QTEST_APPLESS_MAIN(TestGuide)
#include "test_guide.moc"
