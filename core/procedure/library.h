#pragma once

#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "base/problem.h"
#include "procedure/flow.h"
#include "procedure/scenario.h"

namespace flowhand {

/// One aircraft's folder: the aircraft, its flows in the order of the flight, and its scenarios by name. Flows and
/// scenarios refer to the aircraft; keep them together.
struct AircraftFolder {
    std::unique_ptr<Aircraft> aircraft;
    std::vector<Flow> flows = {};
    std::vector<Scenario> scenarios = {};

    /// None: there is none of this id.
    [[nodiscard]] const Flow* flow(const std::string& id) const;
};

/// One folder with an `aircraft.toml`; nothing when that is broken. A broken flow or scenario is
/// left out and named in `problems`.
[[nodiscard]] std::optional<AircraftFolder> loadAircraftFolder(const std::string& folder, Problems& problems);

/// A .toml file with steps, or one that is no TOML at all, is a flow; figures and hands in the same folder are not.
[[nodiscard]] bool isFlowFile(const std::string& file);

/// All of procedures/, aircraft with the larger crew first and then by the folder's name. A folder whose aircraft file
/// is broken, or a flow that is broken, is left out and named in `problems`.
[[nodiscard]] std::vector<AircraftFolder> loadLibrary(const std::string& folder, Problems& problems);

} // namespace flowhand
