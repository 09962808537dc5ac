#pragma once

#include <cstdint>

#include "procedure/flow.h"

namespace flowhand {

struct SessionSetup;

/// Who does a step in a run.
enum class Doer : std::uint8_t {
    Hand,    ///< the pilot
    Partner, ///< whoever sits in the other seat
    Words    ///< nobody: done when its words end
};

/// Whoever flies alone does both seats' steps; words belong to the seat that speaks them.
[[nodiscard]] Doer doerOf(const Step& step, const SessionSetup& setup);

} // namespace flowhand
