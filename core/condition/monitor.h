#pragma once

#include <cstddef>
#include <cstdint>
#include <memory>
#include <optional>
#include <vector>

#include "base/signal.h"
#include "base/time.h"
#include "condition/condition.h"

namespace flowhand {

enum class MonitorId : std::uint32_t {};

/// A change of one condition's truth, in time order. From `time` on it is `truth`; with `isPoint` only at that one
/// instant, and it is as before just after (for `rise`, `sequence`, closed window ends).
struct TruthChange {
    MonitorId which{};
    Time time{};
    Truth truth = Truth::Unknown;
    bool isPoint = false;
    /// With `isPoint` false: the new truth begins just after `time`, not at it.
    bool isAfter = false;
};

/// Whether margin() will be asked. Following margins through windows costs time at every change of a number in them.
enum class MarginUse : std::uint8_t { Wanted, NotWanted };

/// How far a condition is from changing, in the unit of the comparison that decides (smallest relative to its signal's
/// scale). Infinite for on/off and positions.
struct Margin {
    /// >= 0 when true, <= 0 when false; +-infinity where there is no finite one; 0 while the condition is unknown. Of a
    /// condition that is decided although one of its signals is unknown, the least that it may be.
    double value = 0.0;
    /// Whose unit it is in. kNoSignal: infinite, or of a product or quotient in whose unit no signal of the comparison
    /// is; then in m, s, kg, deg, % and K.
    SignalId signal = kNoSignal;
};

/// Watches any number of conditions over one stream of changes, in dense time. Not thread-safe; the session thread owns
/// it.
///
/// Per batch of simultaneous changes: set() for each, then settle(). Timers that are due on the way are served by
/// settle() at exactly their time and before the batch; ask nextTimer() first where something is to be done at that
/// time.
///
/// Time never goes back: an earlier time than the one settled last counts as that. All changes of one time belong in
/// one batch; what is set after its time was settled counts from 1 ns later, and is reported at the time asked for.
class Monitor {
public:
    /// `signals` must outlive the monitor. Every signal is unknown at first.
    explicit Monitor(const SignalTable& signals);
    ~Monitor();
    Monitor(Monitor&&) noexcept;
    Monitor& operator=(Monitor&&) noexcept;

    /// Watches from the time reached so far on, with that as its reference time. Its truth is known after the next
    /// settle().
    MonitorId add(const Condition& condition, MarginUse margin = MarginUse::Wanted);
    void remove(MonitorId which);

    /// The reference time for `held` and `moved` (see Step in procedure/flow.h); not before the time settled last. From
    /// it on, both start afresh with the values of that time: `held` counts from it, `moved` too. Its truth is judged
    /// anew at the next settle(). Where that time is settled already, single instants at it stay judged as they were.
    void setReference(MonitorId which, Time reference);

    /// All conditions start afresh at the next settle(), with what is set until then: nothing before it is looked back
    /// at, and it is their reference time. What is no longer as it was is reported by it.
    void beginAnew();

    /// A number that is not finite counts as unknown.
    void set(SignalId signal, Value value);
    /// Judges the instant `time`, with all that was set, and every timer due up to it. Appends the changes to
    /// `changes`.
    void settle(Time time, std::vector<TruthChange>& changes);
    /// The earliest time at which some condition may change by time alone; kForever when none will.
    [[nodiscard]] Time nextTimer() const;

    /// At the time settled last. `truth` includes single instants.
    [[nodiscard]] Truth truth(MonitorId which) const;
    [[nodiscard]] Margin margin(MonitorId which) const;
    [[nodiscard]] Value value(SignalId signal) const;
    /// All values by SignalId at the time settled last.
    [[nodiscard]] const std::vector<Value>& values() const;

private:
    struct Engine;
    std::unique_ptr<Engine> m_engine;
};

} // namespace flowhand
