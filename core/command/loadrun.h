#pragma once

#include <string>

#include "store/store.h"

namespace flowhand {

/// The stored run that a person means by "12" or "last". Errors: those of the store, `bad-run`, `no-such-run`.
[[nodiscard]] Result<StoredRun> loadRun(const std::string& storeFile, const std::string& name);

} // namespace flowhand
