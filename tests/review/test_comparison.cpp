#include <QtTest>
#include <algorithm>

#include "review/comparison.h"
#include "review/flown.h"
#include "review/remap.h"

using namespace flowhand;
using namespace std::chrono_literals;

class TestComparison : public QObject {
    Q_OBJECT

private Q_SLOTS:
    void initTestCase();
    void aRunBesideItselfDiffersInNothing();
    void aPauseChangesOneDeltaOnly_data();
    void aPauseChangesOneDeltaOnly();
    void whatDiffersIsSaid();
    void timeHeldIsNotCounted();
    void stepsAreFoundByTheirIds();
    void aRecordIsToldInAnotherFilesSignals();

private:
    std::optional<FlownRecord> m_take_off;
};

void TestComparison::initTestCase() {
    m_take_off = flown("take_off", demonstrationOf("take_off"));
    QVERIFY(m_take_off && m_take_off->judged.score.isPassed);
}

void TestComparison::aRunBesideItselfDiffersInNothing() {
    const Timeline run(m_take_off->reviewed());
    const RunComparison comparison = compareRuns(run, run);
    QCOMPARE(comparison.steps.size(), m_take_off->flow->steps.size());
    QVERIFY(comparison.differences.empty() && changedSteps(comparison).empty());
    int timed = 0;
    for (const StepComparison& step : comparison.steps) {
        timed += step.cumulative ? 1 : 0;
        QVERIFY(step.cumulative.value_or(0s) == 0s && step.delta.value_or(0s) == 0s);
    }
    QVERIFY(timed > 8);
}

void TestComparison::aPauseChangesOneDeltaOnly_data() {
    QTest::addColumn<QString>("step");
    for (const char* step : {"brakes_off", "first_stage", "second_stage", "climb_thrust", "flap_to_4", "flap_up"})
        QTest::newRow(step) << step;
}

void TestComparison::aPauseChangesOneDeltaOnly() {
    QFETCH(QString, step);
    const std::size_t at = m_take_off->step(step.toStdString());
    const Time due = m_take_off->judged.results.at(at).due;
    const FlownRecord slower = paused(*m_take_off, due + 100ms, 5s);
    const Timeline reference(m_take_off->reviewed());
    const Timeline run(slower.reviewed());
    const RunComparison comparison = compareRuns(run, reference);
    int changed = 0;
    for (const StepComparison& compared : comparison.steps) {
        if (!compared.delta || *compared.delta == 0s)
            continue;
        ++changed;
        QVERIFY(*compared.delta == 5s);
        QCOMPARE(compared.id, step.toStdString());
    }
    QCOMPARE(changed, 1);
    for (const StepComparison& compared : comparison.steps)
        if (compared.cumulative)
            QVERIFY(*compared.cumulative == (*compared.otherElapsed < *comparison.steps[at].otherElapsed ? 0s : 5s));
}

void TestComparison::whatDiffersIsSaid() {
    const std::string hands = demonstrationOf("take_off");
    std::string other = hands;
    const std::string flap = "due flap_to_4, 0.8 s later: flap_lever 4 over 0.5 s";
    QVERIFY(other.find(flap) != std::string::npos);
    other.replace(other.find(flap), flap.size(),
                  "due flap_to_4, 0.8 s later: flap_lever up over 0.3 s\nafter 0.2 s: flap_lever 4 over 0.3 s");
    const std::optional<FlownRecord> worse = flown("take_off", other);
    QVERIFY(worse);
    const Timeline run(worse->reviewed());
    const Timeline reference(m_take_off->reviewed());
    const RunComparison comparison = compareRuns(run, reference);
    const StepComparison& step = comparison.steps.at(m_take_off->step("flap_to_4"));
    const auto says = [&](const std::string& words) {
        return std::any_of(step.differences.begin(), step.differences.end(), [&](const Phrase& difference) {
            return difference.english().find(words) != std::string::npos;
        });
    };
    QVERIFY(!step.differences.empty());
    QVERIFY(says("went too far first (the other: straight)"));
    QVERIFY(comparison.steps.at(m_take_off->step("brakes_off")).differences.empty());
}

