#include "procedure/library.h"

#include <algorithm>
#include <filesystem>
#include <utility>

#include "procedure/floworder.h"

namespace flowhand {

namespace {

namespace fs = std::filesystem;

constexpr const char* kAircraftFile = "aircraft.toml";
constexpr const char* kScenarios = "scenarios";

/// By name, so that the order never depends on the file system.
std::vector<fs::path> entriesOf(const fs::path& folder, Problems& problems) {
    std::vector<fs::path> entries;
    std::error_code failed;
    fs::directory_iterator at(folder, failed);
    for (const fs::directory_iterator end; !failed && at != end; at.increment(failed))
        entries.push_back(at->path());
    if (failed)
        problems.error("unreadable-folder",
                       "this folder cannot be read: " + failed.message() + "; check that it exists", {folder.string()});
    std::sort(entries.begin(), entries.end());
    return entries;
}

} // namespace

bool isFlowFile(const std::string& file) {
    const fs::path path(file);
    if (path.extension() != ".toml" || path.filename() == kAircraftFile)
        return false;
    const Result<TomlFile> toml = TomlFile::load(file);
    return !toml || toml->root().find("step") != nullptr;
}

std::optional<AircraftFolder> loadAircraftFolder(const std::string& folder, Problems& problems) {
    std::optional<Aircraft> aircraft = loadAircraft((fs::path(folder) / kAircraftFile).string(), problems);
    if (!aircraft)
        return std::nullopt;
    AircraftFolder loaded{std::make_unique<Aircraft>(std::move(*aircraft)), {}, {}};
    for (const fs::path& entry : entriesOf(folder, problems))
        if (isFlowFile(entry.string()))
            if (std::optional<Flow> flow = loadFlow(entry.string(), *loaded.aircraft, problems))
                loaded.flows.push_back(std::move(*flow));
    putInOrder(loaded);
    std::error_code ignored;
    if (!fs::is_directory(fs::path(folder) / kScenarios, ignored))
        return loaded;
    for (const fs::path& entry : entriesOf(fs::path(folder) / kScenarios, problems))
        if (entry.extension() == ".toml")
            if (std::optional<Scenario> scenario = loadScenario(entry.string(), *loaded.aircraft, problems))
                loaded.scenarios.push_back(std::move(*scenario));
    return loaded;
}

const Flow* AircraftFolder::flow(const std::string& id) const {
    const auto at = std::find_if(flows.begin(), flows.end(), [&](const Flow& each) {
        return each.id == id;
    });
    return at != flows.end() ? &*at : nullptr;
}

std::vector<AircraftFolder> loadLibrary(const std::string& folder, Problems& problems) {
    std::vector<AircraftFolder> library;
    std::error_code ignored;
    for (const fs::path& entry : entriesOf(folder, problems))
        if (fs::exists(entry / kAircraftFile, ignored))
            if (std::optional<AircraftFolder> loaded = loadAircraftFolder(entry.string(), problems))
                library.push_back(std::move(*loaded));
    std::stable_sort(library.begin(), library.end(), [](const AircraftFolder& a, const AircraftFolder& b) {
        return a.aircraft->seats.size() > b.aircraft->seats.size();
    });
    return library;
}

} // namespace flowhand
