#pragma once

#include "feed/lines.h"
#include "feed/parser.h"

namespace flowhand {

/// NMEA 0183 sentences RMC, VTG and GGA of any talker: `$`, address, fields, `*`, checksum, CR LF. Sentences without a
/// checksum are not taken.
class NmeaParser final : public FeedParser {
public:
    /// The standard allows 82 characters with `$` and CR LF (value from memory); receivers that give more digits than
    /// it knows go past that.
    static constexpr std::size_t kLongestSentence = 128;

    explicit NmeaParser(FeedSignals signals);

    void take(std::span<const std::uint8_t> bytes, FeedTally& tally, const FeedSink& sink) override;
    void finish(FeedTally& tally, const FeedSink& sink) override;

private:
    void sentence(std::string_view text, FeedTally& tally, const FeedSink& sink);

    const SignalId m_groundSpeed;
    const SignalId m_track;
    const SignalId m_altitude;
    const FeedSignals m_signals;
    LineCutter m_lines;
};

/// The checksum: exclusive or of all characters between `$` and `*`, neither included.
[[nodiscard]] std::uint8_t nmeaChecksum(std::string_view characters);

} // namespace flowhand
