#pragma once

#include <cstdint>
#include <span>

#include "store/connection.h"

namespace flowhand {

/// "FLHW": marks a SQLite file as ours.
inline constexpr std::int64_t kApplicationId = 0x464C4857;

/// The SQL that brings a file of schema n to n + 1, n being its index.
using Migration = const char*;
[[nodiscard]] std::span<const Migration> migrations();

/// Brings the file to the last of `steps`, each in one transaction together with its number. The file must not be newer
/// than that. Two programs may do this at once.
[[nodiscard]] Status migrate(Connection& connection, std::span<const Migration> steps);

} // namespace flowhand
