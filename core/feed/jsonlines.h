#pragma once

#include "feed/lines.h"
#include "feed/parser.h"

namespace flowhand {

/// The JSON lines format of core/feed/README.md: one flat object a line, names of motion signals with their values.
class JsonLinesParser final : public FeedParser {
public:
    /// Four times what all motion signals of a four-engined aircraft take with their longest values.
    static constexpr std::size_t kLongestLine = 8192;

    explicit JsonLinesParser(FeedSignals signals) : m_signals(signals), m_lines(kLongestLine) {}

    void take(std::span<const std::uint8_t> bytes, FeedTally& tally, const FeedSink& sink) override;
    void finish(FeedTally& tally, const FeedSink& sink) override;

private:
    void line(std::string_view text, FeedTally& tally, const FeedSink& sink);

    const FeedSignals m_signals;
    LineCutter m_lines;
    FeedMessage m_message;
};

} // namespace flowhand
