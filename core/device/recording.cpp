#include "device/recording.h"

#include <algorithm>
#include <cctype>
#include <cstdio>
#include <utility>

#include "base/textfile.h"

namespace flowhand {

namespace {

constexpr std::string_view kDevice = "device:";
constexpr std::string_view kPort = "port:";
constexpr std::string_view kSerial = "serial:";
constexpr std::string_view kStarted = "started:";
constexpr std::string_view kDescriptor = "descriptor:";
constexpr std::size_t kShown = 60; // characters of a line in a message

int hexDigit(char c) {
    if (c >= '0' && c <= '9')
        return c - '0';
    const int lower = std::tolower(static_cast<unsigned char>(c));
    return lower >= 'a' && lower <= 'f' ? lower - 'a' + 10 : -1;
}

bool isSpace(char c) {
    return c == ' ' || c == '\t' || c == '\r' || c == '\n';
}

/// "05", "0501", "0x05"; one digit alone ("0x5") only behind a 0x, where it cannot be half of a byte.
bool takeHexWord(std::string_view word, std::vector<std::uint8_t>& bytes) {
    const bool isPrefixed = word.size() > 2 && word[0] == '0' && (word[1] == 'x' || word[1] == 'X');
    if (isPrefixed)
        word.remove_prefix(2);
    if (word.size() % 2 != 0 && !(isPrefixed && word.size() == 1))
        return false;
    for (std::size_t at = 0; at < word.size(); at += 2) {
        const int high = word.size() == 1 ? 0 : hexDigit(word[at]);
        const int low = word.size() == 1 ? hexDigit(word[at]) : hexDigit(word[at + 1]);
        if (high < 0 || low < 0)
            return false;
        bytes.push_back(static_cast<std::uint8_t>(high << 4 | low));
    }
    return true;
}

std::string_view trimmed(std::string_view text) {
    while (!text.empty() && isSpace(text.front()))
        text.remove_prefix(1);
    while (!text.empty() && isSpace(text.back()))
        text.remove_suffix(1);
    return text;
}

/// Without what stands behind '#' or '//'.
std::string_view withoutComment(std::string_view line) {
    return trimmed(line.substr(0, std::min(line.find('#'), line.find("//"))));
}

std::optional<Time> secondsIn(std::string_view text) {
    const auto time = parseDuration(std::string(trimmed(text)) + " s");
    return time ? std::optional<Time>(*time) : std::nullopt;
}

std::string secondsText(Time time) {
    char text[40];
    const long long micros = std::chrono::floor<std::chrono::microseconds>(time).count();
    std::snprintf(text, sizeof text, "%lld.%06lld", micros / 1'000'000, micros % 1'000'000);
    return text;
}

/// To the millisecond: what parseDuration() can take of a time since 1970.
std::string startText(Time time) {
    char text[40];
    const long long millis = std::chrono::floor<std::chrono::milliseconds>(time).count();
    std::snprintf(text, sizeof text, "%lld.%03lld", millis / 1'000, millis % 1'000);
    return text;
}

Status takeLine(std::string_view line, const SourcePlace& place, Recording& recording) {
    const auto bad = [&](const std::string& expected) {
        const bool isLong = line.size() > kShown;
        return failure("bad-recording",
                       "'" + std::string(line.substr(0, kShown)) + (isLong ? "...' is not " : "' is not ") + expected,
                       place);
    };
    const std::pair<std::string_view, std::string*> texts[] = {
        {kDevice, &recording.device}, {kPort, &recording.port}, {kSerial, &recording.serial}};
    for (const auto& [key, text] : texts) {
        if (line.substr(0, key.size()) != key)
            continue;
        *text = trimmed(line.substr(key.size()));
        return {};
    }
    if (line.substr(0, kStarted.size()) == kStarted) {
        recording.started = secondsIn(line.substr(kStarted.size()));
        return recording.started ? Status() : bad("a time; write the seconds since 1970, as in \"1790000000.5\"");
    }
    if (line.substr(0, kDescriptor.size()) == kDescriptor) {
        const auto bytes = parseHex(withoutComment(line.substr(kDescriptor.size())));
        if (!bytes)
            return bad("a descriptor; write its bytes in hexadecimal");
        recording.descriptor = *bytes;
        return {};
    }
    RecordedReport report;
    std::string_view hex = withoutComment(line);
    if (const std::size_t colon = hex.find(':'); colon != std::string_view::npos) {
        report.time = secondsIn(hex.substr(0, colon));
        if (!report.time)
            return bad("a report; the time before ':' is in seconds, as in \"1.250000: 01 7F\"");
        hex = hex.substr(colon + 1);
    }
    const auto bytes = parseHex(hex);
    if (!bytes)
        return bad("a report; write its bytes in hexadecimal, as in \"1.250000: 01 7F\"");
    report.bytes = *bytes;
    recording.reports.push_back(std::move(report));
    return {};
}

} // namespace

std::string hexText(std::span<const std::uint8_t> bytes) {
    static constexpr char kDigits[] = "0123456789ABCDEF";
    std::string text;
    for (const std::uint8_t byte : bytes) {
        if (!text.empty())
            text += ' ';
        text += {kDigits[byte >> 4], kDigits[byte & 0xF]};
    }
    return text;
}

std::optional<std::vector<std::uint8_t>> parseHex(std::string_view text) {
    const auto isBetween = [](char c) {
        return isSpace(c) || c == ',';
    };
    std::vector<std::uint8_t> bytes;
    while (!text.empty()) {
        if (isBetween(text.front())) {
            text.remove_prefix(1);
            continue;
        }
        const auto end = std::find_if(text.begin(), text.end(), isBetween);
        const auto length = static_cast<std::size_t>(end - text.begin());
        if (!takeHexWord(text.substr(0, length), bytes))
            return std::nullopt;
        text.remove_prefix(length);
    }
    return bytes;
}

Result<Recording> parseRecording(std::string_view text, const std::string& name) {
    Recording recording;
    SourcePlace place{name, 0, 1};
    while (!text.empty()) {
        const std::size_t end = text.find('\n');
        const std::string_view line = trimmed(text.substr(0, end));
        text = end == std::string_view::npos ? std::string_view() : text.substr(end + 1);
        ++place.line;
        if (withoutComment(line).empty())
            continue;
        if (const Status status = takeLine(line, place, recording); !status)
            return tl::unexpected(status.error());
    }
    return recording;
}

Result<Recording> loadRecording(const std::string& file) {
    const Result<std::string> text = readFile(file, kLargestRecorded);
    if (!text)
        return tl::unexpected(text.error());
    return parseRecording(*text, file);
}

std::string recordingHead(const Recording& recording) {
    std::string head = "# Flowhand recording\ndevice: " + recording.device + "\n";
    if (!recording.port.empty())
        head += "port: " + recording.port + "\n";
    if (!recording.serial.empty())
        head += "serial: " + recording.serial + "\n";
    if (recording.started)
        head += "started: " + startText(*recording.started) + "\n";
    return head + "descriptor: " + hexText(recording.descriptor) + "\n";
}

std::string recordingLine(const RecordedReport& report) {
    return (report.time ? secondsText(*report.time) + ": " : "") + hexText(report.bytes) + "\n";
}

} // namespace flowhand
