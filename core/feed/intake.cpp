#include "feed/intake.h"

#include <algorithm>
#include <cmath>

namespace flowhand {

namespace {

/// Numbers are rounded to the power of ten that is at most a thousandth of the signal's scale: speeds to 0.1 kt,
/// headings to 0.01 deg. What is below that is noise, and would only fill the record.
double rounded(const Signal& signal, double number) {
    const double exponent = std::floor(std::log10(signal.scale / 1000.0) + 1e-9);
    const double grains = std::pow(10.0, std::abs(exponent));
    const double value = exponent < 0.0 ? std::round(number * grains) / grains : std::round(number / grains) * grains;
    return value == 0.0 ? 0.0 : value; // no negative zero
}

constexpr double kTurn = 360.0; // deg

/// A heading or track: north is 0 or 360, and west may be written as -90.
bool isDirection(const Signal& signal) {
    return signal.unit.symbol == "deg" && signal.lowest == 0.0 && signal.highest == kTurn;
}

} // namespace

FeedIntake::FeedIntake(FeedSignals signals) : m_signals(signals), m_tracks(signals.table->size()) {}

void FeedIntake::take(Time now, const FeedMessage& message, FeedTally& tally, std::vector<FeedChange>& changes,
                      std::vector<FeedNotice>& notices) {
    pass(now, changes, notices);
    if (message.time && !m_clock.take(now, *message.time, message.isTimeOfDay)) {
        ++tally.backwards;
        return;
    }
    ++tally.messages;
    count(now);
    bool saysMotion = false;
    for (const FeedValue& said : message.values) {
        Value value;
        if (!accept(said, value)) {
            ++tally.refused;
            continue;
        }
        say(now, said.signal, value, changes);
        saysMotion = saysMotion || value.isKnown();
    }
    if (!saysMotion)
        return;
    m_lastMessage = now;
    listen(now, notices);
}

/// Whether the value can be one of the signal's; `value` is it as it is handed on.
bool FeedIntake::accept(const FeedValue& said, Value& value) const {
    value = said.value;
    const Signal& signal = m_signals[said.signal];
    if (!value.isKnown() || signal.kind != SignalKind::Number)
        return true;
    const double number = value.number();
    if (!std::isfinite(number))
        return false;
    const double range = signal.highest - signal.lowest;
    if (range <= 0.0)
        return true;
    if (isDirection(signal) && std::abs(number) <= kTurn) {
        const double turned = rounded(signal, number < 0.0 ? number + kTurn : number);
        value = Value::number(turned >= kTurn ? 0.0 : turned);
        return true;
    }
    if (number < signal.lowest - kOvershoot * range || number > signal.highest + kOvershoot * range)
        return false;
    value = Value::number(std::clamp(rounded(signal, number), signal.lowest, signal.highest));
    return true;
}

void FeedIntake::say(Time now, SignalId signal, Value value, std::vector<FeedChange>& changes) {
    Track& track = m_tracks[indexOf(signal)];
    track.newest = value;
    track.saidAt = value.isKnown() ? now : kForever;
    hand(now, signal, changes);
}

/// On to the session, if it is news and not too soon after the last.
void FeedIntake::hand(Time now, SignalId signal, std::vector<FeedChange>& changes) {
    Track& track = m_tracks[indexOf(signal)];
    if (track.newest == track.passed || now - track.passedAt < kLeastBetween)
        return;
    track.passed = track.newest;
    track.passedAt = now;
    changes.push_back({now, signal, track.newest});
}

void FeedIntake::count(Time now) {
    const std::int64_t second = std::chrono::floor<std::chrono::seconds>(now).count();
    if (second > m_second)
        for (std::int64_t passed = 0; passed < std::min<std::int64_t>(second - m_second, m_counts.size()); ++passed) {
            std::rotate(m_counts.begin(), m_counts.end() - 1, m_counts.end());
            m_counts.front() = 0;
        }
    m_second = second;
    ++m_counts.front();
}

double FeedIntake::rate(Time now) const {
    const std::int64_t second = std::chrono::floor<std::chrono::seconds>(now).count();
    std::uint64_t sum = 0;
    for (std::size_t i = 0; i < m_counts.size(); ++i) {
        const std::int64_t age = second - m_second + static_cast<std::int64_t>(i);
        if (age >= 1 && age <= static_cast<std::int64_t>(kRateSeconds))
            sum += m_counts[i];
    }
    return static_cast<double>(sum) / kRateSeconds;
}

/// It counts as heard when all that it said before it was lost has come again; at the latest when it has had the time.
void FeedIntake::listen(Time now, std::vector<FeedNotice>& notices) {
    if (m_state == State::Silent) {
        m_state = State::Listening;
        m_firstMessage = now;
    }
    if (m_state != State::Listening)
        return;
    bool wasKnown = false;
    bool isMissing = false;
    for (const Track& track : m_tracks) {
        wasKnown = wasKnown || track.wasSaid;
        isMissing = isMissing || (track.wasSaid && track.saidAt == kForever);
    }
    if ((!wasKnown || isMissing) && now - m_firstMessage < kListenFor)
        return;
    m_state = State::Heard;
    notices.push_back({now, FeedNews::Heard});
}

void FeedIntake::pass(Time now, std::vector<FeedChange>& changes, std::vector<FeedNotice>& notices) {
    if (m_state != State::Silent && now - m_lastMessage >= kLostAfter) {
        if (std::exchange(m_state, State::Silent) == State::Heard) {
            lose();
            notices.push_back({now, FeedNews::Lost});
        } else {
            forget(now, changes);
        }
        return;
    }
    for (std::size_t i = 0; i < m_tracks.size(); ++i) {
        Track& track = m_tracks[i];
        if (track.saidAt != kForever && now - track.saidAt >= kLostAfter) {
            track.newest = Value::unknown();
            track.saidAt = kForever;
        }
        hand(now, SignalId(static_cast<std::uint32_t>(i)), changes);
    }
}

/// Nothing is handed on: the run is held first. What comes after that is news.
void FeedIntake::lose() {
    for (Track& track : m_tracks) {
        track.wasSaid = track.saidAt != kForever;
        track.newest = track.passed = Value::unknown();
        track.passedAt = Time::min() / 2;
        track.saidAt = kForever;
    }
}

/// It fell silent again before it had said all: nobody was told that it speaks.
void FeedIntake::forget(Time now, std::vector<FeedChange>& changes) {
    for (std::size_t i = 0; i < m_tracks.size(); ++i) {
        m_tracks[i].newest = Value::unknown();
        m_tracks[i].saidAt = kForever;
        m_tracks[i].passedAt = Time::min() / 2;
        hand(now, SignalId(static_cast<std::uint32_t>(i)), changes);
    }
}

std::vector<Value> FeedIntake::values() const {
    std::vector<Value> values;
    for (const Track& track : m_tracks)
        values.push_back(track.newest);
    return values;
}

} // namespace flowhand
