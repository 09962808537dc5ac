#include "bench/calibration.h"

#include <algorithm>
#include <cmath>

#include "base/names.h"
#include "base/signal.h"
#include "bench/places.h"
#include "bench/statistics.h"
#include "rig/axisfilter.h"

namespace flowhand {

namespace {

/// An end counts as held where the lever rested this near to the 0.5 or 99.5 percentile, as a share of the travel.
constexpr double kEndShare = 0.01;
/// Noise that a hand and a converter have; less travel is none.
constexpr double kLeastTravelSigmas = 20.0;
/// A spring's centre lies between these shares of the travel, and one return is nearer to the next than so much of it.
constexpr double kCentreFrom = 0.1;
constexpr double kCentreSpread = 0.15;
constexpr Duration kLeastReturn = std::chrono::seconds(1);
constexpr std::size_t kLeastReturns = 3;
/// Three sigma: what noise does not leave 997 times of 1,000.
constexpr double kNoiseSigmas = 3.0;
/// A gate's band may take this share of the way to the next gate, so that there is as much between them.
constexpr double kMostBandShare = 1.0 / 3.0;
/// Beyond what was seen a band gets as much again: another day's hand is not today's.
constexpr double kBandReserve = 2.0;
/// ... and at least this share of the way to the next gate: an end gate shows its play from one side only.
constexpr double kLeastBandShare = 0.1;
/// A lever whose travel has fewer places than this cannot be set to 1 %.
constexpr double kLeastSteps = 100.0;

std::string percent(double share) {
    return numberText(100 * share) + " %";
}

std::int64_t roundUp(double counts) {
    return static_cast<std::int64_t>(std::ceil(counts - 1e-9));
}

class AxisCalibrator {
public:
    AxisCalibrator(const Series& series, const AxisAsk& ask)
        : m_ask(ask), m_resting(restingOf(series)),
          m_converter(static_cast<double>(series.input.highest - series.input.lowest) + 1) {}

    BenchResult<AxisCalibration> run() {
        m_out.noise = std::round(100 * std::max(m_resting.sigma, kRoundingNoise)) / 100;
        BenchStatus status = findEnds();
        if (status && m_ask.hasCentre)
            status = findCentre();
        if (status && m_ask.hasIdle)
            status = findIdle();
        if (status && !m_ask.gates.empty())
            status = findGates();
        if (status && !m_ask.values.empty())
            status = findValues();
        if (!status)
            return tl::unexpected(status.error());
        judgeRepeat();
        judgeNoise();
        return std::move(m_out);
    }

private:
    BenchStatus findEnds() {
        const double travel = m_resting.high - m_resting.low;
        if (m_resting.dwells.empty() || travel < std::max(3.0, kLeastTravelSigmas * m_resting.sigma))
            return benchFailure(
                "did-not-move",
                (m_resting.dwells.empty()
                     ? phrase("it did not move from end to end (counts {1} to {2}, never at rest); move it to one end, "
                              "hold it there for a second, then to the other, three times")
                     : phrase("it did not move from end to end (counts {1} to {2}); move it to one end, hold it there "
                              "for a second, then to the other, three times"))
                    .with(numberText(m_resting.low), numberText(m_resting.high)));
        const double near = std::max(kEndShare * travel, 2 * m_resting.tolerance);
        const auto rise = [](const Dwell& a, const Dwell& b) {
            return a.at < b.at;
        };
        const auto [lowest, highest] = std::minmax_element(m_resting.dwells.begin(), m_resting.dwells.end(), rise);
        if (lowest->at - m_resting.low > near || m_resting.high - highest->at > near)
            return benchFailure(
                "end-not-held",
                lowest->at - m_resting.low > near
                    ? phrase("it reached its lowest counts ({1}) but was not held there; hold it at each end for a "
                             "second")
                          .with(numberText(m_resting.low))
                    : phrase("it reached its highest counts ({1}) but was not held there; hold it at each end for a "
                             "second")
                          .with(numberText(m_resting.high)));
        DwellCluster lows, highs;
        for (const Dwell& dwell : m_resting.dwells) {
            if (dwell.at <= lowest->at + near)
                lows.push_back(&dwell);
            if (dwell.at >= highest->at - near)
                highs.push_back(&dwell);
        }
        const Place low = placeOf(lows);
        const Place high = placeOf(highs);
        m_out.low = m_ask.isInverted ? high : low;
        m_out.high = m_ask.isInverted ? low : high;
        m_travel = static_cast<double>(high.at - low.at);
        m_out.share = m_travel / m_converter;
        const double wander = std::max(low.spread, high.spread) / 2 + kNoiseSigmas * m_out.noise;
        m_out.endBand = std::max<std::int64_t>(1, std::min(roundUp(wander), roundUp(0.05 * m_travel)));
        return {};
    }

