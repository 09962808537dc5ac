#pragma once

#include <string>

#include "base/error.h"

namespace flowhand {

/// Puts `text` in place of the file at `path`, all or nothing, for what a person wrote: after a crash or a pulled plug
/// there is the old file or the new one. Follows a symbolic link and keeps the file's mode. Error `save-failed`.
[[nodiscard]] Status replaceFile(const std::string& path, const std::string& text);

} // namespace flowhand
