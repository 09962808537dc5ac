#pragma once

#include <optional>
#include <vector>

#include "review/deviations.h"
#include "review/episodes.h"
#include "review/limits.h"
#include "review/reviewedrun.h"
#include "review/signaltrack.h"
#include "review/steptimes.h"

namespace flowhand {

/// A run laid out along its time, for a review: what happened in each lane, what every signal was at any moment, and
/// the ways from one place worth looking at to the next. Made once, on all cores; then every question is answered fast
/// enough for a frame, by any thread. Borrows the run.
class Timeline {
public:
    explicit Timeline(const ReviewedRun& run);

    [[nodiscard]] const ReviewedRun& run() const { return m_run; }
    [[nodiscard]] Time length() const { return m_run.length; }

    // The lanes.
    [[nodiscard]] const std::vector<StepTimes>& steps() const { return m_steps; }              ///< by step
    [[nodiscard]] const std::vector<std::vector<Episode>>& guards() const { return m_guards; } ///< by guard
    [[nodiscard]] const std::vector<Call>& calls() const { return m_calls; }
    [[nodiscard]] const std::vector<Hold>& holds() const { return m_holds; }
    /// By SignalId. Where a signal is unknown, as while its device is lost, its track has a gap.
    [[nodiscard]] const SignalTrack& signal(SignalId signal) const { return m_tracks[indexOf(signal)]; }
    /// The signals that changed in this run: controls first.
    [[nodiscard]] std::vector<SignalId> movingSignals() const;

    /// The held values of all signals at one time, by SignalId.
    [[nodiscard]] std::vector<Value> valuesAt(Time time) const;

    /// Worst first.
    [[nodiscard]] const std::vector<Deviation>& deviations() const { return m_deviations; }
    [[nodiscard]] const std::vector<Repair>& repairs() const { return m_repairs; }

    /// What a step asked of its signals, with the values of when it was done, or else when it was due.
    [[nodiscard]] std::vector<SignalLimits> limits(std::size_t step) const;
    /// From where to where on the time axis they held: the step was open.
    [[nodiscard]] std::optional<Episode> openStretch(std::size_t step) const;

    // The next place after `time`, or the last before it; none: there is none.
    [[nodiscard]] std::optional<Time> nextDeviation(Time time) const;
    [[nodiscard]] std::optional<Time> previousDeviation(Time time) const;
    /// Where steps became due.
    [[nodiscard]] std::optional<Time> nextStep(Time time) const;
    [[nodiscard]] std::optional<Time> previousStep(Time time) const;
    /// Where one of `signals` came to differ from what it is at `time` by what an eye sees: a hundredth of its range
    /// (or of what it covers in this run, where that is not known), another position.
    [[nodiscard]] std::optional<Time> nextChange(const std::vector<SignalId>& signals, Time time) const;
    [[nodiscard]] std::optional<Time> previousChange(const std::vector<SignalId>& signals, Time time) const;

private:
    void layTracks();
    void layGaps();
    [[nodiscard]] double visible(SignalId signal) const;

    ReviewedRun m_run;
    std::vector<SignalSamples> m_gapped; ///< by SignalId, with what was lost as gaps; empty where nothing was
    std::vector<SignalTrack> m_tracks;   ///< by SignalId; of these, or of the run's own samples
    std::vector<StepTimes> m_steps;
    std::vector<std::vector<Episode>> m_guards;
    std::vector<Call> m_calls;
    std::vector<Hold> m_holds;
    std::vector<Deviation> m_deviations;
    std::vector<Repair> m_repairs;
    std::vector<Time> m_deviationTimes; ///< rising, each once
    std::vector<Time> m_stepTimes;      ///< rising, each once
};

} // namespace flowhand
