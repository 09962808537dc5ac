#pragma once

#include <algorithm>
#include <random>
#include <vector>

#include "bench/series.h"

namespace flowhand::test {

/// What is true of generated contacts.
struct ContactTruth {
    double bounce = 0.0015; ///< mean time of a change's bounce, in seconds; at most four times it
    double rate = 1000.0;   ///< reports a second
};

/// One or more contacts worked by a hand. The same seed gives the same series.
class GeneratedSwitch {
public:
    explicit GeneratedSwitch(std::size_t contacts, ContactTruth truth = {}, unsigned seed = 1)
        : m_truth(truth), m_random(seed), m_wanted(contacts), m_isClosed(contacts), m_bouncesUntil(contacts) {
        for (std::size_t i = 0; i < contacts; ++i) {
            m_series.emplace_back();
            m_series.back().input.name = "button " + std::to_string(i + 1);
            m_series.back().input.kind = InputKind::Button;
            m_series.back().input.highest = 1;
        }
    }

    /// With the bounce that such a contact has.
    GeneratedSwitch& set(std::size_t contact, bool isClosed) {
        m_wanted[contact] = isClosed;
        m_bouncesUntil[contact] = m_time + m_truth.bounce * std::min(4.0, m_length(m_random));
        return *this;
    }
    GeneratedSwitch& wait(double seconds) {
        for (const double end = m_time + seconds; m_time < end; m_time += 1 / m_truth.rate)
            report();
        return *this;
    }
    GeneratedSwitch& press(std::size_t contact, double seconds = 0.3) {
        return set(contact, true).wait(seconds).set(contact, false).wait(seconds);
    }
    /// It changes and is back after so long, without a hand.
    GeneratedSwitch& flicker(std::size_t contact, double seconds) {
        m_wanted[contact] = !m_wanted[contact];
        wait(seconds);
        m_wanted[contact] = !m_wanted[contact];
        return wait(0.2);
    }
    /// From one position to the next: none closed for `none` seconds, or both for `both`.
    GeneratedSwitch& turn(std::size_t from, std::size_t to, double none, double both) {
        if (both > 0)
            return set(to, true).wait(both).set(from, false).wait(0.5);
        return set(from, false).wait(none).set(to, true).wait(0.5);
    }
    /// Through all positions and back.
    GeneratedSwitch& turnThrough(double none, double both) {
        for (std::size_t i = 0; i + 1 < m_series.size(); ++i)
            turn(i, i + 1, none, both);
        for (std::size_t i = m_series.size() - 1; i > 0; --i)
            turn(i, i - 1, none, both);
        return *this;
    }

    [[nodiscard]] std::vector<Series> series() const {
        std::vector<Series> all = m_series;
        for (Series& series : all)
            series.end = fromSeconds(m_time);
        return all;
    }

private:
    void report() {
        for (std::size_t i = 0; i < m_series.size(); ++i) {
            const bool bounces = m_time < m_bouncesUntil[i];
            m_isClosed[i] = bounces ? m_coin(m_random) : static_cast<bool>(m_wanted[i]);
            m_series[i].points.push_back({wholeTick(fromSeconds(m_time)), m_isClosed[i] ? 1 : 0, false});
        }
    }

    ContactTruth m_truth;
    std::mt19937 m_random;
    std::exponential_distribution<double> m_length{1.0};
    std::bernoulli_distribution m_coin{0.5};
    std::vector<Series> m_series;
    std::vector<bool> m_wanted;
    std::vector<bool> m_isClosed;
    std::vector<double> m_bouncesUntil;
    double m_time = 0.0;
};

} // namespace flowhand::test
