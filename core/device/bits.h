#pragma once

#include <cstddef>
#include <cstdint>
#include <span>

namespace flowhand {

/// Whether `size` bits from `bit` on lie in `data`.
[[nodiscard]] constexpr bool hasBits(std::span<const std::uint8_t> data, std::uint32_t bit, std::uint32_t size) {
    return std::uint64_t(bit) + size <= std::uint64_t(data.size()) * 8;
}

/// The field of `size` bits that begins at `bit`, lowest bit first (USB HID 1.11, 5.8 and 8.4); of more than 32 bits
/// the lower 32. The field must lie in `data`.
[[nodiscard]] std::int64_t extractBits(std::span<const std::uint8_t> data, std::uint32_t bit, std::uint32_t size,
                                       bool isSigned);

} // namespace flowhand
