#include <QtTest>

#include <map>

#include <rapidcheck.h>

#include "condition/margins.h"
#include "condition/monitor.h"
#include "definition.h"

using namespace flowhand;
namespace definition = flowhand::definition;

namespace {

struct StepLength {
    std::string text;
    Duration length;
};

/// The smallest step there is, a usual one, and very long gaps (half a year and more in all).
const StepLength kStepLengths[] = {
    {"0.000000001", Duration(1)}, {"1", std::chrono::seconds(1)}, {"2000000", std::chrono::seconds(2'000'000)}};

Truth truthOf(int truth) {
    return truth == 0 ? Truth::False : truth == 2 ? Truth::True : Truth::Unknown;
}

/// How a run through a trace is cut up, which must not matter.
struct Style {
    bool servesTimers = false; ///< settles at each timer, as a session does
    bool settlesEveryStep = false;
    bool setsTwice = false;     ///< pulses of no width: another value first, at the same time
    bool hasNeighbours = false; ///< other conditions watched by the same monitor
};

/// Runs a monitor over a trace and holds everything that it says against the definition.
class Trial {
public:
    Trial(const definition::Formula& formula, definition::Trace trace, const StepLength& step, Time start, Style style)
        : m_trace(std::move(trace)), m_step(step.length), m_start(start), m_style(style),
          m_text(definition::text(formula, step.text)), m_formula(formula), m_monitor(m_signals) {}

    void run(std::mt19937& random) {
        const std::optional<Condition> condition = compile(m_text);
        chooseReferences(random, condition->usesReference());
        m_truths = definition::truths(m_formula, m_trace, m_signals);
        m_margins = definition::margins(m_formula, m_trace, m_signals, definition::mixesUnits(m_formula));
        if (m_style.hasNeighbours)
            addNeighbours();
        m_id = m_monitor.add(*condition);
        m_follower.emplace(*condition, m_start);
        for (std::size_t step = 0; step < m_trace.steps.size(); ++step)
            runStep(static_cast<int>(step), random);
        checkChanges();
    }

private:
    std::optional<Condition> compile(const std::string& text) const {
        std::vector<ConditionProblem> problems;
        std::optional<Condition> condition = Condition::compile(text, {m_signals, m_aircraft}, problems);
        for (const ConditionProblem& problem : problems)
            if (!problem.isWarning)
                RC_FAIL(text + ": " + problem.message);
        return condition;
    }

    void addNeighbours() {
        for (const char* text : {"once(p, 0 s .. 3 s)", "x > 2 kt", "held(q, 2 s)", "x < 2 kt or y >= 3 deg"})
            static_cast<void>(m_monitor.add(*compile(text)));
        m_monitor.remove(m_monitor.add(*compile("rise(x == 1 kt)")));
    }

    void chooseReferences(std::mt19937& random, bool isUsed) {
        m_referenceAt.assign(static_cast<std::size_t>(m_trace.instants()), false);
        for (std::size_t i = 1; i < m_referenceAt.size() && isUsed; ++i)
            m_referenceAt[i] = random() % 8 == 0;
        int reference = 0;
        for (std::size_t i = 0; i < m_referenceAt.size(); ++i)
            m_trace.references[i] = reference = m_referenceAt[i] ? static_cast<int>(i / 2) : reference;
    }

    Time timeOf(int step) const { return m_start + step * m_step; }
    Key keyOf(int instant) const { return keyAt(timeOf(instant / 2)) + instant % 2; }

    void runStep(int step, std::mt19937& random) {
        const Time time = timeOf(step);
        const std::vector<Value>& values = m_trace.steps[static_cast<std::size_t>(step)];
        bool hasChanged = step == 0;
        if (m_style.servesTimers)
            while (m_monitor.nextTimer() < time)
                m_monitor.settle(m_monitor.nextTimer(), m_changes);
        for (std::size_t i = 0; i < values.size(); ++i) {
            const SignalId id{static_cast<std::uint32_t>(i)};
            hasChanged |= !(m_monitor.value(id) == values[i]);
            if (m_style.setsTwice)
                m_monitor.set(id, Value::number(random() % 3));
            m_monitor.set(id, values[i]);
        }
        const auto moment = static_cast<std::size_t>(2 * step);
        if (m_referenceAt[moment])
            m_monitor.setReference(m_id, time);
        if (!hasChanged && !m_referenceAt[moment] && !m_referenceAt[moment + 1] && !m_style.settlesEveryStep &&
            step + 1 < m_trace.instants() / 2)
            return;
        if (step == 0 || hasChanged)
            m_follower->step(keyAt(time), values);
        if (m_referenceAt[moment])
            m_follower->setReference(time, keyAt(time));
        m_monitor.settle(time, m_changes);
        checkAt(2 * step);
        if (m_referenceAt[moment + 1]) {
            m_monitor.setReference(m_id, time);
            m_follower->setReference(time, keyAt(time) + 1);
            m_monitor.settle(time, m_changes);
            checkAt(2 * step + 1);
        } else if (random() % 2 == 0) {
            checkMargin(2 * step + 1, m_follower->at(keyOf(2 * step + 1)));
        }
    }

