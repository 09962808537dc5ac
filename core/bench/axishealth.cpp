#include "bench/axishealth.h"

#include <algorithm>
#include <cmath>
#include <set>

#include "base/signal.h"
#include "bench/places.h"
#include "bench/statistics.h"
#include "bench/track.h"
#include "rig/axisfilter.h"

namespace flowhand {

namespace {

/// The narrowest training-device tolerance of a lever, +-3 % (14 CFR Part 60, A2A 2.a.8): what uses a third of it up
/// is a caution, what uses all of it up is bad. All in % of the travel.
constexpr double kCautionPercent = 1.0;
constexpr double kBadPercent = 3.0;
/// Drift is measured over a rest at least so long; thermal drift and a slipping shaft need it.
constexpr Duration kLeastRest = std::chrono::seconds(8);
/// Less than so many sigma of its noise a movement is none.
constexpr double kLeastTravelSigmas = 20.0;
/// A jump below eight sigma may be noise (differences of neighbours have 1.4 sigma), and below half a per cent of the
/// travel harms no step.
constexpr double kJumpSigmas = 9.0;
constexpr double kJumpShare = 0.005;
/// With so many reports for each count of the travel, one that never comes is missing: by chance none would be left
/// out, e^-7 is below a thousandth.
constexpr double kReportsACount = 7.0;
constexpr double kDeadCaution = 0.02;
constexpr double kDeadBad = 0.2;
/// Fewer places than this cannot be set to 1 %; four times as many are no limit to anything.
constexpr double kLeastSteps = 100.0;
constexpr double kAmpleSteps = 400.0;
constexpr std::size_t kManySpikes = 5;
/// Returns of one spring lie nearer to each other than this share of the travel, however bad it is.
constexpr double kReturnSpread = 0.15;
constexpr double kLinearityCaution = 3.0;

Soundness judged(double value, double caution, double bad) {
    return value > bad ? Soundness::Bad : value > caution ? Soundness::Caution : Soundness::Good;
}

std::string shown(double value) {
    return numberText(std::round(value * 100) / 100);
}

class AxisDoctor {
public:
    AxisDoctor(const Series& series, const AxisHealthAsk& ask)
        : m_series(series), m_ask(ask), m_resting(restingOf(series)),
          m_converter(static_cast<double>(series.input.highest - series.input.lowest) + 1) {
        for (const RawChange& point : series.points)
            if (!point.isNull)
                m_values.push_back(point.raw);
    }

    AxisHealth run() {
        m_out.travel = m_resting.high - m_resting.low;
        m_out.share = std::min(1.0, (m_out.travel + 1) / m_converter);
        m_out.sigma = m_resting.sigma;
        if (!judgeMovement())
            return std::move(m_out);
        judgeNoise();
        judgeRange();
        judgeDrift();
        judgeCodes();
        judgeTrack();
        judgePlaces();
        return std::move(m_out);
    }

private:
    void add(const char* check, Soundness verdict, Phrase text, Phrase reason, Phrase remedy) {
        if (verdict == Soundness::Good)
            remedy = {};
        m_out.findings.push_back({check, verdict, std::move(text), std::move(reason), std::move(remedy)});
    }
    [[nodiscard]] double percent(double counts) const { return 100 * counts / std::max(m_out.travel, 1.0); }

    /// What has not moved cannot be judged further.
    bool judgeMovement() {
        const std::set<std::int64_t> distinct(m_values.begin(), m_values.end());
        if (m_values.empty()) {
            add("movement", Soundness::Bad, phrase("it said nothing at all"),
                phrase("a control that says nothing cannot confirm a step"),
                phrase("move it; if nothing comes, see whether it is wired to this input with 'flowhand devices "
                       "--watch'"));
            return false;
        }
        if (distinct.size() <= 2) {
            const bool isOne = distinct.size() == 1;
            add("movement", Soundness::Bad,
                isOne ? phrase("every report says {1}").with(std::to_string(*distinct.begin()))
                      : phrase("it says nothing but {1} and {2}")
                            .with(std::to_string(*distinct.begin()), std::to_string(*distinct.rbegin())),
                isOne ? phrase("it is stuck, not connected, or was not moved")
                      : phrase("that is a switch and no lever"),
                isOne ? phrase("move it from end to end; see to its wire, the rod and the supply of its potentiometer")
                      : phrase("wire it as a contact, or see to a broken track or wiper"));
            return false;
        }
        if (m_out.travel >= kLeastTravelSigmas * m_out.sigma && !m_resting.dwells.empty())
            return true;
        measureNoise();
        add("noise", Soundness::Bad,
            m_resting.dwells.empty()
                ? phrase("it was never at rest")
                : phrase("sigma {1} counts, in a travel of {2}").with(shown(m_out.sigma), shown(m_out.travel)),
            phrase("no movement can be told from its noise"),
            phrase("it was not moved, or its wire is open: an open input picks up whatever is near; see to wiper, "
                   "ground and plug"));
        return false;
    }

