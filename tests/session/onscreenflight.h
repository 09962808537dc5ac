#pragma once

#include <algorithm>
#include <optional>
#include <string>
#include <vector>

#include "procedure/flow.h"
#include "session/keepingrecorder.h"
#include "session/onscreenfacts.h"
#include "session/replay.h"
#include "session/runloop.h"
#include "session/slowtime.h"

namespace flowhand::test {

/// The shipped twin jet.
inline const Aircraft& jet() {
    static const Aircraft aircraft = [] {
        Problems problems;
        std::optional<Aircraft> loaded = loadAircraft(PROCEDURES "/twin_jet/aircraft.toml", problems);
        if (!loaded)
            qFatal("%s", describe(problems.firstError()).c_str());
        return std::move(*loaded);
    }();
    return aircraft;
}

inline Flow jetFlow(const std::string& source) {
    Problems problems;
    std::optional<Flow> flow = parseFlow(source, "flow.toml", jet(), problems);
    if (!flow)
        qFatal("%s", describe(problems.firstError()).c_str());
    return std::move(*flow);
}

struct FlightWish {
    int slowness = 1;
    bool isOnScreen = true; ///< else the controls are real ones that have not been heard of
    const Scenario* scenario = nullptr;
    std::string hands = {};
};

/// The practice jet flown from the screen, in memory, by a clock of the test.
class OnScreenFlight {
public:
    explicit OnScreenFlight(const Flow& flow, const FlightWish& wish = {}) : m_flow(flow) {
        Problems problems;
        RunParts parts;
        parts.aircraft = &jet();
        parts.flow = &flow;
        parts.practice.emplace(*PracticeAircraft::create(jet(), flow.startPlace));
        parts.recorder = &recorder;
        parts.scenario = wish.scenario;
        parts.slowness = wish.slowness;
        if (!wish.hands.empty())
            parts.hands = Hands::parse(wish.hands, "test.hands", jet(), flow, problems);
        if (problems.hasErrors())
            qFatal("%s", describe(problems.firstError()).c_str());
        SessionSetup& setup = parts.header.setup;
        setup.timeScale = SlowTime(wish.slowness).scale();
        setup.controls = onScreenFacts(jet());
        for (ControlFacts& facts : setup.controls) {
            facts.isSimulated = wish.isOnScreen;
            facts.isWired = !wish.isOnScreen;
        }
        if (wish.scenario != nullptr)
            for (const ScenarioEvent& event : wish.scenario->events)
                setup.events.push_back({event.id, event.title, "", ""});
        m_setup = setup;
        loop.emplace(std::move(parts));
    }

    void move(const std::string& control, const std::string& value) {
        const SignalId id = *jet().signals.find(control);
        loop->moveOnScreen(id, *parseValue(jet().signals[id], value));
    }
    /// Real time goes on.
    void goOn(Duration duration) {
        for (const Time end = m_now + duration; m_now < end;)
            loop->advance(m_now = std::min(end, m_now + std::chrono::milliseconds(20)));
    }
    [[nodiscard]] Time now() const { return m_now; }
    [[nodiscard]] double operator[](const std::string& signal) const {
        const Value value = loop->snapshot().values[indexOf(*jet().signals.find(signal))];
        return value.isKnown() ? value.number() : -1.0;
    }
    [[nodiscard]] StepState state(const std::string& step) const {
        const std::vector<StepResult> results = loop->snapshot().results;
        for (std::size_t i = 0; i < m_flow.steps.size(); ++i)
            if (m_flow.steps[i].id == step)
                return results[i].state;
        qFatal("no step %s", step.c_str());
    }
    /// When it was told first, on the run's clock; kForever: not.
    [[nodiscard]] Time told(EventKind kind) const {
        for (const Event& event : recorder.allEvents)
            if (event.kind == kind)
                return event.time;
        return kForever;
    }
    [[nodiscard]] int count(EventKind kind) const {
        return static_cast<int>(
            std::count_if(recorder.allEvents.begin(), recorder.allEvents.end(), [&](const Event& event) {
                return event.kind == kind;
            }));
    }
    /// Ends the run; whether its record is judged to the same events.
    [[nodiscard]] bool isJudgedTheSame() {
        loop->command(CommandKind::Stop);
        goOn(std::chrono::milliseconds(100));
        return judgeAgain(jet(), m_flow, m_setup, recorder.allSamples, recorder.commands, recorder.end).events ==
               recorder.allEvents;
    }

    KeepingRecorder recorder;
    std::optional<RunLoop> loop;

private:
    const Flow& m_flow;
    SessionSetup m_setup;
    Time m_now{};
};

} // namespace flowhand::test
