#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "base/sample.h"
#include "rig/controlfacts.h"
#include "rig/input.h"

namespace flowhand {

/// What a control says now of one of its signals. Saying the same again costs nothing: the rig passes on changes only.
struct Output {
    std::size_t signal = 0; ///< index into the control's signals
    Value value;
    Time time{};
    Actor actor = Actor::Hand;
};
using Outputs = std::vector<Output>;

/// A value that one of a control's inputs should take, in the terms of its use, `after` the first one.
struct InputWish {
    std::size_t slot = 0;
    std::int64_t meaning = 0;
    Duration after{};
};

/// One control of the rig: the state machine between some inputs of devices and one or more cockpit signals. Knows
/// nothing of devices but the numbers of its inputs. Owned by the rig's wiring; told the time.
class Control {
public:
    Control(std::string name, std::vector<SignalId> signals, std::vector<InputRef> inputs)
        : m_name(std::move(name)), m_signals(std::move(signals)), m_inputs(std::move(inputs)) {}
    virtual ~Control() = default;
    Control(const Control&) = delete;
    Control& operator=(const Control&) = delete;

    [[nodiscard]] const std::string& name() const { return m_name; }
    [[nodiscard]] const std::vector<SignalId>& signals() const { return m_signals; }
    /// A slot is an index into these.
    [[nodiscard]] const std::vector<InputRef>& inputs() const { return m_inputs; }

    /// Input `slot` says `meaning` from `time` on. All timers before are served.
    virtual void take(std::size_t slot, std::int64_t meaning, Time time, Outputs& outputs) = 0;
    /// Serves the timers due at `time`; afterwards nextTimer() is later.
    virtual void advance(Time /*time*/, Outputs& /*outputs*/) {}
    [[nodiscard]] virtual Time nextTimer() const { return kForever; }

    /// The device is gone or came anew: what its inputs said is no longer so. What the control keeps by itself (the
    /// state of a toggle) stays.
    virtual void forget() = 0;

    /// Appends what the inputs must say so that `signal` gets `value`; nothing when they cannot.
    virtual void wish(std::size_t signal, Value value, std::vector<InputWish>& wishes) const = 0;

    /// Sigma, range and momentary of one of the signals; the rig fills in the rest.
    [[nodiscard]] virtual ControlFacts facts(std::size_t /*signal*/) const { return {}; }

    /// The state cannot be seen and the rig file says to ask for it.
    [[nodiscard]] virtual bool asksForState() const { return false; }
    /// A person says how a control that keeps a state by itself stands. Ignored by all others.
    virtual void declare(Value /*value*/, Time /*time*/, Outputs& /*outputs*/) {}

    /// What a person should know of it at the start, in words without its name; empty for most.
    [[nodiscard]] virtual Phrase remark() const { return {}; }
    /// What is wrong with it now, in words without its name; empty when nothing is.
    [[nodiscard]] virtual Phrase fault() const { return {}; }

private:
    std::string m_name;
    std::vector<SignalId> m_signals;
    std::vector<InputRef> m_inputs;
};

} // namespace flowhand
