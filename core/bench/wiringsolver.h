#pragma once

#include <functional>
#include <string>
#include <vector>

#include "bench/bencherror.h"
#include "bench/inputwatch.h"
#include "bench/wiringwish.h"

namespace flowhand {

/// What all inputs did in one stage, and where they stood at its end.
struct StageResult {
    Snapshot standing;
    std::vector<InputEvent> events; ///< of contacts, hats and wheels
};

/// An input that a control was found to use, beside others that moved as well.
struct FoundInput {
    InputPlace place;
    double change = 0.0; ///< the largest settled one, in raw counts
    double sigma = 0.0;  ///< noise at rest, in raw counts
    [[nodiscard]] double score() const { return change / sigma; }
};

/// How a control can be wired after what was seen of it.
struct WiringProposal {
    std::string wiring;             ///< as in a rig file: "axis", "selector"
    std::vector<InputPlace> inputs; ///< each once
    std::string keys;               ///< the other lines of its [[control]], in TOML
    std::vector<Phrase> remarks;    ///< what the builder should know: what else moved, what is unsure
};

/// As rig files name an input, with its device: "pedals: X".
using InputNamer = std::function<std::string(InputPlace)>;

/// The axes that moved between any two stages, the largest settled change against its own noise first.
[[nodiscard]] std::vector<FoundInput> movedAxes(const InputWatch& watch, const std::vector<StageResult>& stages);

/// Errors: `nothing-moved`, `not-fitting` (what moved cannot be this control), with what to do.
[[nodiscard]] BenchResult<WiringProposal> solveWiring(const WiringWish& wish, const Aircraft& aircraft,
                                                      const InputWatch& watch, const std::vector<StageResult>& stages,
                                                      const InputNamer& nameOf);

} // namespace flowhand
