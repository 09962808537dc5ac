#pragma once

#include <string>
#include <string_view>

#include "procedure/aircraftfile.h"

namespace flowhand {

/// A step's text for a flow file, from what a hand did: `control` now stands at `value`, a known one. A number's
/// condition leaves it the room that a hand needs, a twentieth of its range either side. `text` is the file that it
/// goes into, so that its id is not taken there. The author goes on from it.
[[nodiscard]] std::string stepText(const Aircraft& aircraft, SignalId control, Value value, std::string_view text);

/// "Flap lever to 12", "Taxi light on".
[[nodiscard]] std::string stepTitle(const Signal& signal, Value value);

} // namespace flowhand
