#include "bench/places.h"

#include <algorithm>
#include <cmath>

#include "bench/statistics.h"

namespace flowhand {

namespace {

/// Visits of one gate lie within this share of the travel, gates further apart: a lever of ten gates has 11 % from one
/// to the next, and a sloppy one plays by a few.
constexpr double kGap = 0.03;
/// Where that does not fit: the gaps between places are at least so many times those within.
constexpr double kGapRatio = 2.0;
/// ... and this share of the travel, or noise parts them.
constexpr double kLeastGap = 0.01;

std::vector<DwellCluster> sorted(const std::vector<Dwell>& dwells) {
    DwellCluster all;
    for (const Dwell& dwell : dwells)
        all.push_back(&dwell);
    std::sort(all.begin(), all.end(), [](const Dwell* a, const Dwell* b) {
        return a->at < b->at;
    });
    return {all};
}

std::vector<DwellCluster> parted(const DwellCluster& all, double gap) {
    std::vector<DwellCluster> clusters;
    for (const Dwell* dwell : all) {
        if (clusters.empty() || dwell->at - clusters.back().back()->at > gap)
            clusters.emplace_back();
        clusters.back().push_back(dwell);
    }
    return clusters;
}

bool isVisitedOnce(const DwellCluster& cluster) {
    return cluster.size() < 2;
}

/// The middle of the values: of extremes, so that a band about it is as narrow as can be.
double middleOf(const std::vector<double>& values) {
    const auto [low, high] = std::minmax_element(values.begin(), values.end());
    return (*low + *high) / 2;
}

} // namespace

std::vector<DwellCluster> clustersOf(const std::vector<Dwell>& dwells, double gap) {
    return parted(sorted(dwells).front(), gap);
}

std::vector<DwellCluster> placesAmong(const std::vector<Dwell>& dwells, std::size_t count, double travel) {
    const DwellCluster all = sorted(dwells).front();
    std::vector<DwellCluster> clusters = parted(all, kGap * travel);
    if (clusters.size() != count)
        clusters.erase(std::remove_if(clusters.begin(), clusters.end(), isVisitedOnce), clusters.end());
    if (clusters.size() == count)
        return clusters;
    if (count < 2 || all.size() < 2 * count)
        return {};
    std::vector<double> gaps;
    for (std::size_t i = 1; i < all.size(); ++i)
        gaps.push_back(all[i]->at - all[i - 1]->at);
    std::sort(gaps.rbegin(), gaps.rend());
    if (gaps[count - 2] < std::max(kGapRatio * gaps[count - 1], kLeastGap * travel))
        return {};
    clusters = parted(all, (gaps[count - 2] + gaps[count - 1]) / 2);
    return std::any_of(clusters.begin(), clusters.end(), isVisitedOnce) ? std::vector<DwellCluster>() : clusters;
}

Place placeOf(const DwellCluster& cluster) {
    std::vector<double> visits, below, above;
    for (const Dwell* dwell : cluster) {
        visits.push_back(dwell->at);
        if (dwell->approach == Approach::Below)
            below.push_back(dwell->at);
        if (dwell->approach == Approach::Above)
            above.push_back(dwell->at);
    }
    Place place;
    place.visits = visits.size();
    place.fromBelow = below.size();
    place.fromAbove = above.size();
    if (visits.empty())
        return place;
    place.at = std::llround(middleOf(visits));
    place.spread = *std::max_element(visits.begin(), visits.end()) - *std::min_element(visits.begin(), visits.end());
    for (std::size_t i = 0; i < visits.size() && visits.size() > 1; ++i) {
        std::vector<double> others = visits;
        others.erase(others.begin() + static_cast<std::ptrdiff_t>(i));
        place.repeat = std::max(place.repeat, std::fabs(visits[i] - middleOf(others)));
    }
    if (!below.empty() && !above.empty())
        place.backlash = medianOf(above) - medianOf(below);
    return place;
}

} // namespace flowhand
