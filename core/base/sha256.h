#pragma once

#include <array>
#include <cstdint>
#include <string>
#include <string_view>

namespace flowhand {

/// SHA-256 as in NIST FIPS 180-4, fed in pieces.
class Sha256 {
public:
    void add(std::string_view bytes);
    /// Of all that was added, as 64 hexadecimal digits. More may be added after it.
    [[nodiscard]] std::string hex() const;

private:
    void addBlock(const std::uint8_t* block);

    // The first 32 bits of the fractional parts of the square roots of the first eight primes (FIPS 180-4, 5.3.3).
    std::array<std::uint32_t, 8> m_state{0x6a09e667, 0xbb67ae85, 0x3c6ef372, 0xa54ff53a,
                                         0x510e527f, 0x9b05688c, 0x1f83d9ab, 0x5be0cd19};
    std::array<std::uint8_t, 64> m_block{};
    std::uint64_t m_length = 0; ///< in bytes
};

[[nodiscard]] std::string sha256(std::string_view bytes);

} // namespace flowhand
