#pragma once

#include <string>

#include "procedure/aircraftfile.h"

namespace flowhand {

/// The text of a flow file for its author to go on from: two steps on controls that this aircraft has, a guard, and a
/// remark at every key. It loads, keeps every rule of lint and can be flown as it is. `id` is the file's name without
/// .toml, `place` a start place of the practice aircraft.
[[nodiscard]] std::string flowStarter(const Aircraft& aircraft, const std::string& id, const std::string& place);

} // namespace flowhand
