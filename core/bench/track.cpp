// A wiper on a worn track lifts off: for a report or two the count flies off and comes back (a spike), or it goes on
// at another count each time it passes a place (a gap). A hand moves smoothly from one report to the next, however
// fast, so a step is a jump when it is many times those before and after it; speeds are compared, because a lost
// report makes a step longer and not faster.
#include "bench/track.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <set>

#include "bench/statistics.h"

namespace flowhand {

namespace {

/// So many times the speed of its neighbours is a jump.
constexpr double kJumpRatio = 5.0;
constexpr std::size_t kNeighbours = 3;
/// A spike is back within so many reports and this time, as near to where it was as a third of its height.
constexpr std::size_t kMostSpikeReports = 6;
constexpr Duration kLongestSpike = std::chrono::milliseconds(60);
constexpr double kSpikeReturn = 1.0 / 3.0;
/// A gap is where it jumps again: a single jump may be the hand's.
constexpr std::size_t kLeastPasses = 2;
constexpr std::int64_t kLargestQuantum = 1 << 16;

struct Step {
    Time time{};
    double from = 0.0;
    double to = 0.0;
    double speed = 0.0; ///< counts a second, without sign
};

std::vector<Step> stepsOf(const Series& series) {
    std::vector<Step> steps;
    const RawChange* before = nullptr;
    for (const RawChange& point : series.points) {
        if (point.isNull)
            continue;
        if (before != nullptr && point.time > before->time) {
            const double way = std::fabs(static_cast<double>(point.raw - before->raw));
            steps.push_back({before->time, static_cast<double>(before->raw), static_cast<double>(point.raw),
                             way / seconds(point.time - before->time)});
        }
        before = &point;
    }
    return steps;
}

/// Of up to three steps [begin, end).
double medianSpeed(const std::vector<Step>& steps, std::size_t begin, std::size_t end) {
    std::array<double, kNeighbours> speeds{};
    std::size_t count = 0;
    for (std::size_t i = begin; i < std::min(end, steps.size()); ++i)
        speeds[count++] = steps[i].speed;
    std::sort(speeds.begin(), speeds.begin() + static_cast<std::ptrdiff_t>(count));
    return count == 0 ? 0.0 : speeds[count / 2];
}

/// The step after which it is back where it was before step `at`; nothing when it is not back soon.
std::optional<std::size_t> backAfter(const std::vector<Step>& steps, std::size_t at) {
    const double height = std::fabs(steps[at].to - steps[at].from);
    for (std::size_t i = at + 1; i < steps.size() && i <= at + kMostSpikeReports; ++i) {
        if (steps[i].time - steps[at].time > kLongestSpike)
            break;
        if (std::fabs(steps[i].to - steps[at].from) < kSpikeReturn * height)
            return i;
    }
    return std::nullopt;
}

std::vector<TrackGap> gapsOf(std::vector<TrackGap> jumps) {
    std::sort(jumps.begin(), jumps.end(), [](const TrackGap& a, const TrackGap& b) {
        return a.from < b.from;
    });
    std::vector<TrackGap> gaps;
    for (const TrackGap& jump : jumps) {
        if (!gaps.empty() && jump.from < gaps.back().to) {
            gaps.back().to = std::max(gaps.back().to, jump.to);
            ++gaps.back().passes;
        } else {
            gaps.push_back(jump);
        }
    }
    gaps.erase(std::remove_if(gaps.begin(), gaps.end(),
                              [](const TrackGap& gap) {
                                  return gap.passes < kLeastPasses;
                              }),
               gaps.end());
    return gaps;
}

} // namespace

TrackSigns trackSignsOf(const Series& series, double least) {
    const std::vector<Step> steps = stepsOf(series);
    TrackSigns signs;
    std::vector<TrackGap> jumps;
    std::vector<double> speeds;
    for (std::size_t i = 0; i < steps.size(); ++i) {
        const Step& step = steps[i];
        const double way = std::fabs(step.to - step.from);
        const double before = medianSpeed(steps, i - std::min(i, kNeighbours), i);
        const double after = medianSpeed(steps, i + 1, i + 1 + kNeighbours);
        if (way < least || step.speed < kJumpRatio * std::max(before, after)) {
            if (step.speed > 0)
                speeds.push_back(step.speed);
            signs.largestStep = std::max(signs.largestStep, way);
            continue;
        }
        if (const std::optional<std::size_t> back = backAfter(steps, i)) {
            signs.smallestSpike = signs.spikes == 0 ? way : std::min(signs.smallestSpike, way);
            ++signs.spikes;
            signs.largestSpike = std::max(signs.largestSpike, way);
            signs.longestSpike = std::max(signs.longestSpike, steps[*back].time - step.time);
            i = *back;
        } else {
            jumps.push_back(
                {std::llround(std::min(step.from, step.to)), std::llround(std::max(step.from, step.to)), 1});
        }
    }
    signs.gaps = gapsOf(std::move(jumps));
    signs.fastest = percentileOf(std::move(speeds), 0.95);
    return signs;
}

std::int64_t quantumOf(const std::vector<std::int64_t>& values) {
    const std::set<std::int64_t> distinct(values.begin(), values.end());
    if (distinct.size() < 8)
        return 1;
    std::int64_t quantum = 1;
    while (quantum < kLargestQuantum) {
        const std::int64_t next = 2 * quantum;
        std::size_t fitting = 0;
        const std::int64_t first = *std::next(distinct.begin(), static_cast<std::ptrdiff_t>(distinct.size() / 2));
        for (const std::int64_t value : distinct)
            fitting += (value - first) % next == 0 ? 1 : 0;
        if (100 * fitting < 99 * distinct.size())
            break;
        quantum = next;
    }
    return quantum;
}

} // namespace flowhand
