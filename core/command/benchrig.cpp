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

Status replaceRig(BenchRig& rig, const std::string& source) {
    const SignalTable& signals = rig.aircraft.signals;
    const std::size_t count = rig.aircraft.controls.size();
    if (const Status saved = saveRigFile(rig.file, source, signals, count); !saved)
        return saved;
    Problems problems;
    rig.rig = std::move(*parseRigFile(source, rig.file, signals, count, problems));
    return {};
}

} // namespace flowhand
