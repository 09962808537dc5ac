#pragma once

#include <cstdint>
#include <optional>
#include <string_view>
#include <vector>

#include "base/phrase.h"
#include "base/time.h"
#include "procedure/flow.h"

namespace flowhand {

enum class StepState : std::uint8_t { Waiting, Due, Seen, Done, Omitted, FoundSet, TooEarly, Uncertain, Void, LeftOut };

/// All that the score needs to know of one step's fate.
struct StepResult {
    StepState state = StepState::Waiting;
    bool isOwn = true;    ///< counts only when done by the pilot's own seat
    Time due = kForever;  ///< cue ended; kForever: never due
    Time done = kForever; ///< start of the true stretch in which it was settled
    Duration suspended{}; ///< while its clock stood, between its response start (response.h) and done
    double mu = 1.0;      ///< 0..1, margin over half the band
    bool isTooEarly = false;
    bool isUncertain = false;
};

/// What a line of the ledger is about.
enum class LossKind : std::uint8_t {
    NotDone,
    Uncertain,
    TooEarly,
    OutOfOrder,
    Late,
    SmallMargin,
    UndoneAgain,
    WrongValue,
    WrongControl,
    GuardBroken,
    Floor ///< no loss: what the floor gives back
};

/// "not done", "late": as records and printouts have it.
[[nodiscard]] std::string_view nameOf(LossKind kind);
[[nodiscard]] std::optional<LossKind> findLossKind(std::string_view name);
/// The same for a person.
[[nodiscard]] Phrase lossWords(LossKind kind);

/// What a run lost, line by line, in milli-points of the 100,000.
struct LedgerLine {
    std::int64_t milliPoints = 0; ///< > 0: lost; the last line may give back what the floor cut off
    int step = -1;
    int guard = -1;
    LossKind what = LossKind::NotDone;
    Phrase text; ///< whole, in words
};

struct Score {
    bool isScored = false;        ///< W > 0
    std::int64_t milliPoints = 0; ///< 0..100,000; the lower bound when uncertain
    std::int64_t upperMilliPoints = 0;
    bool isPassed = false;
    Phrase whyNotPassed;
    std::int64_t weight = 0; ///< W
    Duration pace{};         ///< from the first step due to the last step done, less suspended time
    std::vector<LedgerLine> ledger;
    std::vector<bool> outOfOrder; ///< by step
    std::vector<Duration> late;   ///< by step: beyond its limit `within`; 0: on time or not done
};

struct GuardResult {
    int guard = -1;
    bool isBroken = false;
};

struct ExtraResult {
    Time time{};
    bool isWrongValue = false; ///< else a wrong control
    bool isUndone = false;     ///< a control that had been set by a done step was moved away again
    int step = -1;             ///< the step it stood in for
    SignalId signal = kNoSignal;
    Phrase text;
};

/// The formula of the score. Pure; integer milliseconds and milli-points.
///
/// S = 100 · max(0, 1 − (Σ loss + 0.25 · extras + Σ guards) / W) with W the weights of the own steps that are neither
/// void, left out nor found set; a step found set counts as done where it is `compareOnly`. Loss of a step of weight w:
/// w when not done; when done w · 0.40 if too early or out of order (chain.h), else w · 0.30 · λ, and
/// w · 0.10 · (1 − μ) besides. λ = clamp((r − within) / (late − within), 0, 1), r = time since its response start
/// (response.h) less latency and suspended time. Steps neither done nor given up count as not done.
///
/// An uncertain step counts as not done in `milliPoints` and the ledger, and as done in `upperMilliPoints`.
[[nodiscard]] Score scoreOf(const Flow& flow, const std::vector<StepResult>& steps,
                            const std::vector<ExtraResult>& extras, const std::vector<GuardResult>& guards,
                            Duration latency);

} // namespace flowhand