    std::string where(int instant) const {
        return m_text + " at instant " + std::to_string(instant) + " of " + std::to_string(m_trace.instants());
    }

    void checkAt(int instant) {
        const auto i = static_cast<std::size_t>(instant);
        const Truth truth = m_monitor.truth(m_id);
        if (truth != truthOf(m_truths[i]))
            RC_FAIL("truth of " + where(instant));
        if (m_monitor.nextTimer() <= timeOf(instant / 2))
            RC_FAIL("a timer that is over at " + where(instant));
        checkMargin(instant, m_follower->at(keyOf(instant)));
        const Margin margin = m_monitor.margin(m_id);
        if ((truth == Truth::True && margin.value < 0) || (truth == Truth::False && margin.value > 0) ||
            (truth == Truth::Unknown && margin.value != 0))
            RC_FAIL("margin against truth of " + where(instant));
        const double expected = truth == Truth::True    ? m_margins[i].low
                                : truth == Truth::False ? m_margins[i].high
                                                        : 0.0;
        const double scale =
            margin.signal == kNoSignal || !definition::mixesUnits(m_formula) ? 1.0 : m_signals[margin.signal].scale;
        if (margin.value * (1.0 / scale) != expected)
            RC_FAIL("margin of " + where(instant) + ": " + std::to_string(margin.value));
    }

    void checkMargin(int instant, const RobustPair& found) const {
        const definition::Bounds& expected = m_margins[static_cast<std::size_t>(instant)];
        if (found.low.relative != expected.low || found.high.relative != expected.high)
            RC_FAIL("margins of " + where(instant) + ": " + std::to_string(found.low.relative) + " " +
                    std::to_string(found.high.relative) + " instead of " + std::to_string(expected.low) + " " +
                    std::to_string(expected.high));
    }

    /// What was reported, put together, is the truth at every instant up to the last.
    void checkChanges() const {
        std::vector<Truth> told(static_cast<std::size_t>(m_trace.instants()), Truth::Unknown);
        for (const TruthChange& change : m_changes) {
            if (change.which != m_id)
                continue;
            if ((change.time - m_start) % m_step != Duration::zero())
                RC_FAIL("a change between the steps: " + m_text);
            std::size_t from =
                static_cast<std::size_t>(2 * ((change.time - m_start) / m_step)) + (change.isAfter ? 1 : 0);
            if (change.isPoint)
                told[from] = change.truth;
            else
                std::fill(told.begin() + static_cast<std::ptrdiff_t>(from), told.end(), change.truth);
        }
        for (std::size_t i = 0; i < told.size(); ++i) {
            // A reference time that is set after its moment was judged is reported as from that moment on.
            const bool isRejudged = i + 1 < told.size() && i % 2 == 0 && m_referenceAt[i + 1];
            if (!isRejudged && told[i] != truthOf(m_truths[i]))
                RC_FAIL("changes of " + where(static_cast<int>(i)));
        }
    }

    SignalTable m_signals = definition::signalTable();
    std::map<std::string, AircraftValue, std::less<>> m_aircraft;
    definition::Trace m_trace;
    Duration m_step;
    Time m_start;
    Style m_style;
    std::string m_text;
    const definition::Formula& m_formula;
    definition::Truths m_truths;
    definition::Margins m_margins;
    std::vector<bool> m_referenceAt; // by instant
    Monitor m_monitor;
    MonitorId m_id{};
    std::optional<Margins> m_follower;
    std::vector<TruthChange> m_changes;
};

} // namespace

class TestSemantics : public QObject {
    Q_OBJECT
private Q_SLOTS:
    void monitorAgreesWithTheDefinition_data() {
        QTest::addColumn<int>("depth");
        QTest::newRow("comparisons") << 0;
        QTest::newRow("one operator") << 1;
        QTest::newRow("two operators deep") << 2;
        QTest::newRow("four operators deep") << 4;
    }
    void monitorAgreesWithTheDefinition() {
        QFETCH(int, depth);
        const int runsEach = depth == 0 ? 4 : 100;
        QVERIFY(rc::check("monitor and definition agree", [&] {
            std::mt19937 random(*rc::gen::inRange<std::uint32_t>(0, 0xFFFFFFFF));
            for (int run = 0; run < runsEach; ++run) {
                const SignalTable signals = definition::signalTable();
                const definition::Formula formula = definition::randomFormula(random, depth);
                const definition::Trace trace =
                    definition::randomTrace(random, signals, 1 + static_cast<int>(random() % 14));
                const StepLength& step = kStepLengths[random() % 3];
                const Time start = (static_cast<int>(random() % 3) - 1) * 5 * step.length;
                const auto coin = [&] {
                    return random() % 2 == 0;
                };
                Trial(formula, trace, step, start, {coin(), coin(), coin(), coin()}).run(random);
            }
        }));
    }
};

QTEST_APPLESS_MAIN(TestSemantics)
#include "test_semantics.moc"
