#pragma once

#include <chrono>
#include <cstdint>
#include <iosfwd>
#include <string>
#include <sys/resource.h>
#include <vector>

/// What one reader of the streaming devices found out: the program, or the bare loop it is compared with. Written and
/// read as text, because the readers are processes of their own.
struct Measured {
    std::vector<std::uint64_t> reports;  ///< by device
    std::uint64_t suspected = 0;         ///< reports that the program says may have been lost
    std::int64_t cpuMicros = 0;          ///< user and system time of the process, from the first report on
    std::vector<std::int64_t> seenNanos; ///< steady clock when each press was known, or with a window: was shown
    bool hasWindow = false;
    std::string shown; ///< what the window says of lost reports, last

    void write(std::ostream& out) const;
    [[nodiscard]] static Measured read(std::istream& in);
};

[[nodiscard]] inline std::int64_t cpuMicros() {
    rusage usage{};
    getrusage(RUSAGE_SELF, &usage);
    const auto micros = [](const timeval& time) {
        return std::int64_t(time.tv_sec) * 1'000'000 + time.tv_usec;
    };
    return micros(usage.ru_utime) + micros(usage.ru_stime);
}

[[nodiscard]] inline std::int64_t steadyNanos() {
    return std::chrono::nanoseconds(std::chrono::steady_clock::now().time_since_epoch()).count();
}
