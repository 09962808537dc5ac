#include "bench/filteradvice.h"

#include <algorithm>
#include <cmath>

#include "base/signal.h"
#include "bench/measurednoise.h"
#include "bench/millistext.h"

namespace flowhand {

namespace {

using std::chrono::milliseconds;

constexpr double kBandSigmas = 6.0; ///< as the coverage asks for (obstacles.h)
constexpr double kHysteresisSigmas = 6.0;
/// What a bounce may be longer tomorrow.
constexpr double kBounceReserve = 1.5;
/// A hand slams a lever over its whole travel in a quarter of a second (our own choice); the fastest of a movement of
/// least jerk is 15/8 of its mean (Flash & Hogan 1985).
constexpr double kFastHand = 1.9 / 0.25; ///< travels a second
/// What differs by less from what is advised is left as it is.
constexpr double kNear = 0.25;
/// Steps in which a time constant is made longer.
constexpr double kLonger = 1.25;

Duration wholeMillis(Duration time) {
    return std::chrono::ceil<milliseconds>(time);
}

/// As a rig file has it.
std::string timeText(Duration time) {
    return '"' + std::to_string(wholeMillis(time).count() / 1'000'000) + " ms\"";
}

std::string countsText(double counts) {
    return numberText(std::round(counts * 10) / 10);
}

bool areNear(double a, double b) {
    return std::fabs(a - b) <= kNear * std::max(a, b);
}

/// One axis of the control.
struct Measured {
    const Series* series = nullptr;
    const AxisHealth* health = nullptr;
    Resting resting;
    Duration interval{};
};

class Advisor {
public:
    Advisor(const BenchControl& control, const ControlHealth& health, const Measurement& measurement,
            const StepDemand& demand)
        : m_control(control), m_health(health), m_demand(demand), m_file(control.filters) {
        m_out.allowed = demand.delay;
        for (const BenchAxis& axis : control.axes) {
            const InputRef& input = control.control->inputs()[axis.input];
            const auto found = std::find_if(health.axes.begin(), health.axes.end(), [&](const auto& other) {
                return other.first == control.inputNames[axis.input];
            });
            const Series* series = seriesIn(measurement, input);
            if (found != health.axes.end() && series != nullptr && axis.isSwitched != true) // its second range
                m_axes.push_back(
                    {series, &found->second, restingOf(*series), measurement.at(input.device).medianInterval()});
        }
    }

    FilterAdvice run() {
        if (m_file.isOfAxis && areMeasured())
            adviseAxis();
        if (m_file.isOfContact)
            adviseDebounce();
        return std::move(m_out);
    }

private:
    void tell(const char* check, Soundness verdict, Phrase text, Phrase reason, Phrase remedy = {}) {
        m_out.findings.push_back({check, verdict, std::move(text), std::move(reason), std::move(remedy)});
    }
    /// Empty: to be removed.
    void set(const char* key, std::string value) { m_out.keys.push_back({key, std::move(value)}); }

    /// Whether there is more than noise to judge: measureAxis() stops early where there is not.
    bool areMeasured() {
        const bool areGood = !m_axes.empty() && std::all_of(m_axes.begin(), m_axes.end(), [](const Measured& axis) {
            return findingOf(axis.health->findings, "range") != nullptr && axis.interval > Duration{};
        });
        if (!areGood)
            tell("filters", Soundness::Unmeasured, phrase("nothing follows for its filters"),
                 phrase("it was not moved, or no movement can be told from its noise: no filter mends that"));
        return areGood;
    }

    template <class Number, class Get>
    Number most(Get get) const {
        Number worst{};
        for (const Measured& axis : m_axes)
            worst = std::max<Number>(worst, get(axis));
        return worst;
    }

    /// In counts, behind these filters; with no rest long enough, by the formula.
    [[nodiscard]] double sigmaBehind(Duration median, Duration smooth) const {
        return std::max(
            kRoundingNoise, most<double>([&](const Measured& axis) {
                if (const std::optional<double> left = noiseBehind(*axis.series, axis.resting, median, smooth))
                    return *left;
                return axis.health->sigma * (smooth > Duration{} ? lowPassShare(axis.interval, smooth) : 1.0);
            }));
    }

    // --- axes ---

