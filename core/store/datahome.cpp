#include "store/datahome.h"

#include <pwd.h>
#include <unistd.h>

#include <cstdlib>

#include "base/tomlfile.h"

namespace flowhand {

namespace {

/// The XDG base directory specification: a relative path is to be ignored.
std::string baseFolder(const char* variable, const char* inHome) {
    if (const char* folder = std::getenv(variable); folder != nullptr && folder[0] == '/')
        return std::string(folder) + "/flowhand";
    const char* home = std::getenv("HOME");
    if (home == nullptr || home[0] != '/') {
        const passwd* user = getpwuid(getuid());
        home = user != nullptr ? user->pw_dir : "/";
    }
    return std::string(home) + inHome + "/flowhand";
}

} // namespace

std::string settingsFile() {
    return baseFolder("XDG_CONFIG_HOME", "/.config") + "/settings.toml";
}

std::string usualDataHome() {
    return baseFolder("XDG_DATA_HOME", "/.local/share");
}

std::string dataHome() {
    // What is wrong with the file is said by the window, which reads all of it.
    const Result<TomlFile> settings = TomlFile::load(settingsFile());
    const TomlNode* folder = settings ? settings->root().find("data_folder") : nullptr;
    if (folder != nullptr && folder->kind == TomlNode::Kind::Text && !folder->text.empty() && folder->text[0] == '/')
        return folder->text;
    return usualDataHome();
}

} // namespace flowhand
