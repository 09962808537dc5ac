#pragma once

#include <cstdint>
#include <string>
#include <string_view>

#include "base/error.h"
#include "feed/parser.h"

namespace flowhand {

enum class FeedWay : std::uint8_t { Udp, Tcp, Serial };

/// Where a feed comes from and how it speaks, as a person writes it: "json:127.0.0.1:49100" (core/feed/README.md).
struct FeedSpec {
    FeedFormat format = FeedFormat::JsonLines;
    FeedWay way = FeedWay::Udp;
    std::string host; ///< Udp: the address listened on; Tcp: whom to call; without brackets
    std::uint16_t port = 0;
    std::string sender; ///< Udp: the only address heard; empty: all
    std::string path;   ///< Serial
    int baud = 0;

    /// Error `bad-feed` says what is wrong with the text and how a feed is written.
    [[nodiscard]] static Result<FeedSpec> parse(std::string_view text);
    /// "GDL 90 on UDP 127.0.0.1:4000".
    [[nodiscard]] std::string title() const;
    /// Hears other computers than this one, whichever they are.
    [[nodiscard]] bool isOpenToAll() const;
};

} // namespace flowhand