    void adviseAxis() {
        m_spikes = most<std::size_t>([](const Measured& axis) {
            return axis.health->spikes;
        });
        m_longest = most<Duration>([](const Measured& axis) {
            return axis.health->longestSpike;
        });
        m_interval = most<Duration>([](const Measured& axis) {
            return axis.interval;
        });
        AxisLimits wanted = m_file.axis;
        wanted.smooth = Duration{};
        if (m_spikes > 0)
            keepSpikesOut(wanted);
        else if (wanted.median / 2 > m_demand.delay)
            wanted.median = Duration{}; // else it stays: spikes are rare, and none today is no reason to take it away
        const double sigma = sigmaBehind(wanted.median, {});
        if (isTooNarrow(sigma))
            smooth(wanted, sigma);
        else
            tellNoLowPass(sigma);
        if (wanted.median > Duration{} || wanted.smooth > Duration{})
            wanted.spikeLimit = 0; // they make jumps round, so a limit does not go with them
        m_out.delay = wanted.median / 2 + wanted.smooth;
        m_out.noise = std::ceil(100 * sigmaBehind(wanted.median, wanted.smooth)) / 100;
        write(wanted);
        adviseNoise();
        if (m_file.isOfGates)
            adviseHysteresis();
    }

    [[nodiscard]] bool isTooNarrow(double sigma) const { return m_demand.band && kBandSigmas * sigma > *m_demand.band; }

    void tellNoLowPass(double sigma) {
        const bool isThere = m_file.axis.smooth > Duration{};
        Phrase why = m_demand.band ? phrase("its noise (6 sigma, {1} counts) is narrower than {2}")
                                         .with(countsText(kBandSigmas * sigma), bandText())
                                   : phrase("no step judges it in a band");
        tell("low-pass", isThere ? Soundness::Caution : Soundness::Good,
             isThere ? phrase("'smooth' is not needed and makes it late by {1}").with(millisText(m_file.axis.smooth))
                     : phrase("none is needed"),
             std::move(why), isThere ? phrase("remove it") : Phrase());
    }

    [[nodiscard]] Phrase bandText() const {
        return phrase("the narrowest band of {1} counts ({2})").with(countsText(*m_demand.band), m_demand.bandOf);
    }
    [[nodiscard]] Phrase allowedText() const {
        return m_demand.delayOf.empty()
                   ? phrase("filters may make it late by {1} at most").with(millisText(m_demand.delay))
                   : phrase("filters may make it late by {1} at most, a tenth of the time of '{2}'")
                         .with(millisText(m_demand.delay), m_demand.delayOf);
    }

    /// The shortest low-pass that brings the noise into the band.
    void smooth(AxisLimits& wanted, double sigma) {
        const double target = *m_demand.band / kBandSigmas;
        const Duration before = wanted.median / 2;
        Duration tau = target > kRoundingNoise ? wholeMillis(lowPassFor(m_interval, target / sigma)) : Duration{};
        while (tau > Duration{} && before + tau <= m_demand.delay && sigmaBehind(wanted.median, tau) > target)
            tau = wholeMillis(fromSeconds(kLonger * seconds(tau)));
        const Phrase noise = phrase("its noise (6 sigma, {1} counts) is wider than {2}")
                                 .with(countsText(kBandSigmas * sigma), bandText());
        if (tau <= Duration{} || before + tau > m_demand.delay)
            return tell("low-pass", Soundness::Bad,
                        tau > Duration{}
                            ? phrase("{1}; a low-pass would make it late by {2}").with(noise, millisText(before + tau))
                            : phrase("{1}, which is hardly wider than a count").with(noise),
                        allowedText(),
                        phrase("take the noise away at its source, as 'noise' above says, or use more of the "
                               "converter's range"));
        wanted.smooth = tau;
        const bool isAsFile = areNear(seconds(tau), seconds(m_file.axis.smooth));
        tell("low-pass", isAsFile ? Soundness::Good : Soundness::Caution,
             (before > Duration{} ? phrase("a low-pass of {1} brings 6 sigma from {2} to {3} counts, and makes it late "
                                           "by {4}, with the median by {5}")
                                  : phrase("a low-pass of {1} brings 6 sigma from {2} to {3} counts, and makes it late "
                                           "by {4}"))
                 .with(millisText(tau), countsText(kBandSigmas * sigma),
                       countsText(kBandSigmas * sigmaBehind(wanted.median, tau)), millisText(tau),
                       millisText(before + tau)),
             phrase("{1}; {2}").with(noise, allowedText()), isAsFile ? std::string() : "smooth = " + timeText(tau));
    }