    void measureNoise() {
        std::vector<double> all;
        for (const Dwell& dwell : m_resting.dwells)
            all.insert(all.end(), dwell.residuals.begin(), dwell.residuals.end());
        m_out.peakToPeak = percentileOf(all, 0.9995) - percentileOf(all, 0.0005);
        const double bits = std::log2(m_converter);
        m_out.effectiveBits = effectiveBits(m_converter, m_out.sigma, bits);
        m_out.noiseFreeBits = noiseFreeBits(m_converter, m_out.sigma, bits);
    }

    void judgeNoise() {
        measureNoise();
        const double share = percent(kPeakToPeakSigmas * std::max(m_out.sigma, kRoundingNoise));
        add("noise", judged(share, kCautionPercent, kBadPercent),
            phrase("sigma {1} counts, peak to peak {2}; {3} effective and {4} noise-free bits of {5}")
                .with(shown(m_out.sigma), shown(m_out.peakToPeak), shown(m_out.effectiveBits),
                      shown(m_out.noiseFreeBits), shown(std::log2(m_converter))),
            phrase("its noise (6.6 sigma) is {1} % of its travel; a step's band must be wider than that")
                .with(shown(share)),
            phrase("try a capacitor of 100 nF from wiper to ground at the card, a ground wire of its own, a shorter or "
                   "shielded cable away from lamps and motors, and a potentiometer of 10 kilohms"));
    }

    void judgeRange() {
        const double steps = m_out.travel / std::max(1.0, kPeakToPeakSigmas * m_out.sigma);
        add("range",
            steps < kLeastSteps / 4 ? Soundness::Bad
            : steps < kLeastSteps   ? Soundness::Caution
                                    : Soundness::Good,
            phrase("it uses {1} % of the converter's range, counts {2} to {3}")
                .with(shown(100 * m_out.share), shown(m_resting.low), shown(m_resting.high)),
            phrase("that gives {1} places that noise does not blur; 100 are enough for 1 %")
                .with(shown(std::floor(steps))),
            phrase("let the lever turn the potentiometer further: a longer arm at the lever, a shorter one at the "
                   "potentiometer, or a potentiometer of less travel"));
    }

    /// The longest stretch of rests that follow each other without a movement between them.
    void judgeDrift() {
        const std::vector<Dwell>& dwells = m_resting.dwells;
        Time begin{}, end{};
        for (std::size_t i = 0; i < dwells.size();) {
            std::size_t last = i;
            while (last + 1 < dwells.size() &&
                   dwells[last + 1].begin - dwells[last].end <= std::chrono::milliseconds(200) &&
                   std::fabs(dwells[last + 1].at - dwells[last].at) <= 4 * m_resting.tolerance)
                ++last;
            if (dwells[last].end - dwells[i].begin > end - begin) {
                begin = dwells[i].begin;
                end = dwells[last].end;
            }
            i = last + 1;
        }
        m_out.restLength = end - begin;
        if (m_out.restLength < kLeastRest) {
            add("drift", Soundness::Unmeasured,
                phrase("it was never left alone for {1} s").with(shown(seconds(kLeastRest))),
                phrase("drift shows only in a long rest"), phrase("leave it alone for ten seconds"));
            return;
        }
        const Duration part = m_out.restLength / 5;
        // The first second after a movement still holds what the hand did.
        const double first = medianBetween(begin + std::chrono::milliseconds(500), begin + part);
        m_out.drift = medianBetween(end - part, end) - first;
        const double share = percent(std::fabs(*m_out.drift));
        add("drift", judged(share, kCautionPercent / 2, kBadPercent),
            phrase("it went by {1} counts in {2} s of rest, {3} % of its travel")
                .with(shown(*m_out.drift), shown(seconds(m_out.restLength)), shown(share)),
            phrase("a lever that nobody touches must stay in its band"),
            phrase("see whether the lever sinks by its own weight (more friction), the shaft slips in its coupling, or "
                   "the supply wanders as the card warms up"));
    }

