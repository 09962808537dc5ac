#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "base/error.h"

namespace flowhand {

/// A key of a [[control]] and its new value as the file writes it: `[180, 3910]`. Empty: the key goes.
struct RigKey {
    std::string key;
    std::string value;
};

/// The rig file `source` with `keys` of its `control`th [[control]] (from 0) set; everything else, comments and layout
/// too, stays as it is. New keys come behind the control's `wiring`. Errors: `bad-toml`; `cannot-edit` when the file is
/// written in a way that this does not understand, with what to write by hand.
[[nodiscard]] Result<std::string> withControlKeys(std::string source, std::size_t control,
                                                  const std::vector<RigKey>& keys);

/// The same for the one table [name] of the file, which is begun at the file's end where there is none yet.
[[nodiscard]] Result<std::string> withTableKeys(std::string source, std::string_view name,
                                                const std::vector<RigKey>& keys);

/// What the file says of these keys of its `control`th [[control]], as it is written there; empty where it says
/// nothing. Errors: `bad-toml`, `cannot-edit`.
[[nodiscard]] Result<std::vector<RigKey>> controlKeysIn(std::string source, std::size_t control,
                                                        const std::vector<std::string>& keys);

} // namespace flowhand
