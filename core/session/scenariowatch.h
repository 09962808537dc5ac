#pragma once

#include <cstdint>
#include <span>
#include <vector>

#include "base/sample.h"
#include "condition/monitor.h"
#include "procedure/scenario.h"
#include "session/session.h"

namespace flowhand {

/// By index: which of a scenario's events will happen, should their conditions come true. The same seed draws the same.
[[nodiscard]] std::vector<bool> drawnEvents(const Scenario& scenario, std::uint64_t seed);

/// Says when a scenario's events happen. Which of them will at all is drawn at the beginning from the seed: the same
/// seed draws the same. Times of the flight, over all its runs. Session thread; scenario and signals must outlive it.
class ScenarioWatch {
public:
    ScenarioWatch(const Scenario& scenario, const SignalTable& signals, std::uint64_t seed);

    /// Simultaneous changes; appends the indexes of the events that happen by them, each once a flight.
    void see(Time time, std::span<const Sample> batch, std::vector<std::size_t>& happened);
    /// The same, as if all that is known had changed; `values` by SignalId.
    void see(Time time, const std::vector<Value>& values, std::vector<std::size_t>& happened);
    /// What happens by time alone, up to `time`.
    void pass(Time time, std::vector<std::size_t>& happened);
    [[nodiscard]] Time nextTimer() const;
    /// By index: drawn to happen, should its condition come true.
    [[nodiscard]] const std::vector<bool>& drawn() const { return m_drawn; }

private:
    struct Watched {
        MonitorId monitor{};
        std::size_t event = 0;
    };

    Monitor m_monitor;
    std::vector<Watched> m_watched; ///< those still to come
    std::vector<bool> m_drawn;
};

/// The scenario's events as a run's set-up keeps them.
[[nodiscard]] std::vector<SetupEvent> setupEvents(const Scenario& scenario);

} // namespace flowhand
