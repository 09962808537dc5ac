#include "feed/nmea.h"

#include <algorithm>
#include <array>
#include <charconv>

namespace flowhand {

namespace {

constexpr std::size_t kMostFields = 24; ///< GGA has 15 with its address, RMC of the newest version 14

struct Fields {
    std::array<std::string_view, kMostFields> text;
    std::size_t count = 0;

    /// Empty where the sentence ends before.
    [[nodiscard]] std::string_view operator[](std::size_t i) const { return i < count ? text[i] : std::string_view(); }
};

bool cut(std::string_view body, Fields& fields) {
    while (fields.count < kMostFields) {
        const std::size_t comma = body.find(',');
        fields.text[fields.count++] = body.substr(0, comma);
        if (comma == std::string_view::npos)
            return true;
        body.remove_prefix(comma + 1);
    }
    return false;
}

std::optional<std::uint8_t> hexByte(std::string_view text) {
    std::uint8_t byte = 0;
    const auto [end, problem] = std::from_chars(text.data(), text.data() + text.size(), byte, 16);
    const bool isWhole = problem == std::errc() && end == text.data() + text.size();
    return text.size() == 2 && isWhole ? std::optional(byte) : std::nullopt;
}

bool isDigit(char letter) {
    return letter >= '0' && letter <= '9';
}

/// Digits with a point, as the standard writes numbers: no exponents, no names of infinities.
bool readNumber(std::string_view text, std::optional<double>& number) {
    if (text.empty())
        return true;
    const std::string_view digits = text.front() == '-' ? text.substr(1) : text;
    if (digits.empty() || !isDigit(digits.front()) || !std::all_of(digits.begin(), digits.end(), [](char letter) {
            return isDigit(letter) || letter == '.';
        }))
        return false;
    double value = 0.0;
    const auto [end, problem] = std::from_chars(text.data(), text.data() + text.size(), value);
    if (problem != std::errc() || end != text.data() + text.size())
        return false;
    number = value;
    return true;
}

/// hhmmss with any number of decimals.
bool readTime(std::string_view text, std::optional<Duration>& time) {
    if (text.empty())
        return true;
    if (text.size() < 6 || !std::all_of(text.begin(), text.begin() + 6, isDigit))
        return false;
    std::optional<double> second;
    if (!readNumber(text.substr(4), second) || !second)
        return false;
    const int hour = (text[0] - '0') * 10 + text[1] - '0';
    const int minute = (text[2] - '0') * 10 + text[3] - '0';
    if (hour > 23 || minute > 59 || *second >= 61.0) // 60 in a leap second
        return false;
    time = std::chrono::hours(hour) + std::chrono::minutes(minute) + fromSeconds(*second);
    return true;
}

/// Makes one sentence's message; false where a field is not what the standard says.
class SentenceReader {
public:
    SentenceReader(const Fields& fields, const FeedSignals& signals, FeedMessage& message)
        : m_fields(fields), m_signals(signals), m_message(message) {}

    /// 1 time, 2 status A or V, 7 speed over ground in kt, 8 course over ground, true, 12 mode (N: not valid).
    bool rmc(SignalId groundSpeed, SignalId track) {
        const std::string_view status = m_fields[2];
        if (m_fields.count < 10 || (status != "A" && status != "V") || !readTime(m_fields[1], m_message.time))
            return false;
        const bool isValid = status == "A" && m_fields[12] != "N";
        return put(groundSpeed, m_fields[7], "kt", isValid) && put(track, m_fields[8], "deg", isValid);
    }

    /// 1 course, true, 2 T, 5 speed in kt, 6 N, 7 the same in km/h, 8 K, 9 mode (N: not valid).
    bool vtg(SignalId groundSpeed, SignalId track) {
        if (m_fields.count < 9 || !isOrEmpty(2, "T") || !isOrEmpty(6, "N") || !isOrEmpty(8, "K"))
            return false;
        const bool isValid = m_fields[9] != "N";
        const bool isInKnots = !m_fields[5].empty();
        return put(groundSpeed, isInKnots ? m_fields[5] : m_fields[7], isInKnots ? "kt" : "km/h", isValid) &&
               put(track, m_fields[1], "deg", isValid);
    }

