#include <QtTest>

#include "session/bench.h"
#include "session/scenariowatch.h"

using namespace flowhand;
using namespace flowhand::test;
using namespace std::chrono_literals;

namespace {

Scenario scenarioOf(const std::string& events) {
    Problems problems;
    std::optional<Scenario> scenario =
        parseScenario("format = 1\ntitle = 'T'\nflows = ['a']\n" + events, "t.toml", cockpit(), problems);
    if (!scenario)
        qFatal("%s", describe(problems.firstError()).c_str());
    return std::move(*scenario);
}

/// Events `e0`, `e1`, ... that come true above 10, 20, ... kt, each with this chance.
Scenario chancesOf(int count, const std::string& chance, const std::string& more = {}) {
    std::string text;
    for (int i = 0; i < count; ++i)
        text += "[[event]]\nid = 'e" + std::to_string(i) + "'\ntitle = 'E'\nwhen = 'ground_speed > " +
                std::to_string(10 * (i + 1)) + " kt'\nchance = '" + chance + "'\nfailure = 'steering_lost'\n" + more;
    return scenarioOf(text);
}

Sample speed(double knots) {
    return {Time{},    *cockpit().signals.find("ground_speed"), Value::number(knots), Actor::Machine, Origin::Practice,
            kNoControl};
}

} // namespace

class TestScenario : public QObject {
    Q_OBJECT

private Q_SLOTS:
    void theSameSeedDrawsTheSame() {
        const Scenario scenario = chancesOf(40, "50 %");
        const auto drawn = [&](std::uint64_t seed) {
            return ScenarioWatch(scenario, cockpit().signals, seed).drawn();
        };
        QVERIFY(drawn(7) == drawn(7));
        QVERIFY(drawn(7) != drawn(8));
    }

    void chances_data() {
        QTest::addColumn<QString>("chance");
        QTest::addColumn<int>("least");
        QTest::addColumn<int>("most");
        QTest::newRow("never") << "0 %" << 0 << 0;
        QTest::newRow("always") << "100 %" << 2000 << 2000;
        // Within five standard deviations of the binomial distribution, sqrt(2000 p (1 - p)).
        QTest::newRow("one in four") << "25 %" << 500 - 97 << 500 + 97;
    }
    void chances() {
        QFETCH(QString, chance);
        QFETCH(int, least);
        QFETCH(int, most);
        const Scenario scenario = chancesOf(1, chance.toStdString());
        int count = 0;
        for (std::uint64_t seed = 0; seed < 2000; ++seed)
            count += ScenarioWatch(scenario, cockpit().signals, seed).drawn().front() ? 1 : 0;
        QVERIFY2(count >= least && count <= most, qPrintable(QString::number(count)));
    }

    void ofAGroupAtMostOneHappens() {
        const Scenario scenario = chancesOf(4, "60 %", "group = 'engine'\n");
        std::set<std::ptrdiff_t> counts;
        for (std::uint64_t seed = 0; seed < 200; ++seed) {
            const std::vector<bool> drawn = ScenarioWatch(scenario, cockpit().signals, seed).drawn();
            counts.insert(std::count(drawn.begin(), drawn.end(), true));
        }
        QCOMPARE(counts, (std::set<std::ptrdiff_t>{0, 1}));
    }

    void eachHappensOnceWhenItsConditionComesTrue() {
        const Scenario scenario = chancesOf(3, "100 %");
        ScenarioWatch watch(scenario, cockpit().signals, 1);
        const auto at = [&](Time time, double knots) {
            std::vector<std::size_t> happened;
            const Sample sample = speed(knots);
            watch.see(time, std::span(&sample, 1), happened);
            return happened;
        };
        QCOMPARE(at(0s, 0.0), std::vector<std::size_t>{});
        QCOMPARE(at(1s, 15.0), std::vector<std::size_t>{0});
        QCOMPARE(at(2s, 5.0), std::vector<std::size_t>{});
        QCOMPARE(at(3s, 15.0), std::vector<std::size_t>{}); // not again
        QCOMPARE(at(4s, 35.0), (std::vector<std::size_t>{1, 2}));
    }

    void timeAloneMakesItHappen() {
        const Scenario scenario = scenarioOf("[[event]]\nid='e'\ntitle='E'\nwhen='historically(ground_speed < 5 kt, 3 "
                                             "s) and once(ground_speed > 1 kt)'\n"
                                             "failure='steering_lost'\n");
        ScenarioWatch watch(scenario, cockpit().signals, 1);
        std::vector<std::size_t> happened;
        for (const auto& [time, knots] : {std::pair<Time, double>{0s, 20.0}, {10s, 2.0}}) {
            const Sample sample = speed(knots);
            watch.see(time, std::span(&sample, 1), happened);
        }
        QVERIFY(happened.empty());
        QVERIFY(watch.nextTimer() >= 13s && watch.nextTimer() < 13s + 1ms);
        watch.pass(13s + 1ms, happened);
        QCOMPARE(happened, std::vector<std::size_t>{0});
        QCOMPARE(watch.nextTimer(), kForever);
    }

    void whatComesAfterAFlow() {
        Flow first, branch, second;
        first.id = "first";
        first.outcomes.push_back({"rejected", "R", compiled("on_ground"), "branch", {}});
        first.outcomes.push_back({"over", "O", compiled("on_ground"), "", {}});
        branch.outcomes.push_back({"again", "A", compiled("on_ground"), "first", {}});
        FlowOrder order({"first", "second"});
        QCOMPARE(order.after(first, ""), std::string("second"));
        QCOMPARE(order.after(second, ""), std::string());
        FlowOrder left({"first", "second"});
        QCOMPARE(left.after(first, "rejected"), std::string("branch"));
        QCOMPARE(left.after(branch, ""), std::string()); // not back to the list
        FlowOrder back({"first", "second"});
        QCOMPARE(back.after(first, "rejected"), std::string("branch"));
        QCOMPARE(back.after(branch, "again"), std::string("first"));
        FlowOrder ended({"first", "second"});
        QCOMPARE(ended.after(first, "over"), std::string());
    }

    void anEventIsToldAndSpoken() {
        const Flow flow = flowOf("[[step]]\nid = 'flap'\ntitle = 'Flap'\ndone = 'flap_lever == 12'\n");
        SessionSetup setup = onScreen();
        setup.events = {{"fails", "Engine 2 fails", "first_officer", "Engine failure"}, {"quiet", "A tyre", "", ""}};
        Session session(cockpit(), flow, setup);
        session.start(0s);
        session.happen(1s, "fails");
        QCOMPARE(session.view().saying, std::string("Engine failure"));
        session.happen(2s, "quiet");
        session.happen(3s, "unknown");
        session.advance(20s); // the words end, and no step is done by them
        std::vector<std::string> told;
        for (const Event& event : session.takeEvents())
            if (event.kind == EventKind::ScenarioEvent)
                told.push_back(event.text.english());
        QCOMPARE(told, (std::vector<std::string>{"Engine 2 fails", "A tyre"}));
        QVERIFY(session.view().saying.empty());
    }

private:
    static PlacedCondition compiled(const char* text) {
        std::vector<ConditionProblem> problems;
        return {*Condition::compile(text, cockpit().scope(), problems), {}};
    }
};

QTEST_APPLESS_MAIN(TestScenario)
#include "test_scenario.moc"
