#include "base/time.h"

#include <cmath>
#include <cstdio>

namespace flowhand {

namespace {

struct TimeUnit {
    std::string_view symbol;
    std::int64_t nanoseconds;
};

constexpr TimeUnit kTimeUnits[] = {
    {"s", 1'000'000'000}, {"ms", 1'000'000}, {"min", 60'000'000'000}, {"h", 3'600'000'000'000}};

} // namespace

Duration fromSeconds(double value) {
    return Duration(std::llround(value * 1e9));
}

Result<Duration> parseDuration(std::string_view text) {
    const auto bad = [&] {
        return failure("bad-duration",
                       "'" + std::string(text) +
                           "' is not a length of time; write a number and s, ms, min or h, as in \"2 s\"");
    };
    std::size_t at = 0;
    std::int64_t digits = 0;
    int decimals = -1;
    int count = 0;
    for (; at < text.size(); ++at) {
        const char c = text[at];
        if (c == '.' && decimals < 0) {
            decimals = 0;
        } else if (c >= '0' && c <= '9') {
            if (++count > 15)
                return bad();
            digits = digits * 10 + (c - '0');
            if (decimals >= 0)
                ++decimals;
        } else {
            break;
        }
    }
    if (count == 0)
        return bad();
    while (at < text.size() && text[at] == ' ')
        ++at;
    const std::string_view symbol = text.substr(at);
    for (const TimeUnit& unit : kTimeUnits) {
        if (unit.symbol != symbol)
            continue;
        __extension__ using Wide = __int128;
        Wide value = Wide(digits) * unit.nanoseconds;
        for (int i = 0; i < decimals; ++i)
            value = (value + (i + 1 == decimals ? 5 : 0)) / 10;
        if (value > INT64_MAX)
            return bad();
        return Duration(static_cast<std::int64_t>(value));
    }
    return bad();
}

std::string clockText(Time time) {
    const std::int64_t tenths = (time.count() + 50'000'000) / 100'000'000;
    char text[40];
    std::snprintf(text, sizeof text, "%lld:%02lld.%lld", static_cast<long long>(tenths / 600),
                  static_cast<long long>(tenths / 10 % 60), static_cast<long long>(tenths % 10));
    return text;
}

Time SteadyClock::now() const {
    return std::chrono::duration_cast<Time>(std::chrono::steady_clock::now().time_since_epoch());
}

} // namespace flowhand