    [[nodiscard]] double medianBetween(Time begin, Time end) const {
        std::vector<double> values;
        for (const RawChange& point : m_series.points) {
            if (point.time > end)
                break;
            if (point.time < begin)
                values = {static_cast<double>(point.raw)}; // what held when the stretch began
            else
                values.push_back(static_cast<double>(point.raw));
        }
        return medianOf(std::move(values));
    }

    void judgeCodes() {
        m_out.quantum = quantumOf(m_values);
        const double steps = m_out.travel / static_cast<double>(m_out.quantum);
        std::vector<std::int64_t> within;
        for (const std::int64_t value : m_values)
            if (static_cast<double>(value) >= m_resting.low && static_cast<double>(value) <= m_resting.high)
                within.push_back(value);
        const std::set<std::int64_t> distinct(within.begin(), within.end());
        if (movingReports() >= kReportsACount * steps)
            m_out.deadCodes = std::clamp(1 - static_cast<double>(distinct.size()) / (steps + 1), 0.0, 1.0);
        const Soundness coarse = m_out.quantum > 1 && steps < kAmpleSteps
                                     ? (steps < kLeastSteps ? Soundness::Bad : Soundness::Caution)
                                     : Soundness::Good;
        const Soundness dead = judged(m_out.deadCodes.value_or(0.0), kDeadCaution, kDeadBad);
        add("dead codes", std::max(coarse, dead),
            phrase("{1}; {2}")
                .with(m_out.quantum > 1 ? phrase("it counts in steps of {1}").with(std::to_string(m_out.quantum))
                                        : phrase("it counts one by one"),
                      m_out.deadCodes
                          ? phrase("{1} % of the counts on its way never come").with(shown(100 * *m_out.deadCodes))
                          : phrase("moved too fast to see every count")),
            std::max(coarse, dead) == Soundness::Good ? phrase("fine enough for every step")
                                                      : phrase("a lever cannot stop where no count is"),
            phrase("set the card to its full resolution, or use one whose converter has the bits that it reports"));
    }

    /// Reports that came while it moved, steadily enough to meet every count.
    [[nodiscard]] double movingReports() const {
        double resting = 0;
        for (const Dwell& dwell : m_resting.dwells)
            resting += static_cast<double>(dwell.residuals.size());
        return static_cast<double>(m_values.size()) - resting;
    }

    void judgeTrack() {
        TrackSigns signs = trackSignsOf(m_series, std::max({kJumpSigmas * m_out.sigma, kJumpShare * m_out.travel,
                                                            3.0 * static_cast<double>(m_out.quantum)}));
        m_out.gaps = std::move(signs.gaps);
        m_out.spikes = signs.spikes;
        m_out.largestSpike = signs.largestSpike;
        m_out.smallestSpike = signs.smallestSpike;
        m_out.largestStep = signs.largestStep;
        m_out.longestSpike = signs.longestSpike;
        m_out.fastest = signs.fastest;
        std::vector<Phrase> where;
        for (const TrackGap& gap : m_out.gaps)
            where.push_back(phrase("{1} to {2}").with(std::to_string(gap.from), std::to_string(gap.to)));
        const Soundness verdict = !m_out.gaps.empty() || m_out.spikes >= kManySpikes ? Soundness::Bad
                                  : m_out.spikes > 0                                 ? Soundness::Caution
                                                                                     : Soundness::Good;
        const Phrase spikes = phrase("{1} spikes, the largest of {2} counts")
                                  .with(std::to_string(m_out.spikes), shown(m_out.largestSpike));
        add("jumps", verdict,
            m_out.gaps.empty() ? (m_out.spikes == 0 ? phrase("it moves without a jump") : spikes)
                               : phrase("{1}; it jumps at the counts {2}").with(spikes, joined(where, ", ")),
            verdict == Soundness::Good ? phrase("its track is whole")
                                       : phrase("so does a worn or dirty track, or a loose plug"),
            phrase("turn it quickly from end to end fifty times, then see to plug and solder; if it stays, change the "
                   "potentiometer. Until then a 'spike_limit' keeps spikes out"));
    }

