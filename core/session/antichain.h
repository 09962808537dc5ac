#pragma once

#include <cstddef>
#include <cstdint>
#include <vector>

namespace flowhand {

/// Square table of on/off, a row of bits an element.
class BitTable {
public:
    explicit BitTable(std::size_t size) : m_size(size), m_words((size + 63) / 64), m_bits(size * m_words, 0) {}

    [[nodiscard]] std::size_t size() const { return m_size; }
    [[nodiscard]] std::size_t words() const { return m_words; }
    [[nodiscard]] bool has(std::size_t row, std::size_t column) const {
        return (m_bits[row * m_words + column / 64] >> (column % 64) & 1U) != 0;
    }
    void set(std::size_t row, std::size_t column) {
        m_bits[row * m_words + column / 64] |= std::uint64_t{1} << (column % 64);
    }
    void addRow(std::size_t row, std::size_t other) {
        for (std::size_t i = 0; i < m_words; ++i)
            m_bits[row * m_words + i] |= m_bits[other * m_words + i];
    }
    /// The 64 columns from 64 * word on.
    [[nodiscard]] std::uint64_t word(std::size_t row, std::size_t word) const { return m_bits[row * m_words + word]; }

private:
    std::size_t m_size;
    std::size_t m_words;
    std::vector<std::uint64_t> m_bits;
};

/// The heaviest set of elements of which no two are related, exactly. `related` must be a strict partial order
/// (transitive, no element related to itself); `weights` are at least 1.
///
/// By the weighted form of Dilworth's theorem the weight is the sum of all weights less the maximum flow through the
/// bipartite graph of the relation, and a minimum cut gives the set (L. R. Ford, D. R. Fulkerson, Flows in Networks,
/// 1962, II.8-9). The flow is found by Dinic's blocking flows on bit rows, so that 10,000 elements stay affordable.
[[nodiscard]] std::vector<bool> heaviestAntichain(const std::vector<std::int64_t>& weights, const BitTable& related);

} // namespace flowhand
