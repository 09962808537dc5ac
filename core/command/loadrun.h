#pragma once

#include <string>

#include "report/storeddebrief.h"
#include "store/store.h"

namespace flowhand {

/// The id that a person means by "12" or "last", the newest. Errors: those of the store, `bad-run`, `no-such-run`.
[[nodiscard]] Result<std::int64_t> findRun(Store& store, const std::string& name);

/// The stored run of that name. Errors: the same.
[[nodiscard]] Result<StoredRun> loadRun(const std::string& storeFile, const std::string& name);

/// The same, ready to be gone through. Judged again only where the record has no result.
[[nodiscard]] Result<StoredDebrief> loadDebrief(Store& store, std::int64_t id);

} // namespace flowhand
