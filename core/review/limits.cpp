#include "review/limits.h"

namespace flowhand {

namespace {

/// Places over a signal's range that are tried; bounds between them are then halved down to.
constexpr int kPlaces = 400;
constexpr int kHalvings = 40;

class RangeFinder {
public:
    RangeFinder(const Condition& condition, SignalId signal, const std::vector<Value>& values)
        : m_condition(condition), m_signal(signal), m_values(values) {}

    std::vector<ValueRange> find(const Signal& signal) {
        if (signal.kind != SignalKind::Number)
            return findDiscrete(signal.kind == SignalKind::OnOff ? 2 : static_cast<int>(signal.positions.size()));
        if (!(signal.highest > signal.lowest))
            return {};
        std::vector<ValueRange> ranges;
        double before = signal.lowest;
        bool wasAllowed = isAllowed(before);
        if (wasAllowed)
            ranges.push_back({before, before});
        for (int i = 1; i <= kPlaces; ++i) {
            const double place = signal.lowest + (signal.highest - signal.lowest) * i / kPlaces;
            const bool isNow = isAllowed(place);
            if (isNow && !wasAllowed)
                ranges.push_back({bound(before, place), place});
            if (!isNow && wasAllowed)
                ranges.back().highest = bound(place, before);
            else if (isNow)
                ranges.back().highest = place;
            wasAllowed = isNow;
            before = place;
        }
        const bool isAll =
            ranges.size() == 1 && ranges[0].lowest == signal.lowest && ranges[0].highest == signal.highest;
        return isAll ? std::vector<ValueRange>() : ranges;
    }

private:
    [[nodiscard]] bool isAllowed(double value) const {
        return m_condition.fits(m_signal, Value::number(value), m_values);
    }

    std::vector<ValueRange> findDiscrete(int count) {
        std::vector<ValueRange> ranges;
        for (int i = 0; i < count; ++i)
            if (isAllowed(i))
                ranges.push_back({double(i), double(i)});
        return static_cast<int>(ranges.size()) == count ? std::vector<ValueRange>() : ranges;
    }

    /// The allowed value nearest to the refused one.
    [[nodiscard]] double bound(double refused, double allowed) const {
        for (int i = 0; i < kHalvings; ++i) {
            const double middle = (refused + allowed) / 2.0;
            (isAllowed(middle) ? allowed : refused) = middle;
        }
        return allowed;
    }

    const Condition& m_condition;
    SignalId m_signal;
    const std::vector<Value>& m_values;
};

} // namespace

std::vector<SignalLimits> limitsOf(const Step& step, const Aircraft& aircraft, const std::vector<Value>& values) {
    std::vector<SignalLimits> all;
    if (!step.done)
        return all;
    for (const SignalId signal : step.done->condition.signals()) {
        SignalLimits limits;
        limits.signal = signal;
        limits.allowed = RangeFinder(step.done->condition, signal, values).find(aircraft.signals[signal]);
        if (step.band && step.band->signal == signal)
            limits.band.push_back({step.band->lowest, step.band->highest});
        if (!limits.allowed.empty() || !limits.band.empty())
            all.push_back(std::move(limits));
    }
    return all;
}

} // namespace flowhand
