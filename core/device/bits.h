#pragma once

#include <cstddef>
#include <cstdint>
#include <span>

namespace flowhand {

/// Whether `size` bits from `bit` on lie in `data`.
[[nodiscard]] constexpr bool hasBits(std::span<const std::uint8_t> data, std::uint32_t bit, std::uint32_t size) {
    return std::uint64_t(bit) + size <= std::uint64_t(data.size()) * 8;
}

/// Most bits of a field that makes a control: 8.4 lets it span four bytes.
inline constexpr std::uint32_t kWidestField = 32;

/// The field of `size` bits, 1 to kWidestField, that begins at `bit`, lowest bit first (USB HID 1.11, 5.8 and 8.4). It
/// must lie in `data`.
[[nodiscard]] std::int64_t extractBits(std::span<const std::uint8_t> data, std::uint32_t bit, std::uint32_t size,
                                       bool isSigned);

} // namespace flowhand
