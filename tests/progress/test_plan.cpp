// The forgetting model and the plan, against values reckoned by hand.

#include <cmath>
#include <numeric>

#include <QtTest>
#include <rapidcheck.h>

#include "progress/progress.h"

using namespace flowhand;

namespace {

constexpr std::int64_t kHour = 3'600'000;
constexpr std::int64_t kNow = 1'700'000'000'000; // 2023-11-14 22:13:20 UTC

std::vector<RunMoment> momentsAt(std::initializer_list<std::pair<std::int64_t, bool>> hoursAndPassed) {
    std::vector<RunMoment> moments;
    for (const auto& [hours, isPassed] : hoursAndPassed)
        moments.push_back({kNow + hours * kHour, isPassed});
    return moments;
}

KnownFlow known(const char* id, bool isAbnormal = false) {
    KnownFlow flow;
    flow.flow.aircraftFolder = "jet";
    flow.flow.flowId = id;
    flow.title = std::string("The ") + id;
    flow.isAbnormal = isAbnormal;
    return flow;
}

PractisedRun run(const char* id, std::int64_t hours, bool isPassed) {
    static std::int64_t number = 0;
    PractisedRun flown;
    flown.id = ++number;
    flown.flow = known(id).flow;
    flown.flowTitle = known(id).title;
    flown.startedUnixMillis = kNow + hours * kHour;
    flown.isPassed = isPassed;
    flown.whyNotPassed = isPassed ? Phrase() : phrase("{1} points, the target is {2}").with("61", "80.0");
    return flown;
}

std::vector<std::string> idsOf(const Plan& plan) {
    std::vector<std::string> ids;
    for (const PlannedFlow& flow : plan.today)
        ids.push_back(flow.flow.flowId);
    return ids;
}

using Ids = std::vector<std::string>;

} // namespace

class TestPlan : public QObject {
    Q_OBJECT

private Q_SLOTS:
    void halfLifeByHand_data();
    void halfLifeByHand();
    void strengthHalvesEachHalfLife();
    void strengthNeverRisesByWaiting();
    void aSittingCountsOnce();
    void daysBeginWhereThePilotIs();
    void whatFailedComesFirst();
    void theWeakestComesBeforeTheOthers();
    void aNewFlowComesAfterWhatIsDue();
    void abnormalFlowsWait();
    void nothingIsDue();
    void flowsThatAreGoneAreNotPlanned();
    void theWeekAheadByHand();
    void theSameRunsGiveTheSamePlan();
};

void TestPlan::halfLifeByHand_data() {
    QTest::addColumn<int>("right");
    QTest::addColumn<int>("wrong");
    QTest::addColumn<double>("days");
    QTest::newRow("one right") << 1 << 0 << 2.0;
    QTest::newRow("three right") << 3 << 0 << 8.0;
    QTest::newRow("as many wrong") << 2 << 2 << 1.0;
    QTest::newRow("mostly wrong") << 0 << 5 << kShortestHalfLife;
    QTest::newRow("for years") << 40 << 0 << kLongestHalfLife;
}

void TestPlan::halfLifeByHand() {
    QFETCH(int, right);
    QFETCH(int, wrong);
    QFETCH(double, days);
    Memory memory;
    memory.right = right;
    memory.wrong = wrong;
    QCOMPARE(memory.halfLifeDays(), days);
}

void TestPlan::strengthHalvesEachHalfLife() {
    Memory memory;
    memory.right = 2; // 4 days
    memory.lastUnixMillis = kNow;
    memory.isLastPassed = true;
    QCOMPARE(memory.strengthAt(kNow), 1.0);
    QCOMPARE(memory.strengthAt(kNow - kDayMillis), 1.0);
    QCOMPARE(memory.strengthAt(kNow + 4 * kDayMillis), 0.5);
    QCOMPARE(memory.strengthAt(kNow + 8 * kDayMillis), 0.25);
    QVERIFY(std::abs(memory.strengthAt(kNow + 2 * kDayMillis) - std::sqrt(0.5)) < 1e-12);
    QCOMPARE(memory.dueUnixMillis(), kNow + 4 * kDayMillis);
}

void TestPlan::strengthNeverRisesByWaiting() {
    QVERIFY(rc::check("0 < p <= 1, and falls", [] {
        Memory memory;
        memory.right = *rc::gen::inRange(0, 12);
        memory.wrong = *rc::gen::inRange(0, 12);
        memory.lastUnixMillis = kNow;
        const std::int64_t sooner = kNow + *rc::gen::inRange<std::int64_t>(0, 400) * kHour;
        const std::int64_t later = sooner + *rc::gen::inRange<std::int64_t>(0, 400) * kHour;
        RC_ASSERT(memory.strengthAt(later) > 0.0);
        RC_ASSERT(memory.strengthAt(sooner) <= 1.0);
        RC_ASSERT(memory.strengthAt(later) <= memory.strengthAt(sooner));
    }));
}

void TestPlan::aSittingCountsOnce() {
    // Wrong, then right twice within the hour: one sitting that began wrong. The next evening begins right.
    const Memory memory = memoryOf(momentsAt({{0, false}, {1, true}, {2, true}, {26, true}, {27, false}}));
    QCOMPARE(memory.right, 1);
    QCOMPARE(memory.wrong, 1);
    QVERIFY(!memory.isLastPassed);
    QCOMPARE(memory.lastUnixMillis, kNow + 27 * kHour);
    QCOMPARE(memory.dueUnixMillis(), memory.lastUnixMillis);
}

void TestPlan::daysBeginWhereThePilotIs() {
    const Moment utc{kNow, 0}; // 22:13
    QCOMPARE(utc.daysTo(kNow + kHour), 0);
    QCOMPARE(utc.daysTo(kNow + 2 * kHour), 1);
    QCOMPARE(utc.daysTo(kNow - 23 * kHour), -1);
    const Moment east{kNow, kHour}; // 23:13
    QCOMPARE(east.daysTo(kNow + kHour), 1);
}

