#pragma once

#include <cstddef>
#include <vector>

#include "base/sample.h"

namespace flowhand {

/// The samples of one signal, column by column, in the order of time; of several at one time only the last.
struct SignalSamples {
    /// Who made the samples from `from` on, and by what.
    struct Maker {
        std::size_t from = 0;
        Actor actor = Actor::Machine;
        Origin origin = Origin::Practice;
        ControlId control = kNoControl;
    };

    std::vector<Time> times;
    std::vector<double> values; ///< NaN: unknown
    std::vector<Maker> makers;  ///< in the order of `from`

    [[nodiscard]] std::size_t size() const { return times.size(); }
    /// At or after the last one.
    void append(const Sample& sample);
    /// Those of a later stretch of the same signal.
    void append(const SignalSamples& later);
    /// Later ones by one maker, at rising times, as many as there are values; his `from` does not matter.
    void append(Maker maker, const std::vector<Time>& laterTimes, const std::vector<Value>& laterValues);
    /// How many lie before `time`.
    [[nodiscard]] std::size_t countBefore(Time time) const;
    /// The held value; unknown before the first.
    [[nodiscard]] Value at(Time time) const;
    [[nodiscard]] const Maker& makerOf(std::size_t sample) const;

private:
    void begin(Maker maker);
};

/// A run's samples, each signal by itself: what a review reads, and a fraction of the work to read back. Their order
/// across signals, which a judgement needs, is not in it. Once made, any thread may read it.
class SamplesBySignal {
public:
    SamplesBySignal() = default;
    explicit SamplesBySignal(const std::vector<Sample>& inOrder);

    /// In the order of time. A signal that no aircraft file could number is dropped.
    void append(const Sample& sample);
    /// To append to; none for a signal that no aircraft file could number.
    [[nodiscard]] SignalSamples* find(SignalId signal);
    /// Joins the stretches of one run that follow each other in time. On all cores.
    [[nodiscard]] static SamplesBySignal joined(std::vector<SamplesBySignal> stretches);

    /// Empty where the signal never changed.
    [[nodiscard]] const SignalSamples& operator[](SignalId signal) const;
    /// Of all signals.
    [[nodiscard]] std::size_t size() const;

private:
    std::vector<SignalSamples> m_signals; ///< by SignalId
};

} // namespace flowhand
