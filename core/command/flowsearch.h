#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "base/error.h"
#include "procedure/library.h"

namespace flowhand {

// What a person's name for a flow or a scenario means in a library.

/// The flow that `name` means: "taxi_out", "twin_jet/taxi_out", or a path to a flow file below a folder of `library`.
struct FoundFlow {
    const Aircraft* aircraft = nullptr;
    const Flow* flow = nullptr;
    const AircraftFolder* folder = nullptr;
    const Scenario* scenario = nullptr; ///< of findScenario()
};
[[nodiscard]] Result<FoundFlow> findFlow(const std::vector<AircraftFolder>& library, const std::string& name);

/// The scenario that `name` means, written as a flow's name, and the first flow that it flies.
[[nodiscard]] Result<FoundFlow> findScenario(const std::vector<AircraftFolder>& library, const std::string& name);

/// The script of hands that is shipped as the flow's demonstration; empty when there is none. In a scenario with `seed`
/// the one in the folder of the scenario's name, which does what its events call for. When there is none, or nothing is
/// drawn to happen, the flow's own.
[[nodiscard]] std::string demonstrationOf(const Flow& flow, const Scenario* scenario = nullptr, std::uint64_t seed = 1);

} // namespace flowhand
