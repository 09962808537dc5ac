#pragma once

#include <cstdint>
#include <iosfwd>
#include <string>
#include <vector>

#include "measured.h"
#include "stream.h"

/// How the program runs whose reading is measured.
enum class RateProgram {
    WithoutWindow,
    WithWindow,
    WithIdleWindow, ///< the run waits to be begun: nothing that the devices send changes what is shown
    Stopped         ///< with its window, and the system gives it no time for 0.1 s now and then
};

/// One row of a benchmark of rates.
struct RatesRow {
    const char* title;
    RateProgram program;
    std::size_t devices;
    StreamWish wish;
};

/// What stream() tells of what it sent.
struct Sent {
    std::uint64_t each = 0;
    std::int64_t latestMicros = 0;
    std::vector<std::int64_t> presses;

    [[nodiscard]] static Sent read(std::istream& in);
};

/// Prints what the files `sent`, `bare` and `program` in `folder` tell, beside the targets.
void tellRow(const RatesRow& row, const std::string& folder);
