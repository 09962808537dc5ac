#pragma once

#include <optional>
#include <string>

#include "command/benchcommand.h"

namespace flowhand {

/// A rig file that is measured and changed, with the aircraft whose controls it wires.
struct BenchRig {
    AircraftFolder folder;
    std::string file;
    RigFile rig;

    [[nodiscard]] const Aircraft& aircraft() const { return *folder.aircraft; }
};

/// `aircraftFile` may be empty: the shipped aircraft that fits. Warnings go to `err`.
[[nodiscard]] Result<BenchRig> loadBenchRig(const std::string& file, const std::string& aircraftFile,
                                            std::ostream& err);

} // namespace flowhand
