#include "command/datafolder.h"

#include <filesystem>

namespace flowhand {

namespace fs = std::filesystem;

namespace {

/// Of this program; empty where the system does not tell.
fs::path programFolder() {
    std::error_code problem;
    return fs::read_symlink("/proc/self/exe", problem).parent_path();
}

} // namespace

std::string dataFolder() {
    std::error_code problem;
    const fs::path installed = programFolder().parent_path() / "share" / "flowhand";
    return fs::exists(installed / "procedures", problem) ? installed.string() : FLOWHAND_SOURCE_FOLDER;
}

std::string manualFolder() {
    std::error_code problem;
    const fs::path built = programFolder() / "manual";
    return fs::exists(built / "pictures", problem) ? built.string() : dataFolder() + "/assets/manual";
}

} // namespace flowhand
