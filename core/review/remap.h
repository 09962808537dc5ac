#pragma once

#include <vector>

#include "review/reviewedrun.h"

namespace flowhand {

/// A record told in the signals of another aircraft file.
struct RemappedRecord {
    RunHeader header;            ///< with the set-up's controls in the other file's order
    std::vector<Sample> samples; ///< without those of signals that the other file lacks
    std::vector<Phrase> remarks; ///< whole sentences: what was left out
};

/// By the signals' names; positions by theirs. A signal of another kind or unit is another signal.
[[nodiscard]] RemappedRecord remapped(const RunHeader& header, const std::vector<Sample>& samples, const Aircraft& from,
                                      const Aircraft& to);

} // namespace flowhand
