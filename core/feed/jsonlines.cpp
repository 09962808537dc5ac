#include "feed/jsonlines.h"

#include <algorithm>
#include <cmath>

#include <nlohmann/json.hpp>

namespace flowhand {

namespace {

using Json = nlohmann::json;

/// A sender's clock, in seconds, as far as Duration holds it with room for sums (Unix time is 1.8e9).
constexpr double kLatestTime = 4e9;

/// What the message of one line would add to the tally; nothing counts when the line turns out not to be JSON.
struct LineTally {
    std::uint64_t unknownNames = 0;
    std::uint64_t refused = 0;
    std::vector<std::string> names;
};

/// Only what a signal could be called is kept of a name, because it is shown.
bool looksLikeName(const std::string& name) {
    constexpr std::size_t kLongestName = 40;
    return !name.empty() && name.size() <= kLongestName &&
           std::all_of(name.begin(), name.end(), [](unsigned char letter) {
               return std::isalnum(letter) != 0 || letter == '_' || letter == '-' || letter == '.' || letter == '/';
           });
}

/// Reads one flat object; anything nested ends the reading. The functions' names are the library's.
class LineReader final : public nlohmann::json_sax<Json> {
public:
    LineReader(const FeedSignals& signals, FeedMessage& message, LineTally& tally)
        : m_signals(signals), m_message(message), m_tally(tally) {}

    bool start_object(std::size_t) override { return !std::exchange(m_isInside, true); }
    bool key(std::string& name) override {
        m_isTime = name == "time";
        m_signal = m_isTime ? kNoSignal : m_signals.find(name);
        if (!m_isTime && m_signal == kNoSignal) {
            ++m_tally.unknownNames;
            if (m_tally.names.size() < FeedTally::kMostNames && looksLikeName(name))
                m_tally.names.push_back(name);
        }
        return true;
    }
    bool end_object() override { return true; }

    bool null() override {
        if (m_isInside && !m_isTime)
            put(Value::unknown());
        return m_isInside;
    }
    bool boolean(bool isOn) override {
        if (isKind(SignalKind::OnOff))
            put(Value::onOff(isOn));
        else
            refuse();
        return m_isInside;
    }
    bool string(std::string& text) override {
        if (m_signal == kNoSignal) {
            refuse();
            return m_isInside;
        }
        const Result<Value> value = parseValue(m_signals[m_signal], text);
        if (value)
            put(*value);
        else
            refuse();
        return m_isInside;
    }
    bool number_float(double number, const std::string&) override { return bare(number); }
    bool number_integer(std::int64_t number) override { return bare(static_cast<double>(number)); }
    bool number_unsigned(std::uint64_t number) override { return bare(static_cast<double>(number)); }

    bool start_array(std::size_t) override { return false; }
    bool end_array() override { return false; }
    bool binary(Json::binary_t&) override { return false; }
    bool parse_error(std::size_t, const std::string&, const Json::exception&) override { return false; }

private:
    [[nodiscard]] bool isKind(SignalKind kind) const {
        return m_signal != kNoSignal && m_signals[m_signal].kind == kind;
    }
    /// A number without a unit: the time in seconds, or a signal that has no unit.
    bool bare(double number) {
        if (m_isTime && std::abs(number) < kLatestTime)
            m_message.time = fromSeconds(number);
        else if (isKind(SignalKind::Number) && m_signals[m_signal].unit.symbol.empty())
            put(Value::number(number));
        else
            refuse();
        return m_isInside;
    }
    void put(Value value) {
        if (m_signal != kNoSignal)
            m_message.values.push_back({m_signal, value});
    }
    void refuse() {
        if (m_isTime || m_signal != kNoSignal) // unknown names are counted as such
            ++m_tally.refused;
    }

    const FeedSignals& m_signals;
    FeedMessage& m_message;
    LineTally& m_tally;
    SignalId m_signal = kNoSignal;
    bool m_isTime = false;
    bool m_isInside = false;
};

} // namespace

void JsonLinesParser::take(std::span<const std::uint8_t> bytes, FeedTally& tally, const FeedSink& sink) {
    m_lines.take(bytes, tally.oversized, [&](std::string_view text) {
        line(text, tally, sink);
    });
}

void JsonLinesParser::finish(FeedTally& tally, const FeedSink& sink) {
    m_lines.finish([&](std::string_view text) {
        line(text, tally, sink);
    });
}

void JsonLinesParser::line(std::string_view text, FeedTally& tally, const FeedSink& sink) {
    m_message = {};
    LineTally found;
    LineReader reader(m_signals, m_message, found);
    if (!Json::sax_parse(text, &reader)) {
        ++tally.malformed;
        return;
    }
    tally.unknownNames += found.unknownNames;
    tally.refused += found.refused;
    for (std::string& name : found.names)
        if (tally.names.size() < FeedTally::kMostNames &&
            std::find(tally.names.begin(), tally.names.end(), name) == tally.names.end())
            tally.names.push_back(std::move(name));
    sink(m_message);
}

} // namespace flowhand
