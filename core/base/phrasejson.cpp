#include "base/phrasejson.h"

#include <cstddef>
#include <vector>

namespace flowhand {

namespace {

using Json = nlohmann::ordered_json;

constexpr std::size_t kMostParts = 9;
constexpr int kDeepest = 16; // parts within parts; a sentence has three

/// Parts put in more than once, at each depth anew, would make a few lines fill the memory.
bool namesEachOnce(const std::string& pattern) {
    for (char figure = '1'; figure <= '9'; ++figure) {
        const std::string place{'{', figure, '}'};
        const std::size_t first = pattern.find(place);
        if (first != std::string::npos && pattern.find(place, first + 1) != std::string::npos)
            return false;
    }
    return true;
}

[[noreturn]] void refuse(const Json& json) {
    throw Json::other_error::create(501, "no phrase", &json);
}

Phrase read(const Json& json, int depth) {
    if (json.is_string())
        return json.get<std::string>();
    if (!json.is_array() || json.empty() || json.size() > kMostParts + 1 || depth >= kDeepest)
        refuse(json);
    auto pattern = json.front().get<std::string>();
    if (pattern.empty() || !namesEachOnce(pattern))
        refuse(json);
    std::vector<Phrase> parts;
    for (std::size_t i = 1; i < json.size(); ++i)
        parts.push_back(read(json[i], depth + 1));
    return phraseOf(std::move(pattern), std::move(parts));
}

} // namespace

Json phraseJson(const Phrase& phrase) {
    if (!phrase.isPattern())
        return phrase.text();
    Json json = Json::array({phrase.text()});
    for (const Phrase& part : phrase.parts())
        json.push_back(phraseJson(part));
    return json;
}

Phrase phraseFrom(const Json& json) {
    return read(json, 0);
}

std::string phraseText(const Phrase& phrase) {
    return phrase.isPattern() ? phraseJson(phrase).dump(-1, ' ', false, Json::error_handler_t::replace) : phrase.text();
}

Phrase phraseOfText(const std::string& text) {
    if (text.rfind("[\"", 0) != 0)
        return text;
    try {
        return phraseFrom(Json::parse(text));
    } catch (const nlohmann::json::exception&) {
        return text;
    }
}

} // namespace flowhand
