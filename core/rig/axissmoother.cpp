#include "rig/axissmoother.h"

#include <algorithm>
#include <cmath>
#include <utility>
#include <vector>

namespace flowhand {

namespace {

/// A low-pass on its way is told anew so many times in its time constant: in steps of a tenth of what is left.
constexpr int kStepsInTau = 10;
constexpr Duration kLeastStep = std::chrono::milliseconds(1); // as often as the fastest devices report

} // namespace

// --- the median ---

std::int64_t TimedMedian::take(std::int64_t raw, Time time) {
    if (m_half == Duration{})
        return raw;
    if (m_stretches.empty())
        m_stretches.push_back({raw, time - 2 * m_half});
    else if (m_stretches.back().raw != raw)
        m_stretches.push_back({raw, time});
    return advance(time);
}

std::int64_t TimedMedian::advance(Time time) {
    while (m_stretches.size() > 1 && m_stretches[1].since <= time - 2 * m_half)
        m_stretches.pop_front();
    m_median = medianAt(time);
    m_next = nextChange(time);
    return m_median;
}

void TimedMedian::forget() {
    m_stretches.clear();
    m_next = kForever;
}

/// How long stretch `at` stands in the window that ends at `time`.
Duration TimedMedian::weightOf(std::size_t at, Time time) const {
    const Time end = at + 1 < m_stretches.size() ? m_stretches[at + 1].since : time;
    return end - std::max(m_stretches[at].since, time - 2 * m_half);
}

/// Where two counts share the window by halves, what lies between them nearest to what it says now.
std::int64_t TimedMedian::medianAt(Time time) const {
    std::vector<std::pair<std::int64_t, Duration>> counts;
    for (std::size_t i = 0; i < m_stretches.size(); ++i)
        if (const Duration weight = weightOf(i, time); weight > Duration{})
            counts.emplace_back(m_stretches[i].raw, weight);
    std::sort(counts.begin(), counts.end());
    Duration below{};
    for (std::size_t i = 0; i < counts.size(); ++i) {
        below += counts[i].second;
        if (below > m_half)
            return counts[i].first;
        if (below == m_half && i + 1 < counts.size())
            return std::clamp(m_stretches.back().raw, counts[i].first, counts[i + 1].first);
    }
    return m_stretches.back().raw;
}

/// When what it says now has pushed the median on, or the oldest stretch has left the window.
Time TimedMedian::nextChange(Time time) const {
    const std::int64_t now = m_stretches.back().raw;
    if (now == m_median)
        return kForever;
    Duration beyond{}; // stood on the side of the median where it is now
    for (std::size_t i = 0; i < m_stretches.size(); ++i)
        if (now > m_median ? m_stretches[i].raw > m_median : m_stretches[i].raw < m_median)
            beyond += weightOf(i, time);
    return std::min(time + (m_half - beyond), m_stretches[1].since + 2 * m_half);
}

// --- the low-pass ---

std::int64_t LowPass::take(std::int64_t raw, Time time) {
    if (m_tau == Duration{})
        return raw;
    if (m_target)
        advance(time);
    else
        m_value = static_cast<double>(raw);
    m_target = raw;
    m_time = time;
    return count();
}

std::int64_t LowPass::advance(Time time) {
    const auto target = static_cast<double>(*m_target);
    m_value = target + (m_value - target) * std::exp(-seconds(time - m_time) / seconds(m_tau));
    m_time = time;
    return count();
}

Time LowPass::nextTimer() const {
    if (!m_target || count() == *m_target)
        return kForever;
    return m_time + std::chrono::ceil<std::chrono::microseconds>(std::max(m_tau / kStepsInTau, kLeastStep));
}

std::int64_t LowPass::count() const {
    return std::llround(m_value);
}

} // namespace flowhand
