#include "command/datafolder.h"

#include <filesystem>

namespace flowhand {

std::string dataFolder() {
    namespace fs = std::filesystem;
    std::error_code problem;
    const fs::path program = fs::read_symlink("/proc/self/exe", problem);
    const fs::path installed = program.parent_path().parent_path() / "share" / "flowhand";
    if (!problem && fs::exists(installed / "procedures", problem))
        return installed.string();
    return FLOWHAND_SOURCE_FOLDER;
}

} // namespace flowhand
