#include "session/headerwords.h"

#include <string_view>
#include <vector>

namespace flowhand {

namespace {

/// What follows `head` in `text`; empty: it begins in another way.
std::string behind(const std::string& text, std::string_view head) {
    return text.rfind(head, 0) == 0 ? text.substr(head.size()) : std::string();
}

Phrase sourceWords(const std::string& source) {
    if (source == "practice aircraft")
        return phrase("practice aircraft");
    if (std::string place = behind(source, "practice aircraft from "); !place.empty())
        return phrase("practice aircraft from {1}").with(std::move(place));
    if (std::string signals = behind(source, "practice aircraft: "); !signals.empty())
        return phrase("practice aircraft: {1}").with(std::move(signals));
    if (std::string signals = behind(source, "nothing: "); !signals.empty())
        return phrase("nothing: {1}").with(std::move(signals));
    return source;
}

} // namespace

Phrase helpWords(const std::string& help) {
    if (help == "guided")
        return phrase("guided");
    if (help == "prompted")
        return phrase("prompted");
    return help == "from memory" ? phrase("from memory") : Phrase(help);
}

Phrase motionWords(const std::string& motionSource) {
    constexpr std::string_view kBetween = "; ";
    std::vector<Phrase> sources;
    std::size_t at = 0;
    for (std::size_t end = 0; end != std::string::npos; at = end + kBetween.size()) {
        end = motionSource.find(kBetween, at);
        sources.push_back(sourceWords(motionSource.substr(at, end == std::string::npos ? end : end - at)));
    }
    return joined(sources, kBetween);
}

} // namespace flowhand
