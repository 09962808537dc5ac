#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "bench/bencherror.h"
#include "procedure/aircraftfile.h"

namespace flowhand {

/// How a control is to be wired, where it is not left to what moves.
enum class WiringWay : std::uint8_t {
    Found, ///< whatever moves: an axis, gates, a contact, a selector, a coded switch, a hat, a toggle ...
    SplitAxis,
    SwitchedAxis,
    Twist,      ///< an axis of a stick that feels the stick's other movements
    Difference, ///< two axes
    Max,
    Split,
    Zones,
    Encoder,
    StepButtons,
    RelativeWheel,
    ParkingLatch
};

/// What a builder wants to wire.
struct WiringWish {
    std::vector<SignalId> signals;
    WiringWay way = WiringWay::Found;
    std::vector<Value> zones; ///< of Zones, in the order in which they are shown
    std::string step;         ///< of Encoder, StepButtons, RelativeWheel with numbers: "0.1 deg"
};

/// One thing that the builder does and then holds still. The first is how the control stands before.
struct WiringStage {
    Phrase ask;
};

/// "flap_lever", "thrust_lever_1+thrust_lever_2" (one lever for both), "thrust_lever_1+reverse_lever_1=split_axis",
/// "rudder_pedals=difference", "pitch_trim=encoder:0.1 deg", "thrust_lever_1=zones:0 %,40 %,100 %".
/// Errors: `unknown-signal`, `unknown-wiring`, `wrong-signals`, `bad-value`.
[[nodiscard]] BenchResult<WiringWish> parseWiringWish(std::string_view text, const Aircraft& aircraft);

/// A way of wiring that has to be asked for, as it is offered for one control.
struct WiringOffer {
    std::string name;             ///< as behind '='; empty: one input for two controls
    Phrase text;                  ///< the hardware that it is for
    std::vector<SignalId> others; ///< the second control is one of these; empty: none is needed
    std::string example;          ///< of what stands behind the colon; empty: nothing does
};

/// All that suit this control.
[[nodiscard]] std::vector<WiringOffer> wiringOffers(SignalId signal, const Aircraft& aircraft);

/// As parseWiringWish() reads it. `other` of an offer without others, and `words` of one without an example, are not
/// looked at.
[[nodiscard]] std::string wishText(const WiringOffer& offer, SignalId signal, SignalId other, const std::string& words,
                                   const SignalTable& signals);

/// What to do with the control, in order; the last brings it back to how it stood.
[[nodiscard]] std::vector<WiringStage> stagesOf(const WiringWish& wish, const Aircraft& aircraft);

/// "Thrust lever 1 and Thrust lever 2"; of one label or more.
[[nodiscard]] Phrase allOf(const std::vector<std::string>& labels);

/// Either side of a centre that it comes back to, or is put back to.
[[nodiscard]] bool hasCentre(const Signal& signal);

} // namespace flowhand
