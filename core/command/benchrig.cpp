#include "command/benchrig.h"

namespace flowhand {

Result<BenchRig> loadBenchRig(const std::string& file, const std::string& aircraftFile, std::ostream& err) {
    Result<AircraftFolder> folder = aircraftFolderOf(aircraftFile, file);
    if (!folder)
        return tl::unexpected(folder.error());
    Result<RigFile> rig = loadRigFor(file, *folder->aircraft, err);
    if (!rig)
        return tl::unexpected(rig.error());
    return BenchRig{std::move(*folder), file, std::move(*rig)};
}

} // namespace flowhand
