#include "session/scenariowatch.h"

#include <algorithm>
#include <string>

namespace flowhand {

namespace {

/// A share from 0 up to, but not, 1 out of a seed and a number: the finaliser of splitmix64 (Steele, Lea, Flood, Fast
/// Splittable Pseudorandom Number Generators, 2014), so that it is the same with every compiler and library.
double shareOf(std::uint64_t seed, std::uint64_t number) {
    std::uint64_t mixed = seed + (number + 1) * 0x9E3779B97F4A7C15ULL;
    mixed = (mixed ^ (mixed >> 30)) * 0xBF58476D1CE4E5B9ULL;
    mixed = (mixed ^ (mixed >> 27)) * 0x94D049BB133111EBULL;
    mixed ^= mixed >> 31;
    return static_cast<double>(mixed >> 11) * 0x1.0p-53;
}

} // namespace

/// Of each group the first that is drawn stays.
std::vector<bool> drawnEvents(const Scenario& scenario, std::uint64_t seed) {
    std::vector<bool> drawn(scenario.events.size());
    std::vector<std::string> taken;
    for (std::size_t i = 0; i < drawn.size(); ++i) {
        const ScenarioEvent& event = scenario.events[i];
        const bool isTaken = std::find(taken.begin(), taken.end(), event.group) != taken.end();
        drawn[i] = shareOf(seed, i) < event.chance && !isTaken;
        if (drawn[i] && !event.group.empty())
            taken.push_back(event.group);
    }
    return drawn;
}

ScenarioWatch::ScenarioWatch(const Scenario& scenario, const SignalTable& signals, std::uint64_t seed)
    : m_monitor(signals), m_drawn(drawnEvents(scenario, seed)) {
    for (std::size_t i = 0; i < m_drawn.size(); ++i)
        if (m_drawn[i])
            m_watched.push_back({m_monitor.add(scenario.events[i].when.condition, MarginUse::NotWanted), i});
}

void ScenarioWatch::see(Time time, std::span<const Sample> batch, std::vector<std::size_t>& happened) {
    if (m_watched.empty())
        return;
    for (const Sample& sample : batch)
        m_monitor.set(sample.signal, sample.value);
    pass(time, happened);
}

void ScenarioWatch::see(Time time, const std::vector<Value>& values, std::vector<std::size_t>& happened) {
    std::vector<Sample> known;
    for (std::size_t i = 0; i < values.size(); ++i)
        if (values[i].isKnown())
            known.push_back({time, SignalId(static_cast<std::uint32_t>(i)), values[i]});
    see(time, known, happened);
}

void ScenarioWatch::pass(Time time, std::vector<std::size_t>& happened) {
    std::vector<TruthChange> changes;
    m_monitor.settle(time, changes);
    for (const TruthChange& change : changes) {
        if (change.truth != Truth::True)
            continue;
        const auto at = std::find_if(m_watched.begin(), m_watched.end(), [&](const Watched& watched) {
            return watched.monitor == change.which;
        });
        if (at == m_watched.end())
            continue;
        happened.push_back(at->event);
        m_monitor.remove(at->monitor);
        m_watched.erase(at);
    }
}

Time ScenarioWatch::nextTimer() const {
    return m_watched.empty() ? kForever : m_monitor.nextTimer();
}

std::vector<SetupEvent> setupEvents(const Scenario& scenario) {
    std::vector<SetupEvent> events;
    for (const ScenarioEvent& event : scenario.events)
        events.push_back({event.id, event.title, event.words ? event.words->by : std::string(),
                          event.words ? event.words->text : std::string()});
    return events;
}

} // namespace flowhand
