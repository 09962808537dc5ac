#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace flowhand {

/// Bytes of the store, held in a string. Formats: README.md, 'Packed'.
using Bytes = std::string;

/// Packs the sections as one stream, each as a block of its own.
[[nodiscard]] Bytes pack(const std::vector<Bytes>& sections);
/// Nothing when it is damaged or pretends to be larger than 16 MiB.
[[nodiscard]] std::optional<Bytes> unpack(std::string_view packed);

void putVarint(Bytes& bytes, std::uint64_t number);
[[nodiscard]] constexpr std::uint64_t zigzag(std::int64_t number) {
    return (static_cast<std::uint64_t>(number) << 1) ^ static_cast<std::uint64_t>(number >> 63);
}
[[nodiscard]] constexpr std::int64_t unzigzag(std::uint64_t number) {
    return static_cast<std::int64_t>((number >> 1) ^ (~(number & 1) + 1));
}

/// Reads numbers off bytes that may be damaged: after a failure everything reads as 0 and isGood() is false.
class ByteReader {
public:
    explicit ByteReader(std::string_view bytes) : m_bytes(bytes) {}
    [[nodiscard]] std::uint64_t varint() {
        // Most are of one byte or two.
        if (m_isGood && m_bytes.size() - m_at >= 2) {
            const auto low = static_cast<std::uint8_t>(m_bytes[m_at]);
            const auto high = static_cast<std::uint8_t>(m_bytes[m_at + 1]);
            if (low < 0x80) {
                ++m_at;
                return low;
            }
            if (high < 0x80) {
                m_at += 2;
                return (low & 0x7FU) | std::uint64_t(high) << 7;
            }
        }
        return longVarint();
    }
    [[nodiscard]] std::uint8_t byte() {
        m_isGood = m_isGood && m_at < m_bytes.size();
        return m_isGood ? static_cast<std::uint8_t>(m_bytes[m_at++]) : std::uint8_t{0};
    }
    /// A number of things that follow, each of which takes at least `bytesEach`; so it cannot ask for endless memory.
    [[nodiscard]] std::size_t count(std::size_t bytesEach = 1);
    [[nodiscard]] bool isGood() const { return m_isGood; }
    [[nodiscard]] bool isAtEnd() const { return m_at == m_bytes.size(); }
    [[nodiscard]] std::string_view rest() const { return m_bytes.substr(m_at); }

private:
    [[nodiscard]] std::uint64_t longVarint();

    std::string_view m_bytes;
    std::size_t m_at = 0;
    bool m_isGood = true;
};

} // namespace flowhand
