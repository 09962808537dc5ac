#include "rigs.h"

#include <algorithm>
#include <filesystem>
#include <vector>

#include "base/tomlfile.h"
#include "store/datahome.h"

namespace flowhand {

std::string ownRigs() {
    return dataHome() + "/rigs";
}

std::string firstRig() {
    std::error_code problem;
    std::vector<std::string> files;
    for (const auto& entry : std::filesystem::directory_iterator(ownRigs(), problem))
        if (entry.path().extension() == ".toml")
            files.push_back(entry.path().string());
    return files.empty() ? std::string() : *std::min_element(files.begin(), files.end());
}

std::string newRigFile() {
    const std::string first = firstRig();
    return first.empty() ? ownRigs() + "/rig.toml" : first;
}

QString rigTitleOf(const std::string& rigFile) {
    std::error_code problem;
    if (rigFile.empty() || !std::filesystem::exists(rigFile, problem))
        return {};
    const Result<TomlFile> file = TomlFile::load(rigFile);
    const TomlNode* title = file ? file->root().find("title") : nullptr;
    return QString::fromStdString(title != nullptr ? title->text : rigFile);
}

} // namespace flowhand
