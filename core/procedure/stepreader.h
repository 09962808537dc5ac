#pragma once

#include <string>

#include "procedure/flowcontext.h"

namespace flowhand {

/// Reads one [[step]] table, all but its place in the order (`after`, `group`), which the flow's reader makes of it.
/// `seat` is the flow's own.
[[nodiscard]] Step readStep(FlowContext& context, TomlReader& reader, const std::string& seat);

} // namespace flowhand
