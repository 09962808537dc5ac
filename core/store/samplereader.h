#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "session/samplesbysignal.h"
#include "session/stretch.h"
#include "store/chunk.h"
#include "store/connection.h"

namespace flowhand {

/// Some windows of a run, the first and the last of them included.
struct WindowRange {
    std::int64_t run = 0;
    std::int64_t first = 0;
    std::int64_t last = 0;
};

/// What could not be read: in words, and the stretches in which it lies.
struct SampleDamage {
    std::vector<std::string> words;
    std::vector<Stretch> missing;
};

/// The samples of those windows in the run's order, as far as they can be read. Unpacks on all cores.
[[nodiscard]] std::vector<Sample> readSamples(Connection& connection, const WindowRange& range, SampleDamage& damage);
/// The same, each signal by itself.
[[nodiscard]] SamplesBySignal readBySignal(Connection& connection, const WindowRange& range, SampleDamage& damage);

} // namespace flowhand
