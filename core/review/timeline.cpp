#include "review/timeline.h"

#include <algorithm>

#include "base/parallel.h"
#include "review/movements.h"

namespace flowhand {

namespace {

constexpr double kVisible = 0.01; // of the range

std::vector<Time> eachOnce(std::vector<Time> times) {
    std::sort(times.begin(), times.end());
    times.erase(std::unique(times.begin(), times.end()), times.end());
    return times;
}

std::optional<Time> after(const std::vector<Time>& times, Time time) {
    const auto next = std::upper_bound(times.begin(), times.end(), time);
    return next == times.end() ? std::nullopt : std::optional(*next);
}

std::optional<Time> before(const std::vector<Time>& times, Time time) {
    const auto next = std::lower_bound(times.begin(), times.end(), time);
    return next == times.begin() ? std::nullopt : std::optional(*std::prev(next));
}

} // namespace

Timeline::Timeline(const ReviewedRun& run) : m_run(run), m_tracks(run.aircraft.signals.size()) {
    layTracks();
    const std::vector<ControlMovement> movements = movementsOf(run);
    m_steps = stepTimes(run, movements);
    m_guards = guardEpisodes(run.flow, run.events);
    m_calls = callsOf(run.events);
    m_holds = holdsOf(run.events);
    m_deviations = deviationsOf(run);
    m_repairs = repairsOf(run, movements);
    std::vector<Time> deviations;
    for (const Deviation& deviation : m_deviations)
        deviations.push_back(deviation.time);
    m_deviationTimes = eachOnce(std::move(deviations));
    std::vector<Time> steps;
    for (const StepTimes& step : m_steps)
        if (step.due)
            steps.push_back(*step.due);
    m_stepTimes = eachOnce(std::move(steps));
}

void Timeline::layTracks() {
    if (!m_run.missing.empty())
        layGaps();
    inParallel(m_tracks.size(), [&](std::size_t i) {
        const SignalId signal{static_cast<std::uint32_t>(i)};
        m_tracks[i] = SignalTrack(m_gapped.empty() ? m_run.samples[signal] : m_gapped[i]);
    });
}

/// What was lost in the store is a gap until the signal's next change.
void Timeline::layGaps() {
    for (std::size_t i = 0; i < m_tracks.size(); ++i) {
        const SignalId signal{static_cast<std::uint32_t>(i)};
        const SignalSamples& samples = m_run.samples[signal];
        SignalSamples gapped;
        std::size_t missing = 0;
        const auto breakOff = [&](Time until) {
            for (; missing < m_run.missing.size() && m_run.missing[missing].from <= until; ++missing)
                if (gapped.size() > 0)
                    gapped.append({m_run.missing[missing].from, signal, Value::unknown()});
        };
        for (std::size_t at = 0; at < samples.size(); ++at) {
            breakOff(samples.times[at]);
            gapped.append({samples.times[at], signal, Value::number(samples.values[at])});
        }
        breakOff(m_run.length);
        m_gapped.push_back(std::move(gapped));
    }
}

std::vector<SignalId> Timeline::movingSignals() const {
    std::vector<SignalId> moving;
    for (std::size_t i = 0; i < m_tracks.size(); ++i)
        if (m_tracks[i].size() > 1)
            moving.push_back(SignalId(static_cast<std::uint32_t>(i)));
    return moving;
}

std::vector<Value> Timeline::valuesAt(Time time) const {
    std::vector<Value> values;
    for (const SignalTrack& track : m_tracks)
        values.push_back(track.at(time));
    return values;
}

std::vector<SignalLimits> Timeline::limits(std::size_t step) const {
    const StepTimes& times = m_steps[step];
    const Time time = times.done ? *times.done : times.due.value_or(m_run.length);
    return limitsOf(m_run.flow.steps[step], m_run.aircraft, valuesAt(time));
}

std::optional<Episode> Timeline::openStretch(std::size_t step) const {
    const StepTimes& times = m_steps[step];
    const std::optional<Time> end = times.done ? times.done : times.ended;
    std::optional<Time> from = times.due;
    if (times.firstMovement && times.done && (!from || *times.firstMovement < *from))
        from = times.firstMovement; // done ahead of its turn
    if (!from)
        return std::nullopt;
    return Episode{*from, end};
}

std::optional<Time> Timeline::nextDeviation(Time time) const {
    return after(m_deviationTimes, time);
}
std::optional<Time> Timeline::previousDeviation(Time time) const {
    return before(m_deviationTimes, time);
}
std::optional<Time> Timeline::nextStep(Time time) const {
    return after(m_stepTimes, time);
}
std::optional<Time> Timeline::previousStep(Time time) const {
    return before(m_stepTimes, time);
}

double Timeline::visible(SignalId id) const {
    constexpr double kAnother = 0.5; // position, or on and off
    const Signal& signal = m_run.aircraft.signals[id];
    if (signal.kind != SignalKind::Number)
        return kAnother;
    double range = signal.highest - signal.lowest;
    if (const std::optional<SignalTrack::Extent> extent = m_tracks[indexOf(id)].extent(); extent && !(range > 0.0))
        range = extent->highest - extent->lowest;
    return range > 0.0 ? range * kVisible : kAnother;
}

std::optional<Time> Timeline::nextChange(const std::vector<SignalId>& signals, Time time) const {
    std::optional<Time> next;
    for (const SignalId signal : signals)
        if (const std::optional<Time> change = m_tracks[indexOf(signal)].nextChange(time, visible(signal)))
            next = next ? std::min(*next, *change) : change;
    return next;
}

std::optional<Time> Timeline::previousChange(const std::vector<SignalId>& signals, Time time) const {
    std::optional<Time> previous;
    for (const SignalId signal : signals)
        if (const std::optional<Time> change = m_tracks[indexOf(signal)].previousChange(time, visible(signal)))
            previous = previous ? std::max(*previous, *change) : change;
    return previous;
}

} // namespace flowhand
