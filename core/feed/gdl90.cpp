#include "feed/gdl90.h"

#include <array>
#include <utility>

namespace flowhand {

namespace {

// Framing (Public ICD section 2.2.1): a flag at both ends; flag and escape inside are sent as escape and the byte
// changed in one bit.
constexpr std::uint8_t kFlag = 0x7E;
constexpr std::uint8_t kEscape = 0x7D;
constexpr std::uint8_t kChanged = 0x20;

constexpr std::uint8_t kHeartbeat = 0;
constexpr std::uint8_t kOwnship = 10;
constexpr std::size_t kHeartbeatLength = 7; ///< with its id, without checksum
constexpr std::size_t kOwnshipLength = 28;

// Values that say 'not available' (value from memory).
constexpr unsigned kNoAltitude = 0xFFF;
constexpr unsigned kNoSpeed = 0xFFF;
constexpr unsigned kNoVerticalSpeed = 0x800;

constexpr std::array<std::uint16_t, 256> makeTable() {
    std::array<std::uint16_t, 256> table{};
    for (std::size_t i = 0; i < table.size(); ++i) {
        auto crc = static_cast<std::uint16_t>(i << 8);
        for (int bit = 0; bit < 8; ++bit)
            crc = static_cast<std::uint16_t>((crc << 1) ^ ((crc & 0x8000) != 0 ? 0x1021 : 0));
        table[i] = crc;
    }
    return table;
}
constexpr std::array<std::uint16_t, 256> kTable = makeTable();

} // namespace

std::uint16_t gdl90Checksum(std::span<const std::uint8_t> bytes) {
    std::uint16_t crc = 0;
    for (const std::uint8_t byte : bytes)
        crc = static_cast<std::uint16_t>(kTable[crc >> 8] ^ (crc << 8) ^ byte);
    return crc;
}

Gdl90Parser::Gdl90Parser(FeedSignals signals)
    : m_known{signals.find("ground_speed"), signals.find("vertical_speed"), signals.find("altitude"),
              signals.find("track"),        signals.find("heading"),        signals.find("on_ground")},
      m_signals(signals) {}

void Gdl90Parser::take(std::span<const std::uint8_t> bytes, FeedTally& tally, const FeedSink& sink) {
    for (const std::uint8_t byte : bytes) {
        if (byte == kFlag) {
            frameEnds(tally, sink);
        } else if (m_stage == Stage::Outside) {
            m_hasJunk = true;
        } else if (m_stage == Stage::Skipping) {
            continue;
        } else if (byte == kEscape && m_stage == Stage::Inside) {
            m_stage = Stage::Escaped;
        } else if (m_frame.size() == kLongestMessage) {
            ++tally.oversized;
            m_frame.clear();
            m_stage = Stage::Skipping;
        } else {
            m_frame.push_back(m_stage == Stage::Escaped ? byte ^ kChanged : byte);
            m_stage = Stage::Inside;
        }
    }
}

void Gdl90Parser::finish(FeedTally& tally, const FeedSink&) {
    junkEnds(tally);
    if (!m_frame.empty() || m_stage == Stage::Escaped) // no flag came to end it
        ++tally.malformed;
    m_frame.clear();
    m_stage = Stage::Outside;
}

void Gdl90Parser::junkEnds(FeedTally& tally) {
    if (std::exchange(m_hasJunk, false))
        ++tally.malformed;
}

/// One flag may end a frame and begin the next.
void Gdl90Parser::frameEnds(FeedTally& tally, const FeedSink& sink) {
    junkEnds(tally);
    if (m_stage == Stage::Escaped)
        ++tally.malformed;
    else if (m_stage == Stage::Inside && !m_frame.empty())
        message(tally, sink);
    m_frame.clear();
    m_stage = Stage::Inside;
}

void Gdl90Parser::message(FeedTally& tally, const FeedSink& sink) {
    if (m_frame.size() < 3) { // an id and the checksum
        ++tally.malformed;
        return;
    }
    const std::size_t length = m_frame.size() - 2;
    const unsigned sent = m_frame[length] | unsigned(m_frame[length + 1]) << 8;
    if (gdl90Checksum(std::span(m_frame).first(length)) != sent) {
        ++tally.badChecksum;
        return;
    }
    const std::uint8_t id = m_frame[0];
    if (id != kHeartbeat && id != kOwnship)
        ++tally.others;
    else if (length != (id == kHeartbeat ? kHeartbeatLength : kOwnshipLength))
        ++tally.malformed;
    else
        sink(id == kHeartbeat ? heartbeat() : ownship());
}

/// Seconds since midnight, UTC: 16 bits, low byte first, with a 17th in the second status byte.
FeedMessage Gdl90Parser::heartbeat() const {
    const std::int64_t high = (m_frame[2] & 0x80) != 0 ? 0x10000 : 0;
    FeedMessage message;
    message.time = std::chrono::seconds(high | std::int64_t(m_frame[4]) << 8 | m_frame[3]);
    message.isTimeOfDay = true;
    return message;
}

/// Byte 11 and the upper half of 12: pressure altitude, 25 ft a step from -1000 ft. The lower half of 12: bit 3
/// airborne, bits 1 and 0 what byte 17 is (0 nothing, 1 true track, 2 magnetic and 3 true heading; value from memory).
/// Byte 14 and the upper half of 15: ground speed in kt; the rest of 15 and 16: climb, 64 ft/min a step, signed; byte
/// 17: 256 steps a turn.
FeedMessage Gdl90Parser::ownship() const {
    FeedMessage message;
    const auto put = [&](SignalId signal, bool isKnown, double value, std::string_view unit) {
        if (signal != kNoSignal)
            message.values.push_back(
                {signal, isKnown ? Value::number(convert(value, *findUnit(unit), m_signals[signal].unit)) : Value()});
    };
    const unsigned altitude = unsigned(m_frame[11]) << 4 | m_frame[12] >> 4;
    const unsigned speed = unsigned(m_frame[14]) << 4 | m_frame[15] >> 4;
    const unsigned climb = (m_frame[15] & 0x0FU) << 8 | m_frame[16];
    const int signedClimb = climb < 0x800 ? int(climb) : int(climb) - 0x1000;
    const unsigned direction = m_frame[12] & 0x03U;
    const double degrees = m_frame[17] * 360.0 / 256.0;
    put(m_known.altitude, altitude != kNoAltitude, 25.0 * altitude - 1000.0, "ft");
    put(m_known.groundSpeed, speed != kNoSpeed, speed, "kt");
    put(m_known.verticalSpeed, climb != kNoVerticalSpeed, 64.0 * signedClimb, "ft/min");
    put(m_known.track, direction == 1, degrees, "deg");
    if (direction == 3)
        put(m_known.heading, true, degrees, "deg");
    if (m_known.onGround != kNoSignal)
        message.values.push_back({m_known.onGround, Value::onOff((m_frame[12] & 0x08) == 0)});
    return message;
}

} // namespace flowhand
