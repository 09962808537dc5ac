#pragma once

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <functional>
#include <random>

#include "bench/series.h"

namespace flowhand::test {

/// What is true of a generated lever. Counts unless said.
struct AxisTruth {
    std::int64_t highest = 4095; ///< of the converter; its lowest is 0
    double low = 380;            ///< at the lever's 0 and 1
    double high = 3720;
    double noise = 1.2;    ///< standard deviation
    double backlash = 0.0; ///< play between lever and potentiometer
    double drift = 0.0;    ///< a second
    double rate = 125.0;   ///< reports a second
    double jitter = 0.0;   ///< standard deviation of a report's time, share of the interval
    double lost = 0.0;     ///< share of the reports that do not arrive
    std::function<double(double)> track = [](double counts) { ///< what a worn track makes of it
        return counts;
    };
};

/// A lever moved by a hand, report by report. The same seed gives the same series.
class GeneratedAxis {
public:
    explicit GeneratedAxis(AxisTruth truth, unsigned seed = 1) : m_truth(std::move(truth)), m_random(seed) {
        m_series.input.name = "X";
        m_series.input.highest = m_truth.highest;
        m_pot = m_truth.low;
    }

    /// Smoothly, as a hand does: slow at both ends.
    GeneratedAxis& moveTo(double share, double seconds) {
        const double from = m_lever;
        const double start = m_time;
        const double end = start + seconds;
        while (m_time < end) {
            const double way = std::min(1.0, (m_time - start) / seconds);
            m_lever = from + (share - from) * (3 - 2 * way) * way * way;
            report();
        }
        m_lever = share;
        return *this;
    }
    GeneratedAxis& hold(double seconds) {
        for (const double end = m_time + seconds; m_time < end;)
            report();
        return *this;
    }
    /// Steadily from one end to the other and back, for so many seconds each way.
    GeneratedAxis& sweep(double from, double to, double seconds) {
        for (const double start = m_time, end = start + seconds; m_time < end;) {
            m_lever = from + (to - from) * (m_time - start) / seconds;
            report();
        }
        m_lever = to;
        return *this;
    }
    /// The next reports say this, whatever the lever does.
    GeneratedAxis& spike(double counts, int reports = 1) {
        m_spike = counts;
        m_spikeReports = reports;
        return *this;
    }
    /// Visits every share upwards and downwards, so often.
    GeneratedAxis& visit(const std::vector<double>& shares, int times, double pause = 1.2) {
        for (int round = 0; round < times; ++round) {
            for (std::size_t i = round == 0 ? 0 : 1; i < shares.size(); ++i)
                moveTo(shares[i], 0.5).hold(pause);
            for (std::size_t i = shares.size() - 1; i-- > 0;)
                moveTo(shares[i], 0.5).hold(pause);
        }
        return *this;
    }
    /// A spring that brings it back to the middle, `error` of the travel short of it from either side.
    GeneratedAxis& returnsToCentre(int times, double centre, double error) {
        for (int i = 0; i < times; ++i) {
            moveTo(1.0, 0.4).hold(0.6).moveTo(centre + error, 0.15).hold(1.6);
            moveTo(0.0, 0.4).hold(0.6).moveTo(centre - error, 0.15).hold(1.6);
        }
        return *this;
    }

    [[nodiscard]] Series series() const {
        Series series = m_series;
        series.end = series.points.empty() ? Time{} : series.points.back().time;
        return series;
    }
    /// The whole device: this axis alone.
    [[nodiscard]] DeviceSeries device() const {
        DeviceSeries device;
        device.inputs = {series()};
        for (std::size_t i = 0; i < m_series.points.size(); ++i) {
            device.reports.push_back(m_series.points[i].time);
            device.repeats += i > 0 && m_series.points[i].raw == m_series.points[i - 1].raw ? 1 : 0;
        }
        return device;
    }
    [[nodiscard]] double counts(double share) const { return m_truth.low + (m_truth.high - m_truth.low) * share; }

private:
    void report() {
        const double wiper = counts(m_lever);
        m_pot = std::clamp(m_pot, wiper - m_truth.backlash / 2, wiper + m_truth.backlash / 2);
        double value = m_truth.track(m_pot) + m_truth.drift * m_time + m_truth.noise * m_normal(m_random);
        if (m_spikeReports > 0) {
            --m_spikeReports;
            value = m_spike;
        }
        const double late = std::fabs(m_normal(m_random)) * m_truth.jitter / m_truth.rate;
        if (m_uniform(m_random) >= m_truth.lost) {
            const Time time = std::max(wholeTick(fromSeconds(m_time + late)),
                                       m_series.points.empty() ? Time{} : m_series.points.back().time);
            const auto raw = std::clamp<std::int64_t>(std::llround(value), 0, m_truth.highest);
            m_series.points.push_back({time, raw, false});
        }
        m_time += 1.0 / m_truth.rate;
    }

    AxisTruth m_truth;
    std::mt19937 m_random;
    std::normal_distribution<double> m_normal;
    std::uniform_real_distribution<double> m_uniform{0.0, 1.0};
    Series m_series;
    double m_time = 0.0;
    double m_lever = 0.0;
    double m_pot = 0.0;
    double m_spike = 0.0;
    int m_spikeReports = 0;
};

} // namespace flowhand::test
