#include "command/owncopy.h"

#include <filesystem>
#include <vector>

#include "base/tomlfile.h"
#include "store/store.h"

namespace flowhand {

namespace fs = std::filesystem;

namespace {

tl::unexpected<Error> copyFailure(const fs::path& to, const std::error_code& why) {
    return failure("unwritable-file", "this copy cannot be made: " + why.message(), {to.string()});
}

/// Nothing happens where there is nothing to copy, or a copy already.
Status copyIfMissing(const fs::path& from, const fs::path& to) {
    std::error_code failed;
    if (!fs::exists(from, failed) || fs::exists(to, failed))
        return {};
    fs::create_directories(to.parent_path(), failed);
    if (!failed)
        fs::copy_file(from, to, failed);
    if (failed)
        return copyFailure(to, failed);
    // What is shipped may be for reading alone; a copy is to be written.
    fs::permissions(to, fs::perms::owner_write, fs::perm_options::add, failed);
    return failed ? copyFailure(to, failed) : Status();
}

/// The ground plan's folder that the practice aircraft names; empty: none.
std::string groundOf(const fs::path& practice) {
    const Result<TomlFile> file = TomlFile::load(practice.string());
    const TomlNode* const ground = file ? file->root().find("ground") : nullptr;
    return ground != nullptr ? ground->text : std::string();
}

/// The flows that a flow or a scenario leads on to.
std::vector<std::string> flowsNamedIn(const fs::path& path) {
    std::vector<std::string> names;
    const Result<TomlFile> file = TomlFile::load(path.string());
    if (!file)
        return names;
    if (const TomlNode* const flows = file->root().find("flows"))
        for (const TomlNode& each : flows->items)
            names.push_back(each.text);
    if (const TomlNode* const outcomes = file->root().find("outcome"))
        for (const TomlNode& each : outcomes->items)
            if (const TomlNode* const next = each.find("next"))
                names.push_back(next->text);
    return names;
}

/// A flow, its hands, and those that it leads on to.
Status copyFlow(const fs::path& from, const fs::path& to, const std::string& name) {
    const fs::path file = name + ".toml";
    const fs::path hands = fs::path("hands") / (name + ".hands");
    std::error_code failed;
    if (fs::exists(to / file, failed) || !fs::exists(from / file, failed))
        return {};
    if (const Status copied = copyIfMissing(from / file, to / file); !copied)
        return copied;
    if (const Status copied = copyIfMissing(from / hands, to / hands); !copied)
        return copied;
    for (const std::string& next : flowsNamedIn(from / file))
        if (const Status copied = copyFlow(from, to, next); !copied)
            return copied;
    return {};
}

} // namespace

std::string ownProcedures() {
    return (fs::path(defaultStoreFile()).parent_path() / "procedures").string();
}

Result<std::string> copyToOwn(const std::string& procedures, const std::string& own, const std::string& file) {
    const fs::path inside = fs::path(file).lexically_relative(procedures);
    const fs::path aircraft = inside.begin() != inside.end() ? *inside.begin() : fs::path();
    const fs::path copy = fs::path(own) / inside;
    std::error_code failed;
    if (!fs::exists(file, failed))
        return failure("unreadable-file", "there is no such file", {file});
    if (fs::exists(copy, failed))
        return failure("file-exists", "you have a copy of this file already", {copy.string()});
    const fs::path from = fs::path(procedures) / aircraft;
    const fs::path to = fs::path(own) / aircraft;
    const std::string ground = groundOf(from / "practice.toml");
    const std::pair<fs::path, fs::path> copies[] = {
        {from / "aircraft.toml", to / "aircraft.toml"},
        {from / "practice.toml", to / "practice.toml"},
        {fs::path(procedures) / ground / "ground.toml", fs::path(own) / ground / "ground.toml"}};
    for (const auto& [source, target] : copies)
        if (const Status copied = copyIfMissing(source, target); !copied)
            return tl::unexpected(copied.error());
    const bool isFlow = copy.parent_path() == to && copy != to / "aircraft.toml";
    Status copied = isFlow ? copyFlow(from, to, inside.stem().string()) : copyIfMissing(file, copy);
    if (copied && copy.parent_path() != to)
        for (const std::string& flow : flowsNamedIn(file))
            if (copied)
                copied = copyFlow(from, to, flow);
    if (!copied)
        return tl::unexpected(copied.error());
    return copy.string();
}

} // namespace flowhand
