#include <QtTest>
#include <rapidcheck.h>

#include <numeric>

#include "session/property.h"
#include "session/scorehelp.h"

using namespace flowhand;
using namespace flowhand::test;
using namespace std::chrono_literals;

namespace {

/// A random run by the quantities that the score is made of, of which a property varies one and keeps the rest.
struct Play {
    Flow flow;
    std::vector<std::size_t> order;  ///< in which the steps were done; the others are omitted
    std::vector<Duration> responses; ///< by place in `order`
    std::vector<double> mu;          ///< by step
    std::vector<bool> isTooEarly;    ///< by step
    int extras = 0;

    [[nodiscard]] std::vector<StepResult> results(Duration shift = {}) const {
        std::vector<StepResult> all(flow.steps.size(), notDone(shift));
        Time now = shift;
        for (std::size_t n = 0; n < order.size(); ++n) {
            StepResult& result = all[order[n]] = doneAt(now, now + responses[n]);
            now = result.done;
            result.mu = mu[order[n]];
            result.isTooEarly = isTooEarly[order[n]];
            result.state = result.isTooEarly ? StepState::TooEarly : StepState::Done;
        }
        return all;
    }
    [[nodiscard]] Score score() const {
        return scoreOf(flow, results(), std::vector<ExtraResult>(static_cast<std::size_t>(extras)), {}, {});
    }
    /// Milli-points lost, before the floor.
    [[nodiscard]] std::int64_t lost() const {
        std::int64_t sum = 0;
        for (const LedgerLine& line : score().ledger)
            sum += line.what == LossKind::Floor ? 0 : line.milliPoints;
        return sum;
    }
};

template <class T>
void shuffle(std::vector<T>& items, std::size_t reach) {
    for (std::size_t i = 0; i + 1 < items.size(); ++i)
        if (*rc::gen::inRange(0, 3) == 0)
            std::swap(items[i], items[std::min(items.size() - 1, i + *rc::gen::inRange<std::size_t>(0, reach + 1))]);
}

Duration someResponse() {
    return *rc::gen::inRange(0, 15'000) * 1ms;
}

Play somePlay() {
    Play play;
    play.flow =
        listFlow(*rc::gen::container<std::vector<int>>(*rc::gen::inRange<std::size_t>(1, 10), rc::gen::inRange(1, 4)));
    const std::size_t count = play.flow.steps.size();
    for (std::size_t i = 0; i + 1 < count; ++i)
        if (*rc::gen::inRange(0, 4) == 0) { // a group of two
            Step& second = play.flow.steps[i + 1];
            play.flow.steps[i].group = second.group = "g" + std::to_string(i);
            second.after = play.flow.steps[i].after;
            if (i + 2 < count)
                play.flow.steps[i + 2].after.push_back(i);
            ++i;
        }
    for (std::size_t i = 0; i < count; ++i)
        if (*rc::gen::inRange(0, 6) != 0)
            play.order.push_back(i);
    shuffle(play.order, 4);
    for (std::size_t i = 0; i < count; ++i) {
        play.responses.push_back(someResponse());
        play.mu.push_back(*rc::gen::inRange(0, 101) / 100.0);
        play.isTooEarly.push_back(*rc::gen::inRange(0, 12) == 0);
    }
    play.extras = *rc::gen::inRange(0, 4);
    return play;
}

/// A place in the order of a play in which something was done.
std::size_t somePlace(const Play& play) {
    RC_PRE(!play.order.empty());
    return *rc::gen::inRange<std::size_t>(0, play.order.size());
}

void check(const char* what, const std::function<void()>& property) {
    QVERIFY2(holdsFor(20'000, what, property), what);
}

} // namespace

class TestScoreProperties : public QObject {
    Q_OBJECT

private Q_SLOTS:
    void perfectIsFull();
    void ledgerIsExact();
    void omissionNeverRaises();
    void extraNeverRaises();
    void longerResponseNeverRaises();
    void smallerMarginNeverRaises();
    void swapOfNeighboursNeverRaisesAPerfectRun();
    void doneBadlyBeatsNotDone();
    void clockShiftChangesNothing();
    void permutationInsideAGroupChangesNothing();
    void reportRateChangesTheResponseByOnePeriodAtMost();
    void uncertaintyOnlyWidens();
};

void TestScoreProperties::perfectIsFull() {
    check("a perfect run has the full score", [] {
        Play play = somePlay();
        play.order.resize(play.flow.steps.size());
        std::iota(play.order.begin(), play.order.end(), std::size_t{0});
        for (Duration& response : play.responses)
            response = *rc::gen::inRange(0, 4'001) * 1ms;
        play.mu.assign(play.mu.size(), 1.0);
        play.isTooEarly.assign(play.mu.size(), false);
        play.extras = 0;
        RC_ASSERT(play.score().milliPoints == 100'000);
        RC_ASSERT(play.score().ledger.empty());
        RC_ASSERT(play.score().isPassed);
    });
}

void TestScoreProperties::ledgerIsExact() {
    check("the ledger adds up to what the score lacks", [] {
        const Score score = somePlay().score();
        RC_ASSERT(ledgerSum(score) == 100'000 - score.milliPoints);
        RC_ASSERT(score.milliPoints >= 0 && score.milliPoints <= 100'000);
        for (std::size_t i = 0; i + 1 < score.ledger.size(); ++i)
            RC_ASSERT(score.ledger[i].milliPoints > 0);
    });
}

void TestScoreProperties::omissionNeverRaises() {
    check("an omission never raises the score", [] {
        const Play play = somePlay();
        const std::size_t place = somePlace(play);
        std::vector<StepResult> results = play.results();
        results[play.order[place]] = notDone(results[play.order[place]].due);
        const std::vector<ExtraResult> extras(static_cast<std::size_t>(play.extras));
        RC_ASSERT(scoreOf(play.flow, results, extras, {}, {}).milliPoints <= play.score().milliPoints);
    });
}

void TestScoreProperties::extraNeverRaises() {
    check("an extra never raises the score", [] {
        Play play = somePlay();
        const std::int64_t before = play.score().milliPoints;
        ++play.extras;
        RC_ASSERT(play.score().milliPoints <= before);
    });
}

void TestScoreProperties::longerResponseNeverRaises() {
    check("a longer response never raises the score", [] {
        Play play = somePlay();
        const std::size_t place = somePlace(play);
        const std::int64_t before = play.score().milliPoints;
        play.responses[place] += someResponse();
        RC_ASSERT(play.score().milliPoints <= before);
    });
}

void TestScoreProperties::smallerMarginNeverRaises() {
    check("a smaller margin never raises the score", [] {
        Play play = somePlay();
        const std::size_t step = *rc::gen::inRange<std::size_t>(0, play.mu.size());
        const std::int64_t before = play.score().milliPoints;
        play.mu[step] -= *rc::gen::inRange(0, 100) / 100.0;
        RC_ASSERT(play.score().milliPoints <= before);
    });
}

void TestScoreProperties::swapOfNeighboursNeverRaisesAPerfectRun() {
    check("any order but the right one loses, except in a group", [] {
        Play play = somePlay();
        play.order.resize(play.flow.steps.size());
        std::iota(play.order.begin(), play.order.end(), std::size_t{0});
        const std::size_t place = *rc::gen::inRange<std::size_t>(0, play.order.size());
        RC_PRE(place + 1 < play.order.size());
        const bool isGroup =
            !play.flow.steps[place].group.empty() && play.flow.steps[place].group == play.flow.steps[place + 1].group;
        play.isTooEarly.assign(play.mu.size(), false);
        play.responses.assign(play.mu.size(), 1s);
        const std::int64_t before = play.lost();
        std::swap(play.order[place], play.order[place + 1]);
        RC_ASSERT((isGroup ? play.lost() == before : play.lost() > before));
    });
}

void TestScoreProperties::doneBadlyBeatsNotDone() {
    check("done badly beats not done by half the weight", [] {
        Play play = somePlay();
        const std::size_t place = somePlace(play);
        std::vector<StepResult> results = play.results();
        const std::size_t step = play.order[place];
        results[step] = notDone(results[step].due);
        const Score without = scoreOf(play.flow, results, {}, {}, {});
        std::int64_t omitted = 0;
        for (const LedgerLine& line : without.ledger)
            omitted += line.what == LossKind::Floor ? 0 : line.milliPoints;
        play.extras = 0;
        const std::int64_t half = 100'000 * play.flow.steps[step].weight / (2 * without.weight);
        RC_ASSERT(omitted - play.lost() >= half - 2); // two lines, each rounded
    });
}

void TestScoreProperties::clockShiftChangesNothing() {
    check("a clock shift changes nothing", [] {
        const Play play = somePlay();
        const Duration shift = *rc::gen::inRange(-1'000'000, 1'000'000) * 1us;
        const Score here = scoreOf(play.flow, play.results(), {}, {}, {});
        const Score there = scoreOf(play.flow, play.results(shift), {}, {}, {});
        RC_ASSERT(here.milliPoints == there.milliPoints);
        RC_ASSERT(here.ledger.size() == there.ledger.size());
    });
}

void TestScoreProperties::permutationInsideAGroupChangesNothing() {
    check("the order inside a group changes nothing", [] {
        Play play = somePlay();
        std::fill(play.responses.begin(), play.responses.end(), 1s);
        const std::int64_t before = play.score().milliPoints;
        for (std::size_t n = 0; n + 1 < play.order.size(); ++n) {
            const std::string& group = play.flow.steps[play.order[n]].group;
            if (!group.empty() && group == play.flow.steps[play.order[n + 1]].group)
                std::swap(play.order[n], play.order[n + 1]);
        }
        RC_ASSERT(play.score().milliPoints == before);
    });
}

void TestScoreProperties::reportRateChangesTheResponseByOnePeriodAtMost() {
    check("a coarser report rate changes a response by one period at most", [] {
        Play play = somePlay();
        const Duration period = *rc::gen::inRange(1, 50) * 1ms;
        for (Duration& response : play.responses)
            response += period; // no two steps in one report
        const std::vector<StepResult> exact = play.results();
        std::vector<StepResult> coarse = exact;
        for (StepResult& result : coarse)
            if (result.state != StepState::Omitted)
                result.done = (result.done + period - 1ns) / period * period;
        const Score a = scoreOf(play.flow, exact, {}, {}, {});
        const Score b = scoreOf(play.flow, coarse, {}, {}, {});
        for (std::size_t i = 0; i < a.late.size(); ++i)
            if (!a.outOfOrder[i] && !b.outOfOrder[i] && !play.isTooEarly[i])
                RC_ASSERT(std::chrono::abs(a.late[i] - b.late[i]) <= period);
    });
}

void TestScoreProperties::uncertaintyOnlyWidens() {
    check("the certain score lies in the uncertain one's interval", [] {
        const Play play = somePlay();
        const std::size_t place = somePlace(play);
        std::vector<StepResult> results = play.results();
        const Score certain = scoreOf(play.flow, results, {}, {}, {});
        results[play.order[place]].isUncertain = true;
        const Score uncertain = scoreOf(play.flow, results, {}, {}, {});
        RC_ASSERT(uncertain.milliPoints <= certain.milliPoints);
        RC_ASSERT(uncertain.upperMilliPoints == certain.milliPoints);
    });
}

QTEST_APPLESS_MAIN(TestScoreProperties)
#include "test_scoreproperties.moc"
