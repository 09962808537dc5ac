#pragma once

#include <cstdint>
#include <memory>
#include <span>

#include "feed/message.h"

namespace flowhand {

enum class FeedFormat : std::uint8_t { JsonLines, Nmea, Gdl90 };

/// "JSON lines", "NMEA 0183", "GDL 90".
[[nodiscard]] std::string_view nameOf(FeedFormat format);

/// Makes messages out of bytes, from wherever these come. What is not of the format changes nothing but a counter;
/// the memory it uses does not depend on what comes. Feed thread.
class FeedParser {
public:
    virtual ~FeedParser() = default;
    /// The next bytes of a stream; `sink` gets each message as soon as it is whole.
    virtual void take(std::span<const std::uint8_t> bytes, FeedTally& tally, const FeedSink& sink) = 0;
    /// The bytes end here: a datagram's end, a stream that broke off. What is whole without its last end is taken,
    /// the rest is forgotten.
    virtual void finish(FeedTally& tally, const FeedSink& sink) = 0;
};

[[nodiscard]] std::unique_ptr<FeedParser> makeParser(FeedFormat format, FeedSignals signals);

} // namespace flowhand
