#include "command/flowsearch.h"

#include <algorithm>
#include <filesystem>
#include <utility>

#include "base/names.h"
#include "session/scenariowatch.h"

namespace flowhand {

namespace fs = std::filesystem;

namespace {

/// Looks through a library for what a name means: its id, the aircraft's folder and its id, or its file.
class Search {
public:
    /// `kind` is what the messages call it.
    Search(std::string kind, const std::string& name) : m_kind(std::move(kind)), m_name(name) {}

    void look(const AircraftFolder& folder, const std::string& id, const std::string& file, const FoundFlow& flow) {
        const std::string whole = folder.aircraft->folder + "/" + id;
        std::error_code problem;
        m_known.push_back(whole);
        if (m_name != id && m_name != whole && !fs::equivalent(m_name, file, problem))
            return;
        m_found.push_back(flow);
        m_wholeNames.push_back(whole);
    }

    [[nodiscard]] Result<FoundFlow> result(const std::string& noneAtAll) const {
        const std::string code = "unknown-" + m_kind;
        if (m_known.empty())
            return failure(code, noneAtAll);
        if (m_found.empty())
            return failure(code, "there is no " + m_kind + " '" + m_name + "'; there are " + joined(m_known, ", ") +
                                     nearestHint(m_name, m_known));
        if (m_found.size() > 1)
            return failure(code, "several aircraft have a " + m_kind + " '" + m_name +
                                     "'; write the aircraft too, as in " + m_wholeNames.front());
        return m_found.front();
    }

private:
    std::string m_kind;
    const std::string& m_name;
    std::vector<std::string> m_known, m_wholeNames;
    std::vector<FoundFlow> m_found;
};

} // namespace

Result<FoundFlow> findFlow(const std::vector<AircraftFolder>& library, const std::string& name) {
    Search search("flow", name);
    for (const AircraftFolder& folder : library)
        for (const Flow& flow : folder.flows)
            search.look(folder, flow.id, flow.file, {folder.aircraft.get(), &flow, &folder, nullptr});
    return search.result("there is no flow at all; is this the folder above the folders of the aircraft?");
}

Result<FoundFlow> findScenario(const std::vector<AircraftFolder>& library, const std::string& name) {
    Search search("scenario", name);
    for (const AircraftFolder& folder : library)
        for (const Scenario& scenario : folder.scenarios)
            search.look(folder, scenario.id, scenario.file,
                        {folder.aircraft.get(), folder.flow(scenario.flows.front()), &folder, &scenario});
    Result<FoundFlow> found =
        search.result("there is no scenario; they are .toml files in an aircraft's scenarios folder");
    if (found)
        for (const std::string& flow : found->scenario->flows)
            if (found->folder->flow(flow) == nullptr)
                return failure("unknown-flow", "there is no flow '" + flow + "' for this scenario, or it has an error",
                               found->scenario->flowsWhere);
    return found;
}

std::string demonstrationOf(const Flow& flow, const Scenario* scenario, std::uint64_t seed) {
    std::error_code problem;
    const std::string name = flow.id + ".hands";
    const std::vector<bool> drawn = scenario != nullptr ? drawnEvents(*scenario, seed) : std::vector<bool>();
    const bool isQuiet = !drawn.empty() && std::find(drawn.begin(), drawn.end(), true) == drawn.end();
    if (scenario != nullptr && !isQuiet) {
        const fs::path own = fs::path(scenario->file).replace_extension() / name;
        if (fs::exists(own, problem))
            return own.string();
    }
    const fs::path hands = fs::path(flow.file).parent_path() / "hands" / name;
    return fs::exists(hands, problem) ? hands.string() : std::string();
}

} // namespace flowhand