    void keepSpikesOut(AxisLimits& wanted) {
        const double smallest = smallestSpike();
        const double fastest = fastestStep();
        const Phrase seen =
            phrase("spikes of {1} counts and more, for {2} at most").with(countsText(smallest), millisText(m_longest));
        if (smallest > fastest && wholeMillis(m_longest + m_interval) <= m_demand.delay &&
            !isTooNarrow(sigmaBehind({}, {})))
            return limitSpikes(wanted, smallest, fastest, seen);
        const Duration median = wholeMillis(2 * m_longest + m_interval);
        if (median / 2 > m_demand.delay) {
            wanted.median = Duration{};
            return tell("spikes", Soundness::Bad,
                        phrase("{1}; a median would make it late by {2}").with(seen, millisText(median / 2)),
                        allowedText(), phrase("see to the track, as 'jumps' above says"));
        }
        const bool isAsFile = m_file.axis.median >= median && areNear(seconds(median), seconds(m_file.axis.median)) &&
                              m_file.axis.median / 2 <= m_demand.delay;
        wanted.median = isAsFile ? m_file.axis.median : median;
        tell("spikes", isAsFile ? Soundness::Good : Soundness::Caution,
             phrase("{1}: a median of {2} leaves no trace of them, and makes it late by {3}")
                 .with(seen, millisText(wanted.median), millisText(wanted.median / 2)),
             smallest > fastest ? phrase("'spike_limit' alone does not quiet its noise")
                                : phrase("a hand moves as fast, so 'spike_limit' cannot tell them from a movement"),
             isAsFile ? std::string() : "median = " + timeText(wanted.median));
    }

    void limitSpikes(AxisLimits& wanted, double smallest, double fastest, const Phrase& seen) {
        const AxisLimits& file = m_file.axis;
        const Duration settle = wholeMillis(m_longest + m_interval);
        const bool isAsFile = static_cast<double>(file.spikeLimit) > fastest &&
                              static_cast<double>(file.spikeLimit) < smallest && file.settle >= settle &&
                              file.settle <= m_demand.delay;
        if (!isAsFile) {
            wanted.spikeLimit = std::llround((smallest + fastest) / 2);
            wanted.settle = settle;
        }
        wanted.median = Duration{};
        tell("spikes", isAsFile ? Soundness::Good : Soundness::Caution,
             phrase("{1}: a jump beyond {2} counts that does not last for {3} is none")
                 .with(seen, std::to_string(wanted.spikeLimit), millisText(wanted.settle)),
             phrase("that makes no movement of a hand late, which goes by {1} counts at most from report to report")
                 .with(countsText(fastest)),
             isAsFile ? std::string()
                      : "spike_limit = " + std::to_string(wanted.spikeLimit) + ", settle = " + timeText(wanted.settle));
    }

    [[nodiscard]] double smallestSpike() const {
        double smallest = 0.0;
        for (const Measured& axis : m_axes)
            if (axis.health->spikes > 0 && (smallest == 0.0 || axis.health->smallestSpike < smallest))
                smallest = axis.health->smallestSpike;
        return smallest;
    }
    /// From one report to the next, with what the filter holds back as noise.
    [[nodiscard]] double fastestStep() const {
        return most<double>([](const Measured& axis) {
            const double slam = kFastHand * axis.health->travel * seconds(axis.interval);
            return std::max(axis.health->largestStep, slam) + 3 * std::max(axis.health->sigma, kRoundingNoise);
        });
    }

    void write(const AxisLimits& wanted) {
        const AxisLimits& file = m_file.axis;
        const auto timeOf = [](Duration time) {
            return time > Duration{} ? timeText(time) : std::string();
        };
        if (wanted.spikeLimit != file.spikeLimit || wanted.settle != file.settle) {
            set("spike_limit", wanted.spikeLimit == 0 ? "" : std::to_string(wanted.spikeLimit));
            set("settle", wanted.spikeLimit == 0 ? "" : timeOf(wanted.settle));
        }
        if (wanted.median != file.median)
            set("median", timeOf(wanted.median));
        const bool isBoth = wanted.smooth > Duration{} && file.smooth > Duration{};
        if (wanted.smooth != file.smooth && !(isBoth && areNear(seconds(wanted.smooth), seconds(file.smooth))))
            set("smooth", timeOf(wanted.smooth));
    }

    void adviseNoise() {
        const bool isQuieted = std::any_of(m_out.keys.begin(), m_out.keys.end(), [](const RigKey& key) {
            return key.key == "median" || key.key == "smooth";
        });
        const bool isAsFile = !isQuieted && areNear(m_out.noise, m_file.axis.noise);
        tell("least change", isAsFile ? Soundness::Good : Soundness::Caution,
             phrase("changes below three times {1} counts, its noise, do not travel")
                 .with(numberText(isAsFile ? m_file.axis.noise : m_out.noise)),
             isAsFile ? phrase("as the rig file says")
                      : phrase("the rig file says {1}").with(numberText(m_file.axis.noise)),
             isAsFile ? std::string() : "noise = " + exactText(m_out.noise, {}));
        if (!isAsFile)
            set("noise", exactText(m_out.noise, {}));
    }

