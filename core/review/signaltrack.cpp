#include "review/signaltrack.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace flowhand {

namespace {

constexpr std::size_t kFan = 16;
constexpr double kNothing = std::numeric_limits<double>::quiet_NaN();

/// Where column `number` of `count` begins. Exact enough for any run: times are below 2^53 ns for 104 days.
Time columnStart(Time from, Time to, std::size_t number, std::size_t count) {
    const double share = static_cast<double>(number) / static_cast<double>(count);
    return from + Time(static_cast<std::int64_t>(std::llround(share * static_cast<double>((to - from).count()))));
}

bool differs(double value, double from, double least) {
    if (std::isnan(value) || std::isnan(from))
        return std::isnan(value) != std::isnan(from);
    return std::fabs(value - from) >= least;
}

} // namespace

SignalTrack::SignalTrack(const SignalSamples& samples) : m_times(samples.times), m_values(samples.values) {
    for (std::size_t below = m_values.size(); below >= kFan; below = m_levels.back().size()) {
        std::vector<Block> level;
        level.reserve((below + kFan - 1) / kFan);
        for (std::size_t at = 0; at < below; at += kFan) {
            const std::size_t count = std::min(kFan, below - at);
            level.push_back(m_levels.empty() ? blockOf(m_values.subspan(at, count))
                                             : blockOf(std::span(m_levels.back()).subspan(at, count)));
        }
        m_levels.push_back(std::move(level));
    }
}

SignalTrack::Block SignalTrack::blockOf(double value) {
    if (std::isnan(value))
        return {std::numeric_limits<double>::infinity(), -std::numeric_limits<double>::infinity(), true};
    return {value, value, false};
}

SignalTrack::Block SignalTrack::blockOf(std::span<const double> values) {
    Block all{std::numeric_limits<double>::infinity(), -std::numeric_limits<double>::infinity(), false};
    for (const double value : values) {
        // A comparison with NaN is false: the unknown ones pass by.
        all.lowest = value < all.lowest ? value : all.lowest;
        all.highest = value > all.highest ? value : all.highest;
        all.hasUnknown |= std::isnan(value);
    }
    return all;
}

SignalTrack::Block SignalTrack::blockOf(std::span<const Block> blocks) {
    Block all = blocks.front();
    for (const Block& block : blocks.subspan(1))
        add(all, block);
    return all;
}

void SignalTrack::add(Block& block, const Block& other) {
    block.lowest = std::min(block.lowest, other.lowest);
    block.highest = std::max(block.highest, other.highest);
    block.hasUnknown |= other.hasUnknown;
}

std::size_t SignalTrack::countUntil(Time time) const {
    return static_cast<std::size_t>(std::upper_bound(m_times.begin(), m_times.end(), time) - m_times.begin());
}

double SignalTrack::heldBefore(std::size_t end) const {
    return end > 0 ? m_values[end - 1] : kNothing;
}

Value SignalTrack::at(Time time) const {
    return Value::number(heldBefore(countUntil(time)));
}

/// Changes `first` up to, not including, `end`: up and down the pyramid by whole blocks.
SignalTrack::Block SignalTrack::over(std::size_t first, std::size_t end) const {
    Block all{std::numeric_limits<double>::infinity(), -std::numeric_limits<double>::infinity(), false};
    for (; first < end && first % kFan != 0; ++first)
        add(all, blockOf(m_values[first]));
    for (; end > first && end % kFan != 0; --end)
        add(all, blockOf(m_values[end - 1]));
    std::size_t level = 0;
    for (first /= kFan, end /= kFan; first < end; first /= kFan, end /= kFan, ++level) {
        const std::vector<Block>& blocks = m_levels[level];
        const bool isTop = level + 1 == m_levels.size();
        for (; first < end && (isTop || first % kFan != 0); ++first)
            add(all, blocks[first]);
        for (; end > first && end % kFan != 0; --end)
            add(all, blocks[end - 1]);
    }
    return all;
}

std::vector<SignalColumn> SignalTrack::columns(Time from, Time to, std::size_t count) const {
    std::vector<SignalColumn> columns(count);
    std::size_t at = countUntil(from);
    for (std::size_t i = 0; i < count; ++i) {
        SignalColumn& column = columns[i];
        const Time end = columnStart(from, to, i + 1, count);
        // Changes from `at` on lie after the column's beginning; the one before holds there.
        const auto next = std::lower_bound(m_times.begin() + static_cast<std::ptrdiff_t>(at), m_times.end(), end);
        const auto last = static_cast<std::size_t>(next - m_times.begin());
        Block block = blockOf(heldBefore(at));
        add(block, over(at, last));
        column.hasGap = block.hasUnknown;
        column.isKnown = block.lowest <= block.highest;
        if (column.isKnown) {
            column.lowest = block.lowest;
            column.highest = block.highest;
            // With a gap in it the ends of its line are its extremes.
            const double first = heldBefore(at);
            const double final = heldBefore(last);
            column.first = std::isnan(first) ? block.lowest : first;
            column.last = std::isnan(final) ? block.highest : final;
        }
        at = last;
        // A change just at the next column's beginning is held there.
        while (at < m_times.size() && m_times[at] == end)
            ++at;
    }
    return columns;
}

std::optional<Time> SignalTrack::nextChange(Time time, double least) const {
    std::size_t i = countUntil(time);
    const double from = heldBefore(i);
    const auto mayHold = [&](const Block& block) {
        if (std::isnan(from))
            return block.lowest <= block.highest;
        return block.hasUnknown || block.lowest <= from - least || block.highest >= from + least;
    };
    while (i < m_values.size()) {
        // The largest block that begins here and holds nothing is skipped whole.
        std::size_t skipped = 0;
        std::size_t width = kFan;
        for (std::size_t level = 0; level < m_levels.size() && i % width == 0; ++level, width *= kFan) {
            if (mayHold(m_levels[level][i / width]))
                break;
            skipped = width;
        }
        if (skipped == 0 && differs(m_values[i], from, least))
            return m_times[i];
        i += std::max<std::size_t>(skipped, 1);
    }
    return std::nullopt;
}

std::optional<Time> SignalTrack::previousChange(Time time, double least) const {
    std::size_t end = countUntil(time - Time(1)); // values [0, end) stood before
    const double from = heldBefore(end);
    const auto mayHold = [&](const Block& block) {
        if (std::isnan(from))
            return block.lowest <= block.highest;
        return block.hasUnknown || block.lowest <= from - least || block.highest >= from + least;
    };
    while (end > 0) {
        std::size_t skipped = 0;
        std::size_t width = kFan;
        for (std::size_t level = 0; level < m_levels.size() && end % width == 0; ++level, width *= kFan) {
            if (mayHold(m_levels[level][end / width - 1]))
                break;
            skipped = width;
        }
        if (skipped == 0 && differs(m_values[end - 1], from, least))
            return m_times[end]; // it left that value here; there is such a change, because `from` came after it
        end -= std::max<std::size_t>(skipped, 1);
    }
    // Before its first change it was unknown.
    if (!std::isnan(from) && !m_times.empty() && m_times.front() < time)
        return m_times.front();
    return std::nullopt;
}

std::optional<SignalTrack::Extent> SignalTrack::extent() const {
    const Block all = over(0, m_values.size());
    if (all.lowest > all.highest)
        return std::nullopt;
    return Extent{all.lowest, all.highest};
}

} // namespace flowhand
