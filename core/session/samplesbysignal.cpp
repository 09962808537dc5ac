#include "session/samplesbysignal.h"

#include <algorithm>
#include <utility>

#include "base/parallel.h"

namespace flowhand {

namespace {

/// More signals than any cockpit has: a damaged number of one must not ask for endless memory.
constexpr std::size_t kMostSignals = 1 << 14;

bool isSame(const SignalSamples::Maker& a, const SignalSamples::Maker& b) {
    return a.actor == b.actor && a.origin == b.origin && a.control == b.control;
}

} // namespace

void SignalSamples::append(const Sample& sample) {
    const bool isAgain = !times.empty() && times.back() == sample.time;
    if (isAgain) {
        times.pop_back();
        values.pop_back();
        if (makers.back().from == times.size())
            makers.pop_back();
    }
    begin({times.size(), sample.actor, sample.origin, sample.control});
    times.push_back(sample.time);
    values.push_back(sample.value.number());
}

void SignalSamples::append(const SignalSamples& later) {
    for (Maker maker : later.makers) {
        maker.from += times.size();
        begin(maker);
    }
    times.insert(times.end(), later.times.begin(), later.times.end());
    values.insert(values.end(), later.values.begin(), later.values.end());
}

void SignalSamples::append(Maker maker, const std::vector<Time>& laterTimes, const std::vector<Value>& laterValues) {
    maker.from = times.size();
    begin(maker);
    times.insert(times.end(), laterTimes.begin(), laterTimes.end());
    for (const Value value : laterValues)
        values.push_back(value.number());
}

void SignalSamples::begin(Maker maker) {
    if (makers.empty() || !isSame(makers.back(), maker))
        makers.push_back(maker);
}

std::size_t SignalSamples::countBefore(Time time) const {
    return static_cast<std::size_t>(std::lower_bound(times.begin(), times.end(), time) - times.begin());
}

Value SignalSamples::at(Time time) const {
    const auto next = std::upper_bound(times.begin(), times.end(), time);
    return next == times.begin() ? Value::unknown()
                                 : Value::number(values[static_cast<std::size_t>(next - times.begin()) - 1]);
}

const SignalSamples::Maker& SignalSamples::makerOf(std::size_t sample) const {
    const auto next = std::upper_bound(makers.begin(), makers.end(), sample, [](std::size_t at, const Maker& maker) {
        return at < maker.from;
    });
    return *std::prev(next);
}

SamplesBySignal::SamplesBySignal(const std::vector<Sample>& inOrder) {
    for (const Sample& sample : inOrder)
        append(sample);
}

SignalSamples* SamplesBySignal::find(SignalId id) {
    const std::size_t signal = indexOf(id);
    if (signal >= kMostSignals)
        return nullptr;
    if (signal >= m_signals.size())
        m_signals.resize(signal + 1);
    return &m_signals[signal];
}

void SamplesBySignal::append(const Sample& sample) {
    if (SignalSamples* const samples = find(sample.signal))
        samples->append(sample);
}

SamplesBySignal SamplesBySignal::joined(std::vector<SamplesBySignal> stretches) {
    SamplesBySignal all;
    for (const SamplesBySignal& stretch : stretches)
        all.m_signals.resize(std::max(all.m_signals.size(), stretch.m_signals.size()));
    inParallel(all.m_signals.size(), [&](std::size_t signal) {
        std::size_t count = 0;
        for (const SamplesBySignal& stretch : stretches)
            count += signal < stretch.m_signals.size() ? stretch.m_signals[signal].size() : 0;
        all.m_signals[signal].times.reserve(count);
        all.m_signals[signal].values.reserve(count);
        for (SamplesBySignal& stretch : stretches)
            if (signal < stretch.m_signals.size())
                all.m_signals[signal].append(std::exchange(stretch.m_signals[signal], {}));
    });
    return all;
}

const SignalSamples& SamplesBySignal::operator[](SignalId signal) const {
    static const SignalSamples kNone;
    return indexOf(signal) < m_signals.size() ? m_signals[indexOf(signal)] : kNone;
}

std::size_t SamplesBySignal::size() const {
    std::size_t all = 0;
    for (const SignalSamples& signal : m_signals)
        all += signal.size();
    return all;
}

} // namespace flowhand
