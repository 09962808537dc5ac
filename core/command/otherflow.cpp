#include "command/otherflow.h"

#include <filesystem>

#include "command/command.h"
#include "procedure/library.h"

namespace flowhand {

namespace fs = std::filesystem;

namespace {

Result<OtherFlow> flowOfFile(const std::string& file) {
    Problems problems;
    const fs::path folder = fs::path(file).parent_path();
    std::optional<Aircraft> aircraft = loadAircraft((folder / "aircraft.toml").string(), problems);
    std::optional<Flow> flow = aircraft ? loadFlow(file, *aircraft, problems) : std::nullopt;
    if (!flow)
        return tl::unexpected(allErrors(problems));
    return OtherFlow{std::make_shared<const Aircraft>(std::move(*aircraft)),
                     std::make_shared<const Flow>(std::move(*flow))};
}

} // namespace

Result<OtherFlow> otherFlow(const std::string& path, const RunHeader& header) {
    std::error_code problem;
    const fs::path given(path);
    if (fs::is_regular_file(given, problem))
        return flowOfFile(path);
    const fs::path file = header.flowId + ".toml";
    for (const fs::path& candidate : {given / file, given / header.aircraftFolder / file})
        if (fs::is_regular_file(candidate, problem))
            return flowOfFile(candidate.string());
    return failure("unknown-flow",
                   "there is no flow '" + header.flowId +
                       "' here; name a flow file, the folder of an aircraft, or the "
                       "folder above those",
                   {path, 0, 0});
}

} // namespace flowhand