void TestComparison::timeHeldIsNotCounted() {
    FlownRecord held = *m_take_off;
    const Time at = held.judged.results.at(held.step("climb_thrust")).due + 200ms;
    for (Sample& sample : held.samples)
        if (sample.time > at)
            sample.time += 20s;
    held.commands.back().time += held.commands.size() > 1 ? 20s : 0s;
    held.commands.push_back({at + 1us, CommandKind::Hold, "the telephone"});
    held.commands.push_back({at + 20s, CommandKind::Resume, ""});
    std::sort(held.commands.begin(), held.commands.end(), [](const RunCommand& a, const RunCommand& b) {
        return a.time < b.time;
    });
    held.length += 20s;
    held.judge();
    const Timeline run(held.reviewed());
    const Timeline reference(m_take_off->reviewed());
    QCOMPARE(run.holds().size(), std::size_t(1));
    for (const StepComparison& step : compareRuns(run, reference).steps)
        if (step.cumulative)
            QVERIFY2(*step.cumulative > -100us && *step.cumulative < 100us, step.id.c_str());
}

void TestComparison::stepsAreFoundByTheirIds() {
    std::string source = m_take_off->flow->source;
    const std::string id = "\"flap_up\""; // its own, and where others come after it
    for (std::size_t at = source.find(id); at != std::string::npos; at = source.find(id, at))
        source.replace(at, id.size(), "\"flap_all_up\"");
    Problems problems;
    const std::optional<Flow> renamed = parseFlow(source, "other.toml", *m_take_off->aircraft, problems);
    QVERIFY2(renamed, problems.all().empty() ? "" : describe(problems.firstError()).c_str());
    FlownRecord other = *m_take_off;
    other.flow = std::make_shared<const Flow>(*renamed);
    other.judge();
    const Timeline run(other.reviewed());
    const Timeline reference(m_take_off->reviewed());
    const std::vector<StepComparison> changed = changedSteps(compareRuns(run, reference));
    QCOMPARE(changed.size(), std::size_t(2));
    QCOMPARE(changed[0].id, std::string("flap_all_up"));
    QCOMPARE(changed[0].otherStep, -1);
    QCOMPARE(changed[1].id, std::string("flap_up"));
    QCOMPARE(changed[1].step, -1);
}

void TestComparison::aRecordIsToldInAnotherFilesSignals() {
    // The same cockpit, its last control listed first: every signal has another number.
    std::string source = m_take_off->aircraft->toml.source();
    const std::size_t first = source.find("[[control]]");
    const std::size_t last = source.rfind("[[control]]");
    const std::size_t end = std::min(source.find("\n[", last), source.size());
    QVERIFY(first < last);
    const std::string control = source.substr(last, end - last) + "\n";
    source.erase(last, end - last);
    source.insert(first, control);
    Problems problems;
    std::optional<Aircraft> other = parseAircraft(source, "other/aircraft.toml", problems);
    QVERIFY2(other, problems.all().empty() ? "" : describe(problems.firstError()).c_str());
    const RemappedRecord record = remapped(m_take_off->header, m_take_off->samples, *m_take_off->aircraft, *other);
    QCOMPARE(record.samples.size(), m_take_off->samples.size());
    QVERIFY(record.remarks.empty());
    std::optional<Flow> flow = parseFlow(m_take_off->flow->source, "flow.toml", *other, problems);
    QVERIFY(flow);
    const JudgedRun judged =
        judgeAgain(*other, *flow, record.header.setup, record.samples, m_take_off->commands, m_take_off->length);
    QCOMPARE(judged.lines, m_take_off->judged.lines);
}

QTEST_APPLESS_MAIN(TestComparison)
#include "test_comparison.moc"
