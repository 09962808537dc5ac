#include "bench/inputwatch.h"

#include <algorithm>
#include <cmath>

#include "rig/axisfilter.h"

namespace flowhand {

namespace {

/// A movement leaves rest by more than so many standard deviations, or this share of the range (design of the judge).
constexpr double kMovedSigmas = 6.0;
constexpr double kMovedShare = 0.01;
/// An axis that covers more of its range than this while nobody touches it is broken or not connected to anything.
constexpr double kRestlessShare = 0.25;
/// Changes of an axis after which old ones are dropped: some minutes at 1 kHz.
constexpr std::size_t kMostKept = 200'000;
/// The standard deviation of normally distributed values over that of those between their 2nd and 98th hundredth:
/// 1 / sqrt(1 - 2 z phi(z) / 0.96) with z = 2.054.
constexpr double kOfTrimmed = 1.123;
constexpr double kLowShare = 0.02;
constexpr double kHighShare = 0.98;

} // namespace

void InputWatch::connect(DeviceIndex device, std::vector<InputInfo> inputs) {
    std::vector<Watched>& watched = m_devices[device];
    watched.clear();
    for (InputInfo& info : inputs)
        watched.push_back({std::move(info), kRoundingNoise, false, {}});
}

void InputWatch::take(const Reading& reading) {
    const auto device = m_devices.find(reading.device);
    if (device == m_devices.end() || reading.input >= device->second.size())
        return;
    Watched& input = device->second[reading.input];
    input.changes.push_back({reading.time, reading.raw, reading.isNull});
    if (!isAxis(input) || input.changes.size() < kMostKept)
        return;
    const Time oldest = reading.time - 2 * kLongestRest; // no question looks further back
    const auto first = std::find_if(input.changes.begin(), input.changes.end(), [&](const Change& change) {
        return change.time >= oldest;
    });
    if (first > input.changes.begin() + 1)
        input.changes.erase(input.changes.begin(), first - 1);
}

/// A device that spoke for the first time says of all its inputs how they are: open, released, not turned.
bool InputWatch::isIdleFirstWord(const Watched& input, const Change& change) {
    const std::int64_t idle = input.info.kind == InputKind::Relative ? 0 : input.info.lowest;
    return &change == &input.changes.front() && (change.isNull || change.raw == idle);
}

// --- what an axis does over a stretch ---

std::optional<InputWatch::Spread> InputWatch::spreadOf(const Watched& input, Time from, Time to) {
    std::vector<std::pair<double, double>> weighted; // raw, seconds
    double whole = 0.0;
    // The last change at or before `from` holds into the stretch.
    auto at = std::upper_bound(input.changes.begin(), input.changes.end(), from, [](Time time, const Change& change) {
        return time < change.time;
    });
    if (at != input.changes.begin())
        --at;
    for (; at != input.changes.end() && at->time < to; ++at) {
        const Time end = std::next(at) == input.changes.end() ? to : std::min(to, std::next(at)->time);
        const double length = seconds(end - std::max(from, at->time));
        if (length <= 0)
            continue;
        weighted.emplace_back(static_cast<double>(at->raw), length);
        whole += length;
    }
    if (weighted.empty())
        return std::nullopt;
    std::sort(weighted.begin(), weighted.end());
    const auto atShare = [&](double share) {
        double passed = 0.0;
        for (const auto& [raw, length] : weighted)
            if ((passed += length) >= share * whole)
                return raw;
        return weighted.back().first;
    };
    Spread spread{atShare(0.5), atShare(kLowShare), atShare(kHighShare), 0.0};
    double squares = 0.0;
    double inside = 0.0;
    for (const auto& [raw, length] : weighted) {
        if (raw < spread.low || raw > spread.high)
            continue;
        squares += length * (raw - spread.median) * (raw - spread.median);
        inside += length;
    }
    spread.deviation = inside > 0 ? std::sqrt(squares / inside) : 0.0;
    return spread;
}

double InputWatch::limitOf(const Watched& input, double sigma) {
    const auto range = static_cast<double>(input.info.highest - input.info.lowest);
    return std::max({kMovedSigmas * sigma, kMovedShare * range, 1.0});
}

/// Both halves of the stretch lie at the same place, and neither is all over the range.
bool InputWatch::isSteady(const Watched& input, Time from, Time to) const {
    if (!isAxis(input))
        return std::none_of(input.changes.begin(), input.changes.end(), [&](const Change& change) {
            // the first word of a device says where its inputs are, not that they moved
            return change.time > from && change.time <= to && &change != &input.changes.front();
        });
    const Time middle = from + (to - from) / 2;
    const auto whole = spreadOf(input, from, to);
    const auto first = spreadOf(input, from, middle);
    const auto second = spreadOf(input, middle, to);
    if (!whole || !first || !second)
        return true;
    const auto range = static_cast<double>(input.info.highest - input.info.lowest);
    const double limit = std::max({kMovedShare * range, whole->deviation, 1.0});
    // Somebody who still lets go makes one half far rougher than the other.
    const double smooth = std::min(first->deviation, second->deviation);
    if (std::max(first->deviation, second->deviation) > 3 * smooth + 1.0 + 0.0005 * range)
        return false;
    return std::fabs(first->median - second->median) <= limit &&
           whole->high - whole->low <= std::max(kRestlessShare * range, 1.0);
}

// --- rest ---

bool InputWatch::learnRest(Time since, Time now) {
    if (now < since + kRest)
        return false;
    const bool isOver = now >= since + kLongestRest;
    for (auto& [device, inputs] : m_devices) {
        for (Watched& input : inputs) {
            if (input.isRestless || isSteady(input, now - kRest, now))
                continue;
            if (!isOver)
                return false;
            input.isRestless = true;
        }
    }
    // Of the second half, which has nothing of a hand that was just taken away.
    for (auto& [device, inputs] : m_devices)
        for (Watched& input : inputs)
            if (const auto spread = spreadOf(input, now - kRest / 2, now); spread && isAxis(input))
                input.sigma = std::max(kRoundingNoise, kOfTrimmed * spread->deviation);
    return true;
}

bool InputWatch::isStill(Time now) const {
    for (const auto& [device, inputs] : m_devices) {
        for (const Watched& input : inputs) {
            if (input.isRestless || input.changes.empty())
                continue;
            if (!isAxis(input)) {
                if (input.changes.back().time > now - kStill)
                    return false;
                continue;
            }
            const auto spread = spreadOf(input, now - kStill, now);
            if (spread && spread->high - spread->low > 2 * limitOf(input, input.sigma))
                return false;
        }
    }
    return true;
}

Snapshot InputWatch::standing(Time now) const {
    Snapshot snapshot;
    for (const auto& [device, inputs] : m_devices) {
        for (std::size_t i = 0; i < inputs.size(); ++i) {
            const Watched& input = inputs[i];
            if (input.isRestless || input.changes.empty())
                continue;
            const InputPlace place{device, static_cast<std::uint16_t>(i)};
            const Change& last = input.changes.back();
            const auto spread = isAxis(input) ? spreadOf(input, now - kStill, now) : std::nullopt;
            snapshot[place] = {spread ? spread->median : static_cast<double>(last.raw), last.isNull && !isAxis(input)};
        }
    }
    return snapshot;
}

std::vector<InputEvent> InputWatch::eventsSince(Time since) const {
    std::vector<InputEvent> events;
    for (const auto& [device, inputs] : m_devices)
        for (std::size_t i = 0; i < inputs.size(); ++i)
            if (!isAxis(inputs[i]) && !inputs[i].isRestless)
                for (const Change& change : inputs[i].changes)
                    if (change.time > since && !isIdleFirstWord(inputs[i], change))
                        events.push_back(
                            {{device, static_cast<std::uint16_t>(i)}, change.time, change.raw, change.isNull});
    std::stable_sort(events.begin(), events.end(), [](const InputEvent& a, const InputEvent& b) {
        return a.time < b.time;
    });
    return events;
}

bool InputWatch::isMoved(InputPlace place, const StandingInput& a, const StandingInput& b) const {
    const Watched& input = m_devices.at(place.device)[place.input];
    if (!isAxis(input))
        return a.isNull != b.isNull || (!a.isNull && a.raw != b.raw);
    return std::fabs(a.raw - b.raw) > limitOf(input, input.sigma);
}

std::vector<InputPlace> InputWatch::restless() const {
    std::vector<InputPlace> places;
    for (const auto& [device, inputs] : m_devices)
        for (std::size_t i = 0; i < inputs.size(); ++i)
            if (inputs[i].isRestless)
                places.push_back({device, static_cast<std::uint16_t>(i)});
    return places;
}

} // namespace flowhand
