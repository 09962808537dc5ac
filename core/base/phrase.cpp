#include "base/phrase.h"

namespace flowhand {

std::string filledIn(std::string_view pattern, const std::vector<std::string>& parts) {
    std::string text;
    for (std::size_t at = 0; at < pattern.size(); ++at) {
        const bool isPlace = pattern[at] == '{' && at + 2 < pattern.size() && pattern[at + 2] == '}' &&
                             pattern[at + 1] >= '1' && pattern[at + 1] <= '9';
        const std::size_t part = isPlace ? static_cast<std::size_t>(pattern[at + 1] - '1') : parts.size();
        if (part >= parts.size()) {
            text += pattern[at];
            continue;
        }
        text += parts[part];
        at += 2;
    }
    return text;
}

std::string Phrase::english() const {
    if (!m_isPattern)
        return m_text;
    std::vector<std::string> parts;
    for (const Phrase& part : m_parts)
        parts.push_back(part.english());
    return filledIn(m_text, parts);
}

Phrase phrase(const char* pattern) {
    return phraseOf(pattern, {});
}

Phrase phraseOf(std::string pattern, std::vector<Phrase> parts) {
    Phrase whole(std::move(pattern));
    whole.m_parts = std::move(parts);
    whole.m_isPattern = true;
    return whole;
}

Phrase operator+(Phrase first, Phrase second) {
    if (first.isEmpty() || second.isEmpty())
        return first.isEmpty() ? second : first;
    return phraseOf("{1}{2}", {std::move(first), std::move(second)});
}

Phrase joined(const std::vector<Phrase>& phrases, std::string_view separator) {
    Phrase all;
    for (const Phrase& one : phrases)
        all = all.isEmpty() ? one : std::move(all) + Phrase(std::string(separator)) + one;
    return all;
}

} // namespace flowhand
