#pragma once

#include <cstdint>
#include <string>

#include "store/store.h"

namespace flowhand {

/// Adds the run of an archive to the store, and gives its number there. Errors: those of the file, `already-imported`.
[[nodiscard]] Result<std::int64_t> takeIn(Store& store, const std::string& file);

/// The tag that marks a sample run.
extern const char* const kSampleTag;

/// Adds the runs of a folder's archives that the store does not have yet, each with the tag of samples.
[[nodiscard]] Status takeInSamples(Store& store, const std::string& folder);

} // namespace flowhand