    /// The most that a hysteresis can be without one place's reaching into the next.
    [[nodiscard]] std::int64_t roomForHysteresis() const {
        const AxisInFile& axis = m_control.axes.front().inFile;
        if (axis.idle)
            return std::abs(axis.split - *axis.idle) - static_cast<std::int64_t>(std::ceil(3 * m_out.noise));
        std::int64_t room = std::int64_t{1} << 40;
        for (std::size_t i = 1; i < axis.gates.size(); ++i)
            room =
                std::min(room, axis.gates[i].at - axis.gates[i].band - axis.gates[i - 1].at - axis.gates[i - 1].band);
        return room / 2; // as much again stays between the gates
    }

    void adviseHysteresis() {
        const auto wanted = static_cast<std::int64_t>(std::ceil(kHysteresisSigmas * m_out.noise));
        const Phrase why =
            phrase("noise alone (6 sigma, {1} counts) must not bring it out and in").with(std::to_string(wanted));
        if (m_file.hysteresis >= wanted)
            return tell("hysteresis", Soundness::Good,
                        phrase("{1} counts are enough").with(std::to_string(m_file.hysteresis)), why);
        const std::int64_t room = roomForHysteresis();
        if (wanted > room)
            return tell("hysteresis", Soundness::Bad,
                        phrase("it should be {1} counts, and there is room for {2}")
                            .with(std::to_string(wanted), std::to_string(std::max<std::int64_t>(room, 0))),
                        why, phrase("see to the noise, or calibrate again so that its places lie further apart"));
        tell("hysteresis", Soundness::Caution, phrase("{1} counts are too few").with(std::to_string(m_file.hysteresis)),
             why, "hysteresis = " + std::to_string(wanted));
        set("hysteresis", std::to_string(wanted));
    }

    // --- contacts ---

    void adviseDebounce() {
        Duration longest{};
        Duration shortest = kForever;
        std::size_t changes = 0;
        for (const auto& [name, contact] : m_health.contacts) {
            changes += contact.changes;
            longest = std::max(longest, contact.longestBounce);
            if (contact.shortestState > Duration{})
                shortest = std::min(shortest, contact.shortestState);
        }
        if (changes == 0)
            return tell("debounce", Soundness::Unmeasured, phrase("nothing follows for 'debounce'"),
                        phrase("no contact changed"), phrase("work it a few times while it is measured"));
        const Duration wanted = wholeMillis(fromSeconds(kBounceReserve * seconds(longest)));
        const Duration limit = std::min(shortest, m_demand.delay);
        const Phrase bounce = phrase("it bounces for {1} at most").with(millisText(longest));
        const auto held = [shortest](Phrase what) {
            return shortest == kForever ? what
                                        : phrase("{1}, and its shortest state lasts for {2}")
                                              .with(std::move(what), millisText(shortest));
        };
        if (wanted > limit)
            return tell("debounce", Soundness::Bad,
                        held(phrase("{1}: half as much again is {2}").with(bounce, millisText(wanted))),
                        wanted > shortest ? phrase("a debounce longer than a state of the contact swallows it")
                                          : allowedText(),
                        phrase("clean or change the switch"));
        if (m_file.debounce >= wanted && m_file.debounce <= limit)
            return tell("debounce", Soundness::Good, phrase("{1} are right").with(millisText(m_file.debounce)),
                        held(bounce));
        const Duration fit = std::max<Duration>(wanted, milliseconds(1));
        tell("debounce", Soundness::Caution,
             (m_file.debounce < wanted ? phrase("{1} are too short") : phrase("{1} are too long"))
                 .with(millisText(m_file.debounce)),
             phrase("{1}; the first edge passes at once, what follows within the debounce waits for its end")
                 .with(held(bounce)),
             "debounce = " + timeText(fit));
        set("debounce", timeText(fit));
    }

    const BenchControl& m_control;
    const ControlHealth& m_health;
    const StepDemand& m_demand;
    const FiltersInFile& m_file;
    std::vector<Measured> m_axes;
    std::size_t m_spikes = 0;
    Duration m_longest{};  ///< spike
    Duration m_interval{}; ///< between reports
    FilterAdvice m_out;
};

} // namespace

FilterAdvice adviseFilters(const BenchControl& control, const ControlHealth& health, const Measurement& measurement,
                           const StepDemand& demand) {
    return Advisor(control, health, measurement, demand).run();
}

} // namespace flowhand
