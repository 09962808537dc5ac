#pragma once

#include <optional>
#include <string>
#include <vector>

#include "bench/evidence.h"
#include "bench/reach.h"
#include "bench/workbench.h"
#include "rig/rig.h"
#include "rig/rigfile.h"

// What the workbench knows of its rig; private to it and its tasks.

namespace flowhand {

/// The rig that is on the bench, as its file says it is now.
struct BenchRigState {
    std::string file;
    bool isThere = false; ///< the file; else nothing is wired yet
    RigFile rig;
    std::optional<Rig> live; ///< the same, that the devices move
    std::vector<Reach> reaches;
    std::vector<ControlFingerprint> fingerprints;
    std::vector<EvidenceRecord> evidence;
};

/// Of a missing file a rig without controls. Errors: those of the file.
[[nodiscard]] Result<BenchRigState> loadRigState(const std::string& file, const Aircraft& aircraft);

/// The newest measurement and the newest repeat check of each control.
[[nodiscard]] std::vector<MeasuredControl> measuredOf(const BenchRigState& rig);
/// By control that has filters, once for each of its signals. Those that would judge it are steps of `flows`.
[[nodiscard]] std::vector<ControlFilters> filtersOf(const BenchRigState& rig, const Aircraft& aircraft,
                                                    const std::vector<const Flow*>& flows);
[[nodiscard]] std::vector<SharedInput> sharedOf(const RigFile& rig);

/// A lever with gates, and the input that its travel is read from.
struct WatchedTravel {
    GateTravel travel;
    InputRef input;
};
[[nodiscard]] std::vector<WatchedTravel> travelsOf(const RigFile& rig, const SignalTable& signals);

} // namespace flowhand
