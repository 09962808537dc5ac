#pragma once

#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "base/problem.h"
#include "base/signal.h"
#include "base/tomlfile.h"
#include "rig/control.h"
#include "rig/tolerances.h"

namespace flowhand {

/// A rig file, read and checked. Its format: assets/rigs/README.md. Owned by the Rig made of it.
struct RigFile {
    std::string source; ///< the whole text
    std::string title;
    std::vector<DeviceWish> devices;
    std::vector<std::unique_ptr<Control>> controls; ///< controls[i] is ControlId(i + 1)
    WalkTolerances tolerances;
    std::vector<Phrase> remarks;
};

/// Whether it looks like one: aircraft files have controls too, but wire none.
[[nodiscard]] bool isRigFile(const TomlFile& file);

/// The devices that a rig file names, whatever aircraft it is for. What else stands in it is not looked at.
[[nodiscard]] std::vector<DeviceWish> loadRigDevices(const std::string& file, Problems& problems);

/// `name` stands in messages as the file. Nothing when `problems` got an error.
[[nodiscard]] std::optional<RigFile> parseRigFile(std::string source, const std::string& name,
                                                  const SignalTable& signals, std::size_t controlCount,
                                                  Problems& problems);

/// Puts `newSource` in place of the file at `path`, all or nothing: after a crash or a pulled plug there is the old
/// file or the new one. A text that is not a good rig file is refused with its first error, and the old file stays.
/// Errors: those of the rig file, `save-failed`.
[[nodiscard]] Status saveRigFile(const std::string& path, const std::string& newSource, const SignalTable& signals,
                                 std::size_t controlCount);

} // namespace flowhand
