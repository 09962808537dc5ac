#pragma once

#include <vector>

#include "feed/parser.h"

namespace flowhand {

/// GDL 90 messages: the heartbeat's clock and the ownship report; all others are counted.
class Gdl90Parser final : public FeedParser {
public:
    /// The longest message of the format, an uplink of 432 bytes behind its id and time of reception, with its checksum
    /// (value from memory), and some room.
    static constexpr std::size_t kLongestMessage = 512;

    explicit Gdl90Parser(FeedSignals signals);

    void take(std::span<const std::uint8_t> bytes, FeedTally& tally, const FeedSink& sink) override;
    void finish(FeedTally& tally, const FeedSink& sink) override;

private:
    enum class Stage : std::uint8_t {
        Outside,  ///< before a flag
        Skipping, ///< too long: on to the next flag
        Inside,
        Escaped ///< the next byte stands for another
    };
    void frameEnds(FeedTally& tally, const FeedSink& sink);
    void junkEnds(FeedTally& tally);
    void message(FeedTally& tally, const FeedSink& sink);
    [[nodiscard]] FeedMessage heartbeat() const;
    [[nodiscard]] FeedMessage ownship() const;

    struct Known {
        SignalId groundSpeed;
        SignalId verticalSpeed;
        SignalId altitude;
        SignalId track;
        SignalId heading;
        SignalId onGround;
    };
    const Known m_known;
    const FeedSignals m_signals;
    Stage m_stage = Stage::Outside;
    bool m_hasJunk = false;            ///< bytes outside of frames
    std::vector<std::uint8_t> m_frame; ///< unescaped, with the checksum
};

/// The format's checksum: polynomial 0x1021, beginning with 0, each byte into the low end of the shifted register
/// (GDL 90 Data Interface Specification, Public ICD, Rev A, section 2.2.3). It is none of the named CRC-16s.
[[nodiscard]] std::uint16_t gdl90Checksum(std::span<const std::uint8_t> bytes);

} // namespace flowhand
