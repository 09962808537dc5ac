#include "session/antichain.h"

#include <algorithm>
#include <map>
#include <optional>

namespace flowhand {

namespace {

constexpr int kUnreached = -1;

/// Source to left copies, left to right copies where related, right copies to sink. Depths count from the source.
class BipartiteFlow {
public:
    BipartiteFlow(const std::vector<std::int64_t>& weights, const BitTable& related)
        : m_related(related), m_left(weights), m_right(weights), m_flow(weights.size()), m_leftDepth(weights.size()),
          m_rightDepth(weights.size()), m_nextArc(weights.size()), m_nextBack(weights.size()) {}

    void run() {
        while (layer()) {
            std::fill(m_nextArc.begin(), m_nextArc.end(), 0);
            std::fill(m_nextBack.begin(), m_nextBack.end(), 0);
            for (std::size_t start = 0; start < m_left.size(); ++start)
                while (m_left[start] > 0 && augment(start)) {
                }
        }
    }

    /// On the source's side of the minimum cut with its left copy alone.
    [[nodiscard]] bool isInAntichain(std::size_t element) const {
        return m_leftDepth[element] != kUnreached && m_rightDepth[element] == kUnreached;
    }

private:
    /// Sets the depths; true when the sink can be reached.
    bool layer() {
        std::fill(m_leftDepth.begin(), m_leftDepth.end(), kUnreached);
        std::fill(m_rightDepth.begin(), m_rightDepth.end(), kUnreached);
        std::vector<std::uint64_t> fresh(m_related.words(), ~std::uint64_t{0});
        std::vector<std::size_t> front;
        for (std::size_t i = 0; i < m_left.size(); ++i)
            if (m_left[i] > 0) {
                m_leftDepth[i] = 0;
                front.push_back(i);
            }
        bool reachesSink = false;
        for (int depth = 0; !front.empty(); depth += 2) {
            std::vector<std::size_t> next;
            for (const std::size_t left : front)
                reachesSink = layerFrom(left, depth, fresh, next) || reachesSink;
            front = std::move(next);
        }
        return reachesSink;
    }

    bool layerFrom(std::size_t left, int depth, std::vector<std::uint64_t>& fresh, std::vector<std::size_t>& next) {
        bool reachesSink = false;
        for (std::size_t word = 0; word < m_related.words(); ++word) {
            std::uint64_t found = m_related.word(left, word) & fresh[word];
            fresh[word] &= ~found;
            for (; found != 0; found &= found - 1) {
                const std::size_t right = word * 64 + static_cast<std::size_t>(__builtin_ctzll(found));
                m_rightDepth[right] = depth + 1;
                reachesSink = reachesSink || m_right[right] > 0;
                for (const auto& [back, amount] : m_flow[right])
                    if (m_leftDepth[back] == kUnreached) {
                        m_leftDepth[back] = depth + 2;
                        next.push_back(back);
                    }
            }
        }
        return reachesSink;
    }

    std::optional<std::size_t> nextRight(std::size_t left) {
        for (std::size_t& arc = m_nextArc[left]; arc < m_related.size(); ++arc) {
            if (arc % 64 == 0 && m_related.word(left, arc / 64) == 0)
                arc += 63;
            else if (m_related.has(left, arc) && m_rightDepth[arc] == m_leftDepth[left] + 1)
                return arc;
        }
        return std::nullopt;
    }

    std::optional<std::size_t> nextLeft(std::size_t right) {
        for (auto it = m_flow[right].lower_bound(m_nextBack[right]); it != m_flow[right].end(); ++it) {
            m_nextBack[right] = it->first;
            if (m_leftDepth[it->first] == m_rightDepth[right] + 1)
                return it->first;
        }
        m_nextBack[right] = m_left.size();
        return std::nullopt;
    }

    /// One path of the layered graph from `start` to the sink, by advance and retreat.
    bool augment(std::size_t start) {
        std::vector<std::size_t> path{start}; // left, right, left, right, ...
        while (!path.empty()) {
            const bool isLeft = path.size() % 2 == 1;
            if (!isLeft && m_right[path.back()] > 0) {
                push(path);
                return true;
            }
            const std::optional<std::size_t> next = isLeft ? nextRight(path.back()) : nextLeft(path.back());
            if (next) {
                path.push_back(*next);
                continue;
            }
            path.pop_back();
            if (!path.empty())
                ++(isLeft ? m_nextBack : m_nextArc)[path.back()];
        }
        return false;
    }

    void push(const std::vector<std::size_t>& path) {
        std::int64_t amount = std::min(m_left[path.front()], m_right[path.back()]);
        for (std::size_t i = 1; i + 1 < path.size(); i += 2)
            amount = std::min(amount, m_flow[path[i]].at(path[i + 1]));
        m_left[path.front()] -= amount;
        m_right[path.back()] -= amount;
        for (std::size_t i = 0; i + 1 < path.size(); i += 2) {
            m_flow[path[i + 1]][path[i]] += amount;
            if (i + 2 < path.size() && (m_flow[path[i + 1]][path[i + 2]] -= amount) == 0)
                m_flow[path[i + 1]].erase(path[i + 2]);
        }
    }

    const BitTable& m_related;
    std::vector<std::int64_t> m_left;                        ///< capacity left from the source
    std::vector<std::int64_t> m_right;                       ///< capacity left to the sink
    std::vector<std::map<std::size_t, std::int64_t>> m_flow; ///< by right copy: from which left copies, how much
    std::vector<int> m_leftDepth;
    std::vector<int> m_rightDepth;
    std::vector<std::size_t> m_nextArc;
    std::vector<std::size_t> m_nextBack;
};

} // namespace

std::vector<bool> heaviestAntichain(const std::vector<std::int64_t>& weights, const BitTable& related) {
    BipartiteFlow flow(weights, related);
    flow.run();
    std::vector<bool> result(weights.size());
    for (std::size_t i = 0; i < weights.size(); ++i)
        result[i] = flow.isInAntichain(i);
    return result;
}

} // namespace flowhand
