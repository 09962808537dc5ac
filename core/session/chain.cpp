#include "session/chain.h"

#include <algorithm>
#include <numeric>
#include <optional>

#include "session/antichain.h"

namespace flowhand {

namespace {

bool areOneGroup(const Step& a, const Step& b) {
    return !a.group.empty() && a.group == b.group;
}

/// Each step behind all it comes after. A circle, which loaders refuse, is cut where it is met.
std::vector<std::size_t> sortedByOrder(const std::vector<Step>& steps) {
    std::vector<std::size_t> waitsFor(steps.size());
    std::vector<std::vector<std::size_t>> followers(steps.size());
    for (std::size_t i = 0; i < steps.size(); ++i)
        for (const std::size_t before : steps[i].after) {
            followers[before].push_back(i);
            ++waitsFor[i];
        }
    std::vector<std::size_t> sorted;
    for (std::size_t i = 0; i < steps.size(); ++i)
        if (waitsFor[i] == 0)
            sorted.push_back(i);
    for (std::size_t next = 0; next < sorted.size(); ++next)
        for (const std::size_t follower : followers[sorted[next]])
            if (--waitsFor[follower] == 0)
                sorted.push_back(follower);
    return sorted;
}

/// By step, when two steps are in order exactly if their levels differ; nothing when the order is no such list.
std::optional<std::vector<std::size_t>> levelsOf(const std::vector<Step>& steps,
                                                 const std::vector<std::size_t>& sorted) {
    std::vector<std::size_t> levels(steps.size(), 0);
    for (const std::size_t i : sorted)
        for (const std::size_t before : steps[i].after)
            levels[i] = std::max(levels[i], levels[before] + (areOneGroup(steps[i], steps[before]) ? 0 : 1));
    std::vector<std::size_t> countOf(steps.size() + 1);
    for (const std::size_t level : levels)
        ++countOf[level];
    std::vector<bool> isWhole(steps.size(), false); // comes after the whole level below
    for (const std::size_t i : sorted) {
        std::vector<std::size_t> below;
        for (const std::size_t before : steps[i].after) {
            if (levels[before] == levels[i])
                isWhole[i] = isWhole[i] || isWhole[before];
            else if (levels[before] + 1 == levels[i] && !areOneGroup(steps[i], steps[before]))
                below.push_back(before);
        }
        std::sort(below.begin(), below.end());
        below.erase(std::unique(below.begin(), below.end()), below.end());
        if (levels[i] == 0 || below.size() == countOf[levels[i] - 1])
            isWhole[i] = true;
        if (!isWhole[i])
            return std::nullopt;
    }
    return levels;
}

struct Best {
    std::int64_t weight = 0;
    std::int64_t last = -1; ///< index in `done`, -1: none
};

/// Prefix maxima and prefix counts by level.
class LevelTree {
public:
    explicit LevelTree(std::size_t levels) : m_best(levels + 1), m_count(levels + 1) {}

    [[nodiscard]] Best bestUpTo(std::size_t level) const {
        Best best;
        for (std::size_t i = level + 1; i > 0; i &= i - 1)
            if (m_best[i].weight > best.weight)
                best = m_best[i];
        return best;
    }
    [[nodiscard]] std::int64_t countUpTo(std::size_t level) const {
        std::int64_t count = 0;
        for (std::size_t i = level + 1; i > 0; i &= i - 1)
            count += m_count[i];
        return count;
    }
    void add(std::size_t level, Best best) {
        for (std::size_t i = level + 1; i < m_best.size(); i += i & (~i + 1)) {
            if (best.weight > m_best[i].weight)
                m_best[i] = best;
            ++m_count[i];
        }
    }

private:
    std::vector<Best> m_best;
    std::vector<std::int64_t> m_count;
};

/// Loss first, then how many others jumped ahead of it, then the number of steps kept. Worths add up to little more
/// than 40,000 milli-points and conflicts to n², so that 10,000 steps stay below 2^63.
std::int64_t chainWeight(std::int64_t worth, std::int64_t jumpedBy, std::size_t count) {
    const auto n = static_cast<std::int64_t>(count);
    return (worth * (n * n + 1) + jumpedBy) * (n + 1) + 1;
}

std::vector<bool> outsideOfLevels(const std::vector<std::size_t>& levels, const std::vector<ChainStep>& done) {
    std::vector<std::size_t> byTime(done.size());
    std::iota(byTime.begin(), byTime.end(), std::size_t{0});
    std::sort(byTime.begin(), byTime.end(), [&](std::size_t a, std::size_t b) {
        const auto key = [&](std::size_t i) {
            return std::tuple(done[i].done, levels[done[i].step], done[i].step);
        };
        return key(a) < key(b);
    });
    LevelTree tree(levels.size());
    std::vector<std::int64_t> previous(done.size(), -1);
    Best best;
    std::int64_t seen = 0;
    for (const std::size_t i : byTime) {
        const std::size_t level = levels[done[i].step];
        const Best before = tree.bestUpTo(level);
        previous[i] = before.last;
        const std::int64_t jumpedBy = seen++ - tree.countUpTo(level);
        const Best here{before.weight + chainWeight(done[i].worth, jumpedBy, done.size()),
                        static_cast<std::int64_t>(i)};
        tree.add(level, here);
        if (here.weight > best.weight)
            best = here;
    }
    std::vector<bool> isOutside(done.size(), true);
    for (std::int64_t i = best.last; i >= 0; i = previous[static_cast<std::size_t>(i)])
        isOutside[static_cast<std::size_t>(i)] = false;
    return isOutside;
}

/// Row: step; columns: all it comes after.
BitTable orderOf(const std::vector<Step>& steps, const std::vector<std::size_t>& sorted) {
    BitTable order(steps.size());
    for (const std::size_t i : sorted)
        for (const std::size_t before : steps[i].after) {
            order.addRow(i, before);
            if (!areOneGroup(steps[i], steps[before]))
                order.set(i, before);
        }
    return order;
}

std::vector<bool> outsideOfOrder(const BitTable& order, const std::vector<ChainStep>& done) {
    BitTable jumped(done.size()); // row: the step that others, the columns, jumped ahead of
    std::vector<std::int64_t> weights(done.size());
    for (std::size_t i = 0; i < done.size(); ++i) {
        std::int64_t jumpedBy = 0;
        for (std::size_t other = 0; other < done.size(); ++other)
            if (done[other].done < done[i].done && order.has(done[other].step, done[i].step)) {
                jumped.set(i, other);
                ++jumpedBy;
            }
        weights[i] = chainWeight(done[i].worth, jumpedBy, done.size());
    }
    std::vector<bool> isOutside = heaviestAntichain(weights, jumped);
    isOutside.flip();
    return isOutside;
}

} // namespace

std::vector<bool> outOfOrder(const std::vector<Step>& steps, const std::vector<ChainStep>& done) {
    const std::vector<std::size_t> sorted = sortedByOrder(steps);
    if (const auto levels = levelsOf(steps, sorted))
        return outsideOfLevels(*levels, done);
    return outsideOfOrder(orderOf(steps, sorted), done);
}

} // namespace flowhand
