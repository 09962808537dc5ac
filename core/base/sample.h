#pragma once

#include <cstdint>

#include "base/signal.h"
#include "base/time.h"
#include "base/value.h"

namespace flowhand {

/// Who made a change. Verdicts use this, never the Origin.
enum class Actor : std::uint8_t { Hand, Partner, Machine };

/// By what way a change came in. Shown and stored (a simulated hand is labelled), never judged.
enum class Origin : std::uint8_t { Device, Script, Screen, Practice, Feed };

/// A physical control of the rig, an index into the run's list of control names; 0 is 'none' (motion, partner).
enum class ControlId : std::uint16_t {};
inline constexpr ControlId kNoControl{0};

/// One change of one signal. Only changes travel: a sample's value differs from the signal's value before.
struct Sample {
    Time time{};
    SignalId signal = kNoSignal;
    Value value;
    Actor actor = Actor::Machine;
    Origin origin = Origin::Practice;
    ControlId control = kNoControl;

    bool operator==(const Sample&) const = default;
};

} // namespace flowhand
