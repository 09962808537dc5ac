#include <QtTest>

#include "session/scorehelp.h"

using namespace flowhand;
using namespace flowhand::test;
using namespace std::chrono_literals;

namespace {

using Results = std::vector<StepResult>;

const std::vector<int> kWeights{2, 2, 2, 1, 3};

std::string findings(const Score& score) {
    std::string text;
    for (const LedgerLine& line : score.ledger)
        text += (text.empty() ? "" : ", ") + std::string(nameOf(line.what)) +
                (line.step >= 0 ? " " + std::to_string(line.step + 1) : "");
    return text;
}

Results listRun(const std::vector<std::size_t>& order, std::vector<Duration> gaps = std::vector<Duration>(5, 1s)) {
    return runInOrder(listFlow(kWeights), order, gaps);
}

ExtraResult wrongControl(Time time) {
    ExtraResult extra;
    extra.time = time;
    extra.step = 1;
    extra.text = std::string("Gear lever moved instead of step 2");
    return extra;
}

/// One row of the table of the scoring rules.
struct Row {
    const char* name;
    Results results;
    std::vector<ExtraResult> extras;
    std::int64_t milliPoints;
    bool isPassed;
    const char* findings;
};

std::vector<Row> tableRows() {
    const std::vector<std::size_t> all{0, 1, 2, 3, 4};
    std::vector<Row> rows;
    rows.push_back({"perfect", listRun(all), {}, 100'000, true, ""});
    rows.push_back({"step 4 omitted", listRun({0, 1, 2, 4}), {}, 90'000, true, "not done 4"});
    rows.push_back({"critical step 5 omitted", listRun({0, 1, 2, 3}), {}, 70'000, false, "not done 5"});
    rows.push_back({"steps 2 and 3 swapped", listRun({0, 2, 1, 3, 4}), {}, 92'000, true, "out of order 3"});
    rows.push_back({"step 3 at 7 s", listRun(all, {1s, 1s, 7s, 1s, 1s}), {}, 97'000, true, "late 3"});
    rows.push_back({"a wrong control, then step 2 at 6 s",
                    listRun(all, {1s, 6s, 1s, 1s, 1s}),
                    {wrongControl(2s)},
                    95'500,
                    true,
                    "late 2, wrong control 2"});
    rows.push_back({"a wrong control, step 2 never done",
                    listRun({0, 2, 3, 4}),
                    {wrongControl(2s)},
                    77'500,
                    false,
                    "not done 2, wrong control 2"});
    Results narrow = listRun(all);
    narrow[2].mu = 0.4;
    rows.push_back({"step 3 only just in its band", narrow, {}, 98'800, true, "small margin 3"});
    rows.push_back({"step 4 omitted, 2 and 3 swapped, 5 late",
                    listRun({0, 2, 1, 4}, {1s, 1s, 1s, 13s}),
                    {},
                    73'000,
                    false,
                    "out of order 3, not done 4, late 5"});
    return rows;
}

} // namespace

class TestScore : public QObject {
    Q_OBJECT

private Q_SLOTS:
    void table_data();
    void table();
    void reasonsNotToPass();
    void lastLineGivesBackWhatTheFloorCutOff();
    void noWeightNoScore();
    void voidLeftOutAndFoundSetLeaveTheWeight();
    void compareOnlyFoundSetCountsAsDone();
    void tooEarlyCostsAsOutOfOrderAndDisplacesNothing();
    void responseCountsFromTheLaterOfCueAndLastDoneStep();
    void stepDoneBeforeItsCueCountsFromTheLastDoneStep();
    void othersStepsCountAsLastDoneStep();
    void latencyAndSuspendedTimeAreTakenOff();
    void uncertainStepMakesAnInterval();
    void marginIsHalvedOutsideAndClamped();
    void linesAreRoundedHalfUp();
    void groupMembersNeverDisplaceEachOther();
    void otherSeatsStepsCostNothing();
    void undoneIsNamed();
    void paceLeavesSuspendedTimeOut();
};

void TestScore::table_data() {
    QTest::addColumn<int>("row");
    int index = 0;
    for (const Row& row : tableRows())
        QTest::newRow(row.name) << index++;
}

void TestScore::table() {
    QFETCH(int, row);
    const Row expected = tableRows()[static_cast<std::size_t>(row)];
    Flow flow = listFlow(kWeights);
    flow.target = 80.0;
    const Score score = scoreOf(flow, expected.results, expected.extras, {}, Duration{});
    QCOMPARE(score.weight, std::int64_t(10));
    QCOMPARE(score.milliPoints, expected.milliPoints);
    QCOMPARE(score.upperMilliPoints, expected.milliPoints);
    QCOMPARE(findings(score), std::string(expected.findings));
    QCOMPARE(score.isPassed, expected.isPassed);
    QCOMPARE(score.whyNotPassed.isEmpty(), expected.isPassed);
    QCOMPARE(ledgerSum(score), 100'000 - score.milliPoints);
}

void TestScore::reasonsNotToPass() {
    Flow flow = listFlow(kWeights);
    flow.target = 0.0;
    QVERIFY(scoreOf(flow, listRun({0, 1, 2}), {}, {}, {}).whyNotPassed.english().find("Step 5") != std::string::npos);
    Results early = listRun({0, 1, 2, 3, 4});
    early[4].state = StepState::TooEarly;
    early[4].isTooEarly = true;
    QVERIFY(scoreOf(flow, early, {}, {}, {}).whyNotPassed.english().find("too early") != std::string::npos);
    const Score jumped = scoreOf(flow, listRun({4, 0, 1, 2, 3}), {}, {}, {});
    QVERIFY(jumped.outOfOrder[4]);
    QVERIFY(jumped.whyNotPassed.english().find("out of order") != std::string::npos);
    flow.target = 95.0;
    const Score low = scoreOf(flow, listRun({0, 1, 2, 4}), {}, {}, {});
    QCOMPARE(low.whyNotPassed.english(), std::string("90.0 points, the target is 95.0"));
    flow.target = 90.0;
    QVERIFY(scoreOf(flow, listRun({0, 1, 2, 4}), {}, {}, {}).isPassed);
}

void TestScore::lastLineGivesBackWhatTheFloorCutOff() {
    const Flow flow = listFlow(kWeights);
    const Score score = scoreOf(flow, listRun({}), {wrongControl(1s), wrongControl(2s)}, {}, {});
    QCOMPARE(score.milliPoints, std::int64_t(0));
    QCOMPARE(score.ledger.back().milliPoints, std::int64_t(-5'000));
    QCOMPARE(ledgerSum(score), std::int64_t(100'000));
}

void TestScore::noWeightNoScore() {
    const Flow flow = listFlow({2});
    StepResult result;
    result.state = StepState::LeftOut;
    const Score score = scoreOf(flow, {result}, {}, {}, {});
    QVERIFY(!score.isScored);
    QVERIFY(!score.isPassed);
    QVERIFY(!score.whyNotPassed.isEmpty());
    QVERIFY(score.ledger.empty());
}

void TestScore::voidLeftOutAndFoundSetLeaveTheWeight() {
    const Flow flow = listFlow(kWeights);
    Results results = listRun({0, 1, 2, 3, 4});
    results[0].state = StepState::Void;
    results[1].state = StepState::LeftOut;
    results[3].state = StepState::FoundSet;
    const Score score = scoreOf(flow, results, {}, {}, {});
    QCOMPARE(score.weight, std::int64_t(5));
    QCOMPARE(score.milliPoints, std::int64_t(100'000));
}

void TestScore::compareOnlyFoundSetCountsAsDone() {
    Flow flow = listFlow(kWeights);
    flow.steps[3].compareOnly = true;
    Results results = listRun({0, 1, 2, 3, 4});
    results[3].state = StepState::FoundSet;
    const Score score = scoreOf(flow, results, {}, {}, {});
    QCOMPARE(score.weight, std::int64_t(10));
    QCOMPARE(score.milliPoints, std::int64_t(100'000));
}

void TestScore::tooEarlyCostsAsOutOfOrderAndDisplacesNothing() {
    const Flow flow = listFlow(kWeights);
    Results results = listRun({2, 0, 1, 3, 4});
    results[2].state = StepState::TooEarly;
    results[2].isTooEarly = true;
    const Score score = scoreOf(flow, results, {}, {}, {});
    QCOMPARE(findings(score), std::string("too early 3"));
    QCOMPARE(score.milliPoints, std::int64_t(92'000));
}

void TestScore::responseCountsFromTheLaterOfCueAndLastDoneStep() {
    const Flow flow = listFlow({1, 1});
    // Due at 1 s, the step before done at 5 s: 7 s counts from there.
    QCOMPARE(scoreOf(flow, {doneAt(0s, 5s), doneAt(1s, 12s)}, {}, {}, {}).late[1], Duration(3s));
    // Cue later than the step before.
    QCOMPARE(scoreOf(flow, {doneAt(0s, 1s), doneAt(5s, 12s)}, {}, {}, {}).late[1], Duration(3s));
}

void TestScore::stepDoneBeforeItsCueCountsFromTheLastDoneStep() {
    const Flow flow = listFlow({1, 1});
    QCOMPARE(scoreOf(flow, {doneAt(0s, 1s), doneAt(20s, 10s)}, {}, {}, {}).late[1], Duration(5s));
    QCOMPARE(scoreOf(flow, {doneAt(0s, 1s), doneAt(kForever, 10s)}, {}, {}, {}).late[1], Duration(5s));
    // Nothing done before: nothing to count from.
    QCOMPARE(scoreOf(flow, {doneAt(20s, 10s), notDone(0s)}, {}, {}, {}).late[0], Duration(0s));
}

void TestScore::othersStepsCountAsLastDoneStep() {
    const Flow flow = listFlow({1, 1, 1});
    Results results{doneAt(0s, 1s), doneAt(1s, 9s), doneAt(20s, 11s)};
    results[1].isOwn = false;
    QCOMPARE(scoreOf(flow, results, {}, {}, {}).late[2], Duration(0s));
}

void TestScore::latencyAndSuspendedTimeAreTakenOff() {
    const Flow flow = listFlow({1});
    Results results{doneAt(0s, 8s)};
    QCOMPARE(scoreOf(flow, results, {}, {}, 1500ms).late[0], Duration(2500ms));
    results[0].suspended = 3s;
    QCOMPARE(scoreOf(flow, results, {}, {}, 500ms).late[0], Duration(500ms));
    // Never below 0.
    QCOMPARE(scoreOf(flow, results, {}, {}, 60s).milliPoints, std::int64_t(100'000));
}

void TestScore::uncertainStepMakesAnInterval() {
    Flow flow = listFlow(kWeights);
    flow.target = 0.0;
    Results results = listRun({0, 1, 2, 3, 4});
    results[4].state = StepState::Uncertain;
    results[4].isUncertain = true;
    const Score score = scoreOf(flow, results, {}, {}, {});
    QCOMPARE(score.milliPoints, std::int64_t(70'000));
    QCOMPARE(score.upperMilliPoints, std::int64_t(100'000));
    QVERIFY(!score.isPassed); // the lower bound decides, and step 5 is critical
    QCOMPARE(findings(score), std::string("uncertain 5"));
    QCOMPARE(ledgerSum(score), 100'000 - score.milliPoints);
}

void TestScore::marginIsHalvedOutsideAndClamped() {
    const Flow flow = listFlow({1});
    Results results{doneAt(0s, 1s)};
    for (const auto& [mu, expected] : {std::pair(1.0, 100'000), std::pair(0.5, 95'000), std::pair(0.0, 90'000),
                                       std::pair(-2.0, 90'000), std::pair(7.0, 100'000)}) {
        results[0].mu = mu;
        QCOMPARE(scoreOf(flow, results, {}, {}, {}).milliPoints, std::int64_t(expected));
    }
}

void TestScore::linesAreRoundedHalfUp() {
    const Flow flow = listFlow({1, 1, 1});
    // 100,000 / 3 = 33,333.33
    QCOMPARE(scoreOf(flow, runInOrder(flow, {0, 1}, {1s, 1s}), {}, {}, {}).ledger[0].milliPoints, std::int64_t(33'333));
    // W = 16: an extra is 1562.5, rounded up.
    const Flow sixteen = listFlow({2, 2, 2, 2, 2, 2, 2, 2});
    const std::vector<std::size_t> order{0, 1, 2, 3, 4, 5, 6, 7};
    const Results results = runInOrder(sixteen, order, std::vector<Duration>(8, 1s));
    QCOMPARE(scoreOf(sixteen, results, {wrongControl(1s)}, {}, {}).ledger[0].milliPoints, std::int64_t(1'563));
    // Times are rounded to whole milliseconds, halves up: 7.0005 s is 7.001 s.
    const Flow one = listFlow({1});
    QCOMPARE(scoreOf(one, {doneAt(0s, 7'000'500us)}, {}, {}, {}).late[0], Duration(3001ms));
    QCOMPARE(scoreOf(one, {doneAt(0s, 7'000'499us)}, {}, {}, {}).late[0], Duration(3000ms));
}

void TestScore::groupMembersNeverDisplaceEachOther() {
    Flow flow = listFlow({1, 1, 1, 1});
    flow.steps[1].group = flow.steps[2].group = "lights";
    flow.steps[2].after = {0};
    flow.steps[3].after = {1, 2};
    QCOMPARE(scoreOf(flow, runInOrder(flow, {0, 2, 1, 3}, std::vector<Duration>(4, 1s)), {}, {}, {}).milliPoints,
             std::int64_t(100'000));
    const Score jumped = scoreOf(flow, runInOrder(flow, {0, 3, 2, 1}, std::vector<Duration>(4, 1s)), {}, {}, {});
    QCOMPARE(findings(jumped), std::string("out of order 4"));
}

void TestScore::otherSeatsStepsCostNothing() {
    const Flow flow = listFlow(kWeights);
    Results results = listRun({0, 4, 2, 3});
    for (const std::size_t partner : {1, 4})
        results[partner].isOwn = false;
    const Score score = scoreOf(flow, results, {}, {}, {});
    QCOMPARE(score.weight, std::int64_t(5));
    QCOMPARE(score.milliPoints, std::int64_t(100'000));
}

void TestScore::undoneIsNamed() {
    const Flow flow = listFlow(kWeights);
    ExtraResult undone;
    undone.isUndone = true;
    ExtraResult value;
    value.isWrongValue = true;
    const Score score = scoreOf(flow, listRun({0, 1, 2, 3, 4}), {undone, value}, {}, {});
    QCOMPARE(findings(score), std::string("undone again, wrong value"));
    QCOMPARE(score.milliPoints, std::int64_t(95'000));
}

void TestScore::paceLeavesSuspendedTimeOut() {
    const Flow flow = listFlow({1, 1});
    Results results{doneAt(2s, 3s), doneAt(3s, 10s)};
    results[1].suspended = 4s;
    QCOMPARE(scoreOf(flow, results, {}, {}, {}).pace, Duration(4s));
}

QTEST_APPLESS_MAIN(TestScore)
#include "test_score.moc"
