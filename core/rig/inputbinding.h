#pragma once

#include <optional>
#include <string>
#include <vector>

#include "rig/input.h"

namespace flowhand {

[[nodiscard]] std::optional<std::size_t> findInput(const InputRef& ref, const std::vector<InputInfo>& inputs);

/// The index of the input that `ref` names, fit for its use. Errors at the rig file's place: `unknown-input`,
/// `wrong-input-kind`, `range-outside-device`.
[[nodiscard]] Result<std::size_t> bindInput(const InputRef& ref, const std::string& deviceName,
                                            const std::vector<InputInfo>& inputs);

} // namespace flowhand
