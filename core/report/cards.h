#pragma once

#include <string>

#include "procedure/library.h"

namespace flowhand {

// Flows on paper, as self-contained HTML for A4: what is done, in its order, with the words that go with it, and the
// flow's way over the cockpit. Each says that it is for training only.

/// One flow or checklist.
[[nodiscard]] std::string cardHtml(const Aircraft& aircraft, const Flow& flow);

/// A scenario: where it begins, which flows are flown, and what may happen on the way.
[[nodiscard]] std::string cardHtml(const Aircraft& aircraft, const std::vector<Flow>& flows, const Scenario& scenario);

/// An aircraft: a poster of its cockpit with the list of its flows in the order of the flight, and its controls.
[[nodiscard]] std::string cardHtml(const Aircraft& aircraft, const std::vector<Flow>& flows);

/// All of an aircraft: a poster of its cockpit with the list of its flows in the order of the flight, then a card each,
/// each on a page of its own.
[[nodiscard]] std::string cardSetHtml(const AircraftFolder& folder);

} // namespace flowhand
