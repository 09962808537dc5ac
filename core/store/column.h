#pragma once

#include <cstdint>
#include <vector>

#include "base/value.h"
#include "store/packed.h"

namespace flowhand {

/// How the values of a column become whole numbers. 0 to 9: multiples of 10^-coding; 10: the bits of the double.
/// Format: README.md, 'Samples of a chunk'.
inline constexpr int kBitsCoding = 10;

/// The lowest coding that gives every value back bit for bit.
[[nodiscard]] int codingFor(const std::vector<Value>& values);
void putColumn(Bytes& bytes, const std::vector<Value>& values, int coding);
/// Reads `count` values; `coding` must be 0..10. The reader knows whether it went well.
[[nodiscard]] std::vector<Value> readColumn(ByteReader& reader, std::size_t count, int coding);

} // namespace flowhand
