#include "bench/measured.h"

#include <optional>

#include <nlohmann/json.hpp>

namespace flowhand {

namespace {

using Json = nlohmann::ordered_json;

std::optional<Soundness> soundnessNamed(const std::string& name) {
    for (const Soundness soundness : {Soundness::Good, Soundness::Unmeasured, Soundness::Caution, Soundness::Bad})
        if (name == soundnessName(soundness))
            return soundness;
    return std::nullopt;
}

std::string textIn(const Json& json, const char* member) {
    const auto found = json.find(member);
    return found != json.end() && found->is_string() ? found->get<std::string>() : std::string();
}

void collect(const Json& json, const std::string& part, std::vector<Finding>& all) {
    for (const auto& [name, member] : json.items()) {
        if (name != "findings") {
            // The parts of a control are objects by input below "axes" and "contacts".
            if (member.is_object())
                collect(member, name == "axes" || name == "contacts" || name == "switch" ? std::string() : name, all);
            continue;
        }
        for (const Json& finding : member) {
            const std::optional<Soundness> soundness = soundnessNamed(textIn(finding, "verdict"));
            if (!soundness)
                continue;
            const std::string lead = part.empty() ? part : part + ": ";
            all.push_back({textIn(finding, "check"), *soundness, lead + textIn(finding, "text"),
                           textIn(finding, "reason"), textIn(finding, "remedy")});
        }
    }
}

} // namespace

std::vector<Finding> findingsIn(const std::string& result) {
    std::vector<Finding> all;
    const Json json = Json::parse(result, nullptr, false);
    if (json.is_object())
        collect(json, {}, all);
    return all;
}

} // namespace flowhand
