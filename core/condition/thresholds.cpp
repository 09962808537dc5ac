#include "condition/thresholds.h"

#include <algorithm>

namespace flowhand {

void Thresholds::add(double constant, Subscription subscription) {
    const auto at =
        std::upper_bound(m_entries.begin(), m_entries.end(), constant, [](double value, const Entry& entry) {
            return value < entry.constant;
        });
    m_entries.insert(at, {constant, subscription});
    place(m_value);
}

void Thresholds::remove(std::uint32_t watch) {
    m_entries.erase(std::remove_if(m_entries.begin(), m_entries.end(),
                                   [&](const Entry& entry) {
                                       return entry.subscription.watch == watch;
                                   }),
                    m_entries.end());
    place(m_value);
}

std::size_t Thresholds::firstFrom(double value) const {
    std::size_t at = m_at;
    while (at > 0 && m_entries[at - 1].constant >= value)
        --at;
    return at;
}

void Thresholds::place(double value) {
    constexpr double kInfinity = std::numeric_limits<double>::infinity();
    if (std::isnan(value)) {
        m_below = kInfinity;
        m_above = -kInfinity;
        m_at = 0;
        return;
    }
    m_at = static_cast<std::size_t>(std::upper_bound(m_entries.begin(), m_entries.end(), value,
                                                     [](double wanted, const Entry& entry) {
                                                         return wanted < entry.constant;
                                                     }) -
                                    m_entries.begin());
    m_below = m_at > 0 ? m_entries[m_at - 1].constant : -kInfinity;
    m_above = m_at < m_entries.size() ? m_entries[m_at].constant : kInfinity;
}

} // namespace flowhand
