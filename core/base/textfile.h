#pragma once

#include <cstddef>
#include <string>

#include "base/error.h"

namespace flowhand {

inline constexpr std::size_t kLargestWritten = 4u << 20;    ///< of a file that a person writes
inline constexpr std::size_t kLargestRecorded = 256u << 20; ///< of a file that a program records

/// The whole of a regular file. Errors: `unreadable-file` (missing, forbidden, a folder, a pipe), `file-too-large`.
[[nodiscard]] Result<std::string> readFile(const std::string& path, std::size_t largest = kLargestWritten);

/// Writes a file anew, as far as the disk lets it: for what can be made again. Error `unwritable-file`.
[[nodiscard]] Status writeFile(const std::string& path, const std::string& text);

} // namespace flowhand