    void judgePlaces() {
        std::vector<DwellCluster> clusters;
        if (m_ask.gateCount > 1)
            clusters = placesAmong(m_resting.dwells, m_ask.gateCount, m_out.travel);
        else if (!m_ask.values.empty())
            clusters = placesAmong(m_resting.dwells, m_ask.values.size(), m_out.travel);
        else if (m_ask.hasCentre)
            clusters = centreReturns();
        else
            return;
        std::vector<double> differences;
        std::vector<double> counts;
        for (const DwellCluster& cluster : clusters) {
            const Place place = placeOf(cluster);
            counts.push_back(static_cast<double>(place.at));
            if (place.backlash)
                differences.push_back(*place.backlash);
        }
        judgeHysteresis(differences);
        if (m_ask.hasCentre)
            judgeReturn(clusters);
        if (counts.size() == m_ask.values.size() && counts.size() >= 3)
            judgeLinearity(counts);
    }

    [[nodiscard]] std::vector<DwellCluster> centreReturns() const {
        std::vector<DwellCluster> all = clustersOf(m_resting.dwells, kReturnSpread * m_out.travel);
        all.erase(std::remove_if(all.begin(), all.end(),
                                 [&](const DwellCluster& cluster) {
                                     const double share = (cluster.front()->at - m_resting.low) / m_out.travel;
                                     return share < 0.1 || share > 0.9 || cluster.size() < 2;
                                 }),
                  all.end());
        std::sort(all.begin(), all.end(), [](const DwellCluster& a, const DwellCluster& b) {
            return a.size() > b.size();
        });
        all.resize(std::min<std::size_t>(all.size(), 1));
        return all;
    }

    void judgeHysteresis(const std::vector<double>& differences) {
        if (differences.empty()) {
            add("hysteresis", Soundness::Unmeasured, phrase("no place was come to from both sides"),
                phrase("hysteresis is the difference between coming to a place from above and from below"),
                phrase("move it to its places both upwards and downwards, and hold it there for a second"));
            return;
        }
        double worst = 0.0;
        for (const double difference : differences)
            if (std::fabs(difference) > std::fabs(worst))
                worst = difference;
        m_out.hysteresis = worst;
        const double share = percent(std::fabs(worst));
        add("hysteresis", judged(share, kCautionPercent, kBadPercent),
            phrase("the same place reads {1} counts apart from above and from below, {2} % of its travel ({3} % of the "
                   "applied voltage)")
                .with(shown(std::fabs(worst)), shown(share), shown(100 * std::fabs(worst) / m_converter)),
            phrase("a lever of a training device may be off by 3 % at most"),
            phrase("take the play out of the rod, its joints and the coupling: tighter eyes, a preloading spring, a "
                   "set screw on a flat"));
    }

    void judgeReturn(const std::vector<DwellCluster>& clusters) {
        if (clusters.empty()) {
            add("return", Soundness::Unmeasured, phrase("it was not seen to spring back twice"),
                phrase("the error of its return is what several returns differ by"),
                phrase("push it to one side and let go, three times from each side, two seconds apart"));
            return;
        }
        const Place place = placeOf(clusters.front());
        m_out.returnError = place.spread / 2;
        const double share = percent(*m_out.returnError);
        add("return", judged(share, kCautionPercent, kBadPercent),
            phrase("its returns lie within {1} counts of their middle, {2} % of its travel")
                .with(shown(*m_out.returnError), shown(share)),
            phrase("what it does not come back by, the dead band has to cover"),
            phrase("a stronger or second spring, less friction at the axle, and a cam or detent that pulls it to the "
                   "middle"));
    }

    void judgeLinearity(const std::vector<double>& counts) {
        m_out.linearity = 100 * closestLine(m_ask.values, counts).worst / m_converter;
        add("linearity", judged(*m_out.linearity, kLinearityCaution, 100.0),
            phrase("independent linearity {1} % of the applied voltage").with(shown(*m_out.linearity)),
            phrase("the furthest that a place lies from the closest straight line; a rod at an angle bends it"),
            phrase("let 'flowhand bench calibrate --values' bend the scale back, or mount arm and rod at right angles "
                   "in the middle of the travel"));
    }

    const Series& m_series;
    const AxisHealthAsk& m_ask;
    Resting m_resting;
    double m_converter;
    std::vector<std::int64_t> m_values;
    AxisHealth m_out;
};

} // namespace

AxisHealth measureAxis(const Series& series, const AxisHealthAsk& ask) {
    return AxisDoctor(series, ask).run();
}

} // namespace flowhand
