#pragma once

#include <vector>

#include "base/phrase.h"
#include "procedure/flow.h"

namespace flowhand {

/// The motion signals that this flow's steps, guards and outcomes read and that have no value in `values` (by
/// SignalId), in the order of the aircraft.
[[nodiscard]] std::vector<SignalId> unobservedSignals(const Flow& flow, const Aircraft& aircraft,
                                                      const std::vector<Value>& values);

/// What comes of it, in whole sentences: which steps cannot be judged, which guards are not watched, which outcomes not
/// seen. Empty when nothing does.
[[nodiscard]] std::vector<Phrase> unobservedRemarks(const Flow& flow, const Aircraft& aircraft,
                                                    const std::vector<SignalId>& missing);

} // namespace flowhand
