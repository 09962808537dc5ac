// A run on its own thread, by the real clock: commands from another thread arrive, and its end is clean.

#include <condition_variable>
#include <mutex>

#include <QtTest>

#include "procedure/library.h"
#include "session/run.h"
#include "session/scenariowatch.h"

using namespace flowhand;
using namespace std::chrono_literals;

namespace {

/// Waits until the run's view is as wanted; false after 30 s.
class Watcher {
public:
    void changed() {
        const std::lock_guard lock(m_mutex);
        m_wake.notify_all();
    }
    template <class Wanted>
    bool waitFor(const Run& run, Wanted isWanted) {
        std::unique_lock lock(m_mutex);
        const auto end = std::chrono::steady_clock::now() + 30s;
        while (!isWanted(run.snapshot())) {
            if (std::chrono::steady_clock::now() > end)
                return false;
            m_wake.wait_for(lock, 20ms);
        }
        return true;
    }

private:
    std::mutex m_mutex;
    std::condition_variable m_wake;
};

} // namespace

class TestRun : public QObject {
    Q_OBJECT

private Q_SLOTS:
    void initTestCase();
    void startsHoldsAndStops();
    void aScreenControlMoves();
    void keepsHowAnEarlierFlowEnded();
    void endsWhenDropped();

private:
    RunParts parts() const;
    std::vector<AircraftFolder> m_library;
    const Flow* m_flow = nullptr;
};

void TestRun::initTestCase() {
    Problems problems;
    m_library = loadLibrary(PROCEDURES, problems);
    QVERIFY(!m_library.empty());
    for (const Flow& flow : m_library.front().flows)
        if (flow.id == "taxi_out")
            m_flow = &flow;
    QVERIFY(m_flow != nullptr);
}

RunParts TestRun::parts() const {
    RunParts parts;
    parts.aircraft = m_library.front().aircraft.get();
    parts.flow = m_flow;
    parts.header.setup.controls.resize(parts.aircraft->controls.size());
    for (ControlFacts& facts : parts.header.setup.controls)
        facts.isSimulated = true;
    Result<PracticeAircraft> practice = PracticeAircraft::create(*parts.aircraft, m_flow->startPlace);
    if (practice)
        parts.practice.emplace(std::move(*practice));
    return parts;
}

void TestRun::startsHoldsAndStops() {
    const SteadyClock clock;
    Watcher watcher;
    Run run(parts(), clock, clock.now(), [&] {
        watcher.changed();
    });
    QVERIFY(run.snapshot().session.phase == SessionPhase::SetUp);
    run.command(CommandKind::Start);
    QVERIFY(watcher.waitFor(run, [](const RunSnapshot& now) {
        return now.session.phase == SessionPhase::Running;
    }));
    run.command(CommandKind::Hold, "telephone");
    QVERIFY(watcher.waitFor(run, [](const RunSnapshot& now) {
        return now.session.phase == SessionPhase::Held;
    }));
    QCOMPARE(run.snapshot().session.holdReason.english(), std::string("telephone"));
    run.command(CommandKind::Resume);
    QVERIFY(watcher.waitFor(run, [](const RunSnapshot& now) {
        return now.session.phase == SessionPhase::Running;
    }));
    run.command(CommandKind::Stop);
    QVERIFY(watcher.waitFor(run, [](const RunSnapshot& now) {
        return now.session.phase == SessionPhase::Ended;
    }));
}

void TestRun::aScreenControlMoves() {
    const SteadyClock clock;
    Watcher watcher;
    Run run(parts(), clock, clock.now(), [&] {
        watcher.changed();
    });
    const SignalId light = *m_library.front().aircraft->signals.find("taxi_light");
    const auto isOn = [&](const RunSnapshot& now) {
        return now.values[indexOf(light)].isOn();
    };
    QVERIFY(!isOn(run.snapshot()));
    run.moveOnScreen(light, Value::onOff(true));
    QVERIFY(watcher.waitFor(run, isOn));
}

void TestRun::keepsHowAnEarlierFlowEnded() {
    const Aircraft& aircraft = *m_library.front().aircraft;
    const auto flowOf = [&](const std::string& control) {
        Problems problems;
        std::optional<Flow> flow = parseFlow("format = 1\ntitle = '" + control +
                                                 "'\nphases = ['taxi_out']\nseat = 'captain'\n[start]\nplace = "
                                                 "'stand'\n[[step]]\nid = 's'\ntitle = 'On'\ndone = '" +
                                                 control + "'\n",
                                             control + ".toml", aircraft, problems);
        if (!flow)
            qFatal("%s", describe(problems.firstError()).c_str());
        return std::move(*flow);
    };
    const Flow first = flowOf("taxi_light");
    const Flow second = flowOf("landing_lights");
    Problems problems;
    const std::optional<Scenario> scenario =
        parseScenario("format = 1\ntitle = 'T'\nflows = ['a']\n[[event]]\nid = 'lost'\ntitle = 'Steering lost'\nwhen "
                      "= 'parking_brake'\nfailure = 'steering_lost'\n",
                      "t.toml", aircraft, problems);
    QVERIFY(scenario);
    RunParts flight = parts();
    flight.flow = &first;
    flight.scenario = &*scenario;
    flight.header.setup.events = setupEvents(*scenario);
    flight.successor = [&, header = flight.header](const Flow& ended, const std::string&) -> std::optional<NextRun> {
        if (&ended != &first)
            return std::nullopt;
        NextRun next;
        next.flow = &second;
        next.header = header;
        return next;
    };
    const SteadyClock clock;
    Watcher watcher;
    Run run(std::move(flight), clock, clock.now(), [&] {
        watcher.changed();
    });
    run.command(CommandKind::Start);
    QVERIFY(watcher.waitFor(run, [](const RunSnapshot& now) {
        return now.session.phase == SessionPhase::Running;
    }));
    QVERIFY(run.snapshot().ground && run.snapshot().ground->isOnGround);
    run.moveOnScreen(*aircraft.signals.find("parking_brake"), Value::onOff(true));
    QVERIFY(watcher.waitFor(run, [](const RunSnapshot& now) {
        return now.happened.size() == 1;
    }));
    run.moveOnScreen(*aircraft.signals.find("taxi_light"), Value::onOff(true));
    QVERIFY(watcher.waitFor(run, [&](const RunSnapshot& now) {
        return now.flow == &second;
    }));
    const RunSnapshot now = run.snapshot();
    QCOMPARE(now.before.size(), std::size_t(1));
    QVERIFY(now.before.front()->flow == &first);
    QVERIFY(now.before.front()->session.phase == SessionPhase::Ended);
    QVERIFY(now.before.front()->score.isScored);
    QCOMPARE(now.before.front()->happened.front().title, std::string("Steering lost"));
    QVERIFY(now.happened.empty()); // of the flow that goes on
}

void TestRun::endsWhenDropped() {
    const SteadyClock clock;
    std::optional<Run> run;
    std::mutex guard;
    bool isDropped = false;
    bool isCalledAfter = false;
    run.emplace(parts(), clock, clock.now(), [&] {
        const std::lock_guard lock(guard);
        isCalledAfter = isCalledAfter || isDropped;
    });
    run->command(CommandKind::Start);
    run.reset();
    const std::lock_guard lock(guard);
    isDropped = true;
    QVERIFY(!isCalledAfter);
}

QTEST_GUILESS_MAIN(TestRun)
#include "test_run.moc"
