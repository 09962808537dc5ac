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
    void tell(const char* check, Soundness verdict, std::string text, std::string reason, std::string remedy = {}) {
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
            tell("filters", Soundness::Unmeasured, "nothing follows for its filters",
                 "it was not moved, or no movement can be told from its noise: no filter mends that");
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
        const std::string why = m_demand.band ? "its noise (6 sigma, " + countsText(kBandSigmas * sigma) +
                                                    " counts) is narrower than " + bandText()
                                              : std::string("no step judges it in a band");
        tell("low-pass", isThere ? Soundness::Caution : Soundness::Good,
             isThere ? "'smooth' is not needed and makes it late by " + millisText(m_file.axis.smooth)
                     : std::string("none is needed"),
             why, isThere ? "remove it" : "");
    }

    [[nodiscard]] std::string bandText() const {
        return "the narrowest band of " + countsText(*m_demand.band) + " counts (" + m_demand.bandOf + ")";
    }
    [[nodiscard]] std::string allowedText() const {
        return millisText(m_demand.delay) + (m_demand.delayOf.empty()
                                                 ? std::string(" at most")
                                                 : " at most, a tenth of the time of '" + m_demand.delayOf + "'");
    }

    /// The shortest low-pass that brings the noise into the band.
    void smooth(AxisLimits& wanted, double sigma) {
        const double target = *m_demand.band / kBandSigmas;
        const Duration before = wanted.median / 2;
        Duration tau = target > kRoundingNoise ? wholeMillis(lowPassFor(m_interval, target / sigma)) : Duration{};
        while (tau > Duration{} && before + tau <= m_demand.delay && sigmaBehind(wanted.median, tau) > target)
            tau = wholeMillis(fromSeconds(kLonger * seconds(tau)));
        const std::string noise =
            "its noise (6 sigma, " + countsText(kBandSigmas * sigma) + " counts) is wider than " + bandText();
        if (tau <= Duration{} || before + tau > m_demand.delay)
            return tell("low-pass", Soundness::Bad,
                        noise + (tau > Duration{} ? "; a low-pass would make it late by " + millisText(before + tau)
                                                  : std::string(", which is hardly wider than a count")),
                        "filters may make it late by " + allowedText(),
                        "take the noise away at its source, as 'noise' above says, or use more of the converter's "
                        "range");
        wanted.smooth = tau;
        const bool isAsFile = areNear(seconds(tau), seconds(m_file.axis.smooth));
        tell("low-pass", isAsFile ? Soundness::Good : Soundness::Caution,
             "a low-pass of " + millisText(tau) + " brings 6 sigma from " + countsText(kBandSigmas * sigma) + " to " +
                 countsText(kBandSigmas * sigmaBehind(wanted.median, tau)) + " counts, and makes it late by " +
                 millisText(tau) + (before > Duration{} ? ", with the median by " + millisText(before + tau) : ""),
             noise + "; filters may make it late by " + allowedText(), isAsFile ? "" : "smooth = " + timeText(tau));
    }

    void keepSpikesOut(AxisLimits& wanted) {
        const double smallest = smallestSpike();
        const double fastest = fastestStep();
        const std::string seen =
            "spikes of " + countsText(smallest) + " counts and more, for " + millisText(m_longest) + " at most";
        if (smallest > fastest && wholeMillis(m_longest + m_interval) <= m_demand.delay &&
            !isTooNarrow(sigmaBehind({}, {})))
            return limitSpikes(wanted, smallest, fastest, seen);
        const Duration median = wholeMillis(2 * m_longest + m_interval);
        if (median / 2 > m_demand.delay) {
            wanted.median = Duration{};
            return tell("spikes", Soundness::Bad, seen + "; a median would make it late by " + millisText(median / 2),
                        "filters may make it late by " + allowedText(), "see to the track, as 'jumps' above says");
        }
        const bool isAsFile = m_file.axis.median >= median && areNear(seconds(median), seconds(m_file.axis.median)) &&
                              m_file.axis.median / 2 <= m_demand.delay;
        wanted.median = isAsFile ? m_file.axis.median : median;
        tell("spikes", isAsFile ? Soundness::Good : Soundness::Caution,
             seen + ": a median of " + millisText(wanted.median) + " leaves no trace of them, and makes it late by " +
                 millisText(wanted.median / 2),
             smallest > fastest ? "'spike_limit' alone does not quiet its noise"
                                : "a hand moves as fast, so 'spike_limit' cannot tell them from a movement",
             isAsFile ? "" : "median = " + timeText(wanted.median));
    }

    void limitSpikes(AxisLimits& wanted, double smallest, double fastest, const std::string& seen) {
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
             seen + ": a jump beyond " + std::to_string(wanted.spikeLimit) + " counts that does not last for " +
                 millisText(wanted.settle) + " is none",
             "that makes no movement of a hand late, which goes by " + countsText(fastest) +
                 " counts at most from report to report",
             isAsFile ? ""
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
             "changes below three times " + numberText(isAsFile ? m_file.axis.noise : m_out.noise) +
                 " counts, its noise, do not travel",
             isAsFile ? "as the rig file says" : "the rig file says " + numberText(m_file.axis.noise),
             isAsFile ? "" : "noise = " + exactText(m_out.noise, {}));
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
        const std::string why =
            "noise alone (6 sigma, " + std::to_string(wanted) + " counts) must not bring it out and in";
        if (m_file.hysteresis >= wanted)
            return tell("hysteresis", Soundness::Good, std::to_string(m_file.hysteresis) + " counts are enough", why);
        const std::int64_t room = roomForHysteresis();
        if (wanted > room)
            return tell("hysteresis", Soundness::Bad,
                        "it should be " + std::to_string(wanted) + " counts, and there is room for " +
                            std::to_string(std::max<std::int64_t>(room, 0)),
                        why, "see to the noise, or calibrate again so that its places lie further apart");
        tell("hysteresis", Soundness::Caution, std::to_string(m_file.hysteresis) + " counts are too few", why,
             "hysteresis = " + std::to_string(wanted));
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
            return tell("debounce", Soundness::Unmeasured, "nothing follows for 'debounce'", "no contact changed",
                        "work it a few times while it is measured");
        const Duration wanted = wholeMillis(fromSeconds(kBounceReserve * seconds(longest)));
        const Duration limit = std::min(shortest, m_demand.delay);
        const std::string bounce = "it bounces for " + millisText(longest) + " at most";
        const std::string held =
            shortest == kForever ? std::string() : ", and its shortest state lasts for " + millisText(shortest);
        if (wanted > limit)
            return tell("debounce", Soundness::Bad, bounce + ": half as much again is " + millisText(wanted) + held,
                        wanted > shortest ? "a debounce longer than a state of the contact swallows it"
                                          : "filters may make it late by " + allowedText(),
                        "clean or change the switch");
        if (m_file.debounce >= wanted && m_file.debounce <= limit)
            return tell("debounce", Soundness::Good, millisText(m_file.debounce) + " are right", bounce + held);
        const Duration fit = std::max<Duration>(wanted, milliseconds(1));
        tell("debounce", Soundness::Caution,
             millisText(m_file.debounce) + (m_file.debounce < wanted ? " are too short" : " are too long"),
             bounce + held + "; the first edge passes at once, what follows within the debounce waits for its end",
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