void TestPlan::whatFailedComesFirst() {
    const std::vector<KnownFlow> all{known("a"), known("b"), known("c")};
    const std::vector<PractisedRun> runs{run("a", -24 * 20, true), run("b", -30, false), run("c", -50, false)};
    const Plan plan = progressOf(runs, all, {kNow, 0}).plan;
    QCOMPARE(idsOf(plan), (Ids{"c", "b", "a"}));
    QCOMPARE(plan.today[0].reason.english(),
             std::string("Its last run, 2 days ago, did not pass: 61 points, the target is 80.0."));
    // 20 days at a half-life of 2 days: 2^-10.
    QCOMPARE(plan.today[2].reason.english(),
             std::string("Last flown 20 days ago: by the forgetting model hardly one of 10 flows "
                         "practised like this would still go right."));
}

void TestPlan::theWeakestComesBeforeTheOthers() {
    const std::vector<KnownFlow> all{known("a"), known("b")};
    // a: two sittings right, 4 days; after 5 days 2^-1.25 = 0.42. b: one sitting right, 2 days; after 3 days 2^-1.5 =
    // 0.35.
    const std::vector<PractisedRun> runs{run("a", -24 * 8, true), run("a", -24 * 5, true), run("b", -24 * 3, true)};
    const Plan plan = progressOf(runs, all, {kNow, 0}).plan;
    QCOMPARE(idsOf(plan), (Ids{"b", "a"}));
    QVERIFY2(plan.today[1].reason.english().find("about 4 of 10") != std::string::npos,
             plan.today[1].reason.english().c_str());
}

void TestPlan::aNewFlowComesAfterWhatIsDue() {
    const std::vector<KnownFlow> all{known("a"), known("b"), known("c")};
    const Plan plan = progressOf({run("a", -24 * 9, true)}, all, {kNow, 0}).plan;
    QCOMPARE(idsOf(plan), (Ids{"a", "b"}));
    QCOMPARE(plan.today[1].reason.english(), std::string("Not flown yet: it follows “The a” in the flight."));
    const Plan first = progressOf({}, all, {kNow, 0}).plan;
    QCOMPARE(idsOf(first), (Ids{"a"}));
    QCOMPARE(first.today[0].reason.english(), std::string("Not flown yet: the flight begins with it."));
}

void TestPlan::abnormalFlowsWait() {
    const std::vector<KnownFlow> all{known("fire", true), known("a"), known("b")};
    QCOMPARE(idsOf(progressOf({run("a", -1, true)}, all, {kNow, 0}).plan), (Ids{"b"}));
    QCOMPARE(idsOf(progressOf({run("a", -1, true), run("b", -1, true)}, all, {kNow, 0}).plan), (Ids{"fire"}));
}

void TestPlan::nothingIsDue() {
    const std::vector<KnownFlow> all{known("a"), known("b")};
    const Plan plan = progressOf({run("a", -1, true), run("b", -30, true)}, all, {kNow, 0}).plan;
    QVERIFY(plan.today.empty());
    QCOMPARE(plan.later.english(), std::string("Nothing is due. The next is “The b”, tomorrow."));
}

void TestPlan::flowsThatAreGoneAreNotPlanned() {
    const Progress progress = progressOf({run("old", -24 * 9, true)}, {known("a")}, {kNow, 0});
    QCOMPARE(progress.flows.size(), std::size_t(1));
    QCOMPARE(idsOf(progress.plan), (Ids{"a"}));
    QCOMPARE(std::accumulate(progress.plan.ahead.begin(), progress.plan.ahead.end(), 0), 0);
}

void TestPlan::theWeekAheadByHand() {
    // a did not pass: today, then with as many right as wrong after 1 day, then after 2, then after 4, which is too
    // late. b passed once 24 h ago: tomorrow, then 4 days later.
    const std::vector<PractisedRun> runs{run("a", -2, false), run("b", -24, true)};
    const Plan plan = progressOf(runs, {known("a"), known("b")}, {kNow, 0}).plan;
    QCOMPARE(plan.ahead, (std::array<int, kDaysAhead>{1, 2, 0, 1, 0, 1, 0}));
}

void TestPlan::theSameRunsGiveTheSamePlan() {
    QVERIFY(rc::check("each flow at most once, only what is known, and always the same", [] {
        std::vector<PractisedRun> runs;
        const int count = *rc::gen::inRange(0, 30);
        for (int i = 0; i < count; ++i)
            runs.push_back(run(*rc::gen::element("a", "b", "c", "old"), -800 + i * *rc::gen::inRange(1, 27),
                               *rc::gen::arbitrary<bool>()));
        const std::vector<KnownFlow> all{known("a"), known("b"), known("c"), known("d")};
        const Plan plan = progressOf(runs, all, {kNow, kHour}).plan;
        Ids ids = idsOf(plan);
        RC_ASSERT(ids == idsOf(progressOf(runs, all, {kNow, kHour}).plan));
        std::sort(ids.begin(), ids.end());
        RC_ASSERT(std::adjacent_find(ids.begin(), ids.end()) == ids.end());
        RC_ASSERT(std::find(ids.begin(), ids.end(), "old") == ids.end());
        for (const PlannedFlow& flow : plan.today)
            RC_ASSERT(!flow.reason.isEmpty() && flow.reason.english().back() == '.');
        for (const int flows : plan.ahead)
            RC_ASSERT(flows >= 0 && flows <= 3);
    }));
}

QTEST_APPLESS_MAIN(TestPlan)
#include "test_plan.moc"
