#include "command/benchrig.h"

namespace flowhand {

Result<BenchRig> loadBenchRig(const std::string& file, const std::string& aircraftFile, std::ostream& err) {
    Result<Aircraft> aircraft = aircraftOf(aircraftFile, file);
    if (!aircraft)
        return tl::unexpected(aircraft.error());
    Result<RigFile> rig = loadRigFor(file, *aircraft, err);
    if (!rig)
        return tl::unexpected(rig.error());
    return BenchRig{std::move(*aircraft), file, std::move(*rig)};
}

} // namespace flowhand
