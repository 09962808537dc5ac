#include "device/bits.h"

namespace flowhand {

std::int64_t extractBits(std::span<const std::uint8_t> data, std::uint32_t bit, std::uint32_t size, bool isSigned) {
    const std::uint32_t shift = bit % 8;
    const std::uint32_t bytes = (shift + size + 7) / 8; // at most 5
    const std::uint8_t* from = data.data() + bit / 8;
    std::uint64_t window = 0;
    for (std::uint32_t i = 0; i < bytes; ++i)
        window |= std::uint64_t(from[i]) << (8 * i);
    const std::uint64_t value = (window >> shift) & ((std::uint64_t(1) << size) - 1);
    const std::uint64_t sign = std::uint64_t(1) << (size - 1);
    if (isSigned && (value & sign))
        return static_cast<std::int64_t>(value) - static_cast<std::int64_t>(sign << 1);
    return static_cast<std::int64_t>(value);
}

} // namespace flowhand