    BenchStatus findCentre() {
        const double from = static_cast<double>(std::min(m_out.low.at, m_out.high.at)) + kCentreFrom * m_travel;
        const double to = from + (1 - 2 * kCentreFrom) * m_travel;
        std::vector<Dwell> returns;
        for (const Dwell& dwell : m_resting.dwells)
            if (dwell.at > from && dwell.at < to && dwell.length() >= kLeastReturn)
                returns.push_back(dwell);
        const std::vector<DwellCluster> clusters = clustersOf(returns, kCentreSpread * m_travel);
        const auto most = std::max_element(clusters.begin(), clusters.end(), [](const auto& a, const auto& b) {
            return a.size() < b.size();
        });
        if (most == clusters.end() || most->size() < kLeastReturns)
            return benchFailure(
                "centre-not-found",
                phrase("it came to rest between its ends for a second only {1} times in one place; push it to one "
                       "side, let it spring back and leave it alone for two seconds, three times from each side")
                    .with(std::to_string(most == clusters.end() ? 0 : most->size())));
        CentrePlace centre{placeOf(*most), 0};
        std::vector<double> medians;
        for (const Dwell* dwell : *most)
            medians.push_back(dwell->at);
        centre.place.at = std::llround(medianOf(medians));
        double furthest = 0.0;
        for (const double at : medians)
            furthest = std::max(furthest, std::fabs(at - static_cast<double>(centre.place.at)));
        centre.deadBand = std::max<std::int64_t>(1, roundUp(furthest + kNoiseSigmas * m_out.noise));
        if (centre.place.fromBelow == 0 || centre.place.fromAbove == 0)
            m_out.findings.push_back({"centre", Soundness::Caution, phrase("it was let go from one side only"),
                                      phrase("its centre may lie elsewhere when it comes from the other"),
                                      phrase("calibrate again and let it spring back from both sides")});
        m_out.centre = std::move(centre);
        return {};
    }

    BenchStatus findIdle() {
        const BenchResult<std::vector<Place>> found = places(3, phrase("places, idle and both ends"));
        if (!found)
            return tl::unexpected(found.error());
        m_out.idle = (*found)[1];
        judgeSides("idle", phrase("idle"), *m_out.idle, true);
        m_out.endBand = std::max(m_out.endBand, roundUp(m_out.idle->spread / 2 + kNoiseSigmas * m_out.noise));
        return {};
    }

    /// The places of gates or given values; `what` names them in the error.
    BenchResult<std::vector<Place>> places(std::size_t count, const Phrase& what) {
        const std::vector<DwellCluster> clusters = placesAmong(m_resting.dwells, count, m_travel);
        std::vector<Place> found;
        for (const DwellCluster& cluster : clusters)
            found.push_back(placeOf(cluster));
        if (!found.empty())
            return found;
        std::vector<std::string> held;
        for (const DwellCluster& cluster : clustersOf(m_resting.dwells, 2 * m_resting.tolerance))
            held.push_back(numberText(cluster.front()->at) + " (" + std::to_string(cluster.size()) + ")");
        return benchFailure("places-not-found",
                            phrase("there should be {1} {2}, and it was held at other places (count, how often): {3}; "
                                   "hold each for a second, from both sides, at least twice, and nothing between them")
                                .with(std::to_string(count), what, joined(held, ", ")));
    }

    BenchStatus findGates() {
        const BenchResult<std::vector<Place>> found = places(m_ask.gates.size(), phrase("gates"));
        if (!found)
            return tl::unexpected(found.error());
        const std::size_t count = found->size();
        std::int64_t leastGap = 0;
        for (std::size_t i = 0; i < count; ++i) {
            const Place& place = (*found)[i];
            std::int64_t way = std::int64_t{1} << 40;
            if (i > 0)
                way = std::min(way, place.at - (*found)[i - 1].at);
            if (i + 1 < count)
                way = std::min(way, (*found)[i + 1].at - place.at);
            const double seen = place.spread / 2 + kNoiseSigmas * m_out.noise + 1;
            const double most = kMostBandShare * static_cast<double>(way);
            if (seen > most)
                m_out.findings.push_back(
                    {"gate", Soundness::Bad,
                     phrase("gate '{1}' was found within {2} counts, and the next gate is {3} away")
                         .with(m_ask.gates[i], numberText(place.spread), std::to_string(way)),
                     phrase("gates so wide cannot be told apart safely"),
                     phrase("deepen the notch, take play out of the linkage, or use a longer arm")});
            const double band = std::max(kBandReserve * seen, kLeastBandShare * static_cast<double>(way));
            m_out.gates.push_back(
                {m_ask.gates[i], place, std::max<std::int64_t>(1, std::llround(std::min(band, most)))});
            judgeSides("gate", phrase("gate '{1}'").with(m_ask.gates[i]), place, i > 0 && i + 1 < count);
        }
        for (std::size_t i = 1; i < count; ++i) {
            const std::int64_t gap =
                m_out.gates[i].place.at - m_out.gates[i].band - (m_out.gates[i - 1].place.at + m_out.gates[i - 1].band);
            leastGap = i == 1 ? gap : std::min(leastGap, gap);
        }
        // Out again only where noise alone cannot bring it in: six sigma.
        m_out.hysteresis = std::clamp<std::int64_t>(roundUp(2 * kNoiseSigmas * m_out.noise), 0, leastGap / 4);
        return {};
    }

