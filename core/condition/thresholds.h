#pragma once

#include <cmath>
#include <cstddef>
#include <cstdint>
#include <limits>
#include <vector>

namespace flowhand {

/// A comparison of a watched condition.
struct Subscription {
    std::uint32_t watch = 0;
    std::uint32_t comparison = 0;
};

/// The constants with which one number signal is compared, in order, so that a change touches only the comparisons
/// between the old and the new value.
class Thresholds {
public:
    void add(double constant, Subscription subscription);
    void remove(std::uint32_t watch);

    /// Calls `touch(Subscription)` for each comparison that may differ from when the signal had the value of the call
    /// before; NaN is unknown.
    template <class Touch>
    void moveTo(double value, Touch touch) {
        const bool isApart = value > m_below && value < m_above && m_value != m_below;
        if (!isApart)
            cross(value, touch);
        m_value = value;
    }

private:
    struct Entry {
        double constant = 0.0;
        Subscription subscription;
    };

    template <class Touch>
    void cross(double value, Touch touch) {
        if (std::isnan(m_value) || std::isnan(value)) {
            for (const Entry& entry : m_entries)
                touch(entry.subscription);
        } else if (m_value < value) {
            for (std::size_t i = firstFrom(m_value); i < m_entries.size() && m_entries[i].constant <= value; ++i)
                touch(m_entries[i].subscription);
        } else {
            for (std::size_t i = m_at; i > 0 && m_entries[i - 1].constant >= value; --i)
                touch(m_entries[i - 1].subscription);
        }
        place(value);
    }

    /// The first entry at or above `value`, which is the value so far.
    [[nodiscard]] std::size_t firstFrom(double value) const;
    void place(double value);

    std::vector<Entry> m_entries;
    std::size_t m_at = 0; // the first entry above the value
    // The nearest constants at or below and above the value; with no value both let nothing pass.
    double m_below = std::numeric_limits<double>::infinity();
    double m_above = -std::numeric_limits<double>::infinity();
    double m_value = std::numeric_limits<double>::quiet_NaN();
};

} // namespace flowhand
