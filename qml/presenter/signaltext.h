#pragma once

#include <QString>

#include "base/signal.h"

namespace flowhand {

/// A signal's label: of the aircraft's motion in the window's language, of a control as its file has it.
[[nodiscard]] QString labelOf(const Signal& signal);

} // namespace flowhand