    BenchStatus findValues() {
        const BenchResult<std::vector<Place>> found = places(m_ask.values.size(), phrase("places of the values given"));
        if (!found)
            return tl::unexpected(found.error());
        std::vector<Place> ordered = *found;
        if (m_ask.isInverted)
            std::reverse(ordered.begin(), ordered.end());
        std::vector<double> counts;
        for (std::size_t i = 0; i < ordered.size(); ++i) {
            m_out.values.push_back({m_ask.values[i], ordered[i]});
            counts.push_back(static_cast<double>(ordered[i].at));
            judgeSides("value", phrase("the place of {1}").with(numberText(m_ask.values[i])), ordered[i],
                       i > 0 && i + 1 < ordered.size());
        }
        if (const BenchStatus status = takeCentre(); !status)
            return status;
        if (counts.size() >= 3)
            m_out.linearity = 100 * closestLine(m_ask.values, counts).worst / m_converter;
        return {};
    }

    /// One of the values is the centre's, and stands where it springs back to.
    BenchStatus takeCentre() {
        if (!m_out.centre)
            return {};
        const std::int64_t centre = m_out.centre->place.at;
        const auto nearest =
            std::min_element(m_out.values.begin(), m_out.values.end(), [&](const ValuePlace& a, const ValuePlace& b) {
                return std::abs(a.place.at - centre) < std::abs(b.place.at - centre);
            });
        if (static_cast<double>(std::abs(nearest->place.at - centre)) > kCentreSpread * m_travel)
            return benchFailure("places-not-found",
                                phrase("it springs back to count {1}, and none of the values is of that place; give "
                                       "the value of its centre too")
                                    .with(std::to_string(centre)));
        nearest->place.at = centre;
        return {};
    }

    void judgeSides(const char* check, const Phrase& what, const Place& place, bool hasBothSides) {
        if (!hasBothSides || (place.fromBelow > 0 && place.fromAbove > 0))
            return;
        m_out.findings.push_back({check, Soundness::Caution, phrase("{1} was come to from one side only").with(what),
                                  phrase("its backlash is not known, and coming from the other side may miss its band"),
                                  phrase("calibrate again and move through all places upwards and downwards")});
    }

    void judgeRepeat() {
        std::vector<const Place*> all = {&m_out.low, &m_out.high};
        if (m_out.centre)
            all.push_back(&m_out.centre->place);
        if (m_out.idle)
            all.push_back(&*m_out.idle);
        for (const GatePlace& gate : m_out.gates)
            all.push_back(&gate.place);
        for (const ValuePlace& value : m_out.values)
            all.push_back(&value.place);
        std::vector<double> backlashes;
        bool isRepeated = true;
        for (const Place* place : all) {
            m_out.repeatPercent = std::max(m_out.repeatPercent, 100 * place->repeat / m_travel);
            isRepeated = isRepeated && place->visits > 1;
            if (place->backlash)
                backlashes.push_back(std::fabs(*place->backlash));
        }
        if (!backlashes.empty())
            m_out.backlash = medianOf(backlashes);
        if (!isRepeated) {
            m_out.findings.push_back({"repeat", Soundness::Caution, phrase("not every place was held twice"),
                                      phrase("whether it comes back to the same count is not known"),
                                      phrase("calibrate again and visit every place at least twice")});
            return;
        }
        const Soundness verdict = m_out.repeatPercent > kRepeatBad       ? Soundness::Bad
                                  : m_out.repeatPercent > kRepeatCaution ? Soundness::Caution
                                                                         : Soundness::Good;
        m_out.findings.push_back(
            {"repeat", verdict, phrase("comes back within {1} % of its travel").with(numberText(m_out.repeatPercent)),
             verdict == Soundness::Good ? phrase("well inside the 3 % that a lever of a training device may be off")
                                        : phrase("a lever of a training device may be off by 3 % at most"),
             verdict == Soundness::Good
                 ? Phrase()
                 : phrase("look for play in the rod and its joints, a loose knob or a slipping shaft")});
    }

    void judgeNoise() {
        const double steps = m_travel / (kPeakToPeakSigmas * m_out.noise);
        const Soundness verdict = steps < kLeastSteps / 4 ? Soundness::Bad
                                  : steps < kLeastSteps   ? Soundness::Caution
                                                          : Soundness::Good;
        m_out.findings.push_back(
            {"resolution", verdict,
             phrase("its travel uses {1} of the converter's range and has {2} places that noise does not blur")
                 .with(percent(m_out.share), numberText(std::floor(steps))),
             verdict == Soundness::Good ? phrase("100 are enough to set it to 1 %")
                                        : phrase("fewer than 100 cannot be set to 1 %"),
             verdict == Soundness::Good ? Phrase()
                                        : phrase("use a longer arm or a rod that turns the potentiometer further, and "
                                                 "see to the noise with 'flowhand bench health'")});
    }

    const AxisAsk& m_ask;
    Resting m_resting;
    double m_converter;
    double m_travel = 0.0;
    AxisCalibration m_out;
};

} // namespace

BenchResult<AxisCalibration> calibrateAxis(const Series& series, const AxisAsk& ask) {
    return AxisCalibrator(series, ask).run();
}

} // namespace flowhand
