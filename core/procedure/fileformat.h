#pragma once

#include <cstdint>
#include <string_view>

#include "base/tomlfile.h"

namespace flowhand {

/// The version of the TOML format of aircraft and flow files that this program reads.
inline constexpr std::int64_t kFileFormat = 1;

/// Reads `format`. Error `newer-format` or `bad-format` when this program cannot read the file.
void readFormat(TomlReader& reader);

/// Lower case letters, digits and '_', a letter first, at most 64: how ids, signals and aircraft values are named.
[[nodiscard]] bool isPlainName(std::string_view name);

} // namespace flowhand
