#include "device/recording.h"

#include <cctype>
#include <cstdio>
#include <utility>

namespace flowhand {

namespace {

constexpr std::string_view kDevice = "device:";
constexpr std::string_view kDescriptor = "descriptor:";

int hexDigit(char c) {
    if (c >= '0' && c <= '9')
        return c - '0';
    const int lower = std::tolower(static_cast<unsigned char>(c));
    return lower >= 'a' && lower <= 'f' ? lower - 'a' + 10 : -1;
}

bool isSpace(char c) {
    return c == ' ' || c == '\t' || c == '\r' || c == '\n';
}

std::string_view trimmed(std::string_view text) {
    while (!text.empty() && isSpace(text.front()))
        text.remove_prefix(1);
    while (!text.empty() && isSpace(text.back()))
        text.remove_suffix(1);
    return text;
}

Status takeLine(std::string_view line, const SourcePlace& place, Recording& recording) {
    const auto bad = [&](const std::string& expected) {
        std::string message = "'";
        message.append(line).append("' is not ").append(expected);
        return failure("bad-recording", std::move(message), place);
    };
    if (line.substr(0, kDevice.size()) == kDevice) {
        recording.device = trimmed(line.substr(kDevice.size()));
        return {};
    }
    if (line.substr(0, kDescriptor.size()) == kDescriptor) {
        const auto bytes = parseHex(line.substr(kDescriptor.size()));
        if (!bytes)
            return bad("a descriptor; write its bytes in hexadecimal");
        recording.descriptor = *bytes;
        return {};
    }
    RecordedReport report;
    std::string_view hex = line;
    if (const std::size_t colon = line.find(':'); colon != std::string_view::npos) {
        const auto time = parseDuration(std::string(trimmed(line.substr(0, colon))) + " s");
        if (!time)
            return bad("a report; the time before ':' is in seconds, as in \"1.250000: 01 7F\"");
        report.time = *time;
        hex = line.substr(colon + 1);
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
    std::vector<std::uint8_t> bytes;
    for (std::size_t at = 0; at < text.size();) {
        if (isSpace(text[at])) {
            ++at;
            continue;
        }
        if (at + 1 >= text.size() || hexDigit(text[at]) < 0 || hexDigit(text[at + 1]) < 0)
            return std::nullopt;
        bytes.push_back(static_cast<std::uint8_t>(hexDigit(text[at]) << 4 | hexDigit(text[at + 1])));
        at += 2;
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
        if (line.empty() || line.front() == '#')
            continue;
        if (const Status status = takeLine(line, place, recording); !status)
            return tl::unexpected(status.error());
    }
    return recording;
}

std::string recordingHead(const std::string& device, std::span<const std::uint8_t> descriptor) {
    return "# Flowhand recording\ndevice: " + device + "\ndescriptor: " + hexText(descriptor) + "\n";
}

std::string recordingLine(const RecordedReport& report) {
    std::string line;
    if (report.time) {
        char text[40];
        const long long micros = std::chrono::floor<std::chrono::microseconds>(*report.time).count();
        std::snprintf(text, sizeof text, "%lld.%06lld: ", micros / 1'000'000, micros % 1'000'000);
        line = text;
    }
    return line + hexText(report.bytes) + "\n";
}

} // namespace flowhand
