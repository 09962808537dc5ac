#include "bench/dwells.h"

#include <algorithm>
#include <cmath>

#include "bench/statistics.h"
#include "rig/axisfilter.h"

namespace flowhand {

namespace {

constexpr Duration kBlock = std::chrono::milliseconds(50);
/// A series is cut into no more blocks (14 hours); one that goes on is measured so far.
constexpr std::size_t kMostBlocks = 1'000'000;
/// Blocks beside a movement are no measure of noise.
constexpr std::size_t kEdgeBlocks = 2;
/// A dwell's blocks lie within twice this much of each other: of a thousand blocks none is further from their middle.
constexpr double kWanderSigmas = 4.0;
/// ... or this share of the travel, for a hand that holds a lever is not quite still.
constexpr double kWanderShare = 0.003;
/// Residuals beyond are spikes, not noise: one of 10^9 normally distributed values.
constexpr double kSpikeSigmas = 6.0;

struct Block {
    Time begin{};
    double median = 0.0;
    std::size_t first = 0; ///< points [first, last)
    std::size_t last = 0;
};

std::vector<Block> blocksOf(const Series& series) {
    std::vector<Block> blocks;
    std::size_t at = 0;
    double held = 0.0;
    for (Time begin = series.points.empty() ? series.end : series.points.front().time;
         begin < series.end && blocks.size() < kMostBlocks; begin += kBlock) {
        Block block{begin, held, at, at};
        std::vector<double> values;
        for (; at < series.points.size() && series.points[at].time < begin + kBlock; ++at)
            if (!series.points[at].isNull)
                values.push_back(held = static_cast<double>(series.points[at].raw));
        block.last = at;
        if (!values.empty())
            block.median = medianOf(std::move(values));
        blocks.push_back(block);
    }
    return blocks;
}

/// Noise of a series that may move most of the time: that of its quieter parts, from the differences of neighbours.
double firstSigma(const Series& series) {
    constexpr std::size_t kPart = 12;
    std::vector<double> spreads;
    for (std::size_t begin = 1; begin + kPart <= series.points.size(); begin += kPart) {
        std::vector<double> steps;
        for (std::size_t i = begin; i < begin + kPart; ++i)
            steps.push_back(static_cast<double>(series.points[i].raw - series.points[i - 1].raw));
        spreads.push_back(deviationOf(steps) / std::sqrt(2.0));
    }
    return std::max(percentileOf(std::move(spreads), 0.4), kRoundingNoise);
}

/// Noise of a block's median: that of the median of n normally distributed values is about 1.25 sigma / sqrt(n).
double sigmaOfBlocks(const Series& series, const std::vector<Block>& blocks) {
    std::vector<double> counts;
    for (const Block& block : blocks)
        counts.push_back(static_cast<double>(block.last - block.first));
    const double count = std::max(1.0, medianOf(std::move(counts)));
    return firstSigma(series) * std::min(1.0, 1.25 / std::sqrt(count));
}

/// Blocks [begin, end) that stay near each other.
struct Stretch {
    std::size_t begin = 0;
    std::size_t end = 0;
};

std::vector<Stretch> restsIn(const std::vector<Block>& blocks, double tolerance) {
    const auto least = static_cast<std::size_t>(kLeastDwell / kBlock);
    const auto fits = [&](double low, double high, double value) {
        return std::max(high, value) - std::min(low, value) <= 2 * tolerance;
    };
    std::vector<Stretch> rests;
    for (std::size_t begin = 0; begin < blocks.size();) {
        double low = blocks[begin].median;
        double high = low;
        std::size_t end = begin + 1;
        for (; end < blocks.size(); ++end) {
            const double value = blocks[end].median;
            if (!fits(low, high, value)) {
                if (end + 1 < blocks.size() && fits(low, high, blocks[end + 1].median))
                    continue; // one block alone is no movement
                break;
            }
            low = std::min(low, value);
            high = std::max(high, value);
        }
        if (end - begin >= least) {
            rests.push_back({begin, end});
            begin = end;
        } else {
            ++begin;
        }
    }
    return rests;
}

Dwell dwellOf(const Series& series, const std::vector<Block>& blocks, Stretch rest) {
    Dwell dwell;
    dwell.begin = blocks[rest.begin].begin;
    dwell.end = std::min(series.end, blocks[rest.end - 1].begin + kBlock);
    // The first and the last rest of a series have no movement on their outer side.
    const std::size_t begin = rest.begin == 0 ? 0 : rest.begin + kEdgeBlocks;
    const std::size_t end = rest.end == blocks.size() ? rest.end : rest.end - kEdgeBlocks;
    std::vector<double> values;
    for (std::size_t i = blocks[begin].first; i < blocks[end - 1].last; ++i)
        if (!series.points[i].isNull)
            values.push_back(static_cast<double>(series.points[i].raw));
    dwell.at = values.empty() ? blocks[begin].median : medianOf(values);
    for (const double value : values)
        dwell.residuals.push_back(value - dwell.at);
    return dwell;
}

/// The side it came from is that of its last movement: after an overshoot, the side it came back from.
void findApproach(Dwell& dwell, const std::vector<Block>& blocks, std::size_t begin, double tolerance) {
    for (std::size_t i = begin; i-- > 0;) {
        const double away = blocks[i].median - dwell.at;
        if (std::fabs(away) <= 2 * tolerance) // noise or wandering
            continue;
        dwell.approach = away < 0 ? Approach::Below : Approach::Above;
        // How far out it had been: on, while it goes on in that direction.
        while (i > 0 && (blocks[i - 1].median - blocks[i].median) * away > 0)
            --i;
        dwell.cameFrom = blocks[i].median;
        return;
    }
}

} // namespace

double restSigma(std::vector<double> residuals) {
    const double limit = kSpikeSigmas * std::max(robustDeviationOf(residuals), 1.0);
    residuals.erase(std::remove_if(residuals.begin(), residuals.end(),
                                   [&](double residual) {
                                       return std::fabs(residual) > limit;
                                   }),
                    residuals.end());
    return deviationOf(residuals);
}

Resting restingOf(const Series& series) {
    Resting resting;
    std::vector<double> values;
    for (const RawChange& point : series.points)
        if (!point.isNull)
            values.push_back(static_cast<double>(point.raw));
    resting.low = percentileOf(values, 0.005);
    resting.high = percentileOf(std::move(values), 0.995);
    const std::vector<Block> blocks = blocksOf(series);
    resting.tolerance =
        std::max({kWanderSigmas * sigmaOfBlocks(series, blocks), kWanderShare * (resting.high - resting.low), 1.0});
    for (const Stretch rest : restsIn(blocks, resting.tolerance)) {
        Dwell dwell = dwellOf(series, blocks, rest);
        findApproach(dwell, blocks, rest.begin, resting.tolerance);
        resting.dwells.push_back(std::move(dwell));
    }
    std::vector<double> all;
    for (const Dwell& dwell : resting.dwells)
        all.insert(all.end(), dwell.residuals.begin(), dwell.residuals.end());
    resting.sigma = restSigma(std::move(all));
    return resting;
}

} // namespace flowhand
