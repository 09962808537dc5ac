#pragma once

#include <optional>
#include <vector>

#include "base/sample.h"
#include "condition/monitor.h"
#include "session/doer.h"
#include "session/score.h"

namespace flowhand {

/// A stretch in which a step's clock stood. Times of the run's clock.
struct Pause {
    Time from{};
    Time to = kForever;
};

/// Where one step stands in a run. Times of the run's clock.
struct StepTrack {
    StepState state = StepState::Waiting;
    Doer doer = Doer::Hand;
    bool isSatisfied = false; ///< what comes after it need not wait for it
    bool isCued = false;      ///< its turn has come: its words are being spoken, or it is due
    bool heldAtStart = false; ///< its condition was so when the run began
    bool wasMoved = false;    ///< StepMoved has been told
    bool isTooEarly = false;
    bool isUncertain = false;
    bool isUndone = false;
    std::vector<SignalId> controls; ///< whose movement does it
    SignalId fit = kNoSignal;       ///< the one whose movement was credited to it
    Time fitBegan{};                ///< that movement's beginning
    Time satisfiedAt = kForever;    ///< from when on nothing waits for it
    Time whenSince = kForever;      ///< of its `when`; kForever: not true now
    Time due = kForever;
    Time seen = kForever;
    Time done = kForever;
    Time trueSince = kForever; ///< of its condition; kForever: not true now
    Time expires = kForever;   ///< its timer
    std::vector<Pause> pauses;
    std::vector<Value> atDue; ///< of its controls, when it became due
    double mu = 1.0;
    std::optional<double> margin;
    SignalId marginSignal = kNoSignal;
    Phrase why; ///< of left out, uncertain, wrong value: in words

    std::optional<MonitorId> doneMonitor;
    std::optional<MonitorId> whenMonitor;
    std::optional<MonitorId> expiresMonitor;
    std::optional<MonitorId> suspendMonitor;

    [[nodiscard]] bool isOpen() const { return state == StepState::Due || state == StepState::Seen; }
    [[nodiscard]] bool isComing() const { return state == StepState::Waiting; }
    [[nodiscard]] bool isResolved() const { return !isOpen() && !isComing(); }
};

/// Time that a step's clock stood in [from, to].
[[nodiscard]] Duration pausedIn(const StepTrack& track, Time from, Time to);

} // namespace flowhand
