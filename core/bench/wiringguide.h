#pragma once

#include <vector>

#include "bench/inputwatch.h"
#include "bench/wiringsolver.h"
#include "bench/wiringwish.h"

namespace flowhand {

/// Leads a builder through the stages of wiring one control, and finds from what moved how it is wired. Told the time;
/// the watch is fed beside it. Wish, aircraft and watch must outlive it.
class WiringGuide {
public:
    WiringGuide(WiringWish wish, const Aircraft& aircraft, InputWatch& watch, Time begin);

    /// What the builder shall do now; empty when done.
    [[nodiscard]] const Phrase& ask() const;
    [[nodiscard]] std::size_t stageCount() const { return m_stages.size(); }
    [[nodiscard]] std::size_t stage() const { return m_results.size(); }
    [[nodiscard]] bool isDone() const { return m_results.size() == m_stages.size(); }

    /// True when a stage has just ended.
    bool advance(Time now);

    /// Once done. Errors: those of solveWiring().
    [[nodiscard]] BenchResult<WiringProposal> solve(const InputNamer& nameOf) const;

    [[nodiscard]] const WiringWish& wish() const { return m_wish; }

private:
    [[nodiscard]] bool hasChanged(const Snapshot& standing) const;

    WiringWish m_wish;
    const Aircraft& m_aircraft;
    InputWatch& m_watch;
    std::vector<WiringStage> m_stages;
    std::vector<StageResult> m_results;
    Time m_begin; ///< of the stage
};

} // namespace flowhand