    /// 1 time, 6 quality (0: no fix, 8: simulation), 9 altitude above mean sea level, 10 M.
    bool gga(SignalId altitude) {
        const std::string_view quality = m_fields[6];
        if (m_fields.count < 11 || quality.size() != 1 || !isDigit(quality.front()) || !isOrEmpty(10, "M") ||
            !readTime(m_fields[1], m_message.time))
            return false;
        return put(altitude, m_fields[9], "m", quality != "0");
    }

private:
    [[nodiscard]] bool isOrEmpty(std::size_t field, std::string_view wanted) const {
        return m_fields[field].empty() || m_fields[field] == wanted;
    }

    /// What is empty or not valid is said not to be known.
    bool put(SignalId signal, std::string_view text, std::string_view unit, bool isValid) {
        std::optional<double> number;
        if (!readNumber(text, number))
            return false;
        if (signal == kNoSignal)
            return true;
        const bool isKnown = number && isValid;
        m_message.values.push_back(
            {signal, isKnown ? Value::number(convert(*number, *findUnit(unit), m_signals[signal].unit)) : Value()});
        return true;
    }

    const Fields& m_fields;
    const FeedSignals& m_signals;
    FeedMessage& m_message;
};

} // namespace

std::uint8_t nmeaChecksum(std::string_view characters) {
    std::uint8_t sum = 0;
    for (const char character : characters)
        sum = static_cast<std::uint8_t>(sum ^ static_cast<std::uint8_t>(character));
    return sum;
}

NmeaParser::NmeaParser(FeedSignals signals)
    : m_groundSpeed(signals.find("ground_speed")), m_track(signals.find("track")), m_altitude(signals.find("altitude")),
      m_signals(signals), m_lines(kLongestSentence) {}

void NmeaParser::take(std::span<const std::uint8_t> bytes, FeedTally& tally, const FeedSink& sink) {
    m_lines.take(bytes, tally.oversized, [&](std::string_view text) {
        sentence(text, tally, sink);
    });
}

void NmeaParser::finish(FeedTally& tally, const FeedSink& sink) {
    m_lines.finish([&](std::string_view text) {
        sentence(text, tally, sink);
    });
}

void NmeaParser::sentence(std::string_view text, FeedTally& tally, const FeedSink& sink) {
    const std::size_t star = text.rfind('*');
    const bool isPrintable = std::all_of(text.begin(), text.end(), [](char letter) {
        return letter >= ' ' && letter <= '~';
    });
    const auto checksum = hexByte(text.substr(std::min(text.size(), star == text.npos ? star : star + 1)));
    if (!isPrintable || (text.front() != '$' && text.front() != '!') || star == text.npos || !checksum) {
        ++tally.malformed;
        return;
    }
    const std::string_view body = text.substr(1, star - 1);
    if (nmeaChecksum(body) != *checksum) {
        ++tally.badChecksum;
        return;
    }
    Fields fields;
    if (!cut(body, fields)) {
        ++tally.malformed;
        return;
    }
    // Two letters of the talker, then what is said; proprietary sentences begin with P.
    const std::string_view address = fields[0];
    const std::string_view kind = address.size() == 5 && text.front() == '$' ? address.substr(2) : std::string_view();
    FeedMessage message;
    message.isTimeOfDay = true;
    SentenceReader reader(fields, m_signals, message);
    const bool isUsed = kind == "RMC" || kind == "VTG" || kind == "GGA";
    const bool isSound = kind == "RMC"   ? reader.rmc(m_groundSpeed, m_track)
                         : kind == "VTG" ? reader.vtg(m_groundSpeed, m_track)
                         : kind == "GGA" ? reader.gga(m_altitude)
                                         : true;
    if (!isSound)
        ++tally.malformed;
    else if (!isUsed)
        ++tally.others;
    else
        sink(message);
}

} // namespace flowhand
