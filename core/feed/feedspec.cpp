#include "feed/feedspec.h"

#include <charconv>
#include <optional>
#include <vector>

#include "base/names.h"

namespace flowhand {

namespace {

constexpr const char* kLoopback = "127.0.0.1";

/// Cut at colons; those in brackets belong to an IPv6 address, and the brackets go.
std::vector<std::string> parts(std::string_view text) {
    std::vector<std::string> found{""};
    bool isBracketed = false;
    for (const char letter : text) {
        if (letter == '[' || letter == ']')
            isBracketed = letter == '[';
        else if (letter == ':' && !isBracketed)
            found.emplace_back();
        else
            found.back() += letter;
    }
    return found;
}

std::optional<int> wholeNumber(const std::string& text, int highest) {
    int number = 0;
    const auto [end, problem] = std::from_chars(text.data(), text.data() + text.size(), number);
    const bool isWhole = problem == std::errc() && end == text.data() + text.size();
    return isWhole && number >= 1 && number <= highest ? std::optional(number) : std::nullopt;
}

tl::unexpected<Error> bad(std::string_view text, const std::string& what) {
    return failure("bad-feed", "'" + std::string(text) + "' is no feed: " + what +
                                   ". Write it as in json:127.0.0.1:49100, gdl90:4000, nmea:tcp:localhost:10110 or "
                                   "nmea:serial:/dev/ttyUSB0:4800");
}

std::optional<FeedFormat> formatOf(const std::string& name) {
    if (name == "json")
        return FeedFormat::JsonLines;
    if (name == "nmea")
        return FeedFormat::Nmea;
    return name == "gdl90" ? std::optional(FeedFormat::Gdl90) : std::nullopt;
}

Status readPort(std::string_view text, const std::string& part, FeedSpec& spec) {
    const std::optional<int> port = wholeNumber(part, 65535);
    if (!port)
        return bad(text, "'" + part + "' is no port; ports are whole numbers from 1 to 65535");
    spec.port = static_cast<std::uint16_t>(*port);
    return {};
}

Status readUdp(std::string_view text, const std::vector<std::string>& given, FeedSpec& spec) {
    const std::size_t count = given.size();
    spec.host = count == 2 ? kLoopback : given[1];
    if (count == 5 && given[3] == "from")
        spec.sender = given[4];
    else if (count > 3)
        return bad(text, "there is too much of it; behind the port comes nothing but from:SENDER, and an "
                         "IPv6 address stands in brackets");
    if (spec.host.empty() || (count == 5 && spec.sender.empty()))
        return bad(text, "an address is empty");
    return readPort(text, count == 2 ? given[1] : given[2], spec);
}

Status readTcp(std::string_view text, const std::vector<std::string>& given, FeedSpec& spec) {
    spec.way = FeedWay::Tcp;
    if (given.size() != 4 || given[2].empty())
        return bad(text, "behind tcp come the host and the port");
    spec.host = given[2];
    return readPort(text, given[3], spec);
}

Status readSerial(std::string_view text, const std::vector<std::string>& given, FeedSpec& spec) {
    // The fastest that serial adapters do; what is not possible, the adapter's driver says.
    constexpr int kHighestBaud = 4'000'000;
    spec.way = FeedWay::Serial;
    // Names of serial lines by their place on the bus have colons in them.
    const std::size_t last = given.size() - 1;
    for (std::size_t i = 2; i < last; ++i)
        spec.path += (i == 2 ? "" : ":") + given[i];
    const std::optional<int> baud = given.size() > 3 ? wholeNumber(given[last], kHighestBaud) : std::nullopt;
    if (!baud || spec.path.empty())
        return bad(text, "behind serial come the line's path and its speed in baud, mostly 4800 or 38400");
    spec.baud = *baud;
    return {};
}

} // namespace

Result<FeedSpec> FeedSpec::parse(std::string_view text) {
    const std::vector<std::string> given = parts(text);
    FeedSpec spec;
    const std::optional<FeedFormat> format = formatOf(given[0]);
    if (!format)
        return bad(text,
                   "it begins with its format, json, nmea or gdl90" + nearestHint(given[0], {"json", "nmea", "gdl90"}));
    spec.format = *format;
    if (given.size() < 2)
        return bad(text, "behind the format comes where to listen");
    const Status status = given[1] == "tcp"      ? readTcp(text, given, spec)
                          : given[1] == "serial" ? readSerial(text, given, spec)
                                                 : readUdp(text, given, spec);
    if (!status)
        return tl::unexpected(status.error());
    return spec;
}

std::string FeedSpec::title() const {
    const std::string shownHost = host.find(':') == std::string::npos ? host : "[" + host + "]";
    const std::string place = shownHost + ":" + std::to_string(port);
    const std::string speech(nameOf(format));
    switch (way) {
    case FeedWay::Udp:
        return speech + " on UDP " + place + (sender.empty() ? "" : " from " + sender);
    case FeedWay::Tcp:
        return speech + " over TCP from " + place;
    case FeedWay::Serial:
        break;
    }
    return speech + " on the serial line " + path + " at " + std::to_string(baud) + " baud";
}

bool FeedSpec::isOpenToAll() const {
    const bool isLoopback = host.rfind("127.", 0) == 0 || host == "::1";
    return way == FeedWay::Udp && sender.empty() && !isLoopback;
}

} // namespace flowhand
