#include <QtTest>

#include "session/bench.h"
#include "session/property.h"

using namespace flowhand;
using namespace flowhand::test;
using namespace std::chrono_literals;

namespace {

/// Two steps of a lever; `lever` and `bounds` say which and where.
std::string leverFlow(const std::string& lever, const std::string& low, const std::string& high,
                      const std::string& from, const std::string& to) {
    return "[[step]]\nid = \"first\"\ntitle = \"First\"\ndone = \"" + lever + " " + low +
           "\"\nwithin = \"2 s\"\nband = { signal = \"" + lever + "\", from = \"" + from + "\", to = \"" + to +
           "\" }\n" + "[[step]]\nid = \"second\"\ntitle = \"Second\"\ndone = \"" + lever + " " + high +
           "\"\nwithin = \"2 s\"\n";
}

struct Push {
    Duration pause;
    Duration lasts;
    double to;
};

std::vector<Push> somePushes() {
    std::vector<Push> pushes;
    const int count = *rc::gen::inRange(1, 6);
    for (int i = 0; i < count; ++i)
        pushes.push_back(
            {*rc::gen::inRange(50, 5000) * 1ms, *rc::gen::inRange(20, 1500) * 1ms, *rc::gen::inRange(0, 101) + 0.25});
    return pushes;
}

/// Where the lever is at `time` while it is pushed.
double placeAt(const std::vector<Push>& pushes, Time time) {
    double at = 0.0;
    Time begins{};
    for (const Push& push : pushes) {
        begins += push.pause;
        if (time < begins)
            return at;
        const double share = std::min(1.0, seconds(time - begins) / seconds(push.lasts));
        at += (push.to - at) * share;
        begins += push.lasts;
        if (share < 1.0)
            return at;
    }
    return at;
}

/// Flies the pushes, reported once a `period` from `shift` on.
Bench flown(const Flow& flow, SignalId lever, const std::vector<Push>& pushes, Duration period, Duration shift,
            const std::function<double(double)>& scale) {
    Bench bench(flow, onScreen());
    std::vector<Sample> standing;
    const auto put = [&](Time time, double place, Actor actor) {
        const Sample sample{time, lever, Value::number(scale(place)), actor, Origin::Script, kNoControl};
        if (bench.session.isNews(sample))
            bench.session.take(time, std::span(&sample, 1));
    };
    put(shift, 0.0, Actor::Machine);
    bench.session.start(shift + kTick);
    for (Time time = kTick + period; time < 40s; time += period)
        put(shift + time, placeAt(pushes, time), Actor::Hand);
    bench.session.advance(shift + 60s);
    return bench;
}

double asItIs(double place) {
    return place;
}

} // namespace

class TestSessionProperties : public QObject {
    Q_OBJECT

private Q_SLOTS:
    void clockShiftChangesNothing();
    void rangeAndInversionChangeNothing();
    void reportRateChangesTheResponseByOnePeriodAtMost();
};

void TestSessionProperties::clockShiftChangesNothing() {
    const Flow flow = flowOf(leverFlow("thrust_lever_1", "> 40 %", "< 30 %", "40 %", "60 %"));
    const SignalId lever = *cockpit().signals.find("thrust_lever_1");
    QVERIFY(holdsFor(500, "a run an hour later is the same run", [&] {
        const std::vector<Push> pushes = somePushes();
        Bench now = flown(flow, lever, pushes, 10ms, 0s, asItIs);
        Bench later = flown(flow, lever, pushes, 10ms, 1h, asItIs);
        std::vector<Event> a = now.session.takeEvents();
        std::vector<Event> b = later.session.takeEvents();
        for (Event& event : b)
            event.time -= 1h;
        RC_ASSERT(a == b);
        RC_ASSERT(now.session.score().milliPoints == later.session.score().milliPoints);
    }));
}

void TestSessionProperties::rangeAndInversionChangeNothing() {
    const Flow plain = flowOf(leverFlow("thrust_lever_1", "> 40 %", "< 30 %", "40 %", "60 %"));
    // The same lever the other way round on a wheel from 70 to -70 degrees.
    const Flow other = flowOf(leverFlow("tiller", "< 14 deg", "> 28 deg", "-14 deg", "14 deg"));
    QVERIFY(holdsFor(500, "another range and an inverted axis change nothing", [&] {
        const std::vector<Push> pushes = somePushes();
        Bench a = flown(plain, *cockpit().signals.find("thrust_lever_1"), pushes, 10ms, 0s, asItIs);
        Bench b = flown(other, *cockpit().signals.find("tiller"), pushes, 10ms, 0s, [](double place) {
            return 70.0 - 1.4 * place;
        });
        const std::vector<StepResult> one = a.session.results();
        const std::vector<StepResult> two = b.session.results();
        for (std::size_t i = 0; i < one.size(); ++i) {
            RC_ASSERT(one[i].state == two[i].state);
            RC_ASSERT(one[i].done == two[i].done);
            RC_ASSERT(std::fabs(one[i].mu - two[i].mu) < 1e-9);
        }
        RC_ASSERT(a.session.score().milliPoints == b.session.score().milliPoints);
    }));
}

void TestSessionProperties::reportRateChangesTheResponseByOnePeriodAtMost() {
    const Flow flow = flowOf(leverFlow("thrust_lever_1", "> 40 %", "< 30 %", "40 %", "60 %"));
    const SignalId lever = *cockpit().signals.find("thrust_lever_1");
    QVERIFY(holdsFor(500, "a slower device delays a step by one period at most", [&] {
        // One clear push for each step: pauses long enough that no rate joins or parts movements.
        const std::vector<Push> pushes{{*rc::gen::inRange(500, 6000) * 1ms, *rc::gen::inRange(50, 800) * 1ms, 50.0},
                                       {*rc::gen::inRange(1000, 6000) * 1ms, *rc::gen::inRange(50, 800) * 1ms, 5.0}};
        const Duration period = *rc::gen::inRange(2, 100) * 1ms;
        Bench fine = flown(flow, lever, pushes, 1ms, 0s, asItIs);
        Bench coarse = flown(flow, lever, pushes, period, 0s, asItIs);
        for (std::size_t i = 0; i < 2; ++i) {
            const StepResult a = fine.session.results()[i];
            const StepResult b = coarse.session.results()[i];
            RC_ASSERT(a.state == StepState::Done);
            RC_ASSERT(b.state == StepState::Done);
            RC_ASSERT(std::chrono::abs((a.done - a.due) - (b.done - b.due)) <= period);
        }
    }));
}

QTEST_APPLESS_MAIN(TestSessionProperties)
#include "test_sessionproperties.moc"
